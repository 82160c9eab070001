/** What stands in the form of a count or a write-off, and where on the shelf it can be made. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { amountText, amountUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { quantityText, type Units } from '../../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../../parts/forms/typed-form.ts';
import { lengthText, lotText } from '../items/item-words.ts';

export type TakeWay = 'write off' | 'count';

export interface TakePlace {
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly onHand: number;
  /** Of that: set aside for coats. */
  readonly reserved: number;
  readonly label: string;
}

export interface TypedTaking {
  /** Number of the place in its list. */
  place: string;
  amount: string;
  reason: string;
}

export interface ReadTaking extends Pick<TypedTaking, 'place' | 'reason'> {
  readonly amount: number | null;
}

export function takenAmount(way: TakeWay, { item }: ItemOnShelf): QuantityAsked {
  return {
    label: way === 'count' ? say('typed-taking.counted') : say('common.amount'),
    quantity: countedQuantity(kindRecords[item.kind].counted),
    unit: amountUnit(item.kind),
    aboveZero: way === 'write off',
  };
}

export function takeForm(way: TakeWay, shelf: ItemOnShelf, units: Units): FormShape<TypedTaking, ReadTaking> {
  const schema = z.object({
    place: z.string(),
    amount: quantityText(takenAmount(way, shelf), units),
    reason: z.string(),
  });
  const reason = way === 'count' ? say('typed-taking.counted-on-the-shelf') : '';
  return { start: { place: '0', amount: '', reason }, schema: () => schema };
}

/** A count may find something where nothing was booked; nothing can be taken from there. */
export function takePlaces(way: TakeWay, shelf: ItemOnShelf, system: MeasureSystem): TakePlace[] {
  const places = shelf.lots.flatMap((lot): TakePlace[] =>
    kindRecords[shelf.item.kind].hasLengths
      ? lot.lengths.map((length) => ({
          lotId: lot.id,
          lengthId: length.id,
          onHand: length.onHandMm,
          reserved: length.reservedMm,
          label: say('typed-taking.lot-of', {
            lengthText: lengthText(length, shelf.item, system),
            lotText: lotText(lot),
          }),
        }))
      : [
          {
            lotId: lot.id,
            lengthId: null,
            onHand: lot.onHand,
            reserved: lot.reserved,
            label: say('typed-taking.lot-of-2', {
              amountText: amountText(shelf.item.kind, lot.onHand, system),
              lotText: lotText(lot),
            }),
          },
        ],
  );
  return places.filter((place) => way === 'count' || place.onHand > 0);
}
