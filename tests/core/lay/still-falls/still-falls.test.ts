import { describe, expect, it } from 'vitest';
import {
  coverSentence,
  laySentence,
  listSentence,
  slotsBought,
  slotsStillFall,
} from '../../../../shared-core/flow/falls-of-estimate.ts';
import type { LayResult } from '../../../../shared-core/lay/job.ts';
import { lay } from '../../../../shared-core/lay/lay.ts';
import { type SlotLay, totalUsedMm } from '../../../../shared-core/lay/plan-lay.ts';
import { measuredFalls, measuredUntilS } from '../../../../shared-core/lay/still-falls/still-falls-table.ts';
import {
  layStillFalls,
  maxStillFalling,
  type StillFalls,
  stillFalls,
  stillFallsWords,
} from '../../../../shared-core/lay/still-falls/still-falls.ts';
import type { ToBuy } from '../../../../shared-core/to-buy/to-buy.ts';
import { measuredJobs } from '../../../bench/falls-jobs.ts';
import { fallsTable, quantile } from '../../../bench/falls-table.ts';

const basis = { kind: 'measured', how: 'so many lays', source: '' } as const;
const falling = (low: number, median: number, high: number): StillFalls => ({ low, median, high, basis });

function resultOf(pieces: number, more: Partial<LayResult> = {}): LayResult {
  const placement = { shape: 0, length: 0, x: 0, y: 0, turnDeg: 0, mirrored: false, onFold: false };
  return {
    placements: Array.from({ length: pieces }, () => placement),
    unplaced: [],
    usedLengthMm: [2600],
    utilisation: 0.85,
    floorMm: 2200,
    seed: 1,
    iterations: 900,
    seconds: 0.3,
    stoppedBy: 'time',
    ...more,
  };
}

/** Every share of the function at every second and number of pieces that matters. */
const manySeconds = [0, 0.1, 0.3, 0.4, 0.7, 1, 2, 3, 4, 7, 10, 20, 40, 60, 600];
const manyPieces = [1, 14, 15, 45, 46, 5000];

describe('how much a lay usually still falls', () => {
  it('is never more for one that was looked for longer, and nothing from the end of the measurement on', () => {
    for (const pieces of manyPieces) {
      const falls = manySeconds.map((seconds) => stillFalls(seconds, pieces));
      for (const key of ['low', 'median', 'high'] as const) {
        const shares = falls.map((fall) => fall[key]);
        expect(shares).toEqual(shares.toSorted((a, b) => b - a));
      }
      for (const { low, median, high } of falls) {
        expect(0 <= low && low <= median && median <= high && high < 0.3).toBe(true);
      }
      expect(stillFalls(measuredUntilS, pieces)).toMatchObject({ low: 0, median: 0, high: 0 });
    }
  });

  it('says that it was measured, on what and how', () => {
    expect(stillFalls(1, 20).basis.kind).toBe('measured');
    expect(stillFalls(1, 20).basis.how).toMatch(
      /^\d+ of \d+ lays of demo and drafted coats .* looked for \d+ s/,
    );
    expect(measuredFalls.at(-1)?.maxPieces).toBe(Infinity);
    for (const row of measuredFalls) expect(row.lays).toBeGreaterThan(1);
  });

  it('is what lays measured now fall by, within wide bounds', () => {
    // Time that this thread has worked: what else the machine does is not counted.
    const workedMs = () => {
      const { user, system } = process.threadCpuUsage();
      return (user + system) / 1000;
    };
    const jobs = measuredJobs().filter(({ pieces }) => pieces >= 15 && pieces <= 45);
    const measured = jobs.slice(0, 2).map(({ job, pieces }) => {
      const startedMs = workedMs();
      let soonMm = 0;
      const result = lay(
        job,
        { seconds: 1, iterations: null },
        {
          clock: workedMs,
          onBetter: (better) => {
            if (soonMm === 0 || workedMs() - startedMs <= 300) soonMm = totalUsedMm(better);
          },
        },
      );
      const left = (seconds: number) => 1 - stillFalls(seconds, pieces).median;
      return { fell: 1 - totalUsedMm(result) / soonMm, told: 1 - left(0.3) / left(1) };
    });
    const mean = (key: 'fell' | 'told') => measured.reduce((sum, one) => sum + one[key], 0) / measured.length;
    expect(mean('fell')).toBeGreaterThan(mean('told') / 4 - 0.005);
    expect(mean('fell')).toBeLessThan(mean('told') * 4 + 0.02);
  });
});

describe('of a lay is said', () => {
  it('what is to come while it is looked for, or when it was stopped soon', () => {
    expect(layStillFalls(resultOf(30), true)).toEqual(stillFalls(0.3, 30));
    expect(layStillFalls(resultOf(30, { seconds: 1.2, stoppedBy: 'maker' }), false)).toEqual(
      stillFalls(1.2, 30),
    );
    expect(layStillFalls(resultOf(30, { seconds: 3.01 }), true)).toEqual(stillFalls(3.01, 30));
  });

  it('nothing once it was looked for thoroughly, is at its floor, or has nothing left to try', () => {
    expect(layStillFalls(resultOf(30, { seconds: 3.01 }), false)).toBeNull();
    expect(layStillFalls(resultOf(30, { stoppedBy: 'floor' }), true)).toBeNull();
    expect(layStillFalls(resultOf(30, { stoppedBy: 'nothing left to try' }), true)).toBeNull();
    expect(layStillFalls(resultOf(30, { seconds: measuredUntilS }), true)).toBeNull();
  });

  it('as whole per cents, from what a quarter falls by to what nine of ten stay under', () => {
    expect(stillFallsWords(falling(0.021, 0.03, 0.044))).toBe('another 2 to 4 %');
    expect(stillFallsWords(falling(0.027, 0.03, 0.034))).toBe('another 3 %');
    expect(stillFallsWords(falling(0.002, 0.01, 0.018))).toBe('up to 2 %');
    expect(laySentence(falling(0.02, 0.03, 0.04), true)).toBe(
      'Still improving: usually another 2 to 4 % shorter.',
    );
    expect(laySentence(falling(0.02, 0.03, 0.04), false)).toBe(
      'Looked for shortly: usually another 2 to 4 % shorter when it is looked for longer.',
    );
    expect(coverSentence(falling(0, 0.01, 0.03), true)).toBe(
      'The lays are still improving: they usually take up to 3 % less cloth, so what is short now may yet be enough.',
    );
  });
});

describe('of a list to buy is said', () => {
  const slotLay = (slotId: string, result: LayResult) => ({ slotId, result }) as SlotLay;
  const lays = [
    slotLay('shell', resultOf(30, { seconds: 0.6 })),
    slotLay('batting', resultOf(30, { seconds: 0.3 })),
    slotLay('trim', resultOf(4, { stoppedBy: 'floor' })),
  ];
  const toBuy = { lines: [{ slotIds: ['shell'] }, { slotIds: ['shell', 'zip'] }] } as unknown as ToBuy;

  it('the most that a lay behind it still falls by', () => {
    const estimate = { lays, cover: [], toBuy };
    expect(slotsBought(estimate)).toEqual(['shell', 'zip']);
    expect(slotsStillFall(estimate, slotsBought(estimate), false)).toEqual(stillFalls(0.6, 30));
    expect(slotsStillFall(estimate, ['shell', 'batting'], false)).toEqual(stillFalls(0.3, 30));
    expect(maxStillFalling([null, falling(0, 0.01, 0.02), falling(0, 0.005, 0.04), null])?.high).toBe(0.04);
    expect(listSentence(falling(0.01, 0.02, 0.03))).toBe(
      'This list may still get shorter: lays like these usually take another 1 to 3 % less cloth when they are looked for longer.',
    );
  });

  it('nothing where what is bought is not laid, or its lay is done', () => {
    expect(slotsStillFall({ lays, cover: [] }, ['zip', 'trim'], true)).toBeNull();
  });
});

describe('the measurement', () => {
  it('takes quartile, median and nine tenths of the lays of like size that were not at their floor', () => {
    const measured = (pieces: number, ...shares: number[]) => ({
      name: '',
      pieces,
      endMm: 1000,
      falls: shares.map((share, index) => ({ seconds: [0.3, 1][index]!, share })),
    });
    const [small, large, ...others] = fallsTable(
      [measured(12, 0.02, 0.01), measured(9, 0.04), measured(3), measured(200, 0.08, 0.05)],
      [0.3, 1],
    );
    expect(small).toEqual({
      maxPieces: 14,
      lays: 3,
      falls: [
        { seconds: 0.3, low: 0.025, median: 0.03, high: 0.038 },
        { seconds: 1, low: 0.01, median: 0.01, high: 0.01 },
      ],
    });
    expect(large).toMatchObject({ maxPieces: null, lays: 1 });
    expect(others).toEqual([]);
    expect(quantile([5, 1, 3], 0.75)).toBe(4);
  });
});
