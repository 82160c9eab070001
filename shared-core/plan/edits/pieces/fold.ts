/** A symmetric whole piece made into a half on the fold, and a half opened flat again. */
import { givenName } from '../../../wording/given-names.ts';
import { withDecimalSign } from '../../../wording/number-signs.ts';
import { say } from '../../../wording/say.ts';
import { chainDistanceMm, chainPointAt } from '../../../geometry/chain.ts';
import { type Point, ringBox } from '../../../geometry/ring.ts';
import { ok, type Result, err } from '../../../measure/problem.ts';
import type { CoatPlan, Notch, Piece } from '../../model/coat-plan.ts';
import { withPlacesOf } from '../../geometry/edge-places.ts';
import { type Edited, notInPlan, unfitted } from '../edited.ts';
import { inEverySize } from '../every-size.ts';
import type { Edge, Outline } from '../../model/outline.ts';
import { type OutlinePart, outlineCut, placeOnPart } from '../../geometry/outline-cut.ts';
import {
  chainMirrored,
  freeName,
  type MovePoint,
  mirrorOver,
  outlineMoved,
} from '../../geometry/outline-moved.ts';
import { edgeIndexOf, edgeLengthMm, edgePoints, seamRing } from '../../geometry/outline-ring.ts';
import type { LineDirection } from '../../geometry/piece-line.ts';

/** Halves that part by less than this are taken as alike. */
export const symmetryToleranceMm = 1;

interface Refolded {
  readonly piece: Piece;
  /** What each edge became. */
  readonly becoming: ReadonlyMap<string, readonly string[]>;
  readonly lostNotchCount: number;
}

/**
 * The piece as a half on the fold, the fold in its middle along the grain (or across it). Refused where the halves
 * differ by more than symmetryToleranceMm, or have different allowances.
 */
export function foldPiece(
  plan: CoatPlan,
  pieceId: string,
  direction: LineDirection = 'along',
): Result<Edited> {
  return refold(
    plan,
    pieceId,
    (piece) => folded(piece, direction),
    (name) => say('fold.is-now-drafted-as-a-half', { name }),
  );
}

/** The whole piece of one that is drafted as a half on the fold. */
export function openPiece(plan: CoatPlan, pieceId: string): Result<Edited> {
  return refold(plan, pieceId, opened, (name) => say('fold.is-opened-flat-drafted-and-cut', { name }));
}

function refold(
  plan: CoatPlan,
  pieceId: string,
  change: (piece: Piece) => Result<Refolded>,
  saidOf: (name: string) => string,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const own = change(piece);
  if (!own.ok) return own;
  const changed = inEverySize(plan, (pieces) => {
    const each = pieces.find((candidate) => candidate.id === pieceId);
    if (!each) return ok(pieces);
    const outcome = change(each);
    if (!outcome.ok) return outcome;
    return ok(pieces.map((other) => (other === each ? outcome.value.piece : other)));
  });
  if (!changed.ok) return changed;
  const { becoming, lostNotchCount } = own.value;
  const after = withPlacesOf(plan, changed.value, pieceId, (edge) =>
    (becoming.get(edge) ?? []).map((name) => ({ pieceId, edge: name })),
  );
  const lost = lostNotchCount === 0 ? [] : [say('fold.notches-had-no-match-on-the', { lostNotchCount })];
  return ok({ plan: after, said: [saidOf(piece.name), ...lost, ...unfitted(plan, after)].join(' ') });
}

function folded(piece: Piece, direction: LineDirection): Result<Refolded> {
  if (piece.foldEdge !== null) {
    return err({
      where: piece.name,
      what: say('fold.is-on-the-fold-already'),
      fix: say('fold.open-it-flat-first-or-leave'),
    });
  }
  const box = ringBox(seamRing(piece.outline));
  const atMm = direction === 'along' ? (box.minY + box.maxY) / 2 : (box.minX + box.maxX) / 2;
  const cut = outlineCut(piece.outline, { direction, atMm }, givenName('edge', 'fold'));
  const notAlike = (what: string) =>
    err({
      where: piece.name,
      what,
      fix: say('fold.cut-it-whole-or-draw-both'),
    });
  if (cut.kind === 'not parted') return notAlike(say('fold.has-no-two-halves-beside-its'));
  const mirror: MovePoint = ({ x, y }) =>
    direction === 'along' ? { x, y: 2 * atMm - y } : { x: 2 * atMm - x, y };
  const mirrored = outlineMoved(cut.low.outline, mirror);
  const apartMm = Math.max(furthestMm(mirrored, cut.high.outline), furthestMm(cut.high.outline, mirrored));
  if (apartMm > symmetryToleranceMm) {
    return notAlike(say('fold.is-not-alike-on-both-sides', { apartMm: withDecimalSign(apartMm.toFixed(1)) }));
  }
  const kept = cut.high.outline.edges.filter((edge) => edge.name !== cut.high.cutEdge);
  const becoming = new Map<string, readonly string[]>();
  for (const edge of cut.low.outline.edges) {
    if (edge.name === cut.low.cutEdge) continue;
    const twin = nearestEdge(cut.high, mirror(middleOf(cut.low, edge.name)));
    const was = originalName(cut.low, edge.name);
    becoming.set(was, [twin]);
    const other = kept.find(({ name }) => name === twin)!;
    if (Math.abs(other.allowanceMm - edge.allowanceMm) > 0.01) {
      return err({
        where: say('fold.the-allowances-at-and-of', { edgeName: edge.name, twin, pieceName: piece.name }),
        what: say('fold.differ-and-the-fold-makes-them'),
        fix: say('fold.give-both-the-same-allowance-first'),
      });
    }
  }
  for (const edge of kept) becoming.set(originalName(cut.high, edge.name), [edge.name]);
  const notches = notchesOn(piece, cut.high);
  const lost = piece.notches.filter((notch) => {
    const onLow = placeOnPart(cut.low, notch.edge, notch.atMm);
    if (!onLow || placeOnPart(cut.high, notch.edge, notch.atMm)) return false;
    const at = mirror(pointOnEdge(cut.low, onLow));
    return !notches.some((other) => {
      const point = pointOnEdge(cut.high, other);
      return Math.hypot(point.x - at.x, point.y - at.y) <= symmetryToleranceMm;
    });
  });
  const half: Piece = {
    ...piece,
    outline: cut.high.outline,
    foldEdge: cut.high.cutEdge,
    isMirrored: false,
    notches,
  };
  return ok({ piece: half, becoming, lostNotchCount: lost.length });
}

function opened(piece: Piece): Result<Refolded> {
  const fold = piece.foldEdge;
  if (fold === null) {
    return err({
      where: piece.name,
      what: say('fold.is-not-on-the-fold'),
      fix: say('fold.choose-a-piece-that-is'),
    });
  }
  const foldIndex = edgeIndexOf(piece.outline, fold);
  const [foldFrom, foldTo] = edgePoints(piece.outline, foldIndex) as [Point, Point];
  const edges = piece.outline.edges;
  const half = [...edges.slice(foldIndex + 1), ...edges.slice(0, foldIndex)];
  const mirror = mirrorOver(foldFrom, foldTo);
  const back = chainMirrored({ start: foldTo, edges: half }, mirror).edges;
  const first = half[0]!;
  const last = half.at(-1)!;
  const taken = half.map((edge) => edge.name);
  const otherName = new Map<string, string>();
  for (const { name } of half) {
    // An edge that ends at the fold runs on over it: a hem stays one hem.
    const other =
      name === last.name || name === first.name ? name : freeName(say('fold.other', { name }), taken);
    taken.push(other);
    otherName.set(name, other);
  }
  const lengthMm = (name: string) => edgeLengthMm(piece.outline, name);
  const named = back.map((edge) => ({ ...edge, name: otherName.get(edge.name)! }));
  // From the mirror image of the first edge, which runs on into it, round to that of the second.
  const image = named.at(-1)!;
  const isOne = half.length === 1;
  const whole: Edge[] = isOne
    ? [{ ...first, segments: [...first.segments, ...image.segments] }]
    : [
        { ...first, segments: [...image.segments, ...first.segments] },
        ...half.slice(1, -1),
        { ...last, segments: [...last.segments, ...named[0]!.segments] },
        ...named.slice(1, -1),
      ];
  const start = isOne ? foldTo : mirror(first.segments.at(-1)!.to);
  const notches = piece.notches.flatMap(({ edge, atMm }): Notch[] => {
    if (edge === fold) return [];
    const own = lengthMm(edge);
    if (isOne || edge === last.name) {
      return [
        { edge, atMm },
        { edge, atMm: 2 * own - atMm },
      ];
    }
    if (edge === first.name) {
      return [
        { edge, atMm: own + atMm },
        { edge, atMm: own - atMm },
      ];
    }
    return [
      { edge, atMm },
      { edge: otherName.get(edge)!, atMm: own - atMm },
    ];
  });
  const becoming = new Map(half.map(({ name }) => [name, [...new Set([name, otherName.get(name)!])]]));
  const lostNotchCount = piece.notches.filter((notch) => notch.edge === fold).length;
  return ok({
    piece: {
      ...piece,
      outline: { start, edges: whole },
      foldEdge: null,
      notches: notches.filter(isFirstOfItsPlace),
    },
    becoming,
    lostNotchCount,
  });
}

/** A notch where the edge meets the fold is its own mirror image. */
function isFirstOfItsPlace(notch: Notch, index: number, all: readonly Notch[]): boolean {
  return (
    all.findIndex((other) => other.edge === notch.edge && Math.abs(other.atMm - notch.atMm) < 0.01) === index
  );
}

function notchesOn(piece: Piece, part: OutlinePart): Notch[] {
  return piece.notches.flatMap((notch) => {
    const place = placeOnPart(part, notch.edge, notch.atMm);
    return place ? [place] : [];
  });
}

function originalName(part: OutlinePart, name: string): string {
  return part.stretches.find((stretch) => stretch.name === name)?.of ?? name;
}

/** How far the furthest point of one outline lies from another, mm; both with their edges along the middle line. */
function furthestMm(outline: Outline, from: Outline): number {
  const chain = pointsOf(from);
  return Math.max(...pointsOf(outline).map((point) => chainDistanceMm(point, chain)));
}

function pointsOf(outline: Outline): Point[] {
  return outline.edges.flatMap((_, index) => edgePoints(outline, index));
}

function middleOf(part: OutlinePart, edgeName: string): Point {
  return pointOnEdge(part, { edge: edgeName, atMm: edgeLengthMm(part.outline, edgeName) / 2 });
}

function pointOnEdge(part: OutlinePart, place: Notch): Point {
  return chainPointAt(edgePoints(part.outline, edgeIndexOf(part.outline, place.edge), 0.01), place.atMm);
}

/** Name of the part's edge, the cut aside, that a point lies nearest to. */
function nearestEdge(part: OutlinePart, point: Point): string {
  const offs = part.outline.edges
    .map((edge, index) => ({
      name: edge.name,
      mm: chainDistanceMm(point, edgePoints(part.outline, index)),
    }))
    .filter(({ name }) => name !== part.cutEdge);
  return offs.reduce((min, one) => (one.mm < min.mm ? one : min)).name;
}
