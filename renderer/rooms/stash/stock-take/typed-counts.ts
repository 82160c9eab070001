/** What stands in the form of a stock-take: a count for each place, empty where none was counted. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item, ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { amountUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { quantityText, readNow, type Units } from '../../../parts/forms/quantity-text.ts';
import { type CountPlace, countPlaces } from './count-places.ts';

export interface TypedCounts {
  /** By the key of the place; absent or '' where it was not counted. */
  counts: Record<string, string>;
  reason: string;
}

export const nothingCounted: TypedCounts = { counts: {}, reason: say('typed-counts.stock-take') };

/** A place with the item that lies there. */
export interface PlaceOfItem {
  readonly place: CountPlace;
  readonly item: Item;
}

export interface Counted extends PlaceOfItem {
  readonly value: number;
}

export interface ReadCounts {
  readonly counted: readonly Counted[];
  readonly reason: string;
}

export function placesOf(shelves: readonly ItemOnShelf[], system: MeasureSystem): readonly PlaceOfItem[] {
  return shelves.flatMap((shelf) => countPlaces(shelf, system).map((place) => ({ place, item: shelf.item })));
}

export function countAsked({ place, item }: PlaceOfItem): QuantityAsked {
  return {
    label: place.label,
    quantity: countedQuantity(kindRecords[item.kind].counted),
    unit: amountUnit(item.kind),
  };
}

/** What was counted as it stands while it is typed; what cannot be read yet is not counted yet. */
export function countedNow(
  places: readonly PlaceOfItem[],
  { counts }: Pick<TypedCounts, 'counts'>,
  units: Units,
): readonly Counted[] {
  return places.flatMap((each) => {
    const value = readNow(countAsked(each), units, counts[each.place.key] ?? '');
    return value === null ? [] : [{ ...each, value }];
  });
}

/** Reads the counts of the places that are shown. */
export function countsSchema(
  places: readonly PlaceOfItem[],
  units: Units,
): z.ZodType<ReadCounts, TypedCounts> {
  const asked = places.map((each) => [
    each.place.key,
    z.preprocess((text) => text ?? '', quantityText(countAsked(each), units)),
  ]);
  const counts: z.ZodType<Record<string, number | null>, TypedCounts['counts']> = z.object(
    Object.fromEntries(asked),
  ) as never;
  return z.object({ counts, reason: z.string() }).transform(
    (read): ReadCounts => ({
      reason: read.reason,
      counted: places.flatMap((each) => {
        const value = read.counts[each.place.key] ?? null;
        return value === null ? [] : [{ ...each, value }];
      }),
    }),
  );
}

export function countsCall({ counted, reason }: ReadCounts): CallInput<'takeStock'> {
  return {
    reason: reason.trim(),
    counts: counted.map(({ place, value }) => ({
      lotId: place.lotId,
      lengthId: place.lengthId,
      counted: value,
    })),
  };
}
