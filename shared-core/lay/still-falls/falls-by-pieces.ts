/** How lays of so many pieces were measured to fall. */

/** Further falls of lays of up to so many pieces, after so many seconds, as shares of the length that stands. */
export interface FallsByPieces {
  readonly maxPieces: number;
  readonly lays: number;
  readonly falls: readonly MeasuredFalls[];
}

export interface Falls {
  /** A quarter of the lays fall by less, half of them by more than the median, a tenth by more than the high. */
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

export type MeasuredFalls = Falls & { readonly seconds: number };
