/** From measured lays to how much further a lay usually falls, by number of pieces. */

export interface MeasuredFall {
  readonly name: string;
  readonly pieces: number;
  readonly endMm: number;
  /** After so many seconds: what the lay still lost until the end, as a share of what stood. None once at the floor. */
  readonly falls: readonly { readonly seconds: number; readonly share: number }[];
}

/** A row holds lays of up to so many pieces; null: of any number. */
const rowsUpTo: readonly (number | null)[] = [14, 45, null];

/** The share that this part of the numbers stays at or under, between two of them where it falls between. */
export function quantile(numbers: readonly number[], part: number): number {
  if (numbers.length === 0) return 0;
  const sorted = numbers.toSorted((a, b) => a - b);
  const at = part * (sorted.length - 1);
  const low = sorted[Math.floor(at)]!;
  return low + (sorted[Math.ceil(at)]! - low) * (at - Math.floor(at));
}

/**
 * For each row that has lays: lower quartile, median and what nine of ten stay under, rounded to a tenth of a per cent.
 */
export function fallsTable(rows: readonly MeasuredFall[], marksS: readonly number[]) {
  return rowsUpTo.flatMap((maxPieces, index) => {
    const min = index === 0 ? 0 : rowsUpTo[index - 1]!;
    const own = rows.filter(({ pieces }) => pieces > min && pieces <= (maxPieces ?? Infinity));
    if (own.length === 0) return [];
    const share = (mark: number, part: number) => {
      const shares = own.flatMap(({ falls }) =>
        falls.filter(({ seconds }) => seconds === mark).map((fall) => fall.share),
      );
      return Math.round(quantile(shares, part) * 1000) / 1000;
    };
    // Fewer lays are open later, so a quartile may rise where each of them falls: no more is told than was told before.
    const before = { low: Infinity, median: Infinity, high: Infinity };
    const falls = marksS.map((seconds) => {
      before.low = Math.min(before.low, share(seconds, 0.25));
      before.median = Math.min(before.median, share(seconds, 0.5));
      before.high = Math.min(before.high, share(seconds, 0.9));
      return { seconds, ...before };
    });
    return [{ maxPieces, lays: own.length, falls }];
  });
}
