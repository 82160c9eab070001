/** Measured by `npm run -s bench:falls -- --write`, which writes this file. Shares of the length that stands. */
import type { FallsByPieces } from './still-falls.ts';

/** Seconds that each lay was looked for, and how many lays were. */
export const measuredUntilS = 30;
export const measuredLays = 0;

export const measuredFalls: readonly FallsByPieces[] = [
  { mostPieces: 14, lays: 0, falls: [{ seconds: 0.3, low: 0.0, median: 0.01, high: 0.02 }] },
  { mostPieces: Infinity, lays: 0, falls: [{ seconds: 0.3, low: 0.02, median: 0.04, high: 0.08 }] },
];
