/** A number of a plan that is out of its bounds, said so that a maker can mend it. */
import type { Problem } from '../../measure/problem.ts';

/** Null where value lies from least to most; unit stands behind the bounds, or is empty. */
export function outside(
  where: string,
  value: number,
  least: number,
  most: number,
  unit: string,
): Problem | null {
  if (Number.isFinite(value) && value >= least && value <= most) return null;
  const what = !Number.isFinite(value) ? 'is not a number' : value < least ? 'is too small' : 'is too large';
  return { where, what, mend: `Type a value from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}.` };
}

export function present(problems: readonly (Problem | null)[]): Problem[] {
  return problems.filter((problem) => problem !== null);
}
