import { describe, expect, it } from 'vitest';
import { cutAgainst, estimatedOfCut } from '../../../shared-core/cost/cut-against.ts';
import type { CostSheet } from '../../../shared-core/cost/cost.ts';
import type { CutSheet } from '../../../shared-core/cost/cut-sheet.ts';

const slots = [
  { id: 'shell', name: 'shell', kind: 'cloth' },
  { id: 'zip', name: 'front zip', kind: 'fastening' },
  { id: 'label', name: 'label', kind: 'fastening' },
] as const;
const slotCost = (slotId: string, costMinor: number) => ({
  slotId,
  slotName: slotId,
  itemNames: [`${slotId} item`],
  kind: 'cloth' as const,
  usedMilli: 3_470_000,
  costMinor,
  wasteMinor: 110,
  trimmings: null,
  lots: [],
});
const sheet: CutSheet = {
  slots: [slotCost('shell', 4280), slotCost('trim', 90)],
  batchMinor: 4370,
  wasteMinor: 220,
  coats: [],
  coatCount: 2,
  perCoatMinor: [2185, 2185],
  cuttings: [],
};
const line = (slotId: string, costMinor: number, amount: number | null) => ({
  slotId,
  parts: amount === null ? [] : [{ lotId: 'spring', amount, costMinor }],
  costMinor,
  wasteMinor: 0,
  trimmings: null,
  isIncomplete: amount === null,
});
const estimated: CostSheet = {
  lines: [line('shell', 4010, 3250), line('zip', 690, 2), line('label', 0, null)],
  batchMinor: 4700,
  perCoatMinor: [2350, 2350],
  isIncomplete: true,
};

describe('the estimate beside what was cut', () => {
  it('has each slot that was cut or estimated, in the order of the plan, and what left the plan last', () => {
    const rows = cutAgainst(slots, sheet, estimated);
    expect(
      rows.map(({ slotName, estimatedMinor, cut, usedAmount }) => [
        slotName,
        estimatedMinor,
        cut?.costMinor ?? null,
        usedAmount,
      ]),
    ).toEqual([
      ['shell', 4010, 4280, 3470],
      ['front zip', 690, null, 0],
      ['trim', null, 90, 3470],
    ]);
  });

  it('holds against the sum of what was cut the estimate of those slots alone', () => {
    const rows = cutAgainst(slots, sheet, estimated);
    expect(estimatedOfCut(rows.filter(({ slotName }) => slotName !== 'trim'))).toBe(4010);
    // The trim was cut and never estimated: there is nothing to hold the whole against.
    expect(estimatedOfCut(rows)).toBeNull();
  });

  it('holds what was cut alone until the estimate is there', () => {
    expect(
      cutAgainst(slots, sheet, null).map(({ slotName, estimatedAmount }) => [slotName, estimatedAmount]),
    ).toEqual([
      ['shell', null],
      ['trim', null],
    ]);
  });
});
