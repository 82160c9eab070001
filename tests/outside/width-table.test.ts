import { describe, expect, it } from 'vitest';
import { sameAreaLengthMm, tableLengthMm, widthTableEighths } from './width-table.ts';

describe('the classic table of widths, beside our lays', () => {
  const yd = 914.4;
  it('takes the row that is long enough and the column that is not too wide', () => {
    expect(tableLengthMm(2.4 * yd, 45 * 25.4, 60 * 25.4)).toBeCloseTo(1.875 * yd, 6);
    expect(tableLengthMm(2.5 * yd, 47 * 25.4, 64 * 25.4)).toBeCloseTo(1.875 * yd, 6);
  });
  it('says nothing beyond its ends', () => {
    expect(tableLengthMm(6 * yd, 45 * 25.4, 60 * 25.4)).toBeNull();
    expect(tableLengthMm(2 * yd, 30 * 25.4, 60 * 25.4)).toBeNull();
  });
  it('never asks more of wider cloth, and more for a longer row', () => {
    for (const [at, row] of widthTableEighths.entries()) {
      for (const [column, eighths] of row.entries()) {
        if (column > 0) expect(eighths).toBeLessThanOrEqual(row[column - 1]!);
        if (at > 0) expect(eighths).toBeGreaterThan(widthTableEighths[at - 1]![column]!);
      }
    }
  });
  it('the same area is longer on narrower cloth', () => {
    expect(sameAreaLengthMm(3000, 1500, 1000)).toBe(4500);
    expect(() => sameAreaLengthMm(3000, 1500, 0)).toThrow(RangeError);
  });
});
