import { describe, expect, it } from 'vitest';
import { outsideModules } from './all.ts';
import { runOutsideChecks } from './outside.ts';

for (const { name, rows } of outsideModules) {
  describe(`${name} agree with what others publish`, () => {
    it('has rows, each with a source, and no two of one name', () => {
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.filter((row) => row.source.trim() === '' || row.name.trim() === '')).toEqual([]);
      expect(new Set(rows.map((row) => row.name)).size).toBe(rows.length);
    });
    for (const verdict of runOutsideChecks(rows)) {
      it(`${verdict.name} (${verdict.source})`, () => {
        expect(
          verdict.pass,
          `expected ${verdict.expected} within ${verdict.tolerance}, got ${verdict.got}`,
        ).toBe(true);
      });
    }
  });
}

describe('an outside check', () => {
  const row = { name: 'a', source: 's', expected: 3, tolerance: 0.5 };
  const verdict = (changes: object) => runOutsideChecks([{ ...row, got: 3, ...changes }])[0]!.pass;
  it('passes up to its tolerance and no further', () => {
    expect([verdict({ got: 3.5 }), verdict({ got: 2.5 }), verdict({ got: 3.51 })]).toEqual([
      true,
      true,
      false,
    ]);
  });
  it('fails for what is no number, or a text where a number belongs', () => {
    expect([verdict({ got: Number.NaN }), verdict({ got: '3' }), verdict({ expected: '3' })]).toEqual([
      false,
      false,
      false,
    ]);
    expect([verdict({ expected: 'x', got: 'x' }), verdict({ expected: 'x', got: 'y' })]).toEqual([
      true,
      false,
    ]);
  });
});
