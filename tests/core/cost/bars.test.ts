import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costBySlot, type PlanCost } from '../../../shared-core/cost/cost-by-slot.ts';
import { stashByAge } from '../../../shared-core/cost/stash-by-age.ts';
import { barTotalMinor, inFewParts } from '../../../shared-core/measure/bars.ts';
import { monthsAfter } from '../../../shared-core/measure/calendar-date.ts';

describe('so many months later', () => {
  test('is the same day, or the last one of a shorter month', () => {
    expect(monthsAfter('2026-03-27', 3)).toBe('2026-06-27');
    expect(monthsAfter('2025-11-30', 3)).toBe('2026-02-28');
    expect(monthsAfter('2023-11-29', 3)).toBe('2024-02-29');
    expect(monthsAfter('2026-12-31', 24)).toBe('2028-12-31');
    expect(monthsAfter('some day', 3)).toBe('some day');
  });
});

describe('what the stash is worth by age', () => {
  const items = [
    { id: 'linen', kind: 'cloth' },
    { id: 'down', kind: 'fill' },
  ] as const;
  const lot = (id: string, itemId: string, receivedOn: string, priceMinor: number) => ({
    id,
    itemId,
    receivedOn,
    priceMinor,
    receivedMilli: 3000,
  });
  const moved = (id: string, lotId: string, kind: 'received' | 'cut', onHandMilli: number) => ({
    id,
    kind,
    lotId,
    lengthId: null,
    onHandMilli,
  });

  test('falls on the band of the day it was bought, what is cut taken off, and only kinds that lie there', () => {
    const bars = stashByAge({
      items,
      lots: [
        lot('a', 'linen', '2026-08-29', 100),
        lot('b', 'linen', '2026-08-28', 1000),
        lot('c', 'linen', '2024-11-29', 70),
        lot('d', 'linen', '2024-11-28', 7),
        lot('e', 'down', '2026-08-29', 500),
      ],
      movements: [
        moved('1', 'a', 'received', 3000),
        moved('2', 'b', 'received', 3000),
        moved('3', 'b', 'cut', -2000),
        moved('4', 'c', 'received', 3000),
        moved('5', 'd', 'received', 3000),
        moved('6', 'e', 'received', 3000),
        moved('7', 'e', 'cut', -3000),
      ],
      today: '2026-11-29',
    });
    expect(bars.parts).toEqual([{ key: 'cloth', label: 'Cloth' }]);
    expect(bars.bars.map((bar) => [bar.label, barTotalMinor(bar)])).toEqual([
      ['Up to 3 months', 100],
      ['Up to 6 months', 333],
      ['Up to 12 months', 0],
      ['Up to 24 months', 70],
      ['Older', 7],
    ]);
  });

  test('counts a purchase dated ahead as new', () => {
    const bars = stashByAge({
      items,
      lots: [lot('a', 'linen', '2027-01-05', 100)],
      movements: [moved('1', 'a', 'received', 3000)],
      today: '2026-11-29',
    });
    expect(barTotalMinor(bars.bars[0]!)).toBe(100);
  });
});

describe('the cost of coats by slot', () => {
  const coat = (more: Partial<PlanCost>): PlanCost => ({
    planId: 'fen',
    name: 'Fen coat',
    coatCount: 3,
    slots: [],
    from: 'planned',
    isIncomplete: false,
    ...more,
  });

  test('stands side by side, slots of one name together, the costliest first', () => {
    const bars = costBySlot([
      coat({
        slots: [
          { name: 'thread', costMinor: 900 },
          { name: 'shell', costMinor: 12_000 },
        ],
      }),
      coat({ planId: 'tarn', name: 'Tarn coat', coatCount: 1, slots: [{ name: 'Shell', costMinor: 7003 }] }),
    ]);
    expect(bars.parts.map(({ label }) => label)).toEqual(['Shell', 'Thread']);
    expect(bars.bars.map(({ label, amountsMinor }) => [label, amountsMinor])).toEqual([
      ['Fen coat', [4000, 300]],
      ['Tarn coat', [7003, 0]],
    ]);
  });

  test('is drawn in few parts, the small ones together, and adds up all the same', () => {
    const slots = [50, 40, 30, 20, 10].map((costMinor, index) => ({ name: `slot ${index}`, costMinor }));
    const bars = costBySlot([coat({ coatCount: 1, slots })]);
    expect(inFewParts(bars, 5)).toEqual(bars);
    const few = inFewParts(bars, 3);
    expect(few.parts.map(({ label }) => label)).toEqual(['Slot 0', 'Slot 1', '3 smaller ones']);
    expect(few.bars[0]?.amountsMinor).toEqual([50, 40, 60]);
  });

  test('leaves out a coat of which nothing costs anything yet', () => {
    expect(
      costBySlot([coat({ slots: [{ name: 'shell', costMinor: 0 }] }), coat({ coatCount: 0 })]).bars,
    ).toEqual([]);
  });

  test('adds up to the coat, whatever its slots cost', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat({ max: 90_000 }), { minLength: 1 }),
        fc.integer({ min: 1, max: 40 }),
        (costs, coatCount) => {
          const slots = costs.map((costMinor, index) => ({ name: `slot ${index}`, costMinor }));
          const [bar] = costBySlot([coat({ slots, coatCount })]).bars;
          const perCoat = Math.round(costs.reduce((sum, each) => sum + each, 0) / coatCount);
          return (bar ? barTotalMinor(bar) : 0) === perCoat;
        },
      ),
      { numRuns: 500, seed: 31 },
    );
  });
});
