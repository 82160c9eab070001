/** What the finished coat is, of the open coat: it reads plan and materials alone, so it need not wait for a lay. */
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { type Finished, finished } from '../../../shared-core/requirement/finished/finished-coat.ts';

/** Worked out once for each state of plan and shelf, however many parts of the screen ask. */
const known = new WeakMap<FlowInput, Finished>();

export function finishedOf(input: FlowInput): Finished {
  const before = known.get(input);
  if (before) return before;
  const found = finished(input.plan, slotItems(input));
  known.set(input, found);
  return found;
}
