/** A number of a plan that is out of its bounds, said so that a maker can mend it. */
import { say } from '../../wording/say.ts';
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
  const what = !Number.isFinite(value)
    ? say('common.is-not-a-number')
    : value < min
      ? say('number-problem.is-too-small')
      : say('common.is-too-large');
  return {
    where,
    what,
    fix: say('number-problem.type-a-value-from-to', { min, max, unit: unit === '' ? '' : ` ${unit}` }),
  };
}

export function present(problems: readonly (Problem | null)[]): Problem[] {
  return problems.filter((problem) => problem !== null);
}
