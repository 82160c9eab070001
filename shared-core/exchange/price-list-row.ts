/** One line of a price list: its cells read into an offer, and the offer of the stash that it speaks of. */
import { isCalendarDate } from '../measure/calendar-date.ts';
import { folded } from '../measure/folded-text.ts';
import { plainMoney } from '../measure/money.ts';
import { found, type Outcome, type Problem, refused } from '../measure/problem.ts';
import { readQuantity } from '../measure/read.ts';
import { kindRecords } from '../stash/kinds.ts';
import { type Offer, offerProblems, type PriceBreak, type SellingUnit, soldAs } from '../stash/offer.ts';
import type { PriceListSources, PriceRow } from './price-list.ts';
import { isSameOffer, saysTheSame, unitAmount } from './price-list-offer.ts';
import { readKind } from './stash-cells.ts';

export const columns = [
  'supplier',
  'kind',
  'item',
  'colour',
  'sold as',
  'step or length',
  'width',
  'thread',
  'mass',
  'pieces',
  'at least',
  'price',
  'priced on',
  'breaks',
] as const;
export type ColumnName = (typeof columns)[number];

const cm = { metric: 'cm', imperial: 'cm' } as const;

/**
 * What a line says, and what it would do. cell: text of a column, '' where there is none.
 * spoken: ids of offers that earlier lines agree with.
 */
export function priceRow(
  line: number,
  cell: (name: ColumnName) => string,
  { items, offers, currency, spoken }: PriceListSources & { readonly spoken: ReadonlySet<string> },
): Outcome<PriceRow> {
  const problems: Problem[] = [];
  const where = (name: ColumnName) => `Line ${line}, column ${name}`;
  const trouble = (name: ColumnName, what: string, mend: string) =>
    problems.push({ where: where(name), what, mend });
  const money = (name: ColumnName, text: string) =>
    taken(readQuantity('money', text, { system: 'metric', where: where(name), currency }), problems);

  const supplier = cell('supplier');
  if (supplier === '' || supplier.length > 120) {
    trouble('supplier', supplier === '' ? 'is empty' : 'is too long', 'Name the supplier in 120 letters.');
  }
  const named = itemsNamed(items, cell);
  const item = named[0];
  if (named.length !== 1) {
    const words = [cell('item'), cell('colour')].filter((text) => text !== '').join(', ');
    const what = `names "${words}", ${named.length === 0 ? 'which is not in the stash' : 'of which the stash has several'}`;
    trouble('item', what, 'Write the name as it stands in the stash, and its kind and colour beside it.');
  }
  const pricedOn = cell('priced on');
  if (!isCalendarDate(pricedOn)) {
    trouble('priced on', `is "${pricedOn}", which is not a date`, 'Write it as 2026-03-27.');
  }
  const kind = cell('sold as').toLowerCase();
  const ways = item ? soldAs[kindRecords[item.kind].counted] : Object.values(soldAs).flat();
  const way = ways.find((each) => each === kind);
  if (!way) trouble('sold as', `is "${kind}", which does not suit`, `Write one of: ${ways.join(', ')}.`);
  const priceMinor = money('price', cell('price'));
  if (!way || !item) return refused(...problems);

  const unit = unitOf(way, cell, where, problems);
  const least = leastOf(cell('at least'), unit, where('at least'), problems);
  const breaks = breaksOf(cell('breaks'), unit, where('breaks'), money, problems, currency);
  const offer: Offer = {
    id: '',
    itemId: item.id,
    supplier,
    unit: least === null ? unit : withLeast(unit, least),
    priceMinor: priceMinor ?? 0,
    pricedOn,
    ...(breaks.length > 0 && { breaks }),
    ...(least !== null && least > 1 && !hasOwnLeast(unit) && { leastCount: least }),
  };
  if (problems.length > 0) return refused(...problems);
  problems.push(
    ...offerProblems(offer).map((each) => ({ ...each, where: `${where('breaks')}: ${each.where}` })),
  );
  if (problems.length > 0) return refused(...problems);
  const same = offers.filter((each) => isSameOffer(each, offer));
  // Where a supplier's offer stands in the stash twice, each line speaks of the one that it agrees with.
  const before = same.find((each) => saysTheSame(each, offer) && !spoken.has(each.id)) ?? same[0] ?? null;
  const does = before === null ? 'adds' : saysTheSame(before, offer) ? 'nothing new' : 'changes';
  return found({ line, itemName: item.name, offer: { ...offer, id: before?.id ?? '' }, does, before });
}

/** Items of the name, and of the kind and colour where those are given; a bare name among several is the uncoloured one. */
function itemsNamed(
  items: PriceListSources['items'],
  cell: (name: ColumnName) => string,
): PriceListSources['items'] {
  const [name, colour] = [cell('item'), folded(cell('colour'))];
  const named = items.filter(
    (item) =>
      name !== '' &&
      folded(item.name) === folded(name) &&
      (cell('kind') === '' || item.kind === readKind(cell('kind'))) &&
      (cell('colour') === '' || folded(item.colour) === colour),
  );
  const plain = named.filter((item) => item.colour === '');
  return cell('colour') === '' && named.length > 1 && plain.length > 0 ? plain : named;
}

function taken<Value>(outcome: Outcome<Value>, problems: Problem[]): Value | null {
  if (outcome.ok) return outcome.value;
  problems.push(...outcome.problems);
  return null;
}

function unitOf(
  way: SellingUnit['kind'],
  cell: (name: ColumnName) => string,
  where: (name: ColumnName) => string,
  problems: Problem[],
): SellingUnit {
  const read = (name: ColumnName, quantity: 'length' | 'threadLength' | 'mass' | 'count') =>
    taken(
      readQuantity(quantity, cell(name), {
        system: 'metric',
        where: where(name),
        aboveZero: true,
        ...(quantity === 'length' && { unit: cm }),
      }),
      problems,
    ) ?? 1;
  switch (way) {
    case 'by length':
      return {
        kind: way,
        stepMm: read('step or length', 'length'),
        widthMm: read('width', 'length'),
        leastMm: 0,
      };
    case 'sheet':
      return { kind: way, lengthMm: read('step or length', 'length'), widthMm: read('width', 'length') };
    case 'spool':
      return { kind: way, threadM: read('thread', 'threadLength') };
    case 'by mass':
      return { kind: way, stepG: read('mass', 'mass'), leastG: 0 };
    case 'pack':
      return { kind: way, pieceCount: read('pieces', 'count') };
    case 'each':
      return {
        kind: way,
        lengthMm: cell('step or length') === '' ? null : read('step or length', 'length'),
      };
    default:
      return way satisfies never;
  }
}

function hasOwnLeast(unit: SellingUnit): boolean {
  return unit.kind === 'by length' || unit.kind === 'by mass';
}

function withLeast(unit: SellingUnit, amount: number): SellingUnit {
  if (unit.kind === 'by length') return { ...unit, leastMm: amount };
  if (unit.kind === 'by mass') return { ...unit, leastG: amount };
  return unit;
}

/** The least in mm, g or units; null where the cell is empty. */
function leastOf(text: string, unit: SellingUnit, where: string, problems: Problem[]): number | null {
  return text === '' ? null : amountOf(text, unit, where, problems);
}

/** How many units a cell speaks of: a length or a mass in whole steps, or a plain number. */
function countOf(text: string, unit: SellingUnit, where: string, problems: Problem[]): number {
  const count = amountOf(text, unit, where, problems) / unitAmount(unit);
  const nearest = Math.round(count);
  // Cells hold twelve figures, and a spreadsheet may round them.
  return Math.max(1, Math.abs(count - nearest) <= 1e-9 * count ? nearest : Math.ceil(count));
}

function amountOf(text: string, unit: SellingUnit, where: string, problems: Problem[]): number {
  const quantity = unit.kind === 'by length' ? 'length' : unit.kind === 'by mass' ? 'mass' : 'count';
  const inUnit = quantity === 'length' ? { unit: cm } : {};
  const max = unitAmount(unit) * 1e6;
  const read = readQuantity(quantity, text, { system: 'metric', where, aboveZero: true, max, ...inUnit });
  return taken(read, problems) ?? 1;
}

function breaksOf(
  text: string,
  unit: SellingUnit,
  where: string,
  money: (name: ColumnName, text: string) => number | null,
  problems: Problem[],
  currency: string,
): PriceBreak[] {
  if (text === '') return [];
  const mend = `Write them as: 500 cm = ${plainMoney(105, currency)}; 20 m = ${plainMoney(98, currency)}.`;
  return text.split(';').flatMap((part) => {
    const [from, price, ...more] = part.split('=');
    if (from === undefined || price === undefined || more.length > 0) {
      const what = `has "${part.trim()}", which is no price break`;
      problems.push({ where, what, mend });
      return [];
    }
    const fromCount = countOf(from, unit, where, problems);
    return [{ fromCount, priceMinor: money('breaks', price) ?? 0 }];
  });
}
