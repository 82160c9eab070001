/** Measured by `npm run -s bench:falls -- --write`, which writes this file. Shares of the length that stands. */
import type { FallsByPieces } from './falls-by-pieces.ts';

/** Seconds that each lay was looked for, and how many lays were. */
export const measuredUntilS = 30;
export const measuredLays = 12;

export const measuredFalls: readonly FallsByPieces[] = [
  {
    maxPieces: 14,
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
    maxPieces: 45,
    lays: 5,
    falls: [
      { seconds: 0.3, low: 0.017, median: 0.053, high: 0.127 },
      { seconds: 0.5, low: 0.011, median: 0.035, high: 0.07 },
      { seconds: 1, low: 0.011, median: 0.025, high: 0.037 },
      { seconds: 3, low: 0.008, median: 0.011, high: 0.018 },
      { seconds: 5, low: 0.006, median: 0.007, high: 0.018 },
      { seconds: 10, low: 0.003, median: 0.003, high: 0.013 },
    ],
  },
  {
    maxPieces: Infinity,
    lays: 4,
    falls: [
      { seconds: 0.3, low: 0.086, median: 0.108, high: 0.223 },
      { seconds: 0.5, low: 0.051, median: 0.061, high: 0.182 },
      { seconds: 1, low: 0.038, median: 0.045, high: 0.087 },
      { seconds: 3, low: 0.018, median: 0.019, high: 0.02 },
      { seconds: 5, low: 0.015, median: 0.017, high: 0.019 },
      { seconds: 10, low: 0.005, median: 0.005, high: 0.013 },
    ],
  },
];
