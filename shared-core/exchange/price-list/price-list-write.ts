/** Offers as the price list that price-list.ts reads: read into the same workshop, it says nothing new. */
import { inEnglish } from '../../wording/say.ts';
import Papa from 'papaparse';
import { oneLine } from '../../measure/text/plain-signs.ts';
import { plainMoney } from '../../measure/money/money.ts';
import type { Offer, SellingUnit } from '../../stash/offer.ts';
import { kindRecords } from '../../stash/kinds.ts';
import type { Item } from '../../stash/stash.ts';
import { minHead } from './price-list-heads.ts';
import { minAmount, unitAmount } from './price-list-offer.ts';
import { textCell } from '../../measure/text/cell-text.ts';

/** One line an offer, of items that are given; texts that a spreadsheet would run as a formula are kept as text. */
export function priceListCsv(
  items: readonly Pick<Item, 'id' | 'kind' | 'name' | 'colour'>[],
  offers: readonly Offer[],
  currency: string,
): string {
  const byId = new Map(items.map((item) => [item.id, item]));
  const rows = offers.flatMap((offer) => {
    const item = byId.get(offer.itemId);
    if (!item) return [];
    return [
      {
        supplier: textCell(oneLine(offer.supplier)),
        kind: inEnglish(() => kindRecords[item.kind].label),
        item: textCell(oneLine(item.name)),
        colour: textCell(oneLine(item.colour)),
        'sold as': offer.unit.kind,
        ...unitCells(offer.unit),
        [minHead]: minCell(offer),
        [`price (${currency})`]: plainMoney(offer.priceMinor, currency),
        'priced on': offer.pricedOn,
        breaks: (offer.breaks ?? [])
          .map(
            ({ fromCount, priceMinor }) =>
              `${amountCell(offer.unit, fromCount)} = ${plainMoney(priceMinor, currency)}`,
          )
          .join('; '),
      },
    ];
  });
  const heads = [
    'supplier',
    'kind',
    'item',
    'colour',
    'sold as',
    'step or length (cm)',
    'width (cm)',
    'thread (m)',
    'mass (g)',
    'pieces',
    minHead,
    `price (${currency})`,
    'priced on',
    'breaks',
  ];
  return Papa.unparse({ fields: heads, data: rows.map((row) => heads.map((head) => cellOf(row, head))) });
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
      return { 'thread (m)': numberCell(unit.threadM) };
    case 'by mass':
      return { 'mass (g)': numberCell(unit.stepG) };
    case 'pack':
      return { pieces: String(unit.pieceCount) };
    case 'each':
      return unit.lengthMm === null ? {} : { 'step or length (cm)': cmCell(unit.lengthMm) };
    default:
      return unit satisfies never;
  }
}

function minCell(offer: Offer): string {
  const min = minAmount(offer);
  if (min <= unitAmount(offer.unit)) return '';
  return offer.unit.kind === 'by length' ? cmCell(min) : numberCell(min);
}

/** Units in what the list measures them in: centimetres, grams or a number. */
function amountCell(unit: SellingUnit, count: number): string {
  if (unit.kind === 'by length') return `${cmCell(count * unit.stepMm)} cm`;
  if (unit.kind === 'by mass') return `${numberCell(count * unit.stepG)} g`;
  return String(count);
}

function cmCell(mm: number): string {
  return numberCell(mm / 10);
}

/** Twelve figures without a power of ten, and no more places than a field reads: a float's dust is left out. */
function numberCell(value: number): string {
  const places = Math.min(15, Math.max(0, 11 - Math.floor(Math.log10(value))));
  const text = value.toFixed(places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
