/** First in first out and margin against mark-up, held against published worked examples. */
import { added, priceSheet, defaultPriceRules } from '../../shared-core/cost/price.ts';
import { estimate } from '../../shared-core/flow/estimate.ts';
import { solveHere } from '../../main/services/threads/solver.ts';
import { item, layHere, lot, onShelf, plan, slot } from '../fixtures/small-workshop.ts';
import type { OutsideCheck } from './outside.ts';

const fincal = 'CRAN, reference manual of FinCal 0.6.3, example of cogs';
const openStax = 'OpenStax, Principles of Accounting 1, chapter 10.3, figures from memory';
const forward = 'forwardaccounting.co.nz, business glossary, margin against mark-up';
const finanshels = 'finanshels.com, glossary, margin and markup';

/** Cost of goods in minor units: as many of one thing as are used, from purchases of so many at so much each. */
async function costMinor(used: number, purchases: readonly (readonly [number, number])[]): Promise<number> {
  const lots = purchases.map(([count, eachMinor], index) =>
    lot('snaps item', `purchase ${index}`, count, count, count * eachMinor, `2026-07-${10 + index}`),
  );
  const { cost } = await estimate(
    {
      plan: plan({ pieces: [], slots: [slot('snaps', 'fastening', { amountPerCoat: used })] }),
      shelf: [onShelf(item('fastening', 'snaps item'), ...lots)],
      offers: [],
      suppliers: [],
    },
    layHere,
    solveHere,
  );
  return cost.batchMinor;
}

const threePurchases = [
  [150, 2100],
  [225, 2700],
  [210, 3300],
] as const;
const sold = await costMinor(300, threePurchases);
const all = await costMinor(585, threePurchases);
const atMargin = (costAt: number, ratio: number) =>
  priceSheet(
    plan(),
    { perCoatMinor: [costAt] },
    { ...defaultPriceRules, isWorkLeftOut: true, wholesale: { kind: 'margin', ratio } },
  );

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    name: 'first in first out: 7 used of 2 at 2, 3 at 3, 5 at 5',
    source: `${fincal}: 23`,
    expected: 23,
    got:
      (await costMinor(7, [
        [2, 200],
        [3, 300],
        [5, 500],
      ])) / 100,
    tolerance: 0,
  },
  {
    class: 'A',
    name: 'first in first out: 300 sold of 150 at 21, 225 at 27, 210 at 33',
    source: `${openStax}: 7,200`,
    expected: 7200,
    got: sold / 100,
    tolerance: 0,
  },
  {
    class: 'A',
    name: 'and what is left of them',
    source: `${openStax}: 8,955`,
    expected: 8955,
    got: (all - sold) / 100,
    tolerance: 0,
  },
  {
    class: 'A',
    name: 'price of what costs 60, at a margin of 40 %',
    source: `${forward}: 100`,
    expected: 100,
    got: added(6000, { kind: 'margin', ratio: 0.4 }) / 100,
    tolerance: 0,
  },
  {
    class: 'A',
    name: 'the same as mark-up, %',
    source: `${forward}: 66.67`,
    expected: 66.67,
    got: 100 * (atMargin(6000, 0.4).wholesale?.markUpRatio ?? Number.NaN),
    tolerance: 0.005,
    toleranceReason: 'half of the last printed place',
  },
  {
    class: 'A',
    name: 'mark-up that a margin of 25 % is on a cost of 75, %',
    source: `${finanshels}: 33.33`,
    expected: 33.33,
    got: 100 * (atMargin(7500, 0.25).wholesale?.markUpRatio ?? Number.NaN),
    tolerance: 0.005,
    toleranceReason: 'half of the last printed place',
  },
];

export default rows;
