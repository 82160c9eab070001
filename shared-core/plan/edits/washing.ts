/** When the cloth or batting of a slot has its first wash, where it shrinks: before it is cut, or as a part of the coat. */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { type Edited, notInPlan } from './edited.ts';

/** Washed before cutting is the usual; only the other choice is kept in the plan. */
export function setWashing(plan: CoatPlan, slotId: string, isBeforeCutting: boolean): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  if (slot.kind !== 'cloth' && slot.kind !== 'batting') {
    return err({
      where: say('washing.wash-of-the', { slotName: slot.name }),
      what: say('washing.means-nothing-since-it-is-not'),
      fix: say('washing.choose-a-slot-of-cloth-or'),
    });
  }
  const { isCutUnwashed: _, ...bare } = slot;
  const next = isBeforeCutting ? bare : { ...bare, isCutUnwashed: true as const };
  const said = isBeforeCutting
    ? say('washing.the-is-washed-before-it-is', { slotName: slot.name })
    : say('washing.the-is-cut-unwashed-its-pieces', { slotName: slot.name });
  return ok({
    plan: { ...plan, slots: plan.slots.map((each) => (each.id === slotId ? next : each)) },
    said,
  });
}
