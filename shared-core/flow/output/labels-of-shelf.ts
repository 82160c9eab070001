/** What stands on the labels of some items: one for each lot that something is left of, or one for an item without. */
import { say } from '../../wording/say.ts';
import { dayWords } from '../../measure/calendar-date.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import type { ShelfLabel } from '../../paper/shelf-labels.ts';
import { itemCode } from '../../stash/item-code.ts';
import type { ItemKind } from '../../stash/kinds.ts';
import type { Item, ItemOnShelf, LotOnShelf } from '../../stash/stash.ts';

export interface LabelWords {
  readonly system: MeasureSystem;
  /** "14.4 m": an amount in the kind's unit. */
  readonly amountText: (kind: ItemKind, amount: number) => string;
}

/** In the order given; lots oldest first. */
export function labelsOfShelf(shelf: readonly ItemOnShelf[], words: LabelWords): readonly ShelfLabel[] {
  return shelf.flatMap(({ item, lots }) => {
    const left = lots.filter(({ onHand }) => onHand > 0);
    return left.length === 0 ? [label(item, null, words)] : left.map((lot) => label(item, lot, words));
  });
}

function label(item: Item, lot: LotOnShelf | null, words: LabelWords): ShelfLabel {
  return {
    name: item.name,
    colour: item.colour,
    lines: [
      sizeWords(item, lot, words.system),
      lot
        ? [
            lot.dyeLot === '' ? '' : say('labels-of-shelf.lot', { dyeLot: lot.dyeLot }),
            dayWords(lot.receivedOn),
          ]
            .filter(Boolean)
            .join(', ')
        : '',
      lot
        ? say('labels-of-shelf.left', { amountText: words.amountText(item.kind, lot.onHand) })
        : say('labels-of-shelf.none-left'),
      lot?.supplier ?? '',
    ].filter((line) => line !== ''),
    code: itemCode(item.id),
  };
}

/** "147 cm, 62 g/m²"; widths as the lengths of the lot have them. */
function sizeWords(item: Item, lot: LotOnShelf | null, system: MeasureSystem): string {
  if (item.kind !== 'cloth' && item.kind !== 'batting') return '';
  const { widthMm, arealMassGPerM2 } = item.facts;
  const widths = lot?.lengths.filter(({ onHandMm }) => onHandMm > 0).map((length) => length.widthMm) ?? [];
  const different = [...new Set(widths.length > 0 ? widths : widthMm === null ? [] : [widthMm])];
  const show = (mm: number) => showQuantity('length', mm, { system, unit: { metric: 'cm', imperial: 'in' } });
  const width =
    different.length > 1
      ? say('labels-of-shelf.to', { show: show(Math.min(...different)), show2: show(Math.max(...different)) })
      : different.map(show).join('');
  const weight = arealMassGPerM2 === null ? '' : showQuantity('arealMass', arealMassGPerM2, { system });
  return [width, weight].filter(Boolean).join(', ');
}
