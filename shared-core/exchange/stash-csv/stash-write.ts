/** The stash as a file for a spreadsheet: what is on the shelf, and the items of which nothing is there. */
import { inEnglish, say } from '../../wording/say.ts';
import Papa from 'papaparse';
import { factFields, kindRecords } from '../../stash/kinds.ts';
import { type ItemOnShelf, type LengthOnShelf, type LotOnShelf, toMilli } from '../../stash/stash.ts';
import { withoutControls } from '../../measure/text/plain-signs.ts';
import { plainMoney } from '../../measure/money/money.ts';
import { textCell } from '../../measure/text/cell-text.ts';
import { factCell, flawsCell, numberCell } from './stash-cells.ts';
import { amountUnits, stashColumns } from './stash-columns.ts';

type Cells = Record<string, string>;

/** Comma-separated. Lots and lengths that are used up are left out. */
export function writeStash(shelves: readonly ItemOnShelf[], currency: string): string {
  const columns = stashColumns(currency);
  const lines = shelves.flatMap((shelf) => {
    const lots = shelf.lots.filter((lot) => lot.onHand > 0 || lot.reserved > 0);
    if (lots.length === 0) return [itemCells(shelf)];
    return lots.flatMap((lot) => lotLines(shelf, lot, currency));
  });
  const data = lines.map((cells) => columns.map(({ key }) => cells[key] ?? ''));
  const fields = columns.map(({ heading }) => heading);
  // A file from before may hold signs in its texts that would make this one no text at all.
  return `${withoutControls(Papa.unparse({ fields, data }, { newline: '\r\n' }))}\r\n`;
}

function itemCells({ item }: ItemOnShelf): Cells {
  const facts = item.facts as Readonly<Record<string, unknown>>;
  return {
    kind: inEnglish(() => kindRecords[item.kind].label),
    name: textCell(item.name),
    colour: textCell(item.colour),
    place: textCell(item.place),
    notes: textCell(item.notes),
    unit: amountUnits[kindRecords[item.kind].counted],
    itemId: textCell(item.id),
    ...Object.fromEntries(factFields(item.kind).map(([name, field]) => [name, factCell(field, facts[name])])),
  };
}

function lotLines(shelf: ItemOnShelf, lot: LotOnShelf, currency: string): Cells[] {
  const cells: Cells = {
    ...itemCells(shelf),
    receivedOn: lot.receivedOn,
    supplier: textCell(lot.supplier),
    dyeLot: textCell(lot.dyeLot),
    price: plainMoney(lot.priceMinor, currency),
    received: numberCell(lot.receivedMilli / 1000),
    // Without a reason a reader would take it for a slip.
    reason: toMilli(lot.onHand) > lot.receivedMilli ? say('stash-write.counted-more-than-was-received') : '',
    lotId: textCell(lot.id),
  };
  if (!kindRecords[shelf.item.kind].hasLengths) {
    return [{ ...cells, onHand: numberCell(lot.onHand) }];
  }
  const kept = lot.lengths.filter((length) => length.onHandMm > 0 || length.reservedMm > 0);
  return kept.map((length) => ({ ...cells, ...lengthCells(length) }));
}

function lengthCells(length: LengthOnShelf): Cells {
  return {
    onHand: numberCell(length.onHandMm),
    lengthWidth: numberCell(length.widthMm),
    lengthForm: length.form,
    worthRatio: length.worthRatio === undefined ? '' : numberCell(length.worthRatio),
    washed: length.isWashed ? 'yes' : '',
    flaws: flawsCell(length.flaws),
    lengthId: textCell(length.id),
  };
}
