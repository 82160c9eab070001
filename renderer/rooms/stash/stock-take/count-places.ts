/** Every place of an item that can be counted: each of its lengths, or each lot where it has none. */
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { formWords, lotText, widthText } from '../items/item-words.ts';

export interface CountPlace {
  readonly key: string;
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly onHand: number;
  readonly label: string;
}

export function countPlaces(shelf: ItemOnShelf, system: MeasureSystem): CountPlace[] {
  return shelf.lots.flatMap((lot): CountPlace[] => {
    if (!kindRecords[shelf.item.kind].hasLengths) {
      const { id: lotId, onHand } = lot;
      return [{ key: lotId, lotId, lengthId: null, onHand, label: `Lot of ${lotText(lot)}` }];
    }
    return lot.lengths.map((length) => ({
      key: length.id,
      lotId: lot.id,
      lengthId: length.id,
      onHand: length.onHandMm,
      label: `${formWords[length.form]}, ${widthText(length.widthMm, system)} wide${length.isWashed ? ', washed' : ''}, ${lotText(lot)}`,
    }));
  });
}
