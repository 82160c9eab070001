/** Whether the lines of quilted pieces meet where a seam joins them, and how far they part where they cannot. */
import type { CoatPlan } from '../plan/coat-plan.ts';
import { type SeamReport, seamWalk } from '../plan/seam-walk.ts';
import { lineOrigins, lowestOf, quiltedSides, quiltingMap, type SeamSide } from './map.ts';

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
  /** Line by line along the seam, or at its lowest point alone where several edges meet (the underarm). */
  readonly where: 'whole' | 'lowest point';
  readonly crossings: readonly Crossing[];
  /** Lines that reach one edge and have no partner on the other. */
  readonly unmatchedCount: number;
  readonly largestGapMm: number;
  readonly meets: boolean;
  /** In words, without measures. */
  readonly says: string;
}

/** Every seam of the plan that joins quilted pieces, in the order of the seams. */
export function meetingReport(plan: CoatPlan): readonly SeamMeeting[] {
  if (plan.quilting === null) return [];
  const { spacingMm } = plan.quilting;
  const origins = lineOrigins(plan);
  const places = new Map(
    quiltingMap(plan).map((piece) => [piece.pieceId, piece.lines.map((line) => line.atMm)]),
  );
  return seamWalk(plan).flatMap((walked) => {
    const { first, second } = quiltedSides(plan, walked);
    const [a] = first;
    const b = walked.sides === 'mirror' ? a : second[0];
    if (!a || !b) return [];
    const isPair = first.length === 1 && walked.first.length === 1 && walked.second.length <= 1;
    return [
      isPair ? edgeMeeting(walked, a, b, places) : lowestMeeting(walked, first, second, origins, spacingMm),
    ];
  });
}

type Places = ReadonlyMap<string, readonly number[]>;

/** One edge against one edge (or its mirror image), line by line from the lower end. */
function edgeMeeting(seam: SeamReport, a: SeamSide, b: SeamSide, places: Places): SeamMeeting {
  const onA = crossingsMm(a, places.get(a.piece.id) ?? []);
  const onB = crossingsMm(b, places.get(b.piece.id) ?? []);
  const crossings = onA.slice(0, onB.length).map((aMm, index) => crossing(aMm, onB[index]!));
  return meetingOf(seam, a, b, crossings, Math.abs(onA.length - onB.length), 'whole');
}

/**
 * Several edges against several, as a sleeve in an armhole: lines turn a corner there and meet at the lowest point
 * alone, if the next line stands equally far above it on both sides.
 */
function lowestMeeting(
  seam: SeamReport,
  first: readonly SeamSide[],
  second: readonly SeamSide[],
  origins: ReadonlyMap<string, number>,
  spacingMm: number,
): SeamMeeting {
  const a = lowestSide(first, origins);
  const b = lowestSide(second, origins);
  const aboveMm = (heightMm: number) => ((-heightMm % spacingMm) + spacingMm) % spacingMm;
  const met = crossing(aboveMm(a.heightMm), aboveMm(b.heightMm));
  // Just under a line and just over one are neighbours too.
  const gapMm = Math.min(met.gapMm, spacingMm - met.gapMm);
  return meetingOf(seam, a.side, b.side, [{ ...met, gapMm }], 0, 'lowest point');
}

/** The edge that comes lowest, with the height of that point over the origin of the lines. */
function lowestSide(
  sides: readonly SeamSide[],
  origins: ReadonlyMap<string, number>,
): { side: SeamSide; heightMm: number } {
  return sides
    .map((side) => ({ side, heightMm: lowestOf(side).x - origins.get(side.piece.id)! }))
    .reduce((lowest, one) => (one.heightMm < lowest.heightMm ? one : lowest));
}

function crossing(aMm: number, bMm: number): Crossing {
  return { aMm, bMm, gapMm: Math.abs(aMm - bMm) };
}

function meetingOf(
  seam: SeamReport,
  a: SeamSide,
  b: SeamSide,
  crossings: readonly Crossing[],
  unmatchedCount: number,
  where: 'whole' | 'lowest point',
): SeamMeeting {
  const largestGapMm = crossings.reduce((largest, { gapMm }) => Math.max(largest, gapMm), 0);
  const runsSameWay = a.piece.quilted === b.piece.quilted;
  const meets = runsSameWay && unmatchedCount === 0 && largestGapMm <= meetingToleranceMm;
  return {
    seamId: seam.seamId,
    label: seam.label,
    a: { pieceId: a.piece.id, edge: a.edgeName },
    b: { pieceId: b.piece.id, edge: b.edgeName },
    where,
    crossings,
    unmatchedCount,
    largestGapMm,
    meets,
    says: wordsFor(seam.label, { where, runsSameWay, meets, crossings, unmatchedCount }),
  };
}

function wordsFor(
  label: string,
  found: {
    readonly where: 'whole' | 'lowest point';
    readonly runsSameWay: boolean;
    readonly meets: boolean;
    readonly crossings: readonly Crossing[];
    readonly unmatchedCount: number;
  },
): string {
  if (!found.runsSameWay) return `${label}: the lines run different ways on the two pieces and cannot meet.`;
  if (found.crossings.length === 0 && found.unmatchedCount === 0)
    return `${label}: no line reaches this seam.`;
  if (found.where === 'lowest point') {
    return found.meets
      ? `${label}: the lines meet at the underarm.`
      : `${label}: the lines do not meet at the underarm.`;
  }
  if (found.meets) return `${label}: the lines meet.`;
  const first = found.crossings[0];
  if (first && first.gapMm <= meetingToleranceMm) {
    return `${label}: the lines meet at the lower end and part further up, as the two edges slant or curve differently.`;
  }
  return `${label}: the lines do not meet, as the two edges slant or curve differently.`;
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
