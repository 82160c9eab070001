/**
 * The margin for safety of a slot: what is held ready beyond what the coats take, for a slip of the blade. One rule
 * holds for whatever is cut, weighed or counted:
 * - A need is what the coats take. The margin stands beside it and is never in it: it is not cut, is in no finished
 *   coat's mass, and is no cost of the batch.
 * - It goes once on what is still to be cut, the length of a lay or an amount, for all sizes together. So a share
 *   shrinks with each cutting, a length stays whole, and both fall away with the last cut. Nap, repeat, shrinkage and
 *   take-up are in that figure already and are not counted again.
 * - What the stash has of it is held back: set aside with what is cut, and kept from other slots and from later plans
 *   of a season. Of cloth it lies on the lengths that are cut; of what is weighed or counted it may lie in any lot, and
 *   what other slots of the plan take goes before it.
 * - What the stash lacks of it is short and is bought. That is money to be paid, but what is bought for it goes to the
 *   stash at its price, as what is held back stays there.
 */
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { Counted } from '../../stash/kinds.ts';
import type { CoatPlan, Margin } from './coat-plan.ts';
import { type Edited, inMm, type LengthText, notInPlan } from '../edits/edited.ts';

/** More would be a slip of the hand: as much again as the coats take, or ten metres. */
export const maxMarginRatio = 1;
export const maxMarginMm = 10_000;

/** Margin beside a length of cloth or batting that is to be cut, mm; where nothing is to be cut, none. */
export function marginOfLength(margin: Margin | undefined, lengthMm: number): number {
  if (margin === undefined || lengthMm <= 0) return 0;
  return margin.kind === 'share' ? lengthMm * margin.ratio : margin.lengthMm;
}

/**
 * Margin beside an amount that is weighed or counted, in its unit; pieces are whole. Always a share of it, since a
 * length of it means nothing.
 */
export function marginOfAmount(margin: Margin | undefined, amount: number, counted: Counted): number {
  if (margin?.kind !== 'share') return 0;
  const exact = amount * margin.ratio;
  return counted === 'pieces' ? Math.ceil(exact - 1e-9) : exact;
}

/** "5 %" or "200 mm". */
export function marginWords(margin: Margin, text: LengthText = inMm): string {
  return margin.kind === 'share'
    ? `${withDecimalSign(String(Number((margin.ratio * 100).toFixed(2))))} %`
    : text(margin.lengthMm);
}

/** Gives a slot a margin; null takes it away. A length is for what is cut from cloth or batting alone. */
export function setMargin(
  plan: CoatPlan,
  slotId: string,
  margin: Margin | null,
  text: LengthText = inMm,
): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  const where = say('margin.margin-of-the', { slotName: slot.name });
  const isCut = slot.kind === 'cloth' || slot.kind === 'batting';
  if (margin?.kind === 'length' && !isCut) {
    return err({
      where,
      what: say('margin.is-a-length-and-this-slot'),
      fix: say('margin.type-a-share-such-as-5'),
    });
  }
  const size = margin === null ? 0 : margin.kind === 'share' ? margin.ratio : margin.lengthMm;
  const max = margin?.kind === 'length' ? maxMarginMm : maxMarginRatio;
  if (!(size >= 0 && size <= max)) {
    return err({
      where,
      what: say('margin.is-not-from-0-to-as'),
      fix: say('margin.type-a-share-up-to-100', { ifCut: isCut ? 'yes' : 'no' }),
    });
  }
  const { margin: _, ...bare } = slot;
  const next = margin === null || size === 0 ? bare : { ...bare, margin };
  const said =
    margin === null || size === 0
      ? say('margin.no-margin-for-the', { slotName: slot.name })
      : say('margin.a-margin-of-for-the', { marginWords: marginWords(margin, text), slotName: slot.name });
  const slots = plan.slots.map((each) => (each.id === slotId ? next : each));
  return ok({ plan: { ...plan, slots }, said });
}
