/** Offers as the price list that price-list.ts reads: what is written comes back the same. */
import Papa from 'papaparse';
import { plainMoney } from '../measure/money.ts';
import type { Offer, SellingUnit } from '../stash/offer.ts';
import type { Item } from '../stash/stash.ts';

/** One line an offer, of items that are given; texts that a spreadsheet would run as a formula are kept as text. */
export function priceListCsv(
  items: readonly Pick<Item, 'id' | 'name'>[],
  offers: readonly Offer[],
  currency: string,
): string {
  const names = new Map(items.map(({ id, name }) => [id, name]));
  const rows = offers.flatMap((offer) => {
    const name = names.get(offer.itemId);
    if (name === undefined) return [];
    return [
      {
        supplier: offer.supplier,
        item: name,
        'sold as': offer.unit.kind,
        ...unitCells(offer.unit),
        'at least (cm, g or units)': leastCell(offer),
        [`price (${currency})`]: plainMoney(offer.priceMinor),
        'priced on': offer.pricedOn,
        breaks: (offer.breaks ?? [])
          .map(
            ({ fromCount, priceMinor }) => `${amountCell(offer.unit, fromCount)} = ${plainMoney(priceMinor)}`,
          )
          .join('; '),
      },
    ];
  });
  const heads = [
    'supplier',
    'item',
    'sold as',
    'step or length (cm)',
    'width (cm)',
    'thread (m)',
    'mass (g)',
    'pieces',
    'at least (cm, g or units)',
    `price (${currency})`,
    'priced on',
    'breaks',
  ];
  return Papa.unparse(
    { fields: heads, data: rows.map((row) => heads.map((head) => cellOf(row, head))) },
    {
      escapeFormulae: true,
    },
  );
}

function cellOf(row: Readonly<Record<string, string | undefined>>, head: string): string {
  return row[head] ?? '';
}

function unitCells(unit: SellingUnit): Record<string, string> {
  switch (unit.kind) {
    case 'by length':
      return { 'step or length (cm)': cmCell(unit.stepMm), 'width (cm)': cmCell(unit.widthMm) };
    case 'sheet':
      return { 'step or length (cm)': cmCell(unit.lengthMm), 'width (cm)': cmCell(unit.widthMm) };
    case 'spool':
      return { 'thread (m)': String(unit.threadM) };
    case 'by mass':
      return { 'mass (g)': String(unit.stepG) };
    case 'pack':
      return { pieces: String(unit.pieceCount) };
    case 'each':
      return unit.lengthMm === null ? {} : { 'step or length (cm)': cmCell(unit.lengthMm) };
    default:
      return unit satisfies never;
  }
}

function leastCell({ unit, leastCount }: Offer): string {
  if (unit.kind === 'by length') return unit.leastMm > 0 ? cmCell(unit.leastMm) : '';
  if (unit.kind === 'by mass') return unit.leastG > 0 ? String(unit.leastG) : '';
  return leastCount === undefined ? '' : String(leastCount);
}

/** Units in what the list measures them in: centimetres, grams or a number. */
function amountCell(unit: SellingUnit, count: number): string {
  if (unit.kind === 'by length') return `${cmCell(count * unit.stepMm)} cm`;
  if (unit.kind === 'by mass') return `${count * unit.stepG} g`;
  return String(count);
}

/** Millimetres as centimetres without a float's dust. */
function cmCell(mm: number): string {
  return String(Number((mm / 10).toFixed(6)));
}
