/** Fibre content as makers write it ("65 % cotton, 35 % polyester") read into shares of generic fibres. */
import { found, type Outcome, type Problem, refused } from '../measure/problem.ts';

interface FibreRecord {
  /** Generic name by US rule, 16 CFR 303. */
  readonly us: string;
  /** Name by EU 1007/2011. */
  readonly eu: string;
  /** Other words makers use. */
  readonly alias: readonly string[];
}

/** Generic names. Sources: 16 CFR 303.7 and Annex I of EU 1007/2011, from memory. Down and feathers are no textile fibre. */
export const fibres = {
  cotton: { us: 'cotton', eu: 'cotton', alias: ['organic cotton', 'recycled cotton'] },
  linen: { us: 'linen', eu: 'linen', alias: ['flax'] },
  hemp: { us: 'hemp', eu: 'hemp', alias: [] },
  wool: { us: 'wool', eu: 'wool', alias: ['merino', 'merino wool', 'lambswool'] },
  cashmere: { us: 'cashmere', eu: 'cashmere', alias: [] },
  silk: { us: 'silk', eu: 'silk', alias: [] },
  nylon: { us: 'nylon', eu: 'polyamide', alias: ['pa', 'recycled nylon'] },
  polyester: { us: 'polyester', eu: 'polyester', alias: ['pet', 'recycled polyester'] },
  acrylic: { us: 'acrylic', eu: 'acrylic', alias: [] },
  modacrylic: { us: 'modacrylic', eu: 'modacrylic', alias: [] },
  spandex: { us: 'spandex', eu: 'elastane', alias: [] },
  rayon: { us: 'rayon', eu: 'viscose', alias: [] },
  lyocell: { us: 'lyocell', eu: 'lyocell', alias: [] },
  modal: { us: 'modal', eu: 'modal', alias: [] },
  cupro: { us: 'cupro', eu: 'cupro', alias: [] },
  acetate: { us: 'acetate', eu: 'acetate', alias: [] },
  triacetate: { us: 'triacetate', eu: 'triacetate', alias: [] },
  polypropylene: { us: 'olefin', eu: 'polypropylene', alias: [] },
  down: { us: 'down', eu: 'down', alias: ['goose down', 'duck down'] },
  feather: { us: 'feathers', eu: 'feathers', alias: ['waterfowl feathers'] },
} as const satisfies Record<string, FibreRecord>;

export type Fibre = keyof typeof fibres;

export interface FibreShare {
  readonly fibre: Fibre;
  /** Of the mass, above 0, at most 1. */
  readonly shareRatio: number;
}

const fibreByWord = new Map<string, Fibre>();
for (const [name, record] of Object.entries(fibres) as [Fibre, FibreRecord][]) {
  for (const word of [name, record.us, record.eu, ...record.alias]) fibreByWord.set(word, name);
}

/** Shares may miss 100 % by this, as when thirds are written 33.3 %. */
const sumToleranceRatio = 0.005;

/**
 * Shares of a fibre text, largest first; one name twice is added up. A lone name without a number is all of it.
 * Names outside the generic ones, numbers that cannot be read and shares that do not add up to 100 % are problems.
 * where: whose text it is, for the problem.
 */
export function readFibre(text: string, where: string): Outcome<readonly FibreShare[]> {
  // A comma between two digits is a decimal one.
  const parts = text
    .split(/(?<!\d),|,(?!\d)|[;/+]|\band\b/i)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) {
    return refused({ where, what: 'is missing', mend: 'Type it like 65 % cotton, 35 % polyester.' });
  }
  const problems: Problem[] = [];
  const shares = new Map<Fibre, number>();
  for (const part of parts) {
    const read = readPart(part, parts.length === 1, where);
    if (read.ok) shares.set(read.value.fibre, (shares.get(read.value.fibre) ?? 0) + read.value.shareRatio);
    else problems.push(...read.problems);
  }
  if (problems.length > 0) return refused(...problems);
  const sum = [...shares.values()].reduce((total, share) => total + share, 0);
  if (Math.abs(sum - 1) > sumToleranceRatio) {
    return refused({
      where,
      what: `adds up to ${Number((sum * 100).toFixed(1))} %`,
      mend: 'Make the shares add up to 100 %.',
    });
  }
  return found(
    [...shares]
      .map(([fibre, share]) => ({ fibre, shareRatio: share / sum }))
      .sort((a, b) => b.shareRatio - a.shareRatio),
  );
}

function readPart(part: string, isOnly: boolean, where: string): Outcome<FibreShare> {
  const numberFirst = /^(\d+(?:[.,]\d+)?)\s*%?\s*([a-z][a-z -]*)$/i.exec(part);
  const nameFirst = /^([a-z][a-z -]*?)\s*(\d+(?:[.,]\d+)?)\s*%?$/i.exec(part);
  const [name, number] = numberFirst
    ? [numberFirst[2]!, numberFirst[1]!]
    : nameFirst
      ? [nameFirst[1]!, nameFirst[2]!]
      : isOnly && /^[a-z][a-z -]*$/i.test(part)
        ? [part, '100']
        : [null, null];
  if (name === null) {
    return refused({
      where,
      what: `has a part that cannot be read: ${part}`,
      mend: 'Type it like 65 % cotton, 35 % polyester.',
    });
  }
  const fibre = fibreByWord.get(name.trim().toLowerCase().replace(/\s+/g, ' '));
  if (!fibre) {
    return refused({
      where,
      what: `names no generic fibre: ${name.trim()}`,
      mend: 'Use the generic name, such as cotton, nylon, polyester or wool.',
    });
  }
  const shareRatio = Number(number.replace(',', '.')) / 100;
  if (!(shareRatio > 0 && shareRatio <= 1)) {
    return refused({
      where,
      what: `has a share of ${number} %`,
      mend: 'Type a share above 0 and up to 100 %.',
    });
  }
  return found({ fibre, shareRatio });
}

/** Fibres of mixed masses, largest first, as shares of all of them. Empty for no mass. */
export function mixedFibres(
  parts: readonly { readonly massG: number; readonly shares: readonly FibreShare[] }[],
): readonly FibreShare[] {
  const masses = new Map<Fibre, number>();
  for (const part of parts) {
    for (const { fibre, shareRatio } of part.shares) {
      masses.set(fibre, (masses.get(fibre) ?? 0) + part.massG * shareRatio);
    }
  }
  const allG = [...masses.values()].reduce((sum, massG) => sum + massG, 0);
  if (!(allG > 0)) return [];
  return [...masses]
    .filter(([, massG]) => massG > 0)
    .map(([fibre, massG]) => ({ fibre, shareRatio: massG / allG }))
    .sort((a, b) => b.shareRatio - a.shareRatio);
}
