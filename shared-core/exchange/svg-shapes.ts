/** Shapes of an SVG as drawn paths, by svgpath: all commands made absolute, arcs made cubic, transforms applied. */
import svgpath from 'svgpath';
import type { Point } from '../geometry/ring.ts';
import type { Segment } from '../plan/outline.ts';
import type { DrawnPath } from './drawn.ts';
import type { SvgNode } from './svg-tree.ts';

/** The path data of a shape; null where it is none, '' where it draws nothing. */
export function pathData(node: SvgNode): string | null {
  const number = (name: string) => Number.parseFloat(node.attributes[name] ?? '0');
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
  | { readonly ok: true; readonly paths: readonly DrawnPath[]; readonly pointCount: number }
  /** What the library says of the data, or that a number is none. */
  | { readonly ok: false; readonly what: string };

/** Every sub-path by itself, with y up. `transforms` as SVG writes them, the innermost first. */
export function shapePaths(data: string, transforms: readonly string[], line: number): ReadPaths {
  const path = svgpath.from(data);
  const wrong = (path as unknown as { err: string }).err;
  if (wrong) return { ok: false, what: wrong.replace(/^SvgPath: /, '') };
  for (const transform of transforms) path.transform(transform);
  const paths: DrawnPath[] = [];
  let start: Point = { x: 0, y: 0 };
  let segments: Segment[] = [];
  let pointCount = 0;
  let areNumbers = true;
  const point = (x: number, y: number): Point => {
    pointCount++;
    if (!Number.isFinite(x + y)) areNumbers = false;
    return { x, y: -y };
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
  return areNumbers
    ? { ok: true, paths, pointCount }
    : { ok: false, what: 'a number is none, or out of all bounds' };
}
