/**
 * Price lists of suppliers as CSV, in and out. One line is one offer. Columns, in any order:
 * supplier; item (its name in the stash), with kind and colour where the name alone does not tell; sold as (by length, sheet, spool, by mass, pack, each);
 * step or length (cm): of one step, sheet or piece; width (cm); thread (m): on one spool; mass (g): of one step;
 * pieces: in one pack; at least: in cm, g or units; price: of one step, sheet, spool, pack or piece;
 * priced on: 2026-10-12; breaks: "500 cm = 1.05; 20 m = 0.98", from how much on which price holds.
 * A heading may name another unit ("width (mm)"), and a cell may carry one of its own ("1/8 yd"). What an offer of the kind does not need may be left empty or out.
 */
import { say } from '../../wording/say.ts';
import { readText } from '../../measure/text/cell-text.ts';
import { folded } from '../../measure/text/folded-text.ts';
import { finished, type InSteps } from '../../measure/in-steps.ts';
import type { Problem } from '../../measure/problem.ts';
import { priceHeads } from './price-list-heads.ts';
import { isSameUnit, offerKey } from './price-list-offer.ts';
import { priceRow } from './price-list-row.ts';
import type { ColumnName, PriceRow, PriceList, PriceListSources } from './price-list-shape.ts';
import { tableRows } from '../table-rows.ts';

/** Longer lists are read in parts. */
export const maxPriceLines = 5_000;

/** Lines between two steps. */
const linesAtOnce = 50;

/** As priceListSteps, in one go. */
export function readPriceList(text: string, sources: PriceListSources): PriceList {
  return finished(priceListSteps(text, sources));
}

/**
 * Reads a whole list. Lines with a problem are left out of the rows and named in the problems; heads that are amiss,
 * and a table that is none, leave no rows.
 */
export function* priceListSteps(text: string, sources: PriceListSources): InSteps<PriceList> {
  const none = (...problems: readonly Problem[]): PriceList => ({ rows: [], problems, unread: [] });
  if (text.includes('\0'))
    return none({
      where: say('price-list.the-list'),
      what: say('common.is-not-text'),
      fix: say('price-list.save-the-table-as-csv'),
    });
  const table = yield* tableRows(text, maxPriceLines, say('price-list.the-list'));
  if (!table.ok) return none(...table.problems);
  const heads = priceHeads(table.value.headings, sources.currency);
  if (!heads.ok) return none(...heads.problems);
  const { places, units, unread } = heads.value;
  const rows: PriceRow[] = [];
  const problems: Problem[] = [...table.value.problems];
  const spoken = new Set<string>();
  const named = Map.groupBy(sources.items, ({ name }) => folded(name));
  const offered = Map.groupBy(sources.offers, offerKey);
  yield;
  const said = new Map<string, PriceRow[]>();
  for (const [index, { line, cells }] of table.value.rows.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    const cell = (name: ColumnName) => readText((cells[places.get(name) ?? -1] ?? '').trim());
    const row = priceRow(line, cell, { named, offered, currency: sources.currency, units, spoken });
    if (!row.ok) {
      problems.push(...row.problems);
      continue;
    }
    const key = offerKey(row.value.offer);
    const alike = said.get(key) ?? [];
    said.set(key, alike);
    const twin = alike.find((each) => isTwin(each, row.value));
    if (row.value.before) spoken.add(row.value.before.id);
    if (twin) {
      const what = say('price-list.says-the-same-as-line-one', { line: twin.line });
      problems.push({
        where: say('price-list.line', { line }),
        what,
        fix: say('price-list.leave-one-of-the-two-out'),
      });
    } else {
      rows.push(row.value);
      alike.push(row.value);
    }
  }
  return { rows, problems, unread };
}

/** Two lines of one key on one offer; but each may agree with one of two that the stash has. */
function isTwin(a: PriceRow, b: PriceRow): boolean {
  const agree = a.does === 'nothing new' && b.does === 'nothing new' && a.offer.id !== b.offer.id;
  return isSameUnit(a.offer.unit, b.offer.unit) && !agree;
}
