/**
 * Price lists of suppliers as CSV, in and out. One line is one offer. Columns, in any order:
 * supplier; item (its name in the stash), with kind and colour where the name alone does not tell; sold as (by length, sheet, spool, by mass, pack, each);
 * step or length (cm): of one step, sheet or piece; width (cm); thread (m): on one spool; mass (g): of one step;
 * pieces: in one pack; at least: in cm, g or units; price: of one step, sheet, spool, pack or piece;
 * priced on: 2026-10-12; breaks: "500 cm = 1.05; 20 m = 0.98", from how much on which price holds.
 * A cell may carry a unit of its own ("1/8 yd"). What an offer of the kind does not need may be left empty or out.
 */
import Papa from 'papaparse';
import { found, type Outcome, type Problem, refused } from '../measure/problem.ts';
import type { Offer } from '../stash/offer.ts';
import type { Item } from '../stash/stash.ts';
import { isSameOffer } from './price-list-offer.ts';
import { type ColumnName, columns, priceRow } from './price-list-row.ts';
import { readText } from './stash-cells.ts';
import { delimiterOf } from './table-delimiter.ts';

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
  readonly items: readonly Pick<Item, 'id' | 'kind' | 'name' | 'colour'>[];
  readonly offers: readonly Offer[];
  readonly currency: string;
}

/** Longer lists are read in parts. */
export const mostPriceLines = 5_000;

const needed: readonly ColumnName[] = ['supplier', 'item', 'sold as', 'price', 'priced on'];

/** Reads a whole list. Lines with a problem are left out of the rows and named in the problems; heads that are amiss leave no rows. */
export function readPriceList(text: string, sources: PriceListSources): PriceList {
  const body = text.replace(/^\uFEFF/, '');
  const parsed = Papa.parse<string[]>(body, { delimiter: delimiterOf(body), skipEmptyLines: false });
  const [heads = [], ...lines] = parsed.data;
  const places = headPlaces(heads, sources.currency);
  if (!places.ok) return { rows: [], problems: places.problems };
  if (lines.length > mostPriceLines) {
    const what = `has ${lines.length} lines, more than the ${mostPriceLines} that are read at once`;
    return { rows: [], problems: [{ where: 'The list', what, mend: 'Split it into parts.' }] };
  }
  const rows: PriceRow[] = [];
  const problems: Problem[] = [];
  const spoken = new Set<string>();
  lines.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const cell = (name: ColumnName) => readText((cells[places.value.get(name) ?? -1] ?? '').trim());
    const row = priceRow(index + 2, cell, { ...sources, spoken });
    if (!row.ok) problems.push(...row.problems);
    else {
      const twin = rows.find((each) => isTwin(each, row.value));
      if (row.value.before) spoken.add(row.value.before.id);
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

/** Two lines on one offer; but each may agree with one of two that the stash has. */
function isTwin(a: PriceRow, b: PriceRow): boolean {
  const agree = a.does === 'nothing new' && b.does === 'nothing new' && a.offer.id !== b.offer.id;
  return isSameOffer(a.offer, b.offer) && !agree;
}
