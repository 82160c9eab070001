/**
 * The pieces of a puzzle: what is cut from one rectangle without loss fits together again corner in corner and edge
 * along edge. All lengths here are in thousandths of the width of the cloth, so that one set of tolerances serves all.
 */
import { type Ring, ringPerimeterMm } from '../../../geometry/ring.ts';
import type { Model } from '../model.ts';

/** Width of the cloth. */
export const WIDE = 1000;
/** How far what is meant to be the same may differ. */
export interface Likeness {
  /** Two lengths or places; far more than the hairs that a search loses at each piece. */
  readonly same: number;
  /** Two directions, rad. */
  readonly alike: number;
  /** Edges that bend by less run on straight, rad. */
  readonly straight: number;
  /** What strays from a straight line by less, and spikes narrower than this, are slivers. */
  readonly sliver: number;
  /** A piece is taken away with this much around it, so that no slivers stay between what touches. */
  readonly hair: number;
}

/** One after another: for outlines as they were cut, rounded to ten-thousandths of the width, and to thousandths. */
export const LIKENESSES: readonly Likeness[] = [
  { same: 0.1, alike: 0.002, straight: 0.005, sliver: 0.02, hair: 0.005 },
  { same: 1, alike: 0.02, straight: 0.04, sliver: 0.2, hair: 0.05 },
  { same: 5, alike: 0.06, straight: 0.1, sliver: 1.5, hair: 0.3 },
];

/** A corner at which a piece may be laid into a corner of the free cloth. */
export interface Corner {
  readonly form: number;
  /** From the centre of the form's box. */
  readonly x: number;
  readonly y: number;
  /** Of the edge that leaves it, rad. */
  readonly direction: number;
  /** Inside the piece, rad, under a half turn. */
  readonly angle: number;
  /** Lengths of the edges that leave it and come to it. */
  readonly after: number;
  readonly before: number;
}

/** Pieces that are interchangeable. */
export interface Kind {
  /** Which items of the model they are. */
  readonly items: readonly number[];
  readonly forms: readonly number[];
  readonly corners: readonly Corner[];
  /** Each edge of each form once. */
  readonly edges: readonly { readonly direction: number; readonly length: number }[];
  readonly area: number;
  readonly perimeter: number;
}

export interface Puzzle {
  readonly kinds: readonly Kind[];
  readonly forms: readonly PuzzleForm[];
  readonly pieceCount: number;
  /** Length of the rectangle that they fill. */
  readonly long: number;
  /** Millimetres in a unit. */
  readonly unitMm: number;
}

export interface PuzzleForm {
  readonly ring: Ring;
  readonly halfX: number;
  readonly halfY: number;
}

/** Angle from 0 to under a full turn, rad. */
export function fullTurn(angle: number): number {
  const turn = angle % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

/** How far two directions are apart, 0 to a half turn, rad. */
export function turnBetween(one: number, other: number): number {
  const turn = fullTurn(one - other);
  return Math.min(turn, 2 * Math.PI - turn);
}

/** The corners of a ring that bulge, as those of a form. */
function cornersOf(form: number, ring: Ring): Corner[] {
  const count = ring.length;
  const corners: Corner[] = [];
  for (let i = 0; i < count; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    const nextX = ring[(i + 2) % count]! - x;
    const nextY = ring[(i + 3) % count]! - y;
    const lastX = ring[(i + count - 2) % count]! - x;
    const lastY = ring[(i + count - 1) % count]! - y;
    const direction = Math.atan2(nextY, nextX);
    const angle = fullTurn(Math.atan2(lastY, lastX) - direction);
    if (angle > Math.PI - 1e-4) continue;
    const [after, before] = [Math.hypot(nextX, nextY), Math.hypot(lastX, lastY)];
    corners.push({ form, x, y, direction, angle, after, before });
  }
  return corners;
}

function edgesOf(rings: readonly Ring[]): Kind['edges'] {
  const edges = new Map<string, Kind['edges'][number]>();
  for (const ring of rings) {
    const count = ring.length;
    for (let i = 0; i < count; i += 2) {
      const dx = ring[(i + 2) % count]! - ring[i]!;
      const dy = ring[(i + 3) % count]! - ring[i + 1]!;
      edges.set(`${Math.round(dx * 1e3)} ${Math.round(dy * 1e3)}`, {
        direction: Math.atan2(dy, dx),
        length: Math.hypot(dx, dy),
      });
    }
  }
  return [...edges.values()];
}

/** The pieces of a model as those of a puzzle. */
export function puzzleOf(model: Model): Puzzle {
  const { items, widthMm, areaMm2 } = model;
  const unitMm = widthMm / WIDE;
  const forms = model.forms.map(
    ({ ring, halfX, halfY }): PuzzleForm => ({
      ring: ring.map((value) => value / unitMm),
      halfX: halfX / unitMm,
      halfY: halfY / unitMm,
    }),
  );
  const kinds = [...Map.groupBy(items.keys(), (at) => items[at]!.forms)].map(([own, which]): Kind => {
    const rings = own.map((form) => forms[form]!.ring);
    return {
      items: which,
      forms: own,
      corners: own.flatMap((form) => cornersOf(form, forms[form]!.ring)),
      edges: edgesOf(rings),
      area: items[which[0]!]!.areaMm2 / (unitMm * unitMm),
      perimeter: ringPerimeterMm(rings[0]!),
    };
  });
  return { kinds, forms, pieceCount: items.length, long: areaMm2 / (unitMm * unitMm) / WIDE, unitMm };
}

/** A counter-clockwise ring with each edge moved outwards by so much, or inwards where it is below 0. Sharp corners less. */
export function drawnOut(ring: Ring, by: number): Ring {
  const count = ring.length;
  const drawn = new Float64Array(count);
  for (let i = 0; i < count; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    const [fromX, fromY] = unit(x - ring[(i + count - 2) % count]!, y - ring[(i + count - 1) % count]!);
    const [toX, toY] = unit(ring[(i + 2) % count]! - x, ring[(i + 3) % count]! - y);
    const out = by / Math.max(0.05, 1 + fromX * toX + fromY * toY);
    drawn[i] = x + (fromY + toY) * out;
    drawn[i + 1] = y - (fromX + toX) * out;
  }
  return drawn;
}

function unit(x: number, y: number): readonly [number, number] {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}
