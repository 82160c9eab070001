/** Amounts of money in bars that are stacked of parts: what a picture of them and the table beside it both show. */
import { say } from '../wording/say.ts';

export interface StackedBar {
  readonly key: string;
  readonly label: string;
  /** Minor units of each part, in the order of the parts; 0 or more. */
  readonly amountsMinor: readonly number[];
}

export interface StackedBars {
  /** In the order in which they are stacked. */
  readonly parts: readonly { readonly key: string; readonly label: string }[];
  readonly bars: readonly StackedBar[];
}

/** Bars of parts that are known by their keys; a part that a bar lacks is 0 there. */
export function stackedBars(
  parts: StackedBars['parts'],
  bars: readonly {
    readonly key: string;
    readonly label: string;
    readonly amounts: ReadonlyMap<string, number>;
  }[],
): StackedBars {
  return {
    parts,
    bars: bars.map(({ key, label, amounts }) => ({
      key,
      label,
      amountsMinor: parts.map((part) => amounts.get(part.key) ?? 0),
    })),
  };
}

export function barTotalMinor({ amountsMinor }: StackedBar): number {
  return amountsMinor.reduce((sum, amountMinor) => sum + amountMinor, 0);
}

/** The key of the part that stands for several. */
export const smallerParts = () => say('bars.smaller-parts');

/** At most so many parts, 2 or more: the last of them stands for all that come after the ones before it. */
export function inFewParts({ parts, bars }: StackedBars, max: number): StackedBars {
  if (parts.length <= max) return { parts, bars };
  const kept = max - 1;
  const label = say('bars.smaller-ones', { partsCount: parts.length - kept });
  return {
    parts: [...parts.slice(0, kept), { key: smallerParts(), label }],
    bars: bars.map((bar) => ({
      ...bar,
      amountsMinor: [
        ...bar.amountsMinor.slice(0, kept),
        bar.amountsMinor.slice(kept).reduce((sum, amountMinor) => sum + amountMinor, 0),
      ],
    })),
  };
}
