import { expect, test } from 'vitest';
import type { LayJob } from '../../../shared-core/lay/job.ts';
import { layProblems, startLay } from '../../../shared-core/lay/lay.ts';
import { foldedHalf, job, length, rectangle, ring, shape } from './jobs.ts';

const square = rectangle(200, 170);

function said(asked: LayJob): string[] {
  return layProblems(asked).map((problem) => `${problem.where} ${problem.what}`);
}

test('a job without a fault has no problem', () => {
  expect(said(job([shape('front', square)]))).toEqual([]);
});

test('a piece wider than every length is named', () => {
  const wide = job([shape('back', rectangle(300, 1500), { turnsDeg: [0, 180] })]);
  expect(said(wide)).toEqual(['Shape back is wider than every length: no allowed turn fits 1400 mm']);
  expect(said(job([shape('back', rectangle(300, 1500), { turnsDeg: [0, 90] })]))).toEqual([]);
});

test('folded cloth has half the room', () => {
  const asked = job([shape('back', rectangle(300, 800))], { spread: 'folded' });
  expect(said(asked)).toEqual(['Shape back is wider than every length: no allowed turn fits 700 mm']);
});

test.each<readonly [string, LayJob, string]>([
  [
    'an outline that crosses itself',
    job([shape('bow', ring([0, 0], [90, 80], [90, 0], [0, 50]))]),
    'Shape bow crosses itself',
  ],
  [
    'a corner that is not a number',
    job([shape('odd', ring([0, 0], [Number.NaN, 8], [9, 0]))]),
    'Shape odd has a corner that is not a number',
  ],
  [
    'two corners only',
    job([shape('line', ring([0, 0], [50, 8]))]),
    'Shape line has fewer than three corners',
  ],
  [
    'an outline round nothing',
    job([shape('flat', ring([0, 0], [50, 0], [90, 0]))]),
    'Shape flat encloses nothing',
  ],
  [
    'half a copy',
    job([shape('cuff', square, { count: 1.5 })]),
    'Shape cuff has a count that is not a whole number',
  ],
  ['no turn at all', job([shape('cuff', square, { turnsDeg: [] })]), 'Shape cuff has no allowed turn'],
  ['no cloth', job([shape('cuff', square)], { lengths: [] }), 'The lay has no cloth'],
  [
    'no width',
    job([shape('cuff', square)], { lengths: [length('roll', 0, null)] }),
    'Length roll has no usable width',
  ],
  [
    'an endless length before another',
    job([shape('cuff', square)], { lengths: [length('roll', 900, null), length('scrap', 900, 70)] }),
    'Length roll is endless but not the last',
  ],
  ['a clearance below 0', job([shape('cuff', square)], { clearanceMm: -3 }), 'Clearance is not 0 or more'],
  [
    'a repeat below 0',
    job([shape('cuff', square)], { repeat: { alongMm: -1, acrossMm: 0 } }),
    'Pattern repeat is not 0 or more',
  ],
])('%s is a problem, and no lay begins', (_, asked, sentence) => {
  expect(said(asked)).toContain(sentence);
  expect(() => startLay(asked, () => 0)).toThrow();
});

test('a match point that cannot stand on the repeat within the width is a problem', () => {
  const match = { x: 0, y: 0, phaseX: 0, phaseY: 300 };
  const asked = job([shape('back', rectangle(100, 1200), { match, turnsDeg: [0] })], {
    repeat: { alongMm: 0, acrossMm: 1350 },
  });
  expect(said(asked)).toEqual(['Shape back cannot stand on the pattern repeat within the width']);
});

test('a half that is drawn away from the fold is a problem', () => {
  const { half, whole } = foldedHalf(300, 200, 0.1);
  const away = half.map((value, index) => (index % 2 === 1 ? value + 14 : value));
  const asked = job([shape('back', whole, { foldRing: away })], { spread: 'folded' });
  expect(said(asked)).toEqual(['Shape back does not touch the fold']);
});
