import { describe, expect, it } from 'vitest';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { lay } from '../../../shared-core/lay/lay.ts';
import { endlessLength, layJob } from '../../../shared-core/lay/plan-lay.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';

const workshop = demoWorkshop();
const plan = workshop.plans[0]!;
const items = new Map(
  plan.slots.flatMap((slot) => {
    const item = workshop.items.find((candidate) => candidate.id === slot.itemId);
    return item ? [[slot.id, item] as const] : [];
  }),
);

describe('the six coats of the demo on the cloth', () => {
  const shapesNeeds = requirement(plan, items).filter((need) => need.kind === 'shapes');

  it.each(shapesNeeds.map((need) => [need.slotId, need] as const))(
    '%s: every piece lies, and a stranger agrees',
    (_, need) => {
      const item = items.get(need.slotId)!;
      const widthMm = item.kind === 'cloth' || item.kind === 'batting' ? item.facts.widthMm! : 0;
      const job = layJob(need, [endlessLength('endless', widthMm, item)], plan.clearanceMm, item, 1);
      const result = lay(job, { seconds: null, iterations: 1500 }, { clock: () => 0 });
      expect(checkLay(job, result)).toEqual([]);
      const asked = need.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
      expect(result.placements).toHaveLength(asked);
      if (need.slotId === 'shell') expect(result.utilisation).toBeGreaterThanOrEqual(0.7);
    },
  );
});
