import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  easeLeft,
  effectiveThicknessMm,
  girthTakenMm,
  sizesToGoUp,
} from '../../../../shared-core/requirement/finished/padding.ts';
import { sizeTables } from '../../../../shared-core/requirement/finished/size-tables.ts';

const misses = sizeTables.find((table) => table.id === 'misses 2011')!;

describe('what padding takes', () => {
  it('two plies of 12 mm of which 40 % is left are 9.6 mm', () => {
    expect(effectiveThicknessMm(2, 12, 0.4)).toBeCloseTo(9.6, 12);
  });
  it('10 mm all round take 62.8 mm of girth', () => {
    expect(girthTakenMm(10)).toBeCloseTo(62.83, 2);
  });
  it('thickness below nothing is refused', () => {
    expect(() => girthTakenMm(-1)).toThrow(RangeError);
    expect(() => effectiveThicknessMm(2, 12, 1.2)).toThrow(RangeError);
  });
});

describe('how many sizes to go up', () => {
  it('62.8 mm on a size 8 are two sizes', () => {
    const found = sizesToGoUp(misses, '8', girthTakenMm(10));
    expect(found).toMatchObject({ ok: true, value: { sizeCount: 2, size: '12' } });
    expect(found.ok && found.value.spareMm).toBeCloseTo(2.5 * 25.4 - 62.83, 2);
  });
  it('no padding is no size up', () => {
    expect(sizesToGoUp(misses, '14', 0)).toMatchObject({
      ok: true,
      value: { sizeCount: 0, size: '14', spareMm: 0 },
    });
  });
  it('a size that is not in the table is told which are', () => {
    const found = sizesToGoUp(misses, '9', 10);
    expect(found.ok ? '' : found.problems[0]?.fix).toContain('00, 0, 2');
  });
  it('padding beyond the end of the table is a problem, not a size', () => {
    expect(sizesToGoUp(misses, '18', 90).ok).toBe(false);
  });
  it('the size found is large enough and the one before it is not, in every table', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...sizeTables),
        fc.nat(),
        fc.double({ min: 1, max: 120, noNaN: true }),
        (table, pick, takenMm) => {
          const at = pick % table.rows.length;
          const from = table.rows[at]!;
          const found = sizesToGoUp(table, from.size, takenMm);
          if (!found.ok) {
            expect(table.rows.at(-1)!.bustMm - from.bustMm).toBeLessThan(takenMm);
            return;
          }
          const to = table.rows[at + found.value.sizeCount]!;
          expect(to.bustMm - from.bustMm).toBeGreaterThanOrEqual(takenMm - 0.1);
          expect(table.rows[at + found.value.sizeCount - 1]!.bustMm - from.bustMm).toBeLessThan(
            takenMm - 0.1,
          );
        },
      ),
    );
  });
});

describe('size tables', () => {
  it('rise in every measure from size to size', () => {
    for (const table of sizeTables) {
      for (const [index, row] of table.rows.entries()) {
        const before = table.rows[index - 1];
        expect(row.waistMm).toBeLessThan(row.bustMm);
        if (!before) continue;
        expect(row.bustMm).toBeGreaterThan(before.bustMm);
        expect(row.waistMm).toBeGreaterThan(before.waistMm);
        if (row.hipMm !== null) expect(row.hipMm).toBeGreaterThan(before.hipMm!);
      }
    }
  });
});

describe('ease left inside the padding', () => {
  const at = (place: 'bust' | 'upper arm', bodyMm: number, garmentMm: number, thicknessMm: number) =>
    easeLeft([{ place, bodyMm, garmentMm, thicknessMm }])[0]!;
  it('is what was drafted less what the padding takes', () => {
    const ease = at('bust', 920, 1130, 8);
    expect([ease.draftedMm, ease.takenMm, ease.leftMm]).toEqual([
      210,
      expect.closeTo(50.27, 2),
      expect.closeTo(159.73, 2),
    ]);
    expect([ease.words, ease.basis.kind]).toEqual(['a fitted coat', 'rule of thumb']);
  });
  it('a coat that padding makes smaller than the body does not close', () => {
    expect(at('bust', 920, 950, 8).words).toBe('does not close');
  });
  it('the same ease is looser on an arm', () => {
    expect(at('bust', 300, 400, 1).words).toBe('as close as a fitted dress');
    expect(at('upper arm', 300, 400, 1).words).toBe('a semi-fitted coat');
  });
  it('thicker padding never leaves more', () => {
    const mm = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(mm, mm, (a, b) => {
        expect(at('bust', 900, 1200, Math.max(a, b)).leftMm).toBeLessThanOrEqual(
          at('bust', 900, 1200, Math.min(a, b)).leftMm,
        );
      }),
    );
  });
});
