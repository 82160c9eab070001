/** Shares of fibres as a label of the US and of the EU prints them, and what a printed share may differ by. */
import type { FibreShare } from './fibre.ts';
import { fibres } from './fibre-names.ts';

/** What a stated share may differ from the true one: 3 % of the total fibre mass. Sources: 16 CFR 303.43 and EU 1007/2011 art. 20, from memory. */
export const labelToleranceRatio = 0.03;

/** Fibres below this are "other fiber" on a US label, unless they are wool or have a function. Source: 16 CFR 303.3. */
export const otherFiberBelowRatio = 0.05;

interface Printed {
  readonly name: string;
  readonly shareRatio: number;
  /** Printed even where it rounds to 0 %. */
  readonly isAlways?: boolean;
}

/** "72% cotton, 25% nylon, 3% other fiber"; wool is named at any share, "less than 1% wool" included. */
export function usText(shares: readonly FibreShare[]): string {
  const named = shares.filter(({ fibre, shareRatio }) => {
    const { isWool, isFunctional } = fibres[fibre];
    return shareRatio >= otherFiberBelowRatio - 1e-9 || isWool || isFunctional;
  });
  const others = shares.filter((share) => !named.includes(share));
  const othersRatio = others.reduce((sum, { shareRatio }) => sum + shareRatio, 0);
  const rows: Printed[] = named.map(({ fibre, shareRatio }) => ({
    name: fibres[fibre].us,
    shareRatio,
    isAlways: fibres[fibre].isWool === true,
  }));
  if (others.length > 0)
    rows.push({ name: others.length > 1 ? 'other fibers' : 'other fiber', shareRatio: othersRatio });
  return percentText(rows, '%');
}

/** "72 % cotton, 25 % polyamide, 3 % elastane"; fibres that share a name, as wool new and recycled, are one. */
export function euText(shares: readonly FibreShare[]): string {
  const byName = new Map<string, number>();
  for (const { fibre, shareRatio } of shares) {
    const name = fibres[fibre].eu;
    byName.set(name, (byName.get(name) ?? 0) + shareRatio);
  }
  const rows = [...byName].map(([name, shareRatio]) => ({ name, shareRatio }));
  return percentText(
    rows.sort((a, b) => b.shareRatio - a.shareRatio),
    ' %',
  );
}

/** A trace that rounds to 0 % is not printed. */
function percentText(rows: readonly Printed[], sign: string): string {
  const percents = wholePercents(rows.map((row) => row.shareRatio));
  return rows
    .map((row, index) => ({ ...row, percent: percents[index]! }))
    .filter((row) => row.percent > 0 || row.isAlways)
    .map((row) => `${row.percent > 0 ? row.percent : 'less than 1'}${sign} ${row.name}`)
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
  readonly minRatio: number;
  readonly maxRatio: number;
} {
  if (!(shareRatio >= 0 && shareRatio <= 1)) throw new RangeError(`a share of ${shareRatio}`);
  return {
    minRatio: Math.max(0, shareRatio - labelToleranceRatio),
    maxRatio: Math.min(1, shareRatio + labelToleranceRatio),
  };
}

/** True when a label that states `statedRatio` stands for cloth that really has `trueRatio` of the fibre. */
export function isWithinLabelTolerance(statedRatio: number, trueRatio: number): boolean {
  return Math.abs(statedRatio - trueRatio) <= labelToleranceRatio + 1e-9;
}
