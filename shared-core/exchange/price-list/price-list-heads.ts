/** The headings of a price list: which column is where, and in what unit its bare numbers are. */
import { say } from '../../wording/say.ts';
import { meansCurrency } from '../../measure/money/currency.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { type UnitId, unitSpelled } from '../../measure/units.ts';
import { type ColumnName, columns } from './price-list-shape.ts';

export interface PriceHeads {
  readonly places: ReadonlyMap<ColumnName, number>;
  readonly units: PriceUnits;
  /** Columns that no offer needs, as they are headed. */
  readonly unread: readonly string[];
}

/** What a bare number is of. "at least" and the breaks of what is sold by length or mass have each a unit of their own. */
export interface PriceUnits {
  readonly length: UnitId;
  readonly width: UnitId;
  readonly thread: UnitId;
  readonly mass: UnitId;
  readonly minLength: UnitId;
  readonly minMass: UnitId;
}

const defaultUnits: PriceUnits = {
  length: 'cm',
  width: 'cm',
  thread: 'threadM',
  mass: 'g',
  minLength: 'cm',
  minMass: 'g',
};

/** How the lists that are saved here head it. */
export const minHead = 'at least (cm, g or units)';

const needed: readonly ColumnName[] = ['supplier', 'item', 'sold as', 'price', 'priced on'];

export function priceHeads(heads: readonly string[], currency: string): Result<PriceHeads> {
  const places = new Map<ColumnName, number>();
  const units = { ...defaultUnits };
  const unread: string[] = [];
  const problems: Problem[] = [];
  for (const [index, head] of heads.entries()) {
    const name = columnOf(head);
    if (!name) {
      if (head.trim() !== '') unread.push(head.trim().slice(0, 60));
      continue;
    }
    const where = say('price-list-heads.line-1-column', { name });
    if (places.has(name))
      problems.push({
        where,
        what: say('price-list-heads.stands-there-a-second-time'),
        fix: say('price-list-heads.take-one-of-the-two-out'),
      });
    places.set(name, index);
    const inBrackets = [...head.matchAll(/\(([^()]*)\)/g)].map((match) => match[1]!.trim()).join(' ');
    if (inBrackets === '' || head.trim().toLowerCase() === minHead) continue;
    const isRead = takeUnit(name, inBrackets, currency, units);
    if (!isRead) problems.push({ where, ...wrongUnit(name, inBrackets, currency) });
  }
  const missing = needed.filter((name) => !places.has(name));
  if (missing.length > 0) {
    problems.push({
      where: say('price-list-heads.line-1'),
      what: say('price-list-heads.has-no-column', {
        missing: missing.map((name) => `"${name}"`).join(say('price-list-heads.and-no-column')),
      }),
      fix: say('price-list-heads.name-the-columns', { columns: columns.join(', ') }),
    });
  }
  return problems.length > 0 ? err(...problems) : ok({ places, units, unread });
}

function columnOf(head: string): ColumnName | undefined {
  const plain = head
    .slice(0, 200)
    .replace(/\([^()]*\)/g, '')
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ');
  return columns.find((column) => column === plain);
}

/** False where what stands in brackets is no unit that the column can be in. */
function takeUnit(
  name: ColumnName,
  text: string,
  currency: string,
  units: { -readonly [Key in keyof PriceUnits]: UnitId },
): boolean {
  const take = (key: keyof PriceUnits, kind: 'length' | 'threadLength' | 'mass'): boolean => {
    const id = unitSpelled(kind, text.toLowerCase());
    if (id) units[key] = id;
    return id !== undefined;
  };
  switch (name) {
    case 'step or length':
      return take('length', 'length');
    case 'width':
      return take('width', 'length');
    case 'thread':
      return take('thread', 'threadLength');
    case 'mass':
      return take('mass', 'mass');
    case 'at least':
      return take('minLength', 'length') || take('minMass', 'mass');
    case 'pieces':
      return unitSpelled('count', text.toLowerCase()) !== undefined;
    case 'price':
      return meansCurrency(text, currency);
    case 'breaks':
      return false;
    case 'supplier':
    case 'kind':
    case 'item':
    case 'colour':
    case 'sold as':
    case 'priced on':
      return true;
    default:
      return name satisfies never;
  }
}

function wrongUnit(name: ColumnName, text: string, currency: string): Pick<Problem, 'what' | 'fix'> {
  const said = text.slice(0, 40);
  if (name === 'price')
    return {
      what: say('price-list-heads.is-in-and-the-workshop-reckons', { said, currency }),
      fix: say('price-list-heads.turn-the-prices-into-first', { currency }),
    };
  if (name === 'breaks')
    return {
      what: say('price-list-heads.is-headed-which-says-nothing', { said }),
      fix: say('price-list-heads.head-it-breaks-and-write-the'),
    };
  return {
    what: say('price-list-heads.is-in-which-is-no-unit', { said }),
    fix: say('price-list-heads.write-a-unit-such-as-cm'),
  };
}
