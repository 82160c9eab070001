import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Addition,
  added,
  type PriceRules,
  priceSheet,
  defaultPriceRules,
} from '../../../shared-core/cost/price.ts';
import { additionWords, priceRows } from '../../../shared-core/cost/price-words.ts';
import { setLabourMinutes } from '../../../shared-core/plan/edits/labour.ts';
import { plan } from '../../fixtures/small-workshop.ts';

const rules: PriceRules = {
  hourlyRateMinor: 1850,
  overhead: { kind: 'share', ratio: 0.12 },
  wholesale: { kind: 'margin', ratio: 0.4 },
  retail: { kind: 'mark-up', ratio: 0.9 },
};
const coats = (...perCoatMinor: number[]) => ({ perCoatMinor });

describe('what a coat is sold for', () => {
  it('puts work and overhead on the material, then a margin, then a mark-up', () => {
    const sheet = priceSheet(plan({ labourMinutesPerCoat: 440 }), coats(6310, 6309), rules);
    // 440 min at 18.50 an hour; 12 % of 63.10 + 135.67.
    expect(sheet.coat).toEqual({
      materialMinor: 6310,
      labourMinor: 13_567,
      overheadMinor: 2385,
      costMinor: 22_262,
    });
    // 222.62 / 0.6, then x 1.9.
    expect(sheet.wholesale?.priceMinor).toBe(37_103);
    expect(sheet.retail?.priceMinor).toBe(70_496);
  });

  it('counts the sewing time as the work until the maker says otherwise', () => {
    expect(priceSheet(plan({ sewingMinutesPerCoat: 90 }), coats(0), rules).coat.labourMinor).toBe(2775);
    const edited = setLabourMinutes(plan({ sewingMinutesPerCoat: 90 }), 30);
    if (!edited.ok) throw new Error('refused');
    expect(edited.value.said).toBe('The work on one coat is estimated at 30 min.');
    expect(priceSheet(edited.value.plan, coats(0), rules).coat.labourMinor).toBe(925);
    const back = setLabourMinutes(edited.value.plan, null);
    expect(back.ok && 'labourMinutesPerCoat' in back.value.plan).toBe(false);
  });

  it('a negative time is refused and nothing is changed', () => {
    expect(setLabourMinutes(plan(), -3)).toMatchObject({
      ok: false,
      problems: [{ where: 'The work on one coat' }],
    });
  });

  it('leaves work and overhead out where the workshop says that it does not count them', () => {
    const bare = { ...rules, hourlyRateMinor: null, isWorkLeftOut: true, overhead: null };
    const sheet = priceSheet(plan(), coats(6310), bare);
    expect(sheet.coat).toEqual({
      materialMinor: 6310,
      labourMinor: 0,
      overheadMinor: 0,
      costMinor: 6310,
    });
    expect(sheet.wholesale?.priceMinor).toBe(10_517);
  });

  it('names no price while an hour has no rate and nobody has said that work is not counted', () => {
    for (const open of [defaultPriceRules, { ...rules, hourlyRateMinor: null }]) {
      const sheet = priceSheet(plan({ labourMinutesPerCoat: 440 }), coats(6310), open);
      expect([sheet.wholesale, sheet.retail]).toEqual([null, null]);
      expect(sheet.coat.materialMinor).toBe(6310);
      const words = priceRows(sheet, { system: 'metric', currency: 'EUR' });
      expect(words).toContainEqual(['work', '0.00 EUR, 7:20 h as the maker estimates, without a rate']);
      expect(words.at(-1)).toEqual([
        'wholesale',
        'no price yet: give an hour of work its rate, or say that work is not counted',
      ]);
    }
  });

  it('a sum per coat is overhead too', () => {
    const perCoat: PriceRules = { ...rules, overhead: { kind: 'per coat', amountMinor: 725 } };
    expect(priceSheet(plan(), coats(6310, 6310), perCoat).batch.overheadMinor).toBe(1450);
  });

  it('says by which formula each price was made', () => {
    expect(additionWords('cost', { kind: 'margin', ratio: 0.375 })).toBe('cost ÷ (1 − 37.5 %)');
    expect(additionWords('wholesale', { kind: 'mark-up', ratio: 1.2 })).toBe('wholesale × (1 + 120 %)');
    const rows = priceRows(priceSheet(plan({ labourMinutesPerCoat: 440 }), coats(6310), rules), {
      system: 'metric',
      currency: 'EUR',
    });
    expect(rows).toContainEqual(['work', '135.67 EUR, 7:20 h as the maker estimates']);
    expect(rows).toContainEqual(['wholesale', '371.03 EUR = cost ÷ (1 − 40 %)']);
  });

  it('a margin and the mark-up that is worth the same give the same price', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 90_000_000 }),
        fc.integer({ min: 0, max: 94 }),
        (costMinor, percent) => {
          const margin: Addition = { kind: 'margin', ratio: percent / 100 };
          const markUp: Addition = { kind: 'mark-up', ratio: percent / (100 - percent) };
          // A mark-up is taken to the millionth, so the two part by no more than that.
          expect(Math.abs(added(costMinor, margin) - added(costMinor, markUp))).toBeLessThanOrEqual(
            1 + costMinor / 1_000_000,
          );
        },
      ),
      { seed: 11 },
    );
  });

  it('the parts of the batch add up to its cost, and so do the coats', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 400_000 }), { minLength: 1, maxLength: 23 }),
        fc.integer({ min: 0, max: 9000 }),
        fc.integer({ min: 0, max: 97 }),
        (materials, hourlyRateMinor, percent) => {
          const own: PriceRules = {
            ...rules,
            hourlyRateMinor,
            overhead: { kind: 'share', ratio: percent / 100 },
          };
          const { coat, batch } = priceSheet(plan(), coats(...materials), own);
          for (const parts of [coat, batch]) {
            expect(parts.materialMinor + parts.labourMinor + parts.overheadMinor).toBe(parts.costMinor);
            expect(Object.values(parts).every(Number.isSafeInteger)).toBe(true);
          }
          expect(batch.materialMinor).toBe(materials.reduce((sum, each) => sum + each, 0));
        },
      ),
      { seed: 12 },
    );
  });
});
