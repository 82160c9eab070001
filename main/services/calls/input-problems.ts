/** What a contract's schema found wrong with an input, as sentences for the maker. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { decimalSign, grouped } from '../../../shared-core/wording/number-signs.ts';
import type { z } from 'zod';
import type { Problem } from '../../../shared-core/measure/problem.ts';

type Issue = z.core.$ZodIssue;

/** Past these the rest is told when the first are mended. */
const maxProblems = 20;
/** Of what was sent under names that nothing here has. */
const maxNamed = 5;
const longestWord = 40;

export function inputProblems(error: z.ZodError, input: unknown): Problem[] {
  return error.issues.slice(0, maxProblems).map((issue) => {
    const { what, fix } = clauses(issue);
    return { where: placeInWords(issue.path, input), what, fix };
  });
}

/** Fields whose name, taken apart, is not what a form calls them. */
const fieldWords: Readonly<Record<string, string>> = {
  priceMinor: 'price',
  pricedOn: 'date of the price',
  hourlyRateMinor: 'rate of an hour',
  amountMinor: 'amount',
  retail: 'retail price',
  wholesale: 'wholesale price',
  labourMinutesPerCoat: 'work on one coat',
  leastCount: 'least number sold',
  fromCount: 'number from which it holds',
  deliveryMinor: 'delivery',
  freeFromMinor: 'sum from which delivery is free',
  leadDays: 'days of delivery',
  text: 'file',
  photoBase64: 'photo',
  receivedOn: 'date received',
  coatCount: 'number of coats',
  cutCount: 'number to cut',
  plyCount: 'plies',
  counted: 'count',
  workshopName: 'name of the workshop',
  itemId: 'item',
  lotId: 'lot',
  lengthId: 'length',
  planId: 'plan',
  offerId: 'offer',
  said: 'what was changed',
  widthX: 'width along',
  widthY: 'width across',
  sortBy: 'sorting',
  jobHash: 'name of the lay',
  cuttingId: 'cutting',
  isPutAway: 'put away',
  slotId: 'slot',
  basedOn: 'revision of the plan',
  pieceAreaMm2: 'area of the pieces',
  trimmedMm2: 'area that is trimmed off',
  releasesRest: 'releasing of the rest',
  kept: 'remnants',
  met: 'what was cut',
};

/** Lists that are spoken of one by one. */
const oneOf: Readonly<Record<string, string>> = {
  lengths: 'length',
  lots: 'purchase',
  flaws: 'flaw',
  pieces: 'piece',
  slots: 'slot',
  seams: 'seam',
  edges: 'edge',
  segments: 'line',
  notches: 'notch',
  cutFrom: 'material',
  alongEdges: 'edge',
  kinds: 'kind',
  entries: 'plan',
  placements: 'placed piece',
  breaks: 'price break',
  uses: 'place',
  counts: 'count',
  itemIds: 'item',
  coats: 'size',
  lines: 'amount',
  kept: 'remnant',
  shapes: 'piece',
};

/** Steps that say nothing to a maker. */
const unspoken = new Set([
  'lot',
  'firstLot',
  'plan',
  'outline',
  'unit',
  'facts',
  'typed',
  'result',
  'pricing',
]);

/** "Price", "Length 2, width", "Piece 3 (hood), edge 2 (hem), allowance". */
export function placeInWords(path: readonly PropertyKey[], input: unknown): string {
  const words: string[] = [];
  let value = input;
  path.forEach((step, index) => {
    value = (value as Record<PropertyKey, unknown> | null | undefined)?.[step];
    if (typeof step === 'number') {
      const list = String(path[index - 1] ?? 'line');
      words.push(`${codeWords(oneOf[list] ?? list)} ${step + 1}${nameOf(value)}`);
    } else if (!unspoken.has(String(step)) && typeof path[index + 1] !== 'number') {
      words.push(fieldInWords(String(step)));
    }
  });
  const place = words.join(', ');
  return place === '' ? say('input-problems.what-was-sent') : place[0]!.toUpperCase() + place.slice(1);
}

function nameOf(value: unknown): string {
  const name = (value as { readonly name?: unknown } | null | undefined)?.name;
  return typeof name === 'string' && name.trim() !== '' && name.length <= 120 ? ` (${name.trim()})` : '';
}

function fieldInWords(field: string): string {
  const known = fieldWords[field];
  if (known) return codeWords(known);
  const plain = shortened(field)
    .replace(/^(is|has)(?=[A-Z])/, '')
    .replace(/(Mm|Deg|Ratio|GPerM2|Tex|Nm|G|M)$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return codeWords(plain);
}

/** The first of them, none endless. */
function someOf(keys: readonly string[]): string {
  const shown = keys.slice(0, maxNamed).map(shortened);
  const rest = keys.length - shown.length;
  return rest > 0 ? say('input-problems.and-more', { shown: shown.join(', '), rest }) : shown.join(', ');
}

function shortened(word: string): string {
  return word.length > longestWord ? `${word.slice(0, longestWord - 1)}…` : word;
}

interface Clauses {
  readonly what: string;
  readonly fix: string;
}

function clauses(issue: Issue): Clauses {
  // The contract's own words begin with what is wrong: "is empty", in each language.
  if (/^(is|ist) /.test(issue.message))
    return { what: issue.message, fix: say('input-problems.check-it-and-type-it-anew') };
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue);
    case 'too_small':
      return tooSmall(issue);
    case 'too_big':
      return tooBig(issue);
    case 'invalid_value':
      return {
        what: say('input-problems.is-not-one-of-the-choices'),
        fix: say('input-problems.choose-one-of', { values: issue.values.map(String).join(', ') }),
      };
    case 'invalid_format':
      return issue.format === 'date'
        ? {
            what: say('input-problems.is-not-a-date'),
            fix: say('input-problems.give-year-month-and-day-such'),
          }
        : {
            what: say('input-problems.is-not-written-as-it-should'),
            fix: say('input-problems.check-it-and-type-it-anew'),
          };
    case 'unrecognized_keys':
      return {
        what: say('input-problems.holds-what-is-not-known-here', { someOf: someOf(issue.keys) }),
        fix: say('input-problems.leave-it-out'),
      };
    case 'invalid_union':
      return { what: say('input-problems.is-of-no-kind-that-is'), fix: say('input-problems.choose-it-anew') };
    case 'not_multiple_of':
    case 'invalid_key':
    case 'invalid_element':
    case 'custom':
      return {
        what: say('input-problems.is-not-what-is-expected-here'),
        fix: say('input-problems.check-it-and-type-it-anew'),
      };
    default:
      issue satisfies never;
      return {
        what: say('input-problems.is-not-what-is-expected-here'),
        fix: say('input-problems.check-it-and-type-it-anew'),
      };
  }
}

function wrongType(issue: Extract<Issue, { code: 'invalid_type' }>): Clauses {
  if (issue.input === undefined)
    return { what: say('common.is-missing'), fix: say('input-problems.fill-it-in') };
  switch (issue.expected) {
    case 'number':
      return { what: say('common.is-not-a-number'), fix: say('input-problems.type-a-number') };
    case 'int':
      return { what: say('common.is-not-a-whole-number'), fix: say('input-problems.type-a-whole-number') };
    case 'string':
      return { what: say('input-problems.is-not-a-text'), fix: say('input-problems.type-it-as-text') };
    case 'boolean':
      return {
        what: say('input-problems.is-neither-yes-nor-no'),
        fix: say('input-problems.choose-yes-or-no'),
      };
    case 'array':
      return { what: say('input-problems.is-not-a-list'), fix: say('input-problems.give-a-list') };
    default:
      return {
        what: say('input-problems.is-not-what-is-expected-here'),
        fix: say('input-problems.check-it-and-type-it-anew'),
      };
  }
}

function tooSmall(issue: Extract<Issue, { code: 'too_small' }>): Clauses {
  const min = Number(issue.minimum);
  if (issue.origin === 'string') {
    return min <= 1
      ? { what: say('common.is-empty'), fix: say('input-problems.fill-it-in') }
      : {
          what: say('input-problems.is-too-short'),
          fix: say('input-problems.type-at-least-letters', { min }),
        };
  }
  if (issue.origin === 'array')
    return {
      what: say('input-problems.has-too-few-entries'),
      fix: say('input-problems.give-at-least', { min }),
    };
  if (min === 0) {
    return issue.inclusive
      ? { what: say('common.is-negative'), fix: say('input-problems.give-0-or-more') }
      : { what: say('input-problems.is-not-above-0'), fix: say('input-problems.give-more-than-0') };
  }
  return {
    what: say('input-problems.is-too-small-to-be-true'),
    fix: say('input-problems.check-the-number-and-its-unit', { min }),
  };
}

/** "10,000", "0.5". */
function maxWords(max: number): string {
  const [whole = '', part] = String(Number(max.toFixed(3))).split('.');
  return [grouped(whole), ...(part === undefined ? [] : [part])].join(decimalSign());
}

function tooBig(issue: Extract<Issue, { code: 'too_big' }>): Clauses {
  const max = maxWords(Number(issue.maximum));
  if (issue.origin === 'string')
    return { what: say('common.is-too-long'), fix: say('input-problems.type-at-most-letters', { max }) };
  if (issue.origin === 'array')
    return {
      what: say('input-problems.has-too-many-entries'),
      fix: say('input-problems.give-at-most', { max }),
    };
  return {
    what: say('common.is-too-large-to-be-true'),
    fix: say('input-problems.check-the-number-and-its-unit-2', { max }),
  };
}
