import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoItems } from '../../../../shared-core/demo/items.ts';
import { demoOffers } from '../../../../shared-core/demo/offers.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import type { Offer } from '../../../../shared-core/stash/offer.ts';
import type { FormShape } from '../../../../renderer/parts/forms/typed-form.ts';
import { itemCall, itemForm } from '../../../../renderer/rooms/stash/items/typed-item.ts';
import { nextRow } from '../../../../renderer/rooms/stash/lots/length-rows.ts';
import { parcelCall, parcelForm } from '../../../../renderer/rooms/stash/lots/typed-parcel.ts';
import { emptyBreak } from '../../../../renderer/rooms/stash/offers/break-rows.ts';
import { offerCall, offerForm } from '../../../../renderer/rooms/stash/offers/typed-offer.ts';

const metric = { system: 'metric', currency: 'EUR' } as const;
const imperial = { system: 'imperial', currency: 'EUR' } as const;
const today = '2026-11-02';

const nothingTold: Readonly<Record<string, string>> = {};

/** What is read of a form, or what is told at its fields: "figures.stepMm". */
function read<Typed extends object, Read>(
  { start, schema }: FormShape<Typed, Read>,
  typed: Partial<Typed> = {},
) {
  const all = { ...start, ...typed };
  const outcome = schema(all).safeParse(all);
  return outcome.success
    ? { read: outcome.data, told: nothingTold }
    : {
        read: null,
        told: Object.fromEntries(outcome.error.issues.map(({ path, message }) => [path.join('.'), message])),
      };
}

const items = demoItems();
const ofKind = <Kind extends Item['kind']>(kind: Kind) =>
  items.find((item) => item.kind === kind) as Extract<Item, { kind: Kind }>;
const cloth = ofKind('cloth');

describe('an item that is opened and saved as it stands', () => {
  test.each([metric, imperial])('is sent as it was, to the last digit, in the $system system', (units) => {
    for (const item of items) {
      const { read: all } = read(itemForm(item, today, units));
      const input = itemCall(item.id, all!, itemForm(item, today, units).start, units.system);
      expect(input).toMatchObject({
        ok: true,
        value: { itemId: item.id, kind: item.kind, name: item.name, facts: item.facts },
      });
      if (input.ok) expect(input.value).not.toHaveProperty('firstLot');
    }
  });

  test('keeps what a rounded text would lose', () => {
    // 1501.7 mm stands there as so many inches, rounded.
    const odd = { ...cloth, facts: { ...cloth.facts, widthMm: 1501.7 }, typed: {} } as Item;
    const form = itemForm(odd, today, imperial);
    expect(read(form).read?.facts.widthMm).toBe(1501.7);
    const retyped = { ...form.start.facts, widthMm: '59 1/4 in' };
    expect(read(form, { facts: retyped }).read?.facts.widthMm).toBeCloseTo(1504.95, 9);
  });
});

describe('an item that is typed', () => {
  const form = itemForm(null, today, metric);

  test('is sent with its measures as they were typed beside them', () => {
    const typed = {
      ...form.start,
      name: 'Fen nylon',
      facts: { ...form.start.facts, widthMm: ' 58 in ', hasNap: 'yes', shrinkAlong: '' },
    };
    const { read: all } = read(form, typed);
    const input = itemCall(null, all!, typed, 'metric');
    expect(input).toMatchObject({
      ok: true,
      value: { itemId: null, name: 'Fen nylon', typed: { widthMm: '58 in' } },
    });
    if (!input.ok) return;
    expect(input.value.facts.widthMm).toBeCloseTo(1473.2, 9);
    expect(input.value.facts.hasNap).toBe(true);
    expect(input.value).not.toHaveProperty('firstLot');
  });

  test('tells what cannot be read at the very field', () => {
    const { told } = read(form, {
      facts: { ...form.start.facts, widthMm: '58 inn' },
      firstLot: { ...form.start.firstLot, price: 'twelve' },
    });
    expect(Object.keys(told).sort()).toEqual(['facts.widthMm', 'firstLot.price']);
    expect(told['facts.widthMm']).toContain('58 inn');
  });

  test('is not held up by what stands in fields of another kind', () => {
    const { read: all } = read(form, { kind: 'fill', facts: { ...form.start.facts, widthMm: '58 inn' } });
    expect(all?.kind).toBe('fill');
    expect(all?.facts).not.toHaveProperty('widthMm');
  });

  test('comes with its first roll, or names what that still lacks', () => {
    const roll = { ...form.start.firstLot, amount: '5 m', price: '42', supplier: ' Marl & Wick ' };
    const typed = { ...form.start, name: 'Fen', facts: { ...form.start.facts, widthMm: '147' } };
    const whole = read(form, { ...typed, firstLot: roll }).read!;
    expect(itemCall(null, whole, typed, 'metric')).toMatchObject({
      ok: true,
      value: {
        firstLot: {
          supplier: 'Marl & Wick',
          priceMinor: 4200,
          lengths: [{ widthMm: 1470, lengthMm: 5000, count: 1, form: 'roll' }],
        },
      },
    });
    const unpriced = read(form, { ...typed, firstLot: { ...roll, price: '' } }).read!;
    const refused = itemCall(null, unpriced, typed, 'metric');
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where)).toEqual(['Price of the lot']);
  });
});

describe('a parcel that comes in', () => {
  const form = parcelForm(cloth, today, imperial);

  test('begins as wide as its item, and takes measures in any spelling', () => {
    const [row] = form.start.lengths;
    const flaw = { fromStart: '1 yd', fromEdge: '10 cm', along: '2 in', across: '1/2 in' };
    const { read: all } = read(form, {
      price: '12.50',
      lengths: [
        { ...row!, along: '2 yd 4 in', count: '3', flaws: [flaw] },
        { ...nextRow(row!), along: '1 m' },
      ],
    });
    const input = parcelCall(cloth, all!);
    expect(input).toMatchObject({ ok: true, value: { itemId: cloth.id, priceMinor: 1250, amount: null } });
    if (!input.ok) return;
    const [first, second] = input.value.lengths;
    expect(first?.widthMm).toBe(cloth.facts.widthMm);
    expect(first?.lengthMm).toBeCloseTo(1930.4, 9);
    expect(first?.count).toBe(3);
    expect(first?.flaws[0]?.x).toBeCloseTo(914.4, 9);
    expect(first?.flaws[0]).toMatchObject({ y: 100 });
    expect(second).toMatchObject({ widthMm: cloth.facts.widthMm, lengthMm: 1000, count: 1, flaws: [] });
  });

  test('tells all that cannot be read, each at its own field', () => {
    const [row] = form.start.lengths;
    const flaw = { fromStart: '1 yrd', fromEdge: '', along: '', across: '' };
    const { told } = read(form, {
      price: '1,2,3',
      lengths: [row!, { ...row!, along: 'long', count: 'two', flaws: [flaw] }],
    });
    expect(Object.keys(told).sort()).toEqual([
      'lengths.1.along',
      'lengths.1.count',
      'lengths.1.flaws.0.fromStart',
      'price',
    ]);
  });

  test('names what is missing by its line', () => {
    const [row] = form.start.lengths;
    const { read: all } = read(form, { lengths: [row!, { ...row!, along: '1 m', width: '' }] });
    const refused = parcelCall(cloth, all!);
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where)).toEqual([
      'Length of line 1',
      'Width of line 2',
      'Price of the lot',
    ]);
  });
});

describe('an offer', () => {
  const begins = { way: 'by length', today } as const;
  const itemOf = (offer: Offer) => items.find(({ id }) => id === offer.itemId)!;

  test.each([metric, imperial])(
    'opened and saved as it stands says the same in the $system system',
    (units) => {
      for (const offer of demoOffers()) {
        const { read: all } = read(offerForm(itemOf(offer), offer, begins, units));
        const { id: offerId, itemId, ...rest } = offer;
        expect(offerCall({ offerId, itemId }, all!)).toEqual({
          ok: true,
          value: { offerId, itemId, ...rest },
        });
      }
    },
  );

  test('of any step, width and price says the same when it is opened and saved', () => {
    const mm = fc.double({ min: 1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        mm,
        mm,
        fc.integer({ min: 0, max: 1e6 }),
        fc.integer({ min: 2, max: 900 }),
        (step, width, price, from) => {
          const unit = { kind: 'by length', stepMm: step, widthMm: width, leastMm: 3 * step } as const;
          const offer: Offer = {
            id: 'o',
            itemId: cloth.id,
            supplier: 'Marl & Wick',
            unit,
            priceMinor: price,
            pricedOn: today,
            breaks: [{ fromCount: from, priceMinor: price }],
          };
          const { read: all } = read(offerForm(cloth, offer, begins, imperial));
          const input = offerCall({ offerId: 'o', itemId: cloth.id }, all!);
          expect(input).toMatchObject({ ok: true, value: { unit, priceMinor: price, breaks: offer.breaks } });
        },
      ),
      { seed: 22, numRuns: 200 },
    );
  });

  test('names what its way of selling still lacks', () => {
    const form = offerForm(ofKind('thread'), null, { way: 'spool', today }, metric);
    const figures = { ...form.start.figures, threadM: '' };
    const refused = offerCall({ offerId: null, itemId: 't' }, read(form, { figures }).read!);
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where)).toEqual([
      'Thread on a spool of what is sold',
      'Price',
    ]);
  });

  test('is not held up by a figure that another way of selling asked for', () => {
    const form = offerForm(cloth, null, begins, metric);
    const typed = {
      way: 'sheet' as const,
      price: '9',
      figures: { ...form.start.figures, stepMm: 'ten', sheetLengthMm: '2 m' },
    };
    const input = offerCall({ offerId: null, itemId: cloth.id }, read(form, typed).read!);
    expect(input).toMatchObject({ ok: true, value: { unit: { kind: 'sheet', lengthMm: 2000 } } });
  });

  test('tells a price break that cannot be read at its field', () => {
    const form = offerForm(cloth, null, begins, metric);
    const { told } = read(form, { breaks: [emptyBreak, { ...emptyBreak, from: '5 ells', price: '1' }] });
    expect(Object.keys(told)).toEqual(['breaks.1.from']);
  });
});
