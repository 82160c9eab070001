/**
 * The margin for safety of a slot: what is held ready beyond what the coats take, for a slip of the blade.
 * It is put on the finished figure once, the length of a lay or an amount; nap, repeat, shrinkage and take-up are
 * in that figure already and are not counted again.
 */
import { found, type Outcome, refused } from '../measure/problem.ts';
import type { CoatPlan, Margin } from './coat-plan.ts';
import { type Edited, inMm, type LengthText, notInPlan } from './edited.ts';

/** More would be a slip of the hand: as much again as the coats take, or ten metres. */
export const mostMarginRatio = 1;
export const mostMarginMm = 10_000;

/** What is added to a length of cloth or batting, mm. */
export function marginOfLength(margin: Margin | undefined, lengthMm: number): number {
  if (margin === undefined) return 0;
  return margin.kind === 'share' ? lengthMm * margin.ratio : margin.lengthMm;
}

/** What is added to an amount that is not cut: a share of it, since a length of it means nothing. */
export function marginOfAmount(margin: Margin | undefined, amount: number): number {
  return margin?.kind === 'share' ? amount * margin.ratio : 0;
}

/** "5 %" or "200 mm". */
export function marginWords(margin: Margin, text: LengthText = inMm): string {
  return margin.kind === 'share' ? `${Number((margin.ratio * 100).toFixed(2))} %` : text(margin.lengthMm);
}

/** Gives a slot a margin; null takes it away. A length is for what is cut from cloth or batting alone. */
export function setMargin(
  plan: CoatPlan,
  slotId: string,
  margin: Margin | null,
  text: LengthText = inMm,
): Outcome<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return refused(notInPlan('slot', slotId));
  const where = `Margin of the ${slot.name}`;
  const isCut = slot.kind === 'cloth' || slot.kind === 'batting';
  if (margin?.kind === 'length' && !isCut) {
    return refused({
      where,
      what: 'is a length, and this slot is not cut to a length',
      mend: 'Type a share, such as 5 %.',
    });
  }
  const size = margin === null ? 0 : margin.kind === 'share' ? margin.ratio : margin.lengthMm;
  const most = margin?.kind === 'length' ? mostMarginMm : mostMarginRatio;
  if (!(size >= 0 && size <= most)) {
    return refused({
      where,
      what: 'is not from 0 to as much again',
      mend: `Type a share up to 100 %${isCut ? ', or a length up to 10 m' : ''}.`,
    });
  }
  const { margin: _, ...bare } = slot;
  const next = margin === null || size === 0 ? bare : { ...bare, margin };
  const said =
    margin === null || size === 0
      ? `No margin for the ${slot.name}.`
      : `A margin of ${marginWords(margin, text)} for the ${slot.name}.`;
  const slots = plan.slots.map((each) => (each.id === slotId ? next : each));
  return found({ plan: { ...plan, slots }, said });
}
