import { describe, expect, it } from 'vitest';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import { offer } from '../../fixtures/small-workshop.ts';
import { amountGap, bought, counts, pack, supplier, thread, withBreaks } from './small-gaps.ts';

describe('the cheapest basket', () => {
  it('mixes packs of two sizes where that costs least', async () => {
    const { cheapest } = await bought(
      [amountGap('snaps item', 23)],
      [offer('snaps item', 'ten', pack(10), 370), offer('snaps item', 'three', pack(3), 140)],
    );
    // 3 tens cost 11.10, 2 tens and a three 8.80, 8 threes 11.20.
    expect(counts(cheapest)).toEqual({ ten: 2, three: 1 });
    expect(cheapest.totalMinor).toBe(880);
    expect(cheapest.buys.map(({ usedAmount, boughtAmount }) => [usedAmount, boughtAmount])).toEqual([
      [20, 20],
      [3, 3],
    ]);
  });

  it('buys more than is missing where a price break makes that cheaper, and says so', async () => {
    const spool = withBreaks(offer('thread item', 'spool', thread, 420), { fromCount: 5, priceMinor: 330 });
    const { cheapest, whys } = await bought([amountGap('thread item', 1_800)], [spool]);
    // 4 at 4.20 are 16.80, 5 at 3.30 are 16.50.
    expect(counts(cheapest)).toEqual({ spool: 5 });
    expect(cheapest.totalMinor).toBe(1_650);
    expect(whys).toEqual([
      {
        kind: 'more for less',
        itemId: 'thread item',
        offer: spool,
        unitCount: 5,
        neededCount: 4,
        through: 'price break',
        cheaperMinor: 30,
      },
    ]);
  });

  it('buys one more where that makes the delivery free', async () => {
    const { cheapest, whys } = await bought(
      [amountGap('thread item', 900)],
      [offer('thread item', 'spool', thread, 340, 'Tallow Lane')],
      [supplier('Tallow Lane', 650, 1_000)],
    );
    // 2 spools 6.80 + 6.50 delivery; 3 spools 10.20 and nothing.
    expect(counts(cheapest)).toEqual({ spool: 3 });
    expect(cheapest).toMatchObject({ goodsMinor: 1_020, deliveryMinor: 0, totalMinor: 1_020 });
    expect(cheapest.deliveries[0]).toMatchObject({ isFree: true, isKnown: true });
    expect(whys).toMatchObject([{ through: 'free delivery', neededCount: 2, cheaperMinor: 310 }]);
  });

  it('buys no less than is sold at once', async () => {
    const min = { ...offer('snaps item', 'piece', { kind: 'each', lengthMm: null }, 12), leastCount: 25 };
    const { cheapest, whys } = await bought([amountGap('snaps item', 7)], [min]);
    expect(counts(cheapest)).toEqual({ piece: 25 });
    expect(whys).toMatchObject([{ kind: 'more for less', through: 'least count', neededCount: 7 }]);
  });

  it('takes the dearer goods where a delivery is saved, and says what that is worth', async () => {
    const { cheapest, whys, fewer } = await bought(
      [amountGap('thread item', 400), amountGap('snaps item', 9)],
      [
        offer('thread item', 'far', thread, 300, 'Far'),
        offer('thread item', 'near', thread, 380, 'Near'),
        offer('snaps item', 'snaps', pack(10), 500, 'Near'),
      ],
      [supplier('Far', 450), supplier('Near', 600)],
    );
    expect(counts(cheapest)).toEqual({ near: 1, snaps: 1 });
    expect(cheapest).toMatchObject({ goodsMinor: 880, deliveryMinor: 600, totalMinor: 1_480 });
    expect(whys).toMatchObject([
      { kind: 'instead', itemId: 'thread item', cheaperMinor: 370, goodsCheaperMinor: -80 },
    ]);
    expect(fewer).toEqual([]);
  });

  it('offers the next best with fewer suppliers, one after another', async () => {
    const all = ['A', 'B', 'C'].map((name) => supplier(name, 100));
    const items = ['one item', 'two item', 'three item'];
    const { cheapest, fewer } = await bought(
      items.map((id) => amountGap(id, 1)),
      items.flatMap((id, of) =>
        all.map(({ name }, by) =>
          // Each has its own item cheapest; A is not far off with the others.
          offer(id, `${name} ${id}`, pack(1), of === by ? 1_000 : name === 'A' ? 1_150 + of : 2_500, name),
        ),
      ),
      all,
    );
    expect(cheapest.totalMinor).toBe(3_300);
    expect(fewer.map(({ totalMinor, deliveries }) => [deliveries.length, totalMinor])).toEqual([
      [2, 3_351],
      [1, 3_403],
    ]);
  });

  it('counts one delivery for a supplier whose name is typed in two ways', async () => {
    const { cheapest } = await bought(
      [amountGap('thread item', 400), amountGap('snaps item', 9)],
      [
        offer('thread item', 'thread', thread, 300, 'Marl & Wick'),
        offer('snaps item', 'snaps', pack(10), 500, ' marl &  wick'),
      ],
      [supplier('Marl & Wick', 450)],
    );
    expect(cheapest.deliveries).toHaveLength(1);
    expect(cheapest.totalMinor).toBe(1_250);
  });

  it('takes zips that are long enough, each plan for itself', async () => {
    const each = (lengthMm: number): SellingUnit => ({ kind: 'each', lengthMm });
    const zips = (planId: string, amount: number, wantedLengthMm: number) =>
      amountGap('zip item', amount, {
        id: planId,
        planId,
        needs: { kind: 'amount', amount, marginAmount: 0, wantedLengthMm },
      });
    const { cheapest } = await bought(
      [zips('jacket', 4, 610), zips('coat', 3, 790)],
      [offer('zip item', 'short', each(650), 540), offer('zip item', 'long', each(800), 690)],
    );
    expect(counts(cheapest)).toEqual({ short: 4, long: 3 });
  });

  it('says which item no offer closes, and buys the rest', async () => {
    const { cheapest, unbuyable } = await bought(
      [amountGap('thread item', 400), amountGap('cord item', 2)],
      [offer('thread item', 'thread', thread, 300)],
    );
    expect(counts(cheapest)).toEqual({ thread: 1 });
    expect(unbuyable.map(({ itemId }) => itemId)).toEqual(['cord item']);
  });

  it('buys nothing where nothing is missing', async () => {
    const { cheapest, fewer, whys } = await bought([], []);
    expect(cheapest).toMatchObject({ buys: [], totalMinor: 0 });
    expect([fewer, whys]).toEqual([[], []]);
  });
});

describe('one dye lot', () => {
  const offers = [
    offer('thread item', 'large', { kind: 'spool', threadM: 1000 }, 700, 'Far'),
    offer('thread item', 'small', { kind: 'spool', threadM: 200 }, 210, 'Near'),
  ];
  it('what is seen comes from one offer, and the price of that is told', async () => {
    const { cheapest, whys } = await bought([amountGap('thread item', 1_150, { isSeen: true })], offers);
    expect(counts(cheapest)).toEqual({ small: 6 });
    expect(whys).toContainEqual({
      kind: 'one dye lot',
      itemId: 'thread item',
      supplier: 'Near',
      mixedCheaperMinor: 350,
    });
  });
  it('what nobody sees may be mixed', async () => {
    const { cheapest } = await bought([amountGap('thread item', 1_150)], offers);
    expect(counts(cheapest)).toEqual({ large: 1, small: 1 });
    expect(cheapest.totalMinor).toBe(910);
  });
});
