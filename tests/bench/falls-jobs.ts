/** The lays that are measured for how much they still fall: slots of the demo coat and of drafted coats, for one coat and more. */
import type { LayJob } from '../../shared-core/lay/job.ts';
import { endlessLength, layJob } from '../../shared-core/lay/plan-lay.ts';
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';
import { requirement } from '../../shared-core/requirement/requirement.ts';
import type { Item } from '../../shared-core/stash/stash.ts';
import { draftedSizes } from '../fixtures/drafted-sizes.ts';
import { asMeasured, measuredDemo } from './instances/demo-plan.ts';

export interface MeasuredJob {
  readonly name: string;
  readonly pieces: number;
  readonly job: LayJob;
}

export function piecesOf(job: LayJob): number {
  return job.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
}

function slotJobs(
  plan: CoatPlan,
  called: string,
  items: readonly Item[],
  widthMm: number,
  slotIds: readonly string[],
): MeasuredJob[] {
  const bound = new Map(
    plan.slots.flatMap((slot) => {
      const item = items.find((one) => one.id === slot.itemId);
      return item === undefined ? [] : [[slot.id, item] as const];
    }),
  );
  return requirement(plan, bound).flatMap((need) => {
    if (need.kind !== 'shapes' || !slotIds.includes(need.slotId)) return [];
    const job = layJob(need, [endlessLength('roll', widthMm, undefined)], plan.clearanceMm, undefined, 1);
    return [{ name: `${called}, ${need.slotId}`, pieces: piecesOf(job), job }];
  });
}

/** In an order in which a part of them is a fair choice too. */
export function measuredJobs(): MeasuredJob[] {
  const demo = measuredDemo();
  const coats = (coatCount: number, widthMm: number, slotIds: readonly string[]) =>
    slotJobs({ ...demo.plan, coatCount }, `${coatCount} of the demo coat`, demo.items, widthMm, slotIds);
  const drafted = (sizeCount: number, widthMm: number, slotIds: readonly string[]) =>
    slotJobs(asMeasured(draftedSizes(sizeCount), 0), `drafted in ${sizeCount} sizes`, [], widthMm, slotIds);
  return [
    ...coats(1, 1450, ['shell', 'batting', 'body-lining']),
    ...coats(2, 1450, ['shell', 'sleeve-lining']),
    ...coats(6, 1450, ['shell', 'body-lining']),
    ...drafted(1, 1400, ['shell', 'body-lining']),
    ...coats(8, 1450, ['batting']),
    ...drafted(3, 1500, ['shell']),
    ...coats(2, 1100, ['batting']),
    // From here on more of the same.
    ...coats(1, 1100, ['shell', 'batting', 'pocketing']),
    ...coats(2, 1500, ['body-lining', 'batting']),
    ...coats(6, 1100, ['batting', 'sleeve-lining']),
    ...coats(8, 1500, ['shell', 'body-lining']),
    ...drafted(1, 1150, ['shell', 'sleeve-lining']),
    ...drafted(3, 1400, ['body-lining', 'sleeve-lining']),
    ...drafted(6, 1500, ['shell']),
  ];
}
