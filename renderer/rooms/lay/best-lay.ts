/** The best lay known for a slot at this moment: the estimate's own, or a better one that is just being found. */
import { useMemo } from 'react';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { type SlotLay, totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import { useCoatValue } from '../../client/coat/coat-context.ts';

/** Jobs are made anew with each pass; two that ask the same have the same key. */
const keys = new WeakMap<LayJob, string>();

export function jobKey(job: LayJob): string {
  const known = keys.get(job);
  if (known) return known;
  const key = JSON.stringify([
    job.clearanceMm,
    job.lengths.map((length) => [length.id, length.widthMm, length.lengthMm, length.flaws.length]),
    job.shapes.map((shape) => [
      shape.id,
      shape.count,
      shape.mirroredCount,
      shape.turnsDeg,
      shape.ring.reduce((sum, value, index) => sum + value * (index + 1), 0),
    ]),
  ]);
  keys.set(job, key);
  return key;
}

/** slotLay with the live result where that is shorter. The job stays the estimate's, so indices agree. */
export function bestLay(slotLay: SlotLay, live: ReadonlyMap<LayJob, LayResult>): SlotLay {
  if (live.size === 0) return slotLay;
  const key = jobKey(slotLay.job);
  let best = slotLay.result;
  for (const [job, result] of live) {
    const isShorter = totalUsedMm(result) < totalUsedMm(best);
    if (isShorter && result.unplaced.length <= best.unplaced.length && jobKey(job) === key) best = result;
  }
  return best === slotLay.result ? slotLay : { ...slotLay, result: best };
}

/** The best lay of the open coat for this slot; what is found for another slot changes nothing here. */
export function useBestLay(slotLay: SlotLay): SlotLay {
  const result = useCoatValue(({ live }) => bestLay(slotLay, live).result);
  return useMemo(() => (result === slotLay.result ? slotLay : { ...slotLay, result }), [slotLay, result]);
}
