import { describe, expect, it } from 'vitest';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import {
  basketCautions,
  deliveryWords,
  fewerSentence,
  leadSentence,
  whySentence,
} from '../../../shared-core/to-buy/basket-words.ts';
import type { Delivery } from '../../../shared-core/to-buy/basket-sums.ts';
import { item, offer, onShelf, toBuyList } from '../../fixtures/small-workshop.ts';
import { line } from './small-list.ts';

const shelf = [
  onShelf({ ...item('batting', 'batting item'), name: 'Fleecewell 120' }),
  onShelf({ ...item('thread', 'thread item'), name: 'Ropewalk spun 40' }),
];
const words = { shelf, system: 'metric', currency: 'EUR' } as const;
const sheet = (widthMm: number, lengthMm: number, supplier: string) =>
  offer('batting item', `${widthMm}`, { kind: 'sheet', widthMm, lengthMm }, 1_290, supplier);
const spool: SellingUnit = { kind: 'spool', threadM: 500 };
const tallow: Delivery = {
  supplier: 'Tallow Lane',
  goodsMinor: 3_000,
  deliveryMinor: 390,
  isFree: false,
  isKnown: true,
  leadDays: 5,
};

describe('why this basket', () => {
  it('sets one queen sheet against two throw sheets, with what is left', () => {
    const why = {
      kind: 'instead',
      itemId: 'batting item',
      bought: [{ offer: sheet(2300, 2500, 'Lanternhill'), unitCount: 1 }],
      instead: [{ offer: sheet(1500, 2000, 'Lanternhill'), unitCount: 2 }],
      cheaperMinor: 310,
      goodsCheaperMinor: 310,
      left: 412_000,
      isLeftArea: true,
    } as const;
    expect(whySentence(why, words)).toBe(
      'Fleecewell 120: 1 sheet of 2.3 m x 2.5 m instead of 2 sheets of 1.5 m x 2 m: 3.10 EUR cheaper in all; 0.4 m² left over.',
    );
  });

  it('names the suppliers where they differ, and the delivery that dearer goods save', () => {
    const why = {
      kind: 'instead',
      itemId: 'thread item',
      bought: [{ offer: offer('thread item', 'a', spool, 380, 'Near'), unitCount: 2 }],
      instead: [{ offer: offer('thread item', 'b', spool, 300, 'Far'), unitCount: 2 }],
      cheaperMinor: 290,
      goodsCheaperMinor: -160,
      left: 0,
      isLeftArea: false,
    } as const;
    expect(whySentence(why, words)).toBe(
      'Ropewalk spun 40: 2 spools of 500 m from Near instead of 2 spools of 500 m from Far: 2.90 EUR cheaper in all, though by itself 1.60 EUR dearer: it saves a delivery.',
    );
  });

  it.each([
    ['price break', 'so many have a lower price, 0.30 EUR cheaper in all.'],
    ['free delivery', 'that makes the delivery of Near free, 0.30 EUR cheaper in all.'],
    ['least count', 'Near sells no less.'],
  ] as const)('says why more is bought than is missing: %s', (through, sentence) => {
    const of = offer('thread item', 'a', spool, 330, 'Near');
    const base = { kind: 'more for less', itemId: 'thread item', offer: of } as const;
    expect(whySentence({ ...base, unitCount: 5, neededCount: 4, through, cheaperMinor: 30 }, words)).toBe(
      `Ropewalk spun 40: 5 spools of 500 m where 4 spools of 500 m would do: ${sentence}`,
    );
  });

  it('tells what one dye lot costs', () => {
    const why = {
      kind: 'one dye lot',
      itemId: 'thread item',
      supplier: 'Near',
      mixedCheaperMinor: 350,
    } as const;
    expect(whySentence(why, words)).toContain(
      'wants one dye lot; from several offers it would be 3.50 EUR cheaper',
    );
  });
});

describe('before the order', () => {
  it('a price of more than 180 days is called old, one of 180 is not', () => {
    const list = toBuyList([line('thread item', 'Fernlow', spool, 2, 585)]);
    // The offers of these lists are priced on 2 October 2026.
    expect(basketCautions(list, '2027-03-31', words)).toEqual([]);
    expect(basketCautions(list, '2027-04-01', words)).toEqual([
      'The price of Ropewalk spun 40 from Fernlow is 181 days old, and after 180 days prices have often moved: ask before you order.',
    ]);
  });

  it('a delivery that nobody noted is said to count as nothing', () => {
    const unknown = { ...tallow, supplier: 'Oxbow', isKnown: false, deliveryMinor: 0, leadDays: null };
    const list = { ...toBuyList([]), deliveries: [tallow, unknown] };
    expect(basketCautions(list, '2026-11-25', words)).toEqual([
      'What Oxbow asks for delivery is not noted and counts as nothing here.',
    ]);
    expect(leadSentence(list)).toBeNull();
    expect(leadSentence({ ...list, deliveries: [tallow, { ...tallow, leadDays: 12 }] })).toBe(
      'All of it can be here 12 days after it is ordered.',
    );
  });

  it.each<[Partial<Delivery>, string]>([
    [{}, 'Delivery 3.90 EUR, 5 days on the way'],
    [{ isFree: true, deliveryMinor: 0, leadDays: 1 }, 'Delivery free for so much, 1 day on the way'],
    [{ deliveryMinor: 0, leadDays: null }, 'No charge for delivery'],
    [{ isKnown: false, deliveryMinor: 0 }, 'Delivery not known, counted as nothing'],
  ])('a delivery in words: %o', (more, sentence) => {
    expect(deliveryWords({ ...tallow, ...more }, words)).toBe(sentence);
  });

  it('fewer suppliers are named, with what they cost more', () => {
    const cheapest = { ...toBuyList([]), payMinor: 1_000 };
    const one = { ...cheapest, payMinor: 1_171, deliveries: [tallow] };
    const two = { ...cheapest, deliveries: [tallow, { ...tallow, supplier: 'Near' }] };
    expect(fewerSentence(cheapest, one, words)).toBe('From Tallow Lane alone: 1.71 EUR dearer in all.');
    expect(fewerSentence(cheapest, two, words)).toBe('From Tallow Lane and Near: the same in all.');
  });
});
