/** Shapes of an SVG as drawn paths, by svgpath: all commands made absolute, arcs made cubic. */
import { say } from '../../wording/say.ts';
import svgpath from 'svgpath';
import type { Point } from '../../geometry/ring.ts';
import type { Segment } from '../../plan/model/outline.ts';
import type { DrawnPath } from '../pattern/drawn.ts';
import { inUnits, svgLength } from './svg-length.ts';
import type { SvgNode } from './svg-tree.ts';

/** What a shape draws: its path data ('' for nothing), no shape at all, or what it says that is not a length. */
export type ShapeData =
  | { readonly kind: 'data'; readonly data: string; readonly unitIn: string | null }
  | { readonly kind: 'no shape' }
  | { readonly kind: 'unreadable'; readonly what: string };

/** Measures with a real unit stand in it as many units as they have pixels; the first of them is told of in unitIn. */
export function shapeData(node: SvgNode): ShapeData {
  let wrong: string | null = null;
  let unitIn: string | null = null;
  const number = (name: string): number => {
    const text = node.attributes[name];
    if (text === undefined || text.trim() === 'auto') return 0;
    const length = svgLength(text);
    const value = inUnits(length);
    if (!length) wrong ??= say('svg-shapes.its-is', { name, text: text.slice(0, 30) });
    else if (length.unit !== '' && length.unit !== 'px') unitIn ??= text.trim();
    return value;
  };
  const data = dataOf(node, number);
  if (data === null) return { kind: 'no shape' };
  return wrong === null ? { kind: 'data', data, unitIn } : { kind: 'unreadable', what: wrong };
}

/** Null where it is no shape. number: a measure by its attribute's name, 0 where it has none. */
function dataOf(node: SvgNode, number: (name: string) => number): string | null {
  switch (node.name) {
    case 'path':
      return node.attributes.d ?? '';
    case 'polygon':
    case 'polyline': {
      const points = (node.attributes.points ?? '').trim();
      return points === '' ? '' : `M${points}${node.name === 'polygon' ? 'Z' : ''}`;
    }
    case 'line':
      return `M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`;
    case 'rect': {
      const [x, y, width, height] = [number('x'), number('y'), number('width'), number('height')];
      if (!(width > 0 && height > 0)) return '';
      const given = { rx: number('rx'), ry: number('ry') };
      const rx = Math.min(given.rx || given.ry, width / 2);
      const ry = Math.min(given.ry || given.rx, height / 2);
      if (!(rx > 0 && ry > 0)) return `M${x} ${y}h${width}v${height}h${-width}Z`;
      const arc = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
      return (
        `M${x + rx} ${y}h${width - 2 * rx}${arc(rx, ry)}v${height - 2 * ry}${arc(-rx, ry)}` +
        `h${2 * rx - width}${arc(-rx, -ry)}v${2 * ry - height}${arc(rx, -ry)}Z`
      );
    }
    case 'circle':
    case 'ellipse': {
      const rx = number(node.name === 'circle' ? 'r' : 'rx');
      const ry = number(node.name === 'circle' ? 'r' : 'ry');
      if (!(rx > 0 && ry > 0)) return '';
      const [x, y] = [number('cx'), number('cy')];
      return `M${x - rx} ${y}A${rx} ${ry} 0 1 1 ${x + rx} ${y}A${rx} ${ry} 0 1 1 ${x - rx} ${y}Z`;
    }
    default:
      return null;
  }
}

export type ReadPaths =
  | { readonly ok: true; readonly paths: readonly DrawnPath[] }
  /** What the library says of the data, or that a number is none. */
  | { readonly ok: false; readonly what: string };

/** Commands and numbers of path data, about: what a reader of it has to make a thing of. */
export function pathWordCount(data: string): number {
  let count = 0;
  let isInNumber = false;
  for (let i = 0; i < data.length; i++) {
    const code = data.charCodeAt(i);
    const isOfNumber = (code >= 48 && code <= 57) || code === 46;
    const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
    // A second dot, as in "1.5.5", begins another number; a zero too many does no harm.
    if (isLetter || (isOfNumber && (!isInNumber || code === 46))) count++;
    // Each arc becomes up to four curves, and its flags need no room.
    if (code === 97 || code === 65) count += 12;
    isInNumber = isOfNumber;
  }
  return count;
}

/** Numbers that each command takes. */
const numberCounts: Readonly<Record<string, number>> = {
  m: 2,
  l: 2,
  h: 1,
  v: 1,
  c: 6,
  s: 4,
  q: 4,
  t: 2,
  a: 7,
};
/** svgpath takes the square of the time for a command that is followed by many times its numbers. */
const longestRun = 2000;
const maxRepeats = 100;

/** The same path with the command said again and again where it is followed by very many numbers. */
function withShortRuns(data: string): string {
  return data.replace(/[mlhvcsqta][^mlhvcsqtaz]*/gi, (run) => {
    if (run.length <= longestRun) return run;
    const command = run[0]!;
    // What follows a move is drawn.
    const next = command === 'M' ? 'L' : command === 'm' ? 'l' : command;
    const parts: string[] = [];
    let from = 0;
    let isFirst = true;
    for (const end of groupEnds(run, command.toLowerCase())) {
      parts.push(isFirst ? '' : next, run.slice(from, end));
      isFirst = false;
      from = end;
    }
    // What is no number is left to the library, which names it.
    return parts.join('') + run.slice(from);
  });
}

/** Where a run may be cut: behind its first numbers, and then behind each hundred times as many as the command takes. */
function groupEnds(run: string, command: string): number[] {
  const number = /[\s,]*[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?/iy;
  const flag = /[\s,]*[01]/y;
  const size = numberCounts[command]!;
  const ends: number[] = [];
  let at = 1;
  for (let count = 0; ; count++) {
    const place = count % size;
    const word = command === 'a' && (place === 3 || place === 4) ? flag : number;
    word.lastIndex = at;
    if (!word.test(run)) return ends;
    at = word.lastIndex;
    const repeats = (count + 1) / size;
    if (repeats === 1 || repeats % maxRepeats === 0) ends.push(at);
  }
}

/** Every sub-path by itself, in the shape's own units, y down as it is written. */
export function shapePaths(data: string, line: number): ReadPaths {
  const path = svgpath.from(withShortRuns(data));
  const wrong = (path as unknown as { err: string }).err;
  if (wrong) return { ok: false, what: wrong.replace(/^SvgPath: /, '') };
  const paths: DrawnPath[] = [];
  let start: Point = { x: 0, y: 0 };
  let segments: Segment[] = [];
  let areNumbers = true;
  const point = (x: number, y: number): Point => {
    if (!Number.isFinite(x + y)) areNumbers = false;
    return { x, y };
  };
  const end = (isClosed: boolean) => {
    if (segments.length > 0) paths.push({ start, segments, isClosed, line });
    segments = [];
  };
  let at: Point = start;
  const add = (segment: Segment) => {
    segments.push(segment);
    at = segment.to;
  };
  path
    .abs()
    .unshort()
    .unarc()
    .iterate((step, _index, fromX, fromY) => {
      const [command, ...n] = step as [string, ...number[]];
      switch (command) {
        case 'M':
          end(false);
          start = point(n[0]!, n[1]!);
          at = start;
          break;
        case 'L':
          add({ kind: 'line', to: point(n[0]!, n[1]!) });
          break;
        case 'H':
          add({ kind: 'line', to: point(n[0]!, fromY) });
          break;
        case 'V':
          add({ kind: 'line', to: point(fromX, n[0]!) });
          break;
        case 'C':
          add({
            kind: 'cubic',
            control1: point(n[0]!, n[1]!),
            control2: point(n[2]!, n[3]!),
            to: point(n[4]!, n[5]!),
          });
          break;
        case 'Q': {
          const middle = point(n[0]!, n[1]!);
          const to = point(n[2]!, n[3]!);
          const towards = (from: Point): Point => ({
            x: from.x + ((middle.x - from.x) * 2) / 3,
            y: from.y + ((middle.y - from.y) * 2) / 3,
          });
          add({ kind: 'cubic', control1: towards(at), control2: towards(to), to });
          break;
        }
        case 'Z':
        case 'z': {
          const last = segments.at(-1);
          if (last && (last.to.x !== start.x || last.to.y !== start.y)) {
            const gap = Math.hypot(last.to.x - start.x, last.to.y - start.y);
            if (gap > 1e-6) add({ kind: 'line', to: start });
            else segments[segments.length - 1] = { ...last, to: start };
          }
          end(segments.length > 1);
          at = start;
          break;
        }
        default:
          throw new RangeError(`svgpath left a command ${command}`);
      }
    });
  end(false);
  return areNumbers ? { ok: true, paths } : { ok: false, what: say('svg-shapes.a-number-is-none-or-out') };
}
