/** The parts of what a maker types: a number and its unit, or several that add up ("2 yd 4 in"). */
import { say } from '../wording/say.ts';
import { type NumberText, readNumber } from './number-text.ts';
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
  unitSymbol,
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
  /** Typed in a language that writes a decimal comma. */
  readonly decimalComma?: boolean;
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

/** How high down stands says nothing without how much was poured in. */
const heightAlone: Unread = {
  get what() {
    return say('read.is-a-height-without-the-mass');
  },
  get fix() {
    return say('read.type-it-with-its-sample-120');
  },
};

/** What stands behind the sign, in plain text, as a value inside; or what is unreadable in it. */
export function readUnsigned(kind: QuantityKind, text: string, options: ReadOptions): number | Unread {
  // "2 yd.5 in" may be 2 yd 5 in or 2 yd and half an inch.
  if (/[a-z][.,]\d/.test(text)) return {};
  // In some countries 1'000 is a thousand, elsewhere a foot and no inches.
  if (/\d'\d{3}/.test(text)) return {};
  switch (kind) {
    case 'money':
      return readMoney(text, options.currency ?? '', options);
    case 'threadSize':
      return readThreadSize(
        text,
        options.unit ? fieldUnit(kind, options.system, options.unit) : 'tex',
        options,
      );
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
      return { what: say('common.is-not-a-whole-number'), fix: say('read.type-a-whole-number-such-as') };
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

/** "2 yd 4 in" as its parts; a sign to join them ("and", "und", a comma, the dash of 1'-6") is dropped. */
function splitParts(
  text: string,
  kind: QuantityKind,
  { decimalComma = false }: ReadOptions,
): readonly Part[] | Unread {
  const parts: Part[] = [];
  let rest = text;
  while (rest !== '') {
    const number = readNumber(rest, { commaGroups: kind === 'count', decimalComma });
    if (number === 'two ways') {
      return { what: say('read.says-which-could-be-read-in', { text }), fix: twoWays(rest, decimalComma) };
    }
    if (typeof number === 'string') return {};
    const after = number.rest.trimStart();
    if (!addedUp.has(kind)) return [{ number, unitText: after }];
    const stop = /[.,]?\d/.exec(after)?.index ?? after.length;
    let unitText = after.slice(0, stop);
    rest = after.slice(stop);
    if (rest !== '')
      unitText = unitText.replace(/(?: (?:and|und) | ?& ?|, ?| ?\+ ?)$/, '').replace(/^(') ?- ?$/, '$1');
    parts.push({ number, unitText: unitText.trim() });
  }
  return parts.length > 0 ? parts : {};
}

function twoWays(text: string, decimalComma: boolean): string {
  const typed = /^[\d.,]+/.exec(text)?.[0] ?? text;
  const [sign, decimal] = decimalComma ? ['.', ','] : [',', '.'];
  return say('read.type-or-without-a-comma', {
    typed: typed.replace(sign!, decimal!),
    typed2: typed.replace(sign!, ''),
  });
}

function readParts(kind: QuantityKind, text: string, options: ReadOptions): number | Unread {
  const parts = splitParts(text, kind, options);
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
        what: say('read.says-which-could-be-read-in', { text }),
        fix: say('read.type-it-with-a-sign-such', {
          text,
          numerator: showQuantity('ratio', number.numerator / number.denominator, options),
        }),
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
    ? {
        what: say('read.is-in-which-is-no-unit', {
          symbol: unitSymbol(other),
          quantityFactsName: quantityFacts[kind].name,
        }),
      }
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
