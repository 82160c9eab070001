/**
 * The fibre label: shell, lining and filling each on its own line, whole percents that add up to 100, falling order.
 * What it gives is the arithmetic; the rules of the place of sale decide what must be printed.
 */
import type { Basis } from '../measure/basis.ts';
import type { Problem } from '../measure/problem.ts';
import type { CoatPlan, Slot } from '../plan/coat-plan.ts';
import { type Fibre, type FibreShare, fibres, mixedFibres, readFibre } from './fibre.ts';
import type { SlotItems } from './need.ts';

export type LabelSection = 'shell' | 'lining' | 'filling' | 'trim' | 'hidden';

/** One line of the label as printed. */
export interface LabelLine {
  readonly section: LabelSection;
  readonly slotNames: readonly string[];
  /** Of one coat. */
  readonly massG: number;
  readonly shares: readonly FibreShare[];
  /** "Shell: 72% cotton, 28% nylon": fibres under 5 % as other fiber, last. */
  readonly us: string;
  /** The same with EU names, all fibres named. */
  readonly eu: string;
}

export interface FibreLabel {
  /** Sections that are printed, in the order shell, lining, filling, trim. */
  readonly lines: readonly LabelLine[];
  /** What must be printed beside them for the EU; empty where nothing must. */
  readonly euNotes: readonly string[];
  /** What a stated share may differ from the true one, of all fibres; a line that states one fibre alone has none. */
  readonly toleranceRatio: number;
  readonly problems: readonly Problem[];
  readonly basis: readonly Basis[];
}

/** What a stated share may differ from the true one: 3 % of the total fibre mass. Sources: 16 CFR 303.43 and EU 1007/2011 art. 20, from memory. */
export const labelToleranceRatio = 0.03;

/** Fibres below this are "other fiber" on a US label, unless they have a definite function. Source: summary of 16 CFR 303. */
export const otherFiberBelowRatio = 0.05;

/** Parts of animals that are no textile fibre, and what EU 1007/2011 art. 12 asks to print of them, from memory. */
const animalParts: readonly Fibre[] = ['down', 'feather'];
const animalPartsNote = 'Contains non-textile parts of animal origin';

const functionalFibres: readonly string[] = ['spandex'];

const sectionOrder: readonly LabelSection[] = ['shell', 'lining', 'filling', 'trim'];

/**
 * Where a slot is named on the label: filling by kind; lining and trim by its name; seen cloth is shell; other cloth
 * (pocketing, backing, interfacing) holds the coat in shape and is not printed. Null for what is no textile of the label.
 */
export function labelSection(slot: Slot): LabelSection | null {
  switch (slot.kind) {
    case 'batting':
    case 'fill':
      return 'filling';
    case 'cloth':
      if (/\blining\b/i.test(slot.name)) return 'lining';
      if (/\b(trim|cuff|cuffs|rib|binding|piping)\b/i.test(slot.name)) return 'trim';
      return slot.isSeen ? 'shell' : 'hidden';
    case 'thread':
    case 'needle':
    case 'fastening':
      return null;
    default:
      return slot.kind satisfies never;
  }
}

/**
 * Label of one coat. massG: mass of each slot in one coat; null where it is not known.
 * A section with a material whose fibres or mass are not known is left out and said as a problem.
 */
export function fibreLabel(
  plan: CoatPlan,
  items: SlotItems,
  massG: ReadonlyMap<string, number | null>,
): FibreLabel {
  const problems: Problem[] = [];
  const lines: LabelLine[] = [];
  for (const section of sectionOrder) {
    const slots = plan.slots.filter((slot) => labelSection(slot) === section && massG.get(slot.id) !== 0);
    const parts: { massG: number; shares: readonly FibreShare[] }[] = [];
    for (const slot of slots) {
      const part = slotFibres(slot, items, massG.get(slot.id) ?? null, slots.length === 1);
      if ('problems' in part) problems.push(...part.problems);
      else parts.push(part);
    }
    if (slots.length === 0 || parts.length < slots.length) continue;
    const shares = mixedFibres(parts);
    if (shares.length === 0) continue;
    const title = section[0]!.toUpperCase() + section.slice(1);
    lines.push({
      section,
      slotNames: slots.map((slot) => slot.name),
      massG: parts.reduce((sum, part) => sum + part.massG, 0),
      shares,
      us: `${title}: ${usText(shares)}`,
      eu: `${title}: ${euText(shares)}`,
    });
  }
  return {
    lines,
    euNotes: lines.some((line) => line.shares.some(({ fibre }) => animalParts.includes(fibre)))
      ? [animalPartsNote]
      : [],
    toleranceRatio: labelToleranceRatio,
    problems,
    basis: [
      {
        kind: 'computed',
        how: 'fibres by mass of what is cut, section by section; a stated share may be 3 % of the fibre mass off',
        source:
          '16 CFR 303 (summary) and EU 1007/2011; tolerance from memory; the rules where it is sold decide',
      },
    ],
  };
}

function slotFibres(
  slot: Slot,
  items: SlotItems,
  massG: number | null,
  isAlone: boolean,
): { massG: number; shares: readonly FibreShare[] } | { problems: readonly Problem[] } {
  const item = items.get(slot.id);
  if (!item) {
    return {
      problems: [
        { where: `Slot ${slot.name}`, what: 'has no material yet', mend: 'Choose one from the stash.' },
      ],
    };
  }
  const text = 'fibre' in item.facts ? (item.facts.fibre ?? '') : '';
  const read = readFibre(text, `Fibre of ${item.name}`);
  if (!read.ok) return { problems: read.problems };
  if (massG !== null) return { massG, shares: read.value };
  // A section of one material has the shares of that material, whatever it weighs.
  if (isAlone) return { massG: 1, shares: read.value };
  return {
    problems: [
      {
        where: `Weight of ${item.name}`,
        what: 'is missing, so its fibres cannot be weighed',
        mend: 'Type its weight for its area.',
      },
    ],
  };
}

/** "72% cotton, 25% nylon, 3% other fiber". */
export function usText(shares: readonly FibreShare[]): string {
  const named = shares.filter(
    ({ fibre, shareRatio }) => shareRatio >= otherFiberBelowRatio || functionalFibres.includes(fibre),
  );
  const others = shares.filter((share) => !named.includes(share));
  const othersRatio = others.reduce((sum, { shareRatio }) => sum + shareRatio, 0);
  const rows = named.map(({ fibre, shareRatio }) => ({ name: fibres[fibre].us as string, shareRatio }));
  if (others.length > 0)
    rows.push({ name: others.length > 1 ? 'other fibers' : 'other fiber', shareRatio: othersRatio });
  return percentText(rows, '%');
}

/** "72 % cotton, 25 % polyamide, 3 % elastane". */
export function euText(shares: readonly FibreShare[]): string {
  return percentText(
    shares.map(({ fibre, shareRatio }) => ({ name: fibres[fibre].eu, shareRatio })),
    ' %',
  );
}

/** A trace that rounds to 0 % is not printed. */
function percentText(
  rows: readonly { readonly name: string; readonly shareRatio: number }[],
  sign: string,
): string {
  const percents = wholePercents(rows.map((row) => row.shareRatio));
  return rows
    .map((row, index) => ({ ...row, percent: percents[index]! }))
    .filter((row) => row.percent > 0)
    .map((row) => `${row.percent}${sign} ${row.name}`)
    .join(', ');
}

/**
 * Shares as whole percents that add up to 100: the largest remainders are rounded up, the earlier first.
 * The shares are 0 or more and add up to 1, else it throws.
 */
export function wholePercents(shareRatios: readonly number[]): readonly number[] {
  const sum = shareRatios.reduce((total, share) => total + share, 0);
  if (Math.abs(sum - 1) > 1e-6 || shareRatios.some((share) => share < 0)) {
    throw new RangeError(`shares that add up to ${sum}`);
  }
  const exact = shareRatios.map((share) => (share / sum) * 100);
  // A share that is a whole percent but for floating point counts as whole.
  const whole = exact.map((percent) => Math.floor(percent + 1e-9));
  const missing = 100 - whole.reduce((total, percent) => total + percent, 0);
  const byRemainder = exact
    .map((percent, index) => ({ index, remainder: percent - whole[index]! }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of byRemainder.slice(0, missing)) whole[index]! += 1;
  return whole;
}

/** The least and the most that a label may state for a true share, both 0 to 1. shareRatio: 0 to 1. */
export function statableRatios(shareRatio: number): {
  readonly leastRatio: number;
  readonly mostRatio: number;
} {
  if (!(shareRatio >= 0 && shareRatio <= 1)) throw new RangeError(`a share of ${shareRatio}`);
  return {
    leastRatio: Math.max(0, shareRatio - labelToleranceRatio),
    mostRatio: Math.min(1, shareRatio + labelToleranceRatio),
  };
}

/** True when a label that states `statedRatio` stands for cloth that really has `trueRatio` of the fibre. */
export function isWithinLabelTolerance(statedRatio: number, trueRatio: number): boolean {
  return Math.abs(statedRatio - trueRatio) <= labelToleranceRatio + 1e-9;
}
