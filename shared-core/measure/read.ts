/**
 * Reads what a maker types into a field. Every spelling of every unit is taken in either system; a bare number
 * takes the field's unit. What could mean two things is refused with a sentence, never guessed.
 */
import { moneyNumber, plainMoney } from './money/money.ts';
import { type NumberText, plainText, readNumber } from './number-text.ts';
import { ok, type Result, type Problem, err } from './problem.ts';
import { type MeasureSystem, type QuantityKind, quantityFacts } from './quantity.ts';
import { readMoney } from './money/read-money.ts';
import { readNeedleSize, readThreadSize, type Unread } from './read-sizes.ts';
import { showQuantity } from './show.ts';
import {
  anyUnitSpelled,
  bareUnit,
  type FieldUnit,
  fieldUnit,
  type UnitId,
  units,
  unitSpelled,
} from './units.ts';

export interface ReadOptions {
  readonly system: MeasureSystem;
  /** The place in the maker's words, for the problem: "Width of Grey taffeta". */
  readonly where: string;
  /** Least value inside, itself allowed; below 0 lets a minus sign in. Where absent: 0, and above 0 for sizes. */
  readonly min?: number;
  /** Zero is no answer here. */
  readonly aboveZero?: boolean;
  readonly max?: number;
  /** The unit that a bare number takes; where absent mm or in, g or oz, g/m2 or oz/yd2, in3/oz, tex, %, min. */
  readonly unit?: FieldUnit;
  /** Code of the workshop's currency, needed for money; an amount in another one is refused. */
  readonly currency?: string;
}

/** Kinds whose parts add up: "2 yd 4 in", "1 lb 3 oz", "1 h 30 min". */
const addedUp: ReadonlySet<QuantityKind> = new Set<QuantityKind>([
  'length',
  'threadLength',
  'mass',
  'duration',
]);

/**
 * The value inside (see quantity.ts) of what was typed, or a problem that says how to mend it.
 * Correctly rounded: "4 1/2 in" is 114.3 exactly as a literal would be.
 */
export function readQuantity(kind: QuantityKind, text: string, options: ReadOptions): Result<number> {
  const trouble = (what: string, fix?: string): Result<number> =>
    err(
      problemAt(
        options.where,
        what,
        fix ?? `Type ${quantityFacts[kind].name} such as ${examples(kind, options)}.`,
      ),
    );
  if (text.trim() === '') return trouble('is empty');
  if (text.length > 80) return trouble('is too long to be read');
  const plain = plainText(text);
  const negative = plain.startsWith('-');
  const unsigned = plain.replace(/^[-+] ?/, '');
  const reading = readUnsigned(kind, unsigned, options);
  if (typeof reading !== 'number') {
    const { what, fix } = reading;
    return trouble(what ?? `says "${text.trim()}", which is not ${quantityFacts[kind].name}`, fix);
  }
  return withinLimits(kind, negative && reading !== 0 ? -reading : reading, options, trouble);
}

function problemAt(where: string, what: string, fix: string): Problem {
  return { where, what, fix };
}

function examples(kind: QuantityKind, options: ReadOptions): string {
  return kind === 'money' && options.currency
    ? `${plainMoney(1250, options.currency)} or ${options.currency} ${moneyNumber(125_000, options.currency)}`
    : quantityFacts[kind].examples;
}

function withinLimits(
  kind: QuantityKind,
  value: number,
  options: ReadOptions,
  trouble: (what: string, fix?: string) => Result<number>,
): Result<number> {
  const facts = quantityFacts[kind];
  const min = options.min ?? facts.min;
  const max = options.max ?? facts.max;
  // A limit met in another unit may miss by the last bit of a float; that is no mistake of the maker's.
  const dust = 1e-12 * Math.max(Math.abs(value), 1e-9);
  if (!Number.isFinite(value)) return trouble('is too large to be read');
  if (value < 0 && min >= 0) return trouble('is negative');
  if (value === 0 && (options.aboveZero || min > 0)) return trouble('is zero');
  if (value < min - dust) {
    const least = limitText(kind, min, (typed) => typed >= min - dust, options);
    return trouble(`is less than ${least}`, `Type ${least} or more.`);
  }
  if (value > max + dust) {
    const most = limitText(kind, max, (typed) => typed <= max + dust, options);
    return trouble(`is more than ${most}`, `Type ${most} or less.`);
  }
  return ok(value);
}

/** A limit as it may be typed: 1470 mm is not "57 7/8 in", which is more and would be refused again. */
function limitText(
  kind: QuantityKind,
  limit: number,
  allowed: (typed: number) => boolean,
  options: ReadOptions,
): string {
  const typable = (text: string) => {
    const size = readUnsigned(kind, plainText(text).replace(/^-/, ''), options);
    return typeof size === 'number' && allowed(limit < 0 ? -size : size);
  };
  const usual = showQuantity(kind, limit, options);
  if (typable(usual)) return usual;
  const finer = [1, 2, 3, 4].map((digits) => showQuantity(kind, limit, { ...options, digits }));
  // Where every rounding goes the wrong way, a ten-thousandth inside the limit is near enough.
  const inside = [0.9999, 1.0001].map((near) => showQuantity(kind, limit * near, { ...options, digits: 6 }));
  return [...finer, ...inside].find(typable) ?? usual;
}

/** How high down stands says nothing without how much was poured in. */
const heightAlone: Unread = {
  what: 'is a height without the mass that was poured in',
  fix: 'Type it with its sample: 120 mm/20 g (EN 12130) or 165 mm/30 g (IDFB).',
};

function readUnsigned(kind: QuantityKind, text: string, options: ReadOptions): number | Unread {
  // "2 yd.5 in" may be 2 yd 5 in or 2 yd and half an inch.
  if (/[a-z][.,]\d/.test(text)) return {};
  // In some countries 1'000 is a thousand, elsewhere a foot and no inches.
  if (/\d'\d{3}/.test(text)) return {};
  switch (kind) {
    case 'money':
      return readMoney(text, options.currency ?? '');
    case 'threadSize':
      return readThreadSize(text, options.unit ? fieldUnit(kind, options.system, options.unit) : 'tex');
    case 'needleSize':
      return readNeedleSize(text);
    case 'duration': {
      const clock = /^(\d{1,4}):([0-5]\d)(?: ?h)?$/.exec(text) ?? /^(\d{1,4}) ?h ?([0-5]\d)$/.exec(text);
      return clock ? Number(clock[1]) * 60 + Number(clock[2]) : readParts(kind, text, options);
    }
    case 'fillPower':
      if (/^[\d.,]+ ?mm$/.test(text)) return heightAlone;
      return readParts(
        kind,
        text.replace(/^(fp|fill power|fill) ?(\d.*)$/, '$2 fp').replace(/fp fp$/, 'fp'),
        options,
      );
    case 'count': {
      const count = readParts(kind, text, options);
      if (typeof count !== 'number' || Number.isInteger(count)) return count;
      return { what: 'is not a whole number', fix: 'Type a whole number such as 12.' };
    }
    case 'length':
    case 'area':
    case 'volume':
    case 'mass':
    case 'arealMass':
    case 'threadLength':
    case 'ratio':
    case 'warmth':
      return readParts(kind, text, options);
    default:
      return kind satisfies never;
  }
}

interface Part {
  readonly number: NumberText;
  readonly unitText: string;
}

/** "2 yd 4 in" as its parts; a sign to join them ("and", a comma, the dash of 1'-6") is dropped. */
function splitParts(text: string, kind: QuantityKind): readonly Part[] | Unread {
  const parts: Part[] = [];
  let rest = text;
  while (rest !== '') {
    const number = readNumber(rest, { commaGroups: kind === 'count' });
    if (number === 'two ways') {
      return { what: `says "${text}", which could be read in two ways`, fix: twoWays(rest) };
    }
    if (typeof number === 'string') return {};
    const after = number.rest.trimStart();
    if (!addedUp.has(kind)) return [{ number, unitText: after }];
    const stop = /[.,]?\d/.exec(after)?.index ?? after.length;
    let unitText = after.slice(0, stop);
    rest = after.slice(stop);
    if (rest !== '')
      unitText = unitText.replace(/(?: and | ?& ?|, ?| ?\+ ?)$/, '').replace(/^(') ?- ?$/, '$1');
    parts.push({ number, unitText: unitText.trim() });
  }
  return parts.length > 0 ? parts : {};
}

function twoWays(text: string): string {
  const typed = /^[\d,]+/.exec(text)?.[0] ?? text;
  return `Type ${typed.replace(',', '.')} or ${typed.replace(',', '')}, without a comma.`;
}

function readParts(kind: QuantityKind, text: string, options: ReadOptions): number | Unread {
  const parts = splitParts(text, kind);
  if (!Array.isArray(parts)) return parts as Unread;
  let sum: Quotient = { top: 0, bottom: 1 };
  let previous: UnitId | undefined;
  for (const { number, unitText } of parts as readonly Part[]) {
    const id = partUnit(kind, unitText, previous, parts.length, options);
    if (typeof id !== 'string') return id;
    if (previous && !follows(previous, id)) return {};
    if (
      kind === 'ratio' &&
      unitText === '' &&
      number.numerator > 0 &&
      number.numerator < number.denominator
    ) {
      // "0.15" may be 0.15 % or the share 0.15, a hundred times as much.
      return {
        what: `says "${text}", which could be read in two ways`,
        fix: `Type it with a sign, such as ${text} % or ${showQuantity('ratio', number.numerator / number.denominator, options)}.`,
      };
    }
    sum = added(sum, partQuotient(id, number));
    previous = id;
  }
  return sum.top / sum.bottom;
}

function partUnit(
  kind: QuantityKind,
  unitText: string,
  previous: UnitId | undefined,
  partCount: number,
  options: ReadOptions,
): UnitId | Unread {
  if (unitText === '' || unitText === '.') {
    if (partCount === 1) {
      return options.unit ? fieldUnit(kind, options.system, options.unit) : bareUnit(kind, options.system);
    }
    return previous === 'ft' ? 'in' : {};
  }
  const id = unitSpelled(kind, unitText);
  if (id) return id;
  const other = partCount === 1 ? anyUnitSpelled(unitText) : undefined;
  return other
    ? { what: `is in ${units[other].symbol}, which is no unit of ${quantityFacts[kind].name}` }
    : {};
}

/** Parts run from large to small within one system, so that "4 in 2 yd" and "1 m 3 in" are asked again. */
function follows(larger: UnitId, smaller: UnitId): boolean {
  const chains: readonly (readonly UnitId[])[] = [
    ['yd', 'ft', 'in'],
    ['m', 'cm', 'mm'],
    ['threadYd', 'threadFt'],
    ['threadKm', 'threadM'],
    ['lb', 'oz'],
    ['kg', 'g'],
    ['h', 'min', 's'],
  ];
  return chains.some((chain) => {
    const at = chain.indexOf(larger);
    return at >= 0 && chain.indexOf(smaller) > at;
  });
}

interface Quotient {
  readonly top: number;
  readonly bottom: number;
}

function partQuotient(id: UnitId, { numerator, denominator }: NumberText): Quotient {
  const { times, over } = units[id];
  return { top: numerator * times, bottom: denominator * over };
}

/** One rounding only, at the end, as long as the whole numbers stay exact; else one for each part. */
function added(a: Quotient, b: Quotient): Quotient {
  if (a.top === 0) return b;
  const exact =
    a.bottom === b.bottom
      ? { top: a.top + b.top, bottom: a.bottom }
      : { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom };
  const safe = Number.isSafeInteger(exact.top) && Number.isSafeInteger(exact.bottom);
  return safe ? exact : { top: a.top / a.bottom + b.top / b.bottom, bottom: 1 };
}
