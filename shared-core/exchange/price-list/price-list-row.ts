/** One line of a price list: its cells read into an offer, and the offer of the stash that it speaks of. */
import { say } from '../../wording/say.ts';
import { isCalendarDate } from '../../measure/calendar-date.ts';
import { folded } from '../../measure/text/folded-text.ts';
import { plainMoney } from '../../measure/money/money.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { oneLine } from '../../measure/text/plain-signs.ts';
import { readQuantity } from '../../measure/read.ts';
import type { UnitId } from '../../measure/units.ts';
import { kindRecords } from '../../stash/kinds.ts';
import { type Offer, offerProblems, type PriceBreak, type SellingUnit, soldAs } from '../../stash/offer.ts';
import type { ColumnName, PriceListSources, PriceRow } from './price-list-shape.ts';
import type { PriceUnits } from './price-list-heads.ts';
import { isSameUnit, offerKey, saysTheSame, unitAmount } from './price-list-offer.ts';
import { readKind, shortened } from '../stash-csv/stash-cells.ts';

/** As many as an offer keeps. */
const maxBreaks = 20;
/** Prices of other years are slips of a hand or of a spreadsheet. */
const priceYears = { first: 1990, last: 2100 };

export interface RowSources {
  /** Items by their folded names. */
  readonly named: ReadonlyMap<string, PriceListSources['items']>;
  /** Offers of the stash by offerKey. */
  readonly offered: ReadonlyMap<string, readonly Offer[]>;
  readonly currency: string;
  readonly units: PriceUnits;
  /** Ids of offers that earlier lines agree with. */
  readonly spoken: ReadonlySet<string>;
}

/** What a line says, and what it would do. cell: text of a column, '' where there is none. */
export function priceRow(
  line: number,
  cell: (name: ColumnName) => string,
  { named: byName, offered, currency, units, spoken }: RowSources,
): Result<PriceRow> {
  const problems: Problem[] = [];
  const where = (name: ColumnName) => say('price-list-row.line-column', { line, name });
  const trouble = (name: ColumnName, what: string, fix: string) =>
    problems.push({ where: where(name), what, fix });
  const money = (name: ColumnName, text: string) =>
    taken(readQuantity('money', text, { system: 'metric', where: where(name), currency }), problems);

  const supplier = oneLine(cell('supplier'));
  if (supplier === '' || supplier.length > 120) {
    trouble(
      'supplier',
      supplier === '' ? say('common.is-empty') : say('common.is-too-long'),
      say('price-list-row.name-the-supplier-in-120-letters'),
    );
  }
  const named = itemsNamed(byName.get(folded(cell('item'))) ?? [], cell);
  const item = named[0];
  if (named.length !== 1) {
    const words = shortened([cell('item'), cell('colour')].filter((text) => text !== '').join(', '));
    const what = `names "${words}", ${named.length === 0 ? say('price-list-row.which-is-not-in-the-stash') : say('price-list-row.of-which-the-stash-has-several')}`;
    trouble('item', what, say('price-list-row.write-the-name-as-it-stands'));
  }
  const pricedOn = cell('priced on');
  const year = Number(pricedOn.slice(0, 4));
  if (!isCalendarDate(pricedOn) || year < priceYears.first || year > priceYears.last) {
    trouble(
      'priced on',
      say('price-list-row.is-which-is-not-a-date', { shortened: shortened(pricedOn) }),
      say('price-list-row.write-it-as-2026-03-27'),
    );
  }
  const kind = cell('sold as').toLowerCase();
  const ways = item ? soldAs[kindRecords[item.kind].counted] : Object.values(soldAs).flat();
  const way = ways.find((each) => each === kind);
  if (!way)
    trouble(
      'sold as',
      say('price-list-row.is-which-does-not-suit', { shortened: shortened(kind) }),
      say('price-list-row.write-one-of', { ways: ways.join(', ') }),
    );
  const priceMinor = money('price', cell('price'));
  if (!way || !item) return err(...problems);

  const unit = unitOf(way, cell, units, where, problems);
  const min = minOf(cell('at least'), unit, units, where('at least'), problems);
  const breaks = breaksOf(cell('breaks'), unit, where('breaks'), money, problems, currency);
  const offer: Offer = {
    id: '',
    itemId: item.id,
    supplier,
    unit: min === null ? unit : withLeast(unit, min),
    priceMinor: priceMinor ?? 0,
    pricedOn,
    ...(breaks.length > 0 && { breaks }),
    ...(min !== null && min > 1 && !hasOwnLeast(unit) && { leastCount: min }),
  };
  if (problems.length > 0) return err(...problems);
  problems.push(
    ...offerProblems(offer).map((each) => ({ ...each, where: `${where('breaks')}: ${each.where}` })),
  );
  if (problems.length > 0) return err(...problems);
  const same = (offered.get(offerKey(offer)) ?? []).filter((each) => isSameUnit(each.unit, offer.unit));
  // Where a supplier's offer stands in the stash twice, each line speaks of the one that it agrees with.
  const before = same.find((each) => saysTheSame(each, offer) && !spoken.has(each.id)) ?? same[0] ?? null;
  const does = before === null ? 'adds' : saysTheSame(before, offer) ? 'nothing new' : 'changes';
  return ok({ line, itemName: item.name, offer: { ...offer, id: before?.id ?? '' }, does, before });
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
      (cell('kind') === '' || item.kind === readKind(cell('kind'))) &&
      (cell('colour') === '' || folded(item.colour) === colour),
  );
  const plain = named.filter((item) => item.colour === '');
  return cell('colour') === '' && named.length > 1 && plain.length > 0 ? plain : named;
}

function taken<Value>(outcome: Result<Value>, problems: Problem[]): Value | null {
  if (outcome.ok) return outcome.value;
  problems.push(...outcome.problems);
  return null;
}

function unitOf(
  way: SellingUnit['kind'],
  cell: (name: ColumnName) => string,
  units: PriceUnits,
  where: (name: ColumnName) => string,
  problems: Problem[],
): SellingUnit {
  const read = (name: ColumnName, quantity: 'length' | 'threadLength' | 'mass' | 'count', unit: UnitId) =>
    taken(
      readQuantity(quantity, cell(name), {
        system: 'metric',
        where: where(name),
        aboveZero: true,
        unit,
      }),
      problems,
    ) ?? 1;
  switch (way) {
    case 'by length':
      return {
        kind: way,
        stepMm: read('step or length', 'length', units.length),
        widthMm: read('width', 'length', units.width),
        leastMm: 0,
      };
    case 'sheet':
      return {
        kind: way,
        lengthMm: read('step or length', 'length', units.length),
        widthMm: read('width', 'length', units.width),
      };
    case 'spool':
      return { kind: way, threadM: read('thread', 'threadLength', units.thread) };
    case 'by mass':
      return { kind: way, stepG: read('mass', 'mass', units.mass), leastG: 0 };
    case 'pack':
      return { kind: way, pieceCount: read('pieces', 'count', 'pcs') };
    case 'each':
      return {
        kind: way,
        lengthMm: cell('step or length') === '' ? null : read('step or length', 'length', units.length),
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
function minOf(
  text: string,
  unit: SellingUnit,
  units: PriceUnits,
  where: string,
  problems: Problem[],
): number | null {
  const bare = { length: units.minLength, mass: units.minMass };
  return text === '' ? null : amountOf(text, unit, bare, where, problems);
}

/** How many units a cell speaks of: a length or a mass in whole steps, or a plain number. */
function countOf(text: string, unit: SellingUnit, where: string, problems: Problem[]): number {
  const count = amountOf(text, unit, { length: 'cm', mass: 'g' }, where, problems) / unitAmount(unit);
  const nearest = Math.round(count);
  // Cells hold twelve figures, and a spreadsheet may round them.
  return Math.max(1, Math.abs(count - nearest) <= 1e-9 * count ? nearest : Math.ceil(count));
}

/** bare: the units of numbers without one. */
function amountOf(
  text: string,
  unit: SellingUnit,
  bare: { readonly length: UnitId; readonly mass: UnitId },
  where: string,
  problems: Problem[],
): number {
  const quantity = unit.kind === 'by length' ? 'length' : unit.kind === 'by mass' ? 'mass' : 'count';
  const inUnit = { unit: quantity === 'count' ? ('pcs' as const) : bare[quantity] };
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
  const fix = say('price-list-row.write-them-as-500-cm-20', {
    plainMoney: plainMoney(105, currency),
    plainMoney2: plainMoney(98, currency),
  });
  const parts = text.split(';', maxBreaks + 1);
  if (parts.length > maxBreaks) {
    problems.push({
      where,
      what: say('price-list-row.has-more-than-price-breaks', { maxBreaks }),
      fix: say('price-list-row.leave-some-of-them-out'),
    });
    return [];
  }
  return parts.flatMap((part) => {
    const [from, price, ...more] = part.split('=');
    if (from === undefined || price === undefined || more.length > 0) {
      const what = say('price-list-row.has-which-is-no-price-break', { shortened: shortened(part.trim()) });
      problems.push({ where, what, fix });
      return [];
    }
    const fromCount = countOf(from, unit, where, problems);
    return [{ fromCount, priceMinor: money('breaks', price) ?? 0 }];
  });
}
