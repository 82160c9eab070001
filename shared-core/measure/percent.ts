import { withDecimalSign } from '../wording/number-signs.ts';

/** A ratio as a maker reads it: 0.125 is "12.5 %", at most one decimal. */
export function percent(ratio: number): string {
  return `${withDecimalSign(String(Number((ratio * 100).toFixed(1))))} %`;
}
