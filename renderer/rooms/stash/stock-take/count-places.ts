/** Every place of an item that can be counted: each of its lengths, or each lot where it has none. */
import { say } from '../../../../shared-core/wording/say.ts';
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
      return [
        {
          key: lotId,
          lotId,
          lengthId: null,
          onHand,
          label: say('count-places.lot-of', { lotText: lotText(lot) }),
        },
      ];
    }
    return lot.lengths.map((length) => ({
      key: length.id,
      lotId: lot.id,
      lengthId: length.id,
      onHand: length.onHandMm,
      label: say('count-places.wide', {
        formWords: formWords[length.form],
        widthText: widthText(length.widthMm, system),
        ifWashed: length.isWashed ? 'yes' : 'no',
        lotText: lotText(lot),
      }),
    }));
  });
}
