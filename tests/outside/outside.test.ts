import { describe, expect, it } from 'vitest';
import { allVerdicts, outsideModules } from './all.ts';
import { runOutsideChecks, summaryOf } from './outside.ts';

for (const { name: topic } of outsideModules) {
  const verdicts = allVerdicts.filter((verdict) => verdict.topic === topic);
  describe(`${topic} beside what others publish`, () => {
    it('has rows, each with a source, and no two of one name', () => {
      expect(verdicts.length).toBeGreaterThan(0);
      expect(verdicts.filter((row) => row.source.trim() === '' || row.name.trim() === '')).toEqual([]);
      expect(new Set(verdicts.map((row) => row.name)).size).toBe(verdicts.length);
    });
    it('gives the reason of every tolerance beside a published result', () => {
      const bare = verdicts.filter(
        (row) => row.class === 'A' && row.tolerance !== 0 && (row.toleranceReason ?? '').trim() === '',
      );
      expect(bare.map(({ name }) => name)).toEqual([]);
    });
    for (const { name, source, expected, got, tolerance, pass, explanation } of verdicts) {
      const told = `published ${JSON.stringify(expected)}, tolerance ${JSON.stringify(tolerance)}, computed ${got}`;
      if (explanation === undefined) {
        it(`${name} (${source})`, () => {
          expect(pass, `${told}: mend the arithmetic, or find the cause and say it in "explanation"`).toBe(
            true,
          );
        });
      } else {
        it(`${name} does not hold, and it is known why (${source})`, () => {
          expect(explanation.trim()).not.toBe('');
          expect(pass, `${told}: it holds now, so take its explanation away`).toBe(false);
        });
      }
    }
  });
}

describe('all rows together', () => {
  it('are enough to hurt: 90 of class A, 40 of them on the main job', () => {
    const { classA, mainJob } = summaryOf(allVerdicts);
    expect(classA).toBeGreaterThanOrEqual(90);
    expect(mainJob).toBeGreaterThanOrEqual(40);
  });
  it('lean on a source: none is held against nothing but common practice', () => {
    expect(allVerdicts.filter(({ source }) => /no source/i.test(source)).map(({ name }) => name)).toEqual([]);
  });
});

describe('an outside check', () => {
  const row = { class: 'A', name: 'a', source: 's', expected: 3, tolerance: 0.5 } as const;
  const passes = (changes: object) => runOutsideChecks([{ ...row, got: 3, ...changes }])[0]!.pass;
  it('passes up to its tolerance and no further', () => {
    expect([3.5, 2.5, 3.51, 2.49].map((got) => passes({ got }))).toEqual([true, true, false, false]);
  });
  it('may allow more on one side', () => {
    const sides = (got: number) => passes({ got, tolerance: { below: 1, above: 0 } });
    expect([1.99, 2, 3, 3.01].map(sides)).toEqual([false, true, true, false]);
  });
  it('of a published range reckons from the nearer end', () => {
    const ranged = (got: number) => passes({ got, expected: { min: 3, max: 5 } });
    expect([2.49, 2.5, 4, 5.5, 5.51].map(ranged)).toEqual([false, true, true, true, false]);
  });
  it('fails for what is no number, or a text where a number belongs', () => {
    expect([{ got: Number.NaN }, { got: '3' }, { expected: '3' }].map(passes)).toEqual([false, false, false]);
    expect(
      [
        { expected: 'x', got: 'x' },
        { expected: 'x', got: 'y' },
      ].map(passes),
    ).toEqual([true, false]);
  });
  it('that fails is told with what was published, what came out, and why', () => {
    const verdicts = runOutsideChecks([
      { ...row, got: 9, isMainJob: true, explanation: 'the cloth was folded' },
      { ...row, got: 3 },
      { ...row, class: 'B', got: 3 },
    ]).map((verdict) => ({ ...verdict, topic: 'lays' }));
    expect(summaryOf(verdicts)).toEqual({
      classA: 2,
      mainJob: 1,
      failing: [
        { row: 'lays: a', published: 3, computed: 9, tolerance: 0.5, explanation: 'the cloth was folded' },
      ],
    });
  });
});
