/**
 * Quilting lines on one piece, in the piece's own frame: lines across stand at x = constant, lines along at
 * y = constant, at an even spacing from an origin, clipped to the seam line of the whole piece (opened at its fold).
 */
import { type Ring, ringAreaMm2, ringBox } from '../geometry/ring.ts';
import { remembered } from '../geometry/remembered.ts';
import { pieceById, type CoatPlan, type Piece, type Quilting } from '../plan/model/coat-plan.ts';
import { cutRing } from '../plan/geometry/outline-ring.ts';

/** A line nearer than this to the piece's first or last point is that edge itself and is not sewn. */
const edgeMarginMm = 0.5;

export interface QuiltingLine {
  /** Place of the line, mm: x for lines across, y for lines along. */
  readonly atMm: number;
  /** Stretches of the line inside the piece, from and to in mm along the line. */
  readonly spans: readonly (readonly [number, number])[];
  readonly lengthMm: number;
}

/** The strip between two neighbouring lines, or between a line and the end of the piece. */
export interface Channel {
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  /** Area over width: the length of an even channel of that area. */
  readonly lengthMm: number;
  readonly areaMm2: number;
}

export interface PieceLines {
  readonly lines: readonly QuiltingLine[];
  readonly channels: readonly Channel[];
  /** All lines of one copy of the piece. */
  readonly stitchingMm: number;
}

/** Seam line of the whole piece, opened flat where it is drafted to a fold. */
export const wholeSeamRing = remembered((piece: Piece): Ring => {
  const edges = piece.outline.edges.map((edge) => ({ ...edge, allowanceMm: 0 }));
  return cutRing({ start: piece.outline.start, edges }, piece.foldEdge);
});

/**
 * Lines at originMm + k x spacingMm for every whole k that fall inside the ring, and the channels between them.
 * direction: the way the lines run. Throws when the spacing is not above 0.
 */
export function ringLines(
  ring: Ring,
  direction: 'across' | 'along',
  spacingMm: number,
  originMm: number,
): PieceLines {
  if (!(spacingMm > 0)) throw new RangeError(`quilting lines ${spacingMm} mm apart`);
  const turned = direction === 'across' ? ring : swapped(ring);
  const box = ringBox(turned);
  const first = Math.ceil((box.minX + edgeMarginMm - originMm) / spacingMm);
  const last = Math.floor((box.maxX - edgeMarginMm - originMm) / spacingMm);
  const lines: QuiltingLine[] = [];
  for (let k = first; k <= last; k++) {
    const atMm = originMm + k * spacingMm;
    const spans = spansAt(turned, atMm);
    lines.push({ atMm, spans, lengthMm: spans.reduce((sum, [from, to]) => sum + to - from, 0) });
  }
  const bounds = [box.minX, ...lines.map((line) => line.atMm), box.maxX];
  const channels = bounds.slice(1).map((toMm, index) => {
    const fromMm = bounds[index]!;
    const areaMm2 = stripAreaMm2(turned, fromMm, toMm);
    return { fromMm, toMm, widthMm: toMm - fromMm, lengthMm: areaMm2 / (toMm - fromMm), areaMm2 };
  });
  return { lines, channels, stitchingMm: lines.reduce((sum, line) => sum + line.lengthMm, 0) };
}

/** Length of lines at those places inside a ring, however near its edge they are. */
export function lengthInsideMm(
  ring: Ring,
  direction: 'across' | 'along',
  placesMm: readonly number[],
): number {
  const turned = direction === 'across' ? ring : swapped(ring);
  return placesMm.flatMap((atMm) => spansAt(turned, atMm)).reduce((sum, [from, to]) => sum + to - from, 0);
}

/** True where the plan quilts the piece. */
export function isPieceQuilted(plan: CoatPlan, piece: Piece): boolean {
  return plan.quilting !== null && piece.quilted !== null;
}

/** How far apart the lines of a piece are: by its own choice, else the plan's. */
export function lineSpacingMm(quilting: Quilting, piece: Piece): number {
  return piece.quiltingSpacingMm ?? quilting.spacingMm;
}

/** Lines of one piece of the plan from an origin in its own frame; none when the piece is not quilted. */
export function quiltingLines(plan: CoatPlan, pieceId: string, originMm: number): PieceLines {
  const piece = pieceById(plan, pieceId);
  if (plan.quilting === null || piece.quilted === null) return { lines: [], channels: [], stitchingMm: 0 };
  return ringLines(wholeSeamRing(piece), piece.quilted, lineSpacingMm(plan.quilting, piece), originMm);
}

/** x and y changed for each other, still counter-clockwise. */
function swapped(ring: Ring): Ring {
  const result = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const from = ring.length - 2 - i;
    result[i] = ring[from + 1]!;
    result[i + 1] = ring[from]!;
  }
  return result;
}

/** Stretches of the line x = atMm inside the ring, in falling or rising order of the ring's crossings. */
function spansAt(ring: Ring, atMm: number): (readonly [number, number])[] {
  const crossings: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const x0 = ring[i]!;
    const x1 = ring[next]!;
    // A point on the line counts as beyond it, so that a corner is met once or twice, never by accident.
    if (x0 < atMm === x1 < atMm) continue;
    const t = (atMm - x0) / (x1 - x0);
    crossings.push(ring[i + 1]! + (ring[next + 1]! - ring[i + 1]!) * t);
  }
  crossings.sort((a, b) => a - b);
  const spans: (readonly [number, number])[] = [];
  for (let i = 1; i < crossings.length; i += 2) {
    if (crossings[i]! > crossings[i - 1]!) spans.push([crossings[i - 1]!, crossings[i]!]);
  }
  return spans;
}

/** Area of the ring between two lines across. Cut by half planes: bridges along a cut have no area. */
function stripAreaMm2(ring: Ring, fromMm: number, toMm: number): number {
  const kept = cutAt(cutAt(ring, fromMm, 1), toMm, -1);
  return Math.max(0, ringAreaMm2(Float64Array.from(kept)));
}

/** The part of a ring with side x (x - atMm) at or above 0. */
function cutAt(ring: ArrayLike<number>, atMm: number, side: 1 | -1): number[] {
  const kept: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const x0 = ring[i]!;
    const y0 = ring[i + 1]!;
    const x1 = ring[next]!;
    const y1 = ring[next + 1]!;
    const inside0 = side * (x0 - atMm) >= 0;
    const inside1 = side * (x1 - atMm) >= 0;
    if (inside0) kept.push(x0, y0);
    if (inside0 !== inside1) kept.push(atMm, y0 + ((y1 - y0) * (atMm - x0)) / (x1 - x0));
  }
  return kept;
}
