/**
 * Price lists of suppliers as CSV, in and out. One line is one offer. Columns, in any order:
 * supplier; item (its name in the stash); sold as (by length, sheet, spool, by mass, pack, each);
 * step or length (cm): of one step, sheet or piece; width (cm); thread (m): on one spool; mass (g): of one step;
 * pieces: in one pack; at least: in cm, g or units; price: of one step, sheet, spool, pack or piece;
 * priced on: 2026-10-12; breaks: "500 cm = 1.05; 20 m = 0.98", from how much on which price holds.
 * A cell may carry a unit of its own ("1/8 yd"). What an offer of the kind does not need may be left empty or out.
 */
import Papa from 'papaparse';
import { isCalendarDate } from '../measure/calendar-date.ts';
import { found, type Outcome, type Problem, refused } from '../measure/problem.ts';
import { readQuantity } from '../measure/read.ts';
import { stepsUp } from '../measure/round-up.ts';
import { kindRecords } from '../stash/kinds.ts';
import { type Offer, offerProblems, type PriceBreak, type SellingUnit, soldAs } from '../stash/offer.ts';
import type { Item } from '../stash/stash.ts';
import { supplierKey } from '../stash/supplier.ts';

/** One line of a list, read, and what it would do. */
export interface PriceRow {
  /** As a spreadsheet counts: the heads are line 1. */
  readonly line: number;
  readonly itemName: string;
  /** With the id of the offer that it replaces, or an empty one. */
  readonly offer: Offer;
  readonly does: 'adds' | 'changes' | 'nothing new';
  readonly before: Offer | null;
}

export interface PriceList {
  readonly rows: readonly PriceRow[];
  readonly problems: readonly Problem[];
}

export interface PriceListSources {
  readonly items: readonly Pick<Item, 'id' | 'kind' | 'name'>[];
  readonly offers: readonly Offer[];
  readonly currency: string;
}

/** Longer lists are read in parts. */
export const mostPriceLines = 5_000;

const columns = [
  'supplier',
  'item',
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
type ColumnName = (typeof columns)[number];
const needed: readonly ColumnName[] = ['supplier', 'item', 'sold as', 'price', 'priced on'];
const cm = { metric: 'cm', imperial: 'cm' } as const;

/** Reads a whole list. Lines with a problem are left out of the rows and named in the problems; heads that are amiss leave no rows. */
export function readPriceList(text: string, sources: PriceListSources): PriceList {
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  const [heads = [], ...lines] = parsed.data;
  const places = headPlaces(heads, sources.currency);
  if (!places.ok) return { rows: [], problems: places.problems };
  if (lines.length > mostPriceLines) {
    const what = `has ${lines.length} lines, more than the ${mostPriceLines} that are read at once`;
    return { rows: [], problems: [{ where: 'The list', what, mend: 'Split it into parts.' }] };
  }
  const rows: PriceRow[] = [];
  const problems: Problem[] = [];
  lines.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const cell = (name: ColumnName) => (cells[places.value.get(name) ?? -1] ?? '').trim();
    const row = priceRow(index + 2, cell, sources);
    if (!row.ok) problems.push(...row.problems);
    else {
      const twin = rows.find((each) => isSameOffer(each.offer, row.value.offer));
      if (twin) {
        const what = `says the same as line ${twin.line}: one supplier sells it in one unit at one price`;
        problems.push({ where: `Line ${row.value.line}`, what, mend: 'Leave one of the two out.' });
      } else rows.push(row.value);
    }
  });
  return { rows, problems };
}

function headPlaces(heads: readonly string[], currency: string): Outcome<ReadonlyMap<ColumnName, number>> {
  const places = new Map<ColumnName, number>();
  const problems: Problem[] = [];
  heads.forEach((head, index) => {
    const plain = head
      .replace(/\(.*\)/, '')
      .trim()
      .toLowerCase()
      .replace(/\s+/g, ' ');
    const name = columns.find((column) => column === plain);
    if (name) places.set(name, index);
    const inBrackets = /\(([A-Za-z]{3})\)/.exec(head)?.[1]?.toUpperCase();
    if (name === 'price' && inBrackets && inBrackets !== currency) {
      problems.push({
        where: 'Line 1, column price',
        what: `is in ${inBrackets}, and the workshop reckons in ${currency}`,
        mend: `Turn the prices into ${currency} first.`,
      });
    }
  });
  const missing = needed.filter((name) => !places.has(name));
  if (missing.length > 0) {
    const what = `has no column ${missing.map((name) => `"${name}"`).join(' and no column ')}`;
    problems.push({ where: 'Line 1', what, mend: `Name the columns: ${columns.join(', ')}.` });
  }
  return problems.length > 0 ? refused(...problems) : found(places);
}

function priceRow(
  line: number,
  cell: (name: ColumnName) => string,
  { items, offers, currency }: PriceListSources,
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
  const named = items.filter(({ name }) => supplierKey(name) === supplierKey(cell('item')));
  const item = named[0];
  if (named.length !== 1) {
    const what = `names "${cell('item')}", ${named.length === 0 ? 'which is not in the stash' : 'of which the stash has several'}`;
    trouble('item', what, 'Write the name as it stands in the stash.');
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
  const leastText = cell('at least');
  const least = leastText === '' ? null : countOf(leastText, unit, where('at least'), problems);
  const breaks = breaksOf(cell('breaks'), unit, where('breaks'), money, problems);
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
  const before = offers.find((each) => isSameOffer(each, offer)) ?? null;
  const does = before === null ? 'adds' : saysTheSame(before, offer) ? 'nothing new' : 'changes';
  return found({ line, itemName: item.name, offer: { ...offer, id: before?.id ?? '' }, does, before });
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

function withLeast(unit: SellingUnit, count: number): SellingUnit {
  if (unit.kind === 'by length') return { ...unit, leastMm: count * unit.stepMm };
  if (unit.kind === 'by mass') return { ...unit, leastG: count * unit.stepG };
  return unit;
}

/** How many units a cell speaks of: a length or a mass in whole steps, or a plain number. */
function countOf(text: string, unit: SellingUnit, where: string, problems: Problem[]): number {
  const quantity = unit.kind === 'by length' ? 'length' : unit.kind === 'by mass' ? 'mass' : 'count';
  const inUnit = quantity === 'length' ? { unit: cm } : {};
  const read = readQuantity(quantity, text, { system: 'metric', where, aboveZero: true, ...inUnit });
  const amount = taken(read, problems) ?? 1;
  const step = unit.kind === 'by length' ? unit.stepMm : unit.kind === 'by mass' ? unit.stepG : 1;
  return Math.max(1, stepsUp(amount, step));
}

function breaksOf(
  text: string,
  unit: SellingUnit,
  where: string,
  money: (name: ColumnName, text: string) => number | null,
  problems: Problem[],
): PriceBreak[] {
  if (text === '') return [];
  return text.split(';').flatMap((part) => {
    const [from, price, ...more] = part.split('=');
    if (from === undefined || price === undefined || more.length > 0) {
      const what = `has "${part.trim()}", which is no price break`;
      problems.push({ where, what, mend: 'Write them as: 500 cm = 1.05; 20 m = 0.98.' });
      return [];
    }
    const fromCount = countOf(from, unit, where, problems);
    return [{ fromCount, priceMinor: money('breaks', price) ?? 0 }];
  });
}

/** One offer of a supplier for an item is told from another by its unit, whatever its least. */
export function isSameOffer(a: Offer, b: Offer): boolean {
  const key = ({ itemId, supplier, unit }: Offer) =>
    JSON.stringify([itemId, supplierKey(supplier), unitKey(unit)]);
  return key(a) === key(b);
}

function unitKey(unit: SellingUnit): readonly unknown[] {
  switch (unit.kind) {
    case 'by length':
      return [unit.kind, unit.stepMm, unit.widthMm];
    case 'sheet':
      return [unit.kind, unit.widthMm, unit.lengthMm];
    case 'spool':
      return [unit.kind, unit.threadM];
    case 'by mass':
      return [unit.kind, unit.stepG];
    case 'pack':
      return [unit.kind, unit.pieceCount];
    case 'each':
      return [unit.kind, unit.lengthMm];
    default:
      return unit satisfies never;
  }
}

function saysTheSame(a: Offer, b: Offer): boolean {
  const said = ({ unit, priceMinor, pricedOn, breaks = [], leastCount = 1 }: Offer) =>
    JSON.stringify([Object.entries(unit).sort(), priceMinor, pricedOn, breaks, leastCount]);
  return said(a) === said(b);
}
