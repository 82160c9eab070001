/** Measured by `npm run -s bench:falls -- --write`, which writes this file. Shares of the length that stands. */
import type { FallsByPieces } from './still-falls.ts';

/** Seconds that each lay was looked for, and how many lays were. */
export const measuredUntilS = 30;
export const measuredLays = 10;

export const measuredFalls: readonly FallsByPieces[] = [
  {
    mostPieces: 14,
    lays: 3,
    falls: [
      { seconds: 0.3, low: 0, median: 0, high: 0 },
      { seconds: 0.5, low: 0, median: 0, high: 0 },
      { seconds: 1, low: 0, median: 0, high: 0 },
      { seconds: 3, low: 0, median: 0, high: 0 },
      { seconds: 5, low: 0, median: 0, high: 0 },
      { seconds: 10, low: 0, median: 0, high: 0 },
    ],
  },
  {
    mostPieces: 45,
    lays: 4,
    falls: [
      { seconds: 0.3, low: 0.021, median: 0.04, high: 0.093 },
      { seconds: 0.5, low: 0.021, median: 0.034, high: 0.049 },
      { seconds: 1, low: 0.01, median: 0.017, high: 0.026 },
      { seconds: 3, low: 0.001, median: 0.006, high: 0.011 },
      { seconds: 5, low: 0.001, median: 0.002, high: 0.005 },
      { seconds: 10, low: 0.001, median: 0.002, high: 0.004 },
    ],
  },
  {
    mostPieces: Infinity,
    lays: 3,
    falls: [
      { seconds: 0.3, low: 0.071, median: 0.074, high: 0.137 },
      { seconds: 0.5, low: 0.065, median: 0.068, high: 0.073 },
      { seconds: 1, low: 0.023, median: 0.025, high: 0.054 },
      { seconds: 3, low: 0.01, median: 0.012, high: 0.022 },
      { seconds: 5, low: 0.009, median: 0.012, high: 0.022 },
      { seconds: 10, low: 0.009, median: 0.012, high: 0.022 },
    ],
  },
];
