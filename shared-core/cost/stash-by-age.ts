/** What lies on the shelf is worth, by how long ago it was received and by kind. */
import { say } from '../wording/say.ts';
import { type StackedBars, stackedBars } from '../measure/bars.ts';
import { monthsAfter } from '../measure/calendar-date.ts';
import { type ItemKind, itemKinds, kindRecords } from '../stash/kinds.ts';
import type { ItemId } from '../stash/stash.ts';
import { movementValues, type PricedLot, type PricedMovement } from './valuation.ts';

/** Up to so many months since the purchase, and beyond the last. */
export const ageMonths = [3, 6, 12, 24] as const;

export interface AgeSources {
  readonly items: readonly { readonly id: ItemId; readonly kind: ItemKind }[];
  readonly lots: readonly (PricedLot & { readonly itemId: ItemId; readonly receivedOn: string })[];
  /** Whole histories of the lots, in the order they were written. */
  readonly movements: readonly PricedMovement[];
  /** ISO date. */
  readonly today: string;
}

/**
 * A bar for each band of age, youngest first, of parts by kind in the order of kinds; kinds of which nothing lies there
 * are left out. By the rule of valuation.ts, so all bars together are what the account has on hand.
 */
export function stashByAge({ items, lots, movements, today }: AgeSources): StackedBars {
  const kindOf = new Map(items.map(({ id, kind }) => [id, kind]));
  const lotValues = new Map<string, number>();
  const values = movementValues(lots, movements);
  movements.forEach(({ lotId }, index) => {
    lotValues.set(lotId, (lotValues.get(lotId) ?? 0) + (values[index] ?? 0));
  });
  const bands = [...ageMonths, null].map((months) => ({ months, amounts: new Map<string, number>() }));
  for (const { id, itemId, receivedOn } of lots) {
    const valueMinor = lotValues.get(id) ?? 0;
    const kind = kindOf.get(itemId);
    if (valueMinor === 0 || !kind) continue;
    const { amounts } = bands.find(
      ({ months }) => months === null || today <= monthsAfter(receivedOn, months),
    )!;
    amounts.set(kind, (amounts.get(kind) ?? 0) + valueMinor);
  }
  return stackedBars(
    itemKinds
      .filter((kind) => bands.some(({ amounts }) => amounts.has(kind)))
      .map((kind) => ({ key: kind, label: kindRecords[kind].label })),
    bands.map(({ months, amounts }) => ({
      key: String(months ?? 'older'),
      label: months === null ? say('stash-by-age.older') : say('stash-by-age.up-to-months', { months }),
      amounts,
    })),
  );
}
