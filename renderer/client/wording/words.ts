/** Figures in words, one place for each kind of sentence that two rooms say. */
import type { Counted } from '../../../shared-core/stash/kinds.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';

/** The quantity in which amounts of a kind are shown. */
export function countedQuantity(counted: Counted): QuantityKind {
  switch (counted) {
    case 'length':
      return 'length';
    case 'mass':
      return 'mass';
    case 'thread':
      return 'threadLength';
    case 'pieces':
      return 'count';
    default:
      return counted satisfies never;
  }
}
