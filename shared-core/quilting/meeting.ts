/** Whether the lines of quilted pieces meet where a seam joins them, and how far they part where they cannot. */
import { say } from '../wording/say.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import { type SeamReport, seamWalk } from '../plan/geometry/seam-walk.ts';
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
  const origins = lineOrigins(plan);
  const lines: Lines = new Map(
    quiltingMap(plan).map(({ pieceId, spacingMm, lines: each }) => [
      pieceId,
      { spacingMm, atMm: each.map((line) => line.atMm) },
    ]),
  );
  return seamWalk(plan).flatMap((walked) => {
    const { first, second } = quiltedSides(plan, walked);
    const [a] = first;
    const b = walked.sides === 'mirror' ? a : second[0];
    if (!a || !b) return [];
    const isPair = first.length === 1 && walked.first.length === 1 && walked.second.length <= 1;
    return [isPair ? edgeMeeting(walked, a, b, lines) : lowestMeeting(walked, first, second, origins, lines)];
  });
}

type Lines = ReadonlyMap<string, { readonly spacingMm: number; readonly atMm: readonly number[] }>;

/** One edge against one edge (or its mirror image), line by line from the lower end. */
function edgeMeeting(seam: SeamReport, a: SeamSide, b: SeamSide, lines: Lines): SeamMeeting {
  const onA = crossingsMm(a, lines.get(a.piece.id)!.atMm);
  const onB = crossingsMm(b, lines.get(b.piece.id)!.atMm);
  const isNearerOn = nearerSide(a, b, lines);
  // Lines that are as far apart go one by one; where they are nearer on one side, the others look for their nearest.
  const crossings =
    isNearerOn === null
      ? onA.slice(0, onB.length).map((aMm, index) => crossing(aMm, onB[index]!))
      : isNearerOn === 'a'
        ? onB.flatMap((bMm) => (onA.length === 0 ? [] : [crossing(nearestMm(onA, bMm), bMm)]))
        : onA.flatMap((aMm) => (onB.length === 0 ? [] : [crossing(aMm, nearestMm(onB, aMm))]));
  const unmatchedCount = Math.max(onA.length, onB.length) - crossings.length;
  return meetingOf(seam, a, b, crossings, unmatchedCount, 'whole', isNearerOn);
}

/** Whose lines are nearer to each other; null where they are as far apart. */
function nearerSide(a: SeamSide, b: SeamSide, lines: Lines): 'a' | 'b' | null {
  const onA = lines.get(a.piece.id)!.spacingMm;
  const onB = lines.get(b.piece.id)!.spacingMm;
  return Math.abs(onA - onB) < 0.01 ? null : onA < onB ? 'a' : 'b';
}

function nearestMm(placesMm: readonly number[], toMm: number): number {
  return placesMm.reduce((best, mm) => (Math.abs(mm - toMm) < Math.abs(best - toMm) ? mm : best));
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
  lines: Lines,
): SeamMeeting {
  const a = lowestSide(first, origins);
  const b = lowestSide(second, origins);
  const spacingMm = ({ side }: { side: SeamSide }) => lines.get(side.piece.id)!.spacingMm;
  const aboveMm = (heightMm: number, apartMm: number) => ((-heightMm % apartMm) + apartMm) % apartMm;
  const met = crossing(aboveMm(a.heightMm, spacingMm(a)), aboveMm(b.heightMm, spacingMm(b)));
  // Just under a line and just over one are neighbours too.
  const gapMm = Math.min(met.gapMm, Math.max(spacingMm(a), spacingMm(b)) - met.gapMm);
  return meetingOf(
    seam,
    a.side,
    b.side,
    [{ ...met, gapMm }],
    0,
    'lowest point',
    nearerSide(a.side, b.side, lines),
  );
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
  isNearerOn: 'a' | 'b' | null,
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
    says: wordsFor(seam.label, {
      where,
      runsSameWay,
      meets,
      crossings,
      unmatchedCount,
      largestGapMm,
      nearer: isNearerOn === null ? null : (isNearerOn === 'a' ? a : b).piece.name,
    }),
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
    readonly largestGapMm: number;
    /** Name of the piece whose lines are nearer to each other, or null. */
    readonly nearer: string | null;
  },
): string {
  if (!found.runsSameWay) return say('meeting.the-lines-run-different-ways-on', { label });
  if (found.crossings.length === 0 && found.unmatchedCount === 0)
    return say('meeting.no-line-reaches-this-seam', { label });
  if (found.where === 'lowest point') {
    return found.meets
      ? say('meeting.the-lines-meet-at-the-underarm', { label })
      : say('meeting.the-lines-do-not-meet-at', { label });
  }
  if (found.meets) return say('meeting.the-lines-meet', { label });
  if (found.nearer !== null) {
    return found.largestGapMm <= meetingToleranceMm
      ? say('meeting.the-lines-of-are-nearer-to', { label, nearer: found.nearer })
      : say('meeting.the-lines-of-are-nearer-to-2', { label, nearer: found.nearer });
  }
  const first = found.crossings[0];
  if (first && first.gapMm <= meetingToleranceMm) {
    return say('meeting.the-lines-meet-at-the-lower', { label });
  }
  return say('meeting.the-lines-do-not-meet-as', { label });
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
