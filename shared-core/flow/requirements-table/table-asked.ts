/** What a maker types to ask for a table of requirements: widths of cloth, with or without nap. */
import { say } from '../../wording/say.ts';
import { maxTableCells, type Nap, tableSizes } from './requirements-table.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { readQuantity } from '../../measure/read.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';

/** Widths that coat cloth is commonly sold in, as typed (common practice, no source). */
export const defaultWidths: Readonly<Record<MeasureSystem, string>> = {
  get metric() {
    return say('table-asked.115-cm-140-cm-150-cm');
  },
  get imperial() {
    return say('table-asked.45-in-54-in-60-in');
  },
};

/** Nobody prints more columns. */
const maxWidths = 8;
const narrowestMm = 200;
const widestMm = 5000;

/** Widths in mm, rising, each once. Several stand apart by semicolons, or by commas with a space: "115; 140 cm". */
export function readWidths(text: string, system: MeasureSystem): Result<readonly number[]> {
  const where = say('table-asked.width-of-the-cloth');
  const words = text.split(/;|\n|,(?=\s)/).filter((word) => word.trim() !== '');
  if (words.length === 0) {
    return err({
      where,
      what: say('common.is-missing'),
      fix: say('table-asked.type-one-or-several-such-as', { defaultWidths: defaultWidths[system] }),
    });
  }
  if (words.length > maxWidths) {
    const what = say('table-asked.is-given-times', { wordsCount: words.length });
    return err({ where, what, fix: say('table-asked.give-widths-at-most', { maxWidths }) });
  }
  const options = {
    system,
    where,
    min: narrowestMm,
    max: widestMm,
    unit: { metric: 'cm', imperial: 'in' },
  } as const;
  const outcomes = words.map((word) => readQuantity('length', word.trim(), options));
  const problems = outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.problems));
  if (problems.length > 0) return err(...problems);
  const widths = new Set(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])));
  return ok([...widths].sort((a, b) => a - b));
}

export type NapAsked = 'with' | 'without' | 'both';

export function napsOf(asked: NapAsked): readonly Nap[] {
  switch (asked) {
    case 'with':
      return ['with nap'];
    case 'without':
      return ['without nap'];
    case 'both':
      return ['without nap', 'with nap'];
    default:
      return asked satisfies never;
  }
}

/** Why so many cells cannot be asked for, or null. */
export function tooManyCells(
  plan: CoatPlan,
  widthCount: number,
  napCount: number,
  slotCount: number,
): Problem | null {
  const count = tableSizes(plan).length * widthCount * napCount * slotCount;
  if (count <= maxTableCells) return null;
  return {
    where: say('common.the-table'),
    what: say('table-asked.has-cells', { count }),
    fix: say('table-asked.choose-fewer-widths-or-materials-cells', { maxTableCells }),
  };
}
