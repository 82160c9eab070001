import fc from 'fast-check';
import { expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import type { Offer } from '../../../shared-core/stash/offer.ts';
import type { Supplier } from '../../../shared-core/stash/supplier.ts';
import { cheapestBasket } from '../../../shared-core/to-buy/basket.ts';
import type { AmountDemand, CutDemand, Demand } from '../../../shared-core/to-buy/demand.ts';
import { offer } from '../../fixtures/small-workshop.ts';

const names = ['Far', 'Near', 'Mid'] as const;
/** Above what any best basket takes of one offer: 4 close a gap, a break begins at 5, 2 more are cheaper than a delivery. */
const maxCount = 7;

const suppliers: fc.Arbitrary<readonly Supplier[]> = fc.tuple(
  ...names.map((name) =>
    fc.record({
      name: fc.constant(name),
      deliveryMinor: fc.integer({ min: 0, max: 250 }),
      freeFromMinor: fc.option(fc.integer({ min: 150, max: 900 })),
      leadDays: fc.constant(null),
    }),
  ),
);

/** Pieces in a pack, price, and where it breaks. */
function offers(itemId: string, max: number): fc.Arbitrary<readonly Offer[]> {
  return fc
    .array(
      fc.record({
        supplier: fc.constantFrom(...names),
        pieceCount: fc.integer({ min: 1, max: 3 }),
        priceMinor: fc.integer({ min: 130, max: 400 }),
        fromCount: fc.option(fc.integer({ min: 2, max: 5 })),
        lessMinor: fc.integer({ min: 1, max: 30 }),
        leastCount: fc.integer({ min: 1, max: 3 }),
      }),
      { minLength: 1, maxLength: max },
    )
    .map((rows) =>
      rows.map((row, index) => ({
        ...offer(
          itemId,
          `${itemId} ${index}`,
          { kind: 'pack', pieceCount: row.pieceCount },
          row.priceMinor,
          row.supplier,
        ),
        leastCount: row.leastCount,
        ...(row.fromCount !== null && {
          breaks: [{ fromCount: row.fromCount, priceMinor: row.priceMinor - row.lessMinor }],
        }),
      })),
    );
}

const amountDemand: fc.Arbitrary<AmountDemand> = fc
  .tuple(offers('counted', 2), fc.integer({ min: 0, max: 4 }), fc.boolean(), fc.constantFrom(0, 0, 0, 2, 3))
  .map(([sold, amount, isOneLot, leastUnitCount]) => ({
    kind: 'amount',
    itemId: 'counted',
    gaps: [],
    isOneLot,
    offers: sold,
    wanted: [{ minLengthMm: 0, amount }],
    usedAmount: amount,
    // A shortage of nothing is none, unless the machine lacks spools.
    leastUnitCount: amount === 0 ? Math.max(1, leastUnitCount) : leastUnitCount,
  }));

const cutDemand: fc.Arbitrary<CutDemand> = fc
  .tuple(
    offers('cut', 2),
    fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 1, max: 4 })), {
      minLength: 1,
      maxLength: 3,
    }),
  )
  .map(([sold, rows]) => ({
    kind: 'cut',
    itemId: 'cut',
    gaps: [],
    isOneLot: false,
    ways: rows.map(([first, second]) => ({
      leftAreaMm2: null,
      parts: [first, second].flatMap((neededCount, index) => {
        const of = sold[index];
        if (!of || neededCount === 0) return sold.length === 1 && index === 0 ? part(sold[0]!, second) : [];
        return part(of, neededCount);
      }),
    })),
  }));

function part(of: Offer, neededCount: number) {
  return [
    { offer: of, neededCount, unitCount: Math.max(neededCount, of.leastCount ?? 1), usedAmount: neededCount },
  ];
}

/** Every basket there is, priced by hand: the least total that closes all with at most so many suppliers. */
function minByHand(demands: readonly Demand[], all: readonly Supplier[], maxSuppliers: number): number {
  const sold = demands.flatMap((demand) =>
    demand.kind === 'amount'
      ? demand.offers
      : [...new Set(demand.ways.flatMap((way) => way.parts.map((each) => each.offer)))],
  );
  let min = Infinity;
  const counts = new Map<Offer, number>();
  const price = (): number => {
    const goods = new Map<string, number>();
    for (const [of, count] of counts) {
      if (count === 0) continue;
      const lower = of.breaks?.[0];
      const each = lower && count >= lower.fromCount ? lower.priceMinor : of.priceMinor;
      goods.set(of.supplier, (goods.get(of.supplier) ?? 0) + count * each);
    }
    if (goods.size > maxSuppliers) return Infinity;
    return [...goods].reduce((sum, [name, minor]) => {
      const { deliveryMinor, freeFromMinor } = all.find((each) => each.name === name)!;
      return sum + minor + (freeFromMinor !== null && minor >= freeFromMinor ? 0 : deliveryMinor);
    }, 0);
  };
  const isClosed = (demand: Demand): boolean => {
    if (demand.kind === 'cut') {
      return demand.ways.some((way) =>
        sold
          .filter((of) => of.itemId === 'cut')
          .every((of) => {
            const needed = way.parts.find((each) => each.offer === of)?.neededCount;
            return needed === undefined ? counts.get(of) === 0 : counts.get(of)! >= needed;
          }),
      );
    }
    const taken = demand.offers.filter((of) => counts.get(of)! > 0);
    if (demand.isOneLot && taken.length > 1) return false;
    const held = taken.reduce(
      (sum, of) => sum + counts.get(of)! * (of.unit.kind === 'pack' ? of.unit.pieceCount : 0),
      0,
    );
    const unitCount = taken.reduce((sum, of) => sum + counts.get(of)!, 0);
    return held >= demand.wanted[0]!.amount && unitCount >= demand.leastUnitCount;
  };
  const next = (index: number): void => {
    const of = sold[index];
    if (!of) {
      if (demands.every(isClosed)) min = Math.min(min, price());
      return;
    }
    for (let count = 0; count <= maxCount; count++) {
      if (count > 0 && count < (of.leastCount ?? 1)) continue;
      counts.set(of, count);
      next(index + 1);
    }
  };
  next(0);
  return min;
}

it('no basket is cheaper, with all suppliers or with fewer', async () => {
  let fewerCount = 0;
  await fc.assert(
    fc.asyncProperty(amountDemand, cutDemand, suppliers, async (counted, cut, all) => {
      const demands = [counted, cut];
      for (const maxSuppliers of [3, 1]) {
        const best = await cheapestBasket(demands, all, solveHere, { maxSuppliers });
        const byHand = minByHand(demands, all, maxSuppliers);
        expect(best?.basket.totalMinor ?? Infinity).toBe(byHand);
        if (best === null) fewerCount++;
      }
    }),
    { numRuns: 120, seed: 20261125 },
  );
  // Both kinds came up: baskets from one supplier, and none that could be.
  expect(fewerCount).toBeGreaterThan(20);
  expect(fewerCount).toBeLessThan(110);
});
