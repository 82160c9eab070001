/** A number of a plan that is out of its bounds, said so that a maker can mend it. */
import type { Problem } from '../../measure/problem.ts';

/** Null where value lies from least to most; unit stands behind the bounds, or is empty. */
export function outside(
  where: string,
  value: number,
  min: number,
  max: number,
  unit: string,
): Problem | null {
  if (Number.isFinite(value) && value >= min && value <= max) return null;
  const what = !Number.isFinite(value) ? 'is not a number' : value < min ? 'is too small' : 'is too large';
  return { where, what, fix: `Type a value from ${min} to ${max}${unit === '' ? '' : ` ${unit}`}.` };
}

export function present(problems: readonly (Problem | null)[]): Problem[] {
  return problems.filter((problem) => problem !== null);
}
