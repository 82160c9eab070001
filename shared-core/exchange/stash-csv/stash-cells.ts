/** One cell of a stash file: how a value is written, and how it is read again. */
import { inEnglish, say } from '../../wording/say.ts';
import { readText, textCell } from '../../measure/text/cell-text.ts';
import { calendarDate } from '../../measure/calendar-date.ts';
import { plainMoney } from '../../measure/money/money.ts';
import { ok } from '../../measure/problem.ts';
import { readMoney } from '../../measure/money/read-money.ts';
import { readQuantity } from '../../measure/read.ts';
import type { FactField, QuantityField } from '../../stash/fact-field.ts';
import { type ItemKind, itemKinds, kindRecords } from '../../stash/kinds.ts';
import type { Flaw } from '../../stash/stash.ts';
import { plainNumber } from '../plain-number.ts';
import { fileUnits } from './stash-columns.ts';

/** Why a cell cannot be read, as the rest of a sentence that begins with its place. */
export interface Unreadable {
  readonly what: string;
  readonly fix: string;
}

export type Cell<Value> = { readonly value: Value; readonly typed?: string } | Unreadable;

/** In full: what is read again is the same number. */
export function numberCell(value: number): string {
  return String(value);
}

export function quantityCell(quantity: QuantityField, value: number): string {
  return quantity === 'ratio' ? String(Number((value * 100).toPrecision(15))) : numberCell(value);
}

/**
 * A number in the unit of its heading, or any measure that a form would take ("58 in"), which is then kept as typed.
 */
export function readQuantityCell(quantity: QuantityField, cell: string): Cell<number> {
  const text = cell.trim();
  if (isPlainNumber(text)) return { value: quantity === 'ratio' ? Number(text) / 100 : Number(text) };
  const read = readQuantity(quantity, text, { system: 'metric', where: '', unit: fileUnits[quantity].unit });
  if (read.ok) return { value: read.value, typed: text };
  const [problem] = read.problems;
  return { what: problem!.what, fix: problem!.fix };
}

/** As a program writes it; a comma is looked at by the reader of what people type. */
function isPlainNumber(text: string): boolean {
  return /^\d{1,15}(\.\d{1,30})?(e-\d{1,2})?$/i.test(text) && Number.isFinite(Number(text));
}

/** An amount in the unit of its kind; negative ones and words are refused. */
export function readAmount(cell: string): Cell<number> {
  const text = cell.trim();
  const plain = /^\d+,\d{1,2}$|^\d{4,},\d+$/.test(text) ? text.replace(',', '.') : text;
  if (isPlainNumber(plain)) return { value: Number(plain) };
  return {
    what: say('stash-cells.says-which-is-not-an-amount', { shortened: shortened(text) }),
    fix: say('stash-cells.write-a-number-alone-such-as'),
  };
}

export function readMoneyCell(cell: string, currency: string): Cell<number> {
  const read = readMoney(cell.trim().toLowerCase(), currency);
  if (typeof read === 'number') return { value: read };
  return {
    what: read.what ?? say('stash-cells.says-which-is-not-an-amount-2', { shortened: shortened(cell) }),
    fix: read.fix ?? say('stash-cells.write-it-such-as', { plainMoney: plainMoney(1250, currency) }),
  };
}

export function flagCell(value: boolean): string {
  return value ? 'yes' : 'no';
}

export function readFlag(cell: string): Cell<boolean> {
  const word = cell.trim().toLowerCase();
  if (word === 'yes' || word === 'true') return { value: true };
  if (word === 'no' || word === 'false') return { value: false };
  return {
    what: say('stash-cells.says', { shortened: shortened(cell) }),
    fix: say('stash-cells.write-yes-or-no-or-leave'),
  };
}

export function readChoice(cell: string, options: readonly string[]): Cell<string> {
  const word = cell.trim().toLowerCase();
  const option = options.find((each) => each.toLowerCase() === word);
  if (option !== undefined) return { value: option };
  return {
    what: say('stash-cells.says', { shortened: shortened(cell) }),
    fix: say('stash-cells.write-one-of', { options: options.join(', ') }),
  };
}

/** The share of its lot's price that a millimetre of a length carries: "0.5" or "50 %", above 0 and at most 1. */
export function readCostShare(cell: string): Cell<number> {
  const text = cell.trim();
  const fix = say('stash-cells.write-1-for-all-of-the');
  const read = isPlainNumber(text)
    ? ok(Number(text))
    : readQuantity('ratio', text, { system: 'metric', where: '' });
  if (!read.ok) return { what: read.problems[0]!.what, fix };
  return read.value > 0 && read.value <= 1
    ? { value: read.value }
    : { what: say('stash-cells.is-not-above-0-and-at'), fix };
}

/** A kind by its word inside or as people say it, one or several. */
export function readKind(cell: string): ItemKind | undefined {
  const word = cell.trim().toLowerCase();
  return inEnglish(() =>
    itemKinds.find((each) =>
      [each, kindRecords[each].label.toLowerCase(), kindRecords[each].plural.toLowerCase()].includes(word),
    ),
  );
}

/** A fact's cell; an empty one is a fact that is not known. */
export function readFact(field: FactField, cell: string): Cell<number | string | boolean | null> {
  if (cell.trim() === '') return { value: null };
  switch (field.kind) {
    case 'quantity':
      return readQuantityCell(field.quantity, cell);
    case 'flag':
      return readFlag(cell);
    case 'choice':
      return readChoice(cell, field.options);
    case 'text':
      return { value: readText(cell) };
    default:
      return field satisfies never;
  }
}

export function factCell(field: FactField, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (field.kind === 'quantity') return quantityCell(field.quantity, Number(value));
  if (field.kind === 'flag') return flagCell(value === true);
  return textCell(String(value));
}

/** "2140 930 65 40; 310 0 120 55": where each begins along and across, and how long and wide it is, in mm. */
export function flawsCell(flaws: readonly Flaw[]): string {
  return flaws.map(({ x, y, widthX, widthY }) => [x, y, widthX, widthY].map(numberCell).join(' ')).join('; ');
}

export function readFlaws(cell: string): Cell<Flaw[]> {
  const flaws: Flaw[] = [];
  for (const part of cell.split(';')) {
    if (part.trim() === '') continue;
    const [x, y, widthX, widthY, ...more] = part.trim().split(/\s+/).map(plainNumber);
    const isRead =
      more.length === 0 &&
      [x, y, widthX, widthY].every((each) => each !== undefined && Number.isFinite(each) && each >= 0) &&
      widthX! > 0 &&
      widthY! > 0;
    if (!isRead) {
      return {
        what: say('stash-cells.says-which-is-not-a-flaw', { shortened: shortened(part.trim()) }),
        fix: say('stash-cells.write-four-numbers-in-mm-where'),
      };
    }
    flaws.push({ x: x!, y: y!, widthX: widthX!, widthY: widthY! });
  }
  return { value: flaws };
}

/**
 * The days that a cell may mean, as ISO dates: one for 2026-03-27 and 27.3.2026, two for 3/4/2026, none for what is
 * no day. Spreadsheets write dates anew in the manner of their country.
 */
export function readDays(cell: string): string[] {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/.exec(cell.trim());
  if (iso) return realDays([iso[1]!, iso[2]!, iso[3]!]);
  const dots = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(cell.trim());
  if (dots) return realDays([dots[3]!, dots[2]!, dots[1]!]);
  const other = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(cell.trim());
  if (!other) return [];
  const [, first = '', second = '', year = ''] = other;
  return realDays([year, second, first], [year, first, second]);
}

/** Those of years, months and days that the calendar has, each once. */
function realDays(...days: readonly (readonly [string, string, string])[]): string[] {
  const written = days.map(([year, month, day]) => calendarDate(Number(year), Number(month), Number(day)));
  return [...new Set(written.filter((day) => day !== null))];
}

/** A cell in a sentence, however long it is. */
export function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 38)}…` : text;
}
