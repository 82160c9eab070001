/**
 * A style in several sizes: the plan's own pieces are the size at hand; others wait beside it with pieces and a number
 * of coats of their own. What is cut from a slot is laid for all of them in one lay.
 */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { CoatPlan, Piece, PlanSize } from './coat-plan.ts';
import { coatCountProblem } from '../validation/count-problems.ts';
import { listed } from '../../wording/listed.ts';
import { pieceWithEdgesRenamed } from '../edits/edge-names.ts';
import { isSameGivenName } from '../../wording/given-names.ts';
import type { Edited } from '../edits/edited.ts';

/** The plan once for each size that is made of it, the size at hand first; none of them holds further sizes. */
export function plansBySize(plan: CoatPlan): readonly CoatPlan[] {
  const { sizes, ...own } = plan;
  const { measured: _, ...style } = own;
  const others = (sizes ?? []).filter((size) => size.coatCount > 0);
  return [own, ...others.map((size) => ({ ...style, ...size }))];
}

/** All coats of the batch, whatever their size. */
export function coatTotal(plan: CoatPlan): number {
  return plansBySize(plan).reduce((sum, each) => sum + each.coatCount, 0);
}

const sizeMark = ' @ ';

/**
 * Id of a piece of one size among the shapes of one lay; pieces of the size at hand keep theirs. It changes with the
 * size at hand, so nothing that outlives the lay is known by it.
 */
export function sizedPieceId(plan: CoatPlan, size: string, pieceId: string): string {
  return size === plan.size ? pieceId : `${pieceId}${sizeMark}${size}`;
}

/** Begins the id of a quilted panel among the shapes of a lay, in every language; the names of its pieces follow. */
const panelMark = 'panel of ';

/** "panel of Back and Front", and the number where there are several. */
export function panelId(pieceNames: readonly string[], number: number): string {
  const named =
    pieceNames.length > 3
      ? [...pieceNames.slice(0, 2), say('sizes.more', { pieceNamesCount: pieceNames.length - 2 })]
      : pieceNames;
  return `${panelMark}${listed(named)}${number > 1 ? ` (${number})` : ''}`;
}

/** "Panel of Back and Front", as it is shown. */
export function panelName(id: string): string {
  return sentenceCase(say('sizes.panel-of', { names: id.slice(panelMark.length) }));
}

/**
 * Name of a piece of any size by its id in a lay: "Back", or "Back, 42" for a size beside the one at hand; "Panel of
 * Back and Front" for one that pieces are cut from after quilting.
 */
export function sizedPieceName(plan: CoatPlan, sizedId: string): string {
  if (sizedId.startsWith(panelMark)) return panelName(sizedId);
  const own = plan.pieces.find((piece) => piece.id === sizedId);
  if (own) return own.name;
  for (const { size, pieces } of plan.sizes ?? []) {
    const piece = pieces.find((candidate) => sizedPieceId(plan, size, candidate.id) === sizedId);
    if (piece) return `${piece.name}, ${size}`;
  }
  throw new RangeError(`plan ${plan.name} has no piece ${sizedId}`);
}

/** Another size from a plan of the same style: its pieces must be cut from slots that this plan has. */
export function addSize(plan: CoatPlan, from: CoatPlan, coatCount: number): Result<Edited> {
  const count = coatCountProblem(coatCount);
  if (count) return err(count);
  const size = from.size.trim();
  if (size === '') {
    return err({
      where: say('sizes.the-plan', { fromName: from.name }),
      what: say('sizes.names-no-size'),
      fix: say('sizes.give-it-a-size-in-its'),
    });
  }
  if (size === plan.size || (plan.sizes ?? []).some((each) => each.size === size)) {
    return err({
      where: say('sizes.size', { size }),
      what: say('common.is-in-the-plan-already'),
      fix: say('sizes.change-its-number-of-coats-instead'),
    });
  }
  const strange = missingSlots(plan, from.pieces);
  if (strange.length > 0) {
    return err({
      where: say('sizes.the-plan', { fromName: from.name }),
      what: say('sizes.is-cut-from-slots-that-does', { planName: plan.name, strange: strange.join(', ') }),
      fix: say('sizes.choose-a-plan-of-the-same'),
    });
  }
  const added: PlanSize = { size, coatCount, pieces: from.pieces.map((piece) => namedAsIn(plan, piece)) };
  return ok({
    plan: { ...plan, sizes: [...(plan.sizes ?? []), added] },
    said: say('sizes.size-added-coats', { size, coatCount }),
  });
}

/** A piece that was made in another language than the plan's, with the names that the plan has for it and its edges. */
function namedAsIn(plan: CoatPlan, piece: Piece): Piece {
  const own = plan.pieces.find(({ id }) => id === piece.id);
  if (!own) return piece;
  const edges = own.outline.edges.map(({ name }) => name);
  const renamed = pieceWithEdgesRenamed(
    piece,
    (edge) => edges.find((name) => isSameGivenName('edge', name, edge)) ?? edge,
  );
  return isSameGivenName('piece', own.name, piece.name) ? { ...renamed, name: own.name } : renamed;
}

/** How many coats of a size beside the one at hand; 0 keeps the size and makes none of it. */
export function setSizeCount(plan: CoatPlan, size: string, coatCount: number): Result<Edited> {
  const problem = coatCount === 0 ? null : coatCountProblem(coatCount);
  if (problem) return err(problem);
  if (!plan.sizes?.some((each) => each.size === size)) return err(unknownSize(size));
  return ok({
    plan: { ...plan, sizes: plan.sizes.map((each) => (each.size === size ? { ...each, coatCount } : each)) },
    said: say('sizes.size-2', {
      size,
      coatCount: coatCount === 0 ? say('sizes.none-is-made') : say('sizes.coats', { coatCount }),
    }),
  });
}

export function removeSize(plan: CoatPlan, size: string): Result<Edited> {
  if (!plan.sizes?.some((each) => each.size === size)) return err(unknownSize(size));
  return ok({
    plan: { ...plan, sizes: plan.sizes.filter((each) => each.size !== size) },
    said: say('sizes.size-taken-out', { size }),
  });
}

/**
 * Brings a size to hand, so that its pieces are the ones seen and changed; the one that was waits in its place. A size
 * of which none was made is made instead of the other.
 */
export function chooseSize(plan: CoatPlan, size: string): Result<Edited> {
  const chosen = plan.sizes?.find((each) => each.size === size);
  if (!chosen || !plan.sizes) return err(unknownSize(size));
  const isInstead = chosen.coatCount === 0;
  const { measured, ...style } = plan;
  const waiting: PlanSize = {
    size: plan.size,
    coatCount: isInstead ? 0 : plan.coatCount,
    pieces: plan.pieces,
    ...(measured && { measured }),
  };
  return ok({
    plan: {
      ...style,
      ...chosen,
      coatCount: isInstead ? plan.coatCount : chosen.coatCount,
      sizes: plan.sizes.map((each) => (each.size === size ? waiting : each)),
    },
    said: isInstead
      ? say('sizes.size-is-made-in-place-of', {
          size,
          planCount:
            plan.size === '' ? say('sizes.the-one-at-hand') : say('sizes.size-3', { planCount: plan.size }),
        })
      : say('sizes.size-is-at-hand', { size }),
  });
}

function missingSlots(plan: CoatPlan, pieces: readonly Piece[]): string[] {
  const known = new Set(plan.slots.map((slot) => slot.id));
  return [...new Set(pieces.flatMap((piece) => piece.cutFrom.map((from) => from.slotId)))].filter(
    (slotId) => !known.has(slotId),
  );
}

function unknownSize(size: string) {
  return {
    where: say('sizes.size', { size }),
    what: say('common.is-not-in-the-plan'),
    fix: say('sizes.choose-one-of-its-sizes'),
  };
}
