/**
 * Edits of a coat plan: each gives a new plan and a sentence that says what was done, or the problems that forbid it
 * with nothing changed. What changes outlines has files of its own: lengthen.ts, widen.ts, split.ts, fold.ts, grain.ts,
 * shapes.ts. Whoever shows the plan keeps the old one for undo.
 */
import { say } from '../../wording/say.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { ItemId } from '../../stash/stash.ts';
import type { CoatPlan, Slot } from '../model/coat-plan.ts';
import { type Edited, inMm, notInPlan, unfitted, withPiece } from './edited.ts';
import { pieceProblems } from '../validation/outline-problems.ts';
import { measuresAt } from './swatch.ts';
import { coatCountProblem, plyCountProblem } from '../validation/count-problems.ts';
import { quiltingSpacingProblem } from '../validation/quilting-problems.ts';

/** How many plies of a slot's cloth or batting the piece is cut in; 0: not from this slot. */
export function setPlies(plan: CoatPlan, pieceId: string, slotId: string, plyCount: number): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (!slot) return err(notInPlan('slot', slotId));
  if (slot.kind !== 'cloth' && slot.kind !== 'batting') {
    return err({
      where: slot.name,
      what: say('edit.is-neither-cloth-nor-batting'),
      fix: say('edit.choose-a-slot-that-pieces-are'),
    });
  }
  const problem = plyCountProblem(piece.name, slot.name, plyCount);
  if (problem) return err(problem);
  const has = piece.cutFrom.some((from) => from.slotId === slotId);
  const kept = piece.cutFrom
    .map((from) => (from.slotId === slotId ? { ...from, plyCount } : from))
    .filter((from) => from.slotId !== slotId || plyCount > 0);
  const cutFrom = has || plyCount === 0 ? kept : [...kept, { slotId, plyCount }];
  const said =
    plyCount === 0
      ? say('edit.is-not-cut-from', { pieceName: piece.name, slotName: slot.name })
      : say('edit.is-cut-from-in-plies', { pieceName: piece.name, slotName: slot.name, plyCount });
  return ok({ plan: withPiece(plan, { ...piece, cutFrom }), said });
}

export function setCoatCount(plan: CoatPlan, coatCount: number): Result<Edited> {
  const problem = coatCountProblem(coatCount);
  if (problem) return err(problem);
  return ok({ plan: { ...plan, coatCount }, said: `${coatCount} ${say('edit.coats', { coatCount })}.` });
}

/** Fills a slot with a stash item, or leaves it to be chosen. itemName is only for the sentence. */
export function bindSlot(
  plan: CoatPlan,
  slotId: string,
  itemId: ItemId | null,
  itemName = say('edit.an-item-of-the-stash'),
): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  const said =
    itemId === null
      ? say('edit.is-still-to-be-chosen', { slotName: sentenceCase(slot.name) })
      : say('edit.is-now', { slotName: sentenceCase(slot.name), itemName });
  return ok({ plan: withSlot(plan, { ...slot, itemId }), said });
}

/** What a plan is called, the size at hand, and the maker's own notes. */
export interface PlanHead {
  readonly name: string;
  readonly size: string;
  readonly notes: string;
}

/** A size that others stand beside keeps a name of its own. */
export function describePlan(plan: CoatPlan, typed: PlanHead): Result<Edited> {
  const head = { name: typed.name.trim(), size: typed.size.trim(), notes: typed.notes.trim() };
  if (head.name === '')
    return err({
      where: say('edit.name-of-the-plan'),
      what: say('common.is-missing'),
      fix: say('common.type-a-name'),
    });
  const others = plan.sizes ?? [];
  if (head.size === '' && others.length > 0) {
    return err({
      where: say('edit.size-of-the-plan'),
      what: say('edit.is-missing-while-other-sizes-stand'),
      fix: say('edit.type-it'),
    });
  }
  if (others.some(({ size }) => size === head.size)) {
    return err({
      where: say('edit.size', { headCount: head.size }),
      what: say('common.is-in-the-plan-already'),
      fix: say('edit.type-another'),
    });
  }
  const said = [
    ...(head.name === plan.name
      ? []
      : [say('edit.is-now-called', { planName: plan.name, headName: head.name })]),
    ...(head.size === plan.size
      ? []
      : [
          head.size === ''
            ? say('edit.its-size-is-not-named')
            : say('edit.its-size-is-now', { headCount: head.size }),
        ]),
    ...(head.notes === plan.notes ? [] : [say('edit.its-notes-were-changed')]),
  ];
  return ok({ plan: { ...plan, ...head }, said: said.join(' ') || say('edit.nothing-was-changed') });
}

/** The plan without a piece, and without what referred to it. The last piece stays. */
export function removePiece(plan: CoatPlan, pieceId: string): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (plan.pieces.length === 1) {
    return err({
      where: piece.name,
      what: say('edit.is-the-last-piece-of-the'),
      fix: say('edit.add-another-piece-first'),
    });
  }
  const others = <Place extends { readonly pieceId: string }>(places: readonly Place[]) =>
    places.filter((place) => place.pieceId !== pieceId);
  const edited: CoatPlan = {
    ...plan,
    pieces: plan.pieces.filter((candidate) => candidate !== piece),
    slots: plan.slots.map((slot) => ({ ...slot, alongEdges: others(slot.alongEdges) })),
    seams: plan.seams.map((seam) => (seam.firstSide ? { ...seam, firstSide: others(seam.firstSide) } : seam)),
  };
  return ok({
    plan: edited,
    said: [say('edit.removed', { pieceName: piece.name }), ...unfitted(plan, edited)].join(' '),
  });
}

/** Seam allowance of one edge of a piece. */
export function setAllowance(
  plan: CoatPlan,
  pieceId: string,
  edgeName: string,
  allowanceMm: number,
  text = inMm,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (!piece.outline.edges.some((edge) => edge.name === edgeName)) {
    return err({
      where: say('edit.edge', { edgeName }),
      what: say('edit.is-not-on', { pieceName: piece.name }),
      fix: say('edit.choose-one-of', { edges: piece.outline.edges.map((edge) => edge.name).join(', ') }),
    });
  }
  if (piece.foldEdge === edgeName) {
    return err({
      where: say('edit.edge-of', { edgeName, pieceName: piece.name }),
      what: say('edit.lies-on-the-fold-and-has'),
      fix: say('edit.choose-another-edge'),
    });
  }
  const edges = piece.outline.edges.map((edge) => (edge.name === edgeName ? { ...edge, allowanceMm } : edge));
  const changed = { ...piece, outline: { ...piece.outline, edges } };
  const known = new Set(pieceProblems(piece).map((problem) => problem.where));
  const problems = pieceProblems(changed).filter((problem) => !known.has(problem.where));
  if (problems.length > 0) return err(...problems);
  return ok({
    plan: withPiece(plan, changed),
    said: say('edit.allowance-at-of-is-now', { edgeName, pieceName: piece.name, text: text(allowanceMm) }),
  });
}

export function setQuiltingSpacing(plan: CoatPlan, spacingMm: number, text = inMm): Result<Edited> {
  if (plan.quilting === null) {
    return err({
      where: plan.name,
      what: say('common.is-not-quilted'),
      fix: say('common.turn-quilting-on-first'),
    });
  }
  const problem = quiltingSpacingProblem(spacingMm);
  if (problem) return err(problem);
  // A rise measured between lines further apart cannot stand between these.
  const { measures = [], ...rest } = plan.quilting;
  const kept = measuresAt(plan.quilting, spacingMm);
  const riseCount = (of: readonly { readonly riseMm: number | null }[]) =>
    of.filter(({ riseMm }) => riseMm !== null).length;
  const forgotten =
    riseCount(kept.measures ?? []) < riseCount(measures)
      ? ` ${say('edit.the-rise-measured-before-no-longer')}`
      : '';
  return ok({
    plan: { ...plan, quilting: { ...rest, ...kept, spacingMm } },
    said: say('edit.quilting-lines-are-now-apart', { text: text(spacingMm), forgotten }),
  });
}

function withSlot(plan: CoatPlan, slot: Slot): CoatPlan {
  return { ...plan, slots: plan.slots.map((candidate) => (candidate.id === slot.id ? slot : candidate)) };
}
