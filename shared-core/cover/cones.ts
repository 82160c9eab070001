/** Spools of thread that a machine wants at once, against those on the shelf. */
import type { AmountNeed } from '../requirement/need.ts';
import type { ItemOnShelf } from '../stash/stash.ts';

/**
 * Spools that are missing for the machine that runs most of them at once. What is left of a lot lies on as many spools
 * as it can fill, begun ones with them, so more may be there than are counted; 0 where a spool's length is not known.
 */
export function conesMissing({ amount, coneCount = 0 }: AmountNeed, { item, lots }: ItemOnShelf): number {
  if (item.kind !== 'thread' || item.facts.spoolM === null || coneCount < 2 || amount <= 0) return 0;
  const spoolM = item.facts.spoolM;
  const spoolCount = lots.reduce((sum, { onHand }) => sum + Math.ceil(onHand / spoolM - 1e-9), 0);
  return Math.max(0, coneCount - spoolCount);
}
