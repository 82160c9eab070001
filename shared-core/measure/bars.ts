/** Amounts of money in bars that are stacked of parts: what a picture of them and the table beside it both show. */

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
