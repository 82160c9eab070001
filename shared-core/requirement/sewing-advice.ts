/** All advice on a plan and its materials, in the order of the work. */
import { howText } from '../measure/basis.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { Advice } from './advice.ts';
import { battingAdvice } from './fill/batting-advice.ts';
import { clothAdvice } from './cut/cloth-advice.ts';
import { fillAdvice } from './fill/fill-advice.ts';
import type { SlotItems } from './need.ts';
import { needleAdvice } from './thread/needle-advice.ts';
import { seamBulkAdvice } from './thread/seam-bulk.ts';

export function sewingAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  return [
    ...clothAdvice(plan, items),
    ...battingAdvice(plan, items),
    ...fillAdvice(plan, items),
    ...seamBulkAdvice(plan, items),
    ...needleAdvice(plan, items),
  ];
}

/** "What is wrong. What mends it.", with measures in the maker's units. */
export function adviceText({ says, fix }: Advice, system: MeasureSystem): string {
  return howText(`${says} ${fix}`, system);
}
