/** What a maker types to ask for a table of requirements: widths of cloth, with or without nap. */
import { mostTableCells, type Nap, tableSizes } from './requirements-table.ts';
import { found, type Outcome, type Problem, refused } from '../../measure/problem.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { readQuantity } from '../../measure/read.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';

/** Widths that coat cloth is commonly sold in, as typed (common practice, no source). */
export const usualWidths: Readonly<Record<MeasureSystem, string>> = {
  metric: '115 cm; 140 cm; 150 cm',
  imperial: '45 in; 54 in; 60 in',
};

/** Nobody prints more columns. */
const mostWidths = 8;
const narrowestMm = 200;
const widestMm = 5000;

/** Widths in mm, rising, each once. Several stand apart by semicolons, or by commas with a space: "115; 140 cm". */
export function readWidths(text: string, system: MeasureSystem): Outcome<readonly number[]> {
  const where = 'Width of the cloth';
  const words = text.split(/;|\n|,(?=\s)/).filter((word) => word.trim() !== '');
  if (words.length === 0) {
    return refused({
      where,
      what: 'is missing',
      mend: `Type one or several, such as ${usualWidths[system]}.`,
    });
  }
  if (words.length > mostWidths) {
    const what = `is given ${words.length} times`;
    return refused({ where, what, mend: `Give ${mostWidths} widths at most.` });
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
  if (problems.length > 0) return refused(...problems);
  const widths = new Set(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])));
  return found([...widths].sort((a, b) => a - b));
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
  if (count <= mostTableCells) return null;
  return {
    where: 'The table',
    what: `has ${count} cells`,
    mend: `Choose fewer widths or materials: ${mostTableCells} cells at most.`,
  };
}
