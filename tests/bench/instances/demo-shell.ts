/** The shell of the demo coat, for that many coats, on cloth of 1450 mm. */
import type { LayJob } from '../../../shared-core/lay/job.ts';
import { endlessLength, layJob } from '../../../shared-core/lay/plan-lay.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { measuredDemo } from './demo-plan.ts';

export function shellJob(coatCount: number, seed: number): LayJob {
  const demo = measuredDemo();
  const plan = { ...demo.plan, coatCount };
  const items = new Map(
    plan.slots.flatMap((slot) => {
      const item = demo.items.find((one) => one.id === slot.itemId);
      return item === undefined ? [] : [[slot.id, item] as const];
    }),
  );
  const need = requirement(plan, items).find((one) => one.kind === 'shapes' && one.slotId === 'shell');
  if (need?.kind !== 'shapes') throw new Error('the demo coat has no shell to cut');
  return layJob(need, [endlessLength('roll', 1450, undefined)], plan.clearanceMm, undefined, seed);
}
