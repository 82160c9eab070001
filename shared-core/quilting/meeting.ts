/** Whether the lines of quilted pieces meet where a seam joins them, and how far they part where they cannot. */
import { chainLengthMm } from '../geometry/curve.ts';
import type { Point } from '../geometry/ring.ts';
import type { CoatPlan } from '../plan/coat-plan.ts';
import type { EdgePlace } from '../plan/outline.ts';
import { type SeamReport, seamWalk } from '../plan/seam-walk.ts';
import { quiltingMap, type SeamSide, seamSides } from './map.ts';

/** Lines that miss each other by less than this are taken as meeting. */
export const meetingToleranceMm = 1;

/** Two ends of one line at a seam: where it reaches each edge, mm along the edge from its lower end. */
export interface Crossing {
  readonly aMm: number;
  readonly bMm: number;
  readonly gapMm: number;
}

export interface SeamMeeting {
  readonly seamId: string;
  readonly label: string;
  readonly a: { readonly pieceId: string; readonly edge: string };
  readonly b: { readonly pieceId: string; readonly edge: string };
  readonly crossings: readonly Crossing[];
  /** Lines that reach one edge and have no partner on the other. */
  readonly unmatchedCount: number;
  readonly largestGapMm: number;
  readonly meets: boolean;
  /** In words, without measures. */
  readonly says: string;
}

/** Every pair of quilted edges that a seam of the plan joins, in the order of the seams. */
export function meetingReport(plan: CoatPlan): readonly SeamMeeting[] {
  if (plan.quilting === null) return [];
  const places = new Map(
    quiltingMap(plan).map((piece) => [piece.pieceId, piece.lines.map((line) => line.atMm)]),
  );
  return seamWalk(plan).flatMap((walked) =>
    pairsOf(walked, seamSides(plan, walked.seamId)).map(([a, b]) =>
      meetingOf({ id: walked.seamId, label: walked.label }, a, b, places),
    ),
  );
}

function meetingOf(
  seam: { readonly id: string; readonly label: string },
  a: SeamSide,
  b: SeamSide,
  places: ReadonlyMap<string, readonly number[]>,
): SeamMeeting {
  const onA = crossingsMm(a, places.get(a.piece.id) ?? []);
  const onB = crossingsMm(b, places.get(b.piece.id) ?? []);
  const crossings = onA.slice(0, onB.length).map((aMm, index) => {
    const bMm = onB[index]!;
    return { aMm, bMm, gapMm: Math.abs(aMm - bMm) };
  });
  const largestGapMm = crossings.reduce((largest, { gapMm }) => Math.max(largest, gapMm), 0);
  const unmatchedCount = Math.abs(onA.length - onB.length);
  const runsSameWay = a.piece.quilted === b.piece.quilted;
  const meets = runsSameWay && unmatchedCount === 0 && largestGapMm <= meetingToleranceMm;
  return {
    seamId: seam.id,
    label: seam.label,
    a: { pieceId: a.piece.id, edge: a.edgeName },
    b: { pieceId: b.piece.id, edge: b.edgeName },
    crossings,
    unmatchedCount,
    largestGapMm,
    meets,
    says: wordsFor(seam.label, { runsSameWay, meets, crossings, unmatchedCount }),
  };
}

function wordsFor(
  label: string,
  found: {
    readonly runsSameWay: boolean;
    readonly meets: boolean;
    readonly crossings: readonly Crossing[];
    readonly unmatchedCount: number;
  },
): string {
  if (!found.runsSameWay) return `${label}: the lines run different ways on the two pieces and cannot meet.`;
  if (found.crossings.length === 0 && found.unmatchedCount === 0)
    return `${label}: no line reaches this seam.`;
  if (found.meets) return `${label}: the lines meet.`;
  const first = found.crossings[0];
  if (first && first.gapMm <= meetingToleranceMm) {
    return `${label}: the lines meet at the lower end and part further up, as the two edges slant or curve differently.`;
  }
  return `${label}: the lines do not meet, as the two edges slant or curve differently.`;
}

/**
 * Which quilted edges lie on each other. Where one edge takes several (a sleeve head between front and back armhole),
 * the first lies along its one end and the second along the other. A seam sewn by itself joins nothing.
 */
function pairsOf(walked: SeamReport, sides: readonly SeamSide[]): readonly (readonly [SeamSide, SeamSide])[] {
  const quiltedOf = (edges: readonly EdgePlace[]) =>
    sides.filter((side) =>
      edges.some((edge) => edge.pieceId === side.piece.id && edge.edge === side.edgeName),
    );
  const first = quiltedOf(walked.first);
  const second = quiltedOf(walked.second);
  if (walked.sides === 'mirror') return first.map((side) => [side, side] as const);
  const [few, many] = first.length <= second.length ? [first, second] : [second, first];
  const [taking] = few;
  const [only] = many;
  if (!taking || !only) return [];
  if (many.length === 1) return [[taking, only]];
  return many.map((side, index) => {
    const fromOtherEnd = index % 2 === 1 && taking.piece.foldEdge === null;
    const points = fromOtherEnd ? [...taking.points].reverse() : taking.points;
    return [side, { ...taking, points: firstStretch(points, chainLengthMm(side.points)) }] as const;
  });
}

/** The first stretch of a chain, up to the point beyond lengthMm. */
function firstStretch(points: readonly Point[], lengthMm: number): readonly Point[] {
  const kept: Point[] = [points[0]!];
  let soFar = 0;
  for (let i = 1; i < points.length && soFar < lengthMm; i++) {
    const from = points[i - 1]!;
    const to = points[i]!;
    const step = Math.hypot(to.x - from.x, to.y - from.y);
    const share = step === 0 ? 1 : Math.min(1, (lengthMm - soFar) / step);
    kept.push({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
    soFar += step;
  }
  return kept;
}

/** Where lines reach an edge, mm along it from its lower end, rising. */
function crossingsMm(side: SeamSide, linesAtMm: readonly number[]): number[] {
  const across = side.piece.quilted !== 'along';
  const found: number[] = [];
  let soFar = 0;
  for (let i = 1; i < side.points.length; i++) {
    const from = side.points[i - 1]!;
    const to = side.points[i]!;
    const step = Math.hypot(to.x - from.x, to.y - from.y);
    const low = across ? from.x : from.y;
    const high = across ? to.x : to.y;
    for (const atMm of linesAtMm) {
      if (low < atMm === high < atMm) continue;
      found.push(soFar + (step * (atMm - low)) / (high - low));
    }
    soFar += step;
  }
  return found.sort((one, other) => one - other);
}
