/** One drawn thing of a DXF from its pairs of lines. */
import { say } from '../../wording/say.ts';
import type { Point } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import { type DrawnPath, type Matrix, movedPath } from '../pattern/drawn.ts';
import { numberOf, type Pair, textOf } from './dxf-pairs.ts';
import { arcPath, type Corner, cornerOf, lightCorners, pathOf, pointOf } from './dxf-shapes.ts';

interface Placed {
  readonly layer: string;
  readonly line: number;
}

export interface Insert extends Placed {
  readonly kind: 'insert';
  readonly block: string;
  readonly at: Point;
  readonly scaleX: number;
  readonly scaleY: number;
  readonly turnDeg: number;
  /** Copies side by side and above each other, and how far apart, before the turn. */
  readonly columnCount: number;
  readonly rowCount: number;
  readonly columnStep: number;
  readonly rowStep: number;
  /** It lies face down: x runs the other way. */
  readonly isFaceDown: boolean;
}

export type Entity =
  | (Placed & { readonly kind: 'path'; readonly path: DrawnPath })
  | (Placed & { readonly kind: 'point'; readonly at: Point })
  /** "Key: value" by its key in lower case; '' where it has no such form. */
  | (Placed & { readonly kind: 'text'; readonly key: string; readonly value: string })
  | Insert;

/** What was read; null is a kind that is not read. */
export type ReadEntity = Entity | { readonly problem: Problem } | 'nothing' | null;

/** Longer texts are notes to nobody that a plan would keep. */
const longestText = 2000;
/** A layer, a block or a kind is named in no more letters than this. */
export const longestName = 120;
const maxCopies = 32_767;

/** From its own pairs; the corners of a heavy polyline come after it and are given. */
export function entityFrom(
  kind: string,
  line: number,
  pairs: readonly Pair[],
  corners: readonly (Corner | null)[],
): ReadEntity {
  const layer = layerOf(pairs);
  const flags = numberOf(pairs, 70, 0);
  const isClosed = (flags & 1) === 1;
  const path = (drawn: DrawnPath | null, isFlat: boolean): ReadEntity => {
    if (drawn === null) return { problem: unreadable(kind, line) };
    const face = isFlat ? faceOf(pairs) : 'up';
    if (face === 'aslant') return { problem: slanting(kind, line) };
    if (drawn.segments.length === 0) return 'nothing';
    return { kind: 'path', layer, line, path: face === 'down' ? movedPath(faceDown, drawn) : drawn };
  };
  switch (kind) {
    case 'POLYLINE':
      // 16 and 64 are nets of a surface; 8 is a line in space, which has no face.
      if ((flags & 80) !== 0) return null;
      return path(pathOf(corners, isClosed, line), (flags & 8) === 0);
    case 'LWPOLYLINE':
      return path(pathOf(lightCorners(pairs), isClosed, line), true);
    case 'LINE':
      return path(pathOf([cornerOf(pairs, 0), cornerOf(pairs, 1)], false, line), false);
    case 'CIRCLE':
    case 'ARC':
      return path(arcPath(pairs, kind === 'CIRCLE', line), true);
    case 'POINT': {
      const at = pointOf(pairs);
      return at ? { kind: 'point', layer, line, at } : { problem: unreadable(kind, line) };
    }
    case 'TEXT':
    case 'MTEXT':
      return { kind: 'text', layer, line, ...keyed(plainText(pairs)) };
    case 'INSERT':
      return insertFrom(line, layer, pairs);
    case 'SEQEND':
    case 'VERTEX':
    case 'ATTDEF':
    case 'ATTRIB':
      return 'nothing';
    default:
      return null;
  }
}

export function layerOf(pairs: readonly Pair[]): string {
  return textOf(pairs, 8).slice(0, longestName);
}

function insertFrom(line: number, layer: string, pairs: readonly Pair[]): ReadEntity {
  const at = pointOf(pairs);
  const face = faceOf(pairs);
  const scaleX = numberOf(pairs, 41, 1);
  const scaleY = numberOf(pairs, 42, 1);
  const turnDeg = numberOf(pairs, 50, 0);
  const columnCount = numberOf(pairs, 70, 1) || 1;
  const rowCount = numberOf(pairs, 71, 1) || 1;
  const columnStep = numberOf(pairs, 44, 0);
  const rowStep = numberOf(pairs, 45, 0);
  const isCount = (count: number) => Number.isInteger(count) && count >= 1 && count <= maxCopies;
  if (!at || !Number.isFinite(scaleX + scaleY + turnDeg + columnStep + rowStep))
    return { problem: unreadable('INSERT', line) };
  if (!isCount(columnCount) || !isCount(rowCount)) return { problem: unreadable('INSERT', line) };
  if (face === 'aslant') return { problem: slanting('INSERT', line) };
  const block = textOf(pairs, 2).slice(0, longestName);
  const copies = { columnCount, rowCount, columnStep, rowStep };
  return {
    kind: 'insert',
    layer,
    line,
    block,
    at,
    scaleX,
    scaleY,
    turnDeg,
    ...copies,
    isFaceDown: face === 'down',
  };
}

/** Seen from behind: x runs the other way, y as before. */
export const faceDown: Matrix = [-1, 0, 0, 1, 0, 0];

/** Which way a flat thing looks, by the axis that it is drawn square to. */
function faceOf(pairs: readonly Pair[]): 'up' | 'down' | 'aslant' {
  const [x, y, z] = [numberOf(pairs, 210, 0), numberOf(pairs, 220, 0), numberOf(pairs, 230, 1)];
  if (!(Math.abs(x) < 1e-6 && Math.abs(y) < 1e-6 && Math.abs(z) > 0)) return 'aslant';
  return z > 0 ? 'up' : 'down';
}

function unreadable(kind: string, line: number): Problem {
  return {
    where: say('dxf-entity.line', { line }),
    what: say('dxf-entity.begins-a-with-a-place-that', { kind }),
    fix: say('dxf-entity.it-is-left-out-mend-it'),
  };
}

function slanting(kind: string, line: number): Problem {
  return {
    where: say('dxf-entity.line', { line }),
    what: say('dxf-entity.begins-a-that-does-not-lie', { kind }),
    fix: say('dxf-entity.it-is-left-out-lay-it'),
  };
}

/** All of an entity's text (long ones come in several), letters written as \\U+00E9 and line ends read. */
function plainText(pairs: readonly Pair[]): string {
  const text = [3, 1].flatMap((code) => pairs.filter((pair) => pair.code === code)).map(({ value }) => value);
  return text
    .join('')
    .slice(0, longestText)
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\P/g, ' ')
    .trim();
}

function keyed(text: string): { key: string; value: string } {
  const colon = text.indexOf(':');
  const key = text.slice(0, colon).trim();
  return colon > 0 && key !== '' && key.length <= 40
    ? { key: key.toLowerCase(), value: text.slice(colon + 1).trim() }
    : { key: '', value: text };
}
