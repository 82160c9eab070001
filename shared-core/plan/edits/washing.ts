/** When the cloth or batting of a slot has its first wash, where it shrinks: before it is cut, or as a part of the coat. */
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { type Edited, notInPlan } from './edited.ts';

/** Washed before cutting is the usual; only the other choice is kept in the plan. */
export function setWashing(plan: CoatPlan, slotId: string, isBeforeCutting: boolean): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  if (slot.kind !== 'cloth' && slot.kind !== 'batting') {
    return err({
      where: `Wash of the ${slot.name}`,
      what: 'means nothing, since it is not cut from cloth or batting',
      fix: 'Choose a slot of cloth or batting.',
    });
  }
  const { isCutUnwashed: _, ...bare } = slot;
  const next = isBeforeCutting ? bare : { ...bare, isCutUnwashed: true as const };
  const said = isBeforeCutting
    ? `The ${slot.name} is washed before it is cut.`
    : `The ${slot.name} is cut unwashed, its pieces larger.`;
  return ok({
    plan: { ...plan, slots: plan.slots.map((each) => (each.id === slotId ? next : each)) },
    said,
  });
}
