import { expect, test } from 'vitest';
import { ringMoved } from '../../../shared-core/geometry/ring.ts';
import { depthsOf } from '../../../shared-core/lay/engine/depth.ts';
import { keptTable, baseOf } from '../../../shared-core/lay/engine/kept-tables.ts';
import { blob, dice, laid, randomJob } from './jobs.ts';

const next = dice(41);
const [one, two] = [blob(next, 90, 60), blob(next, 70, 80)];

/** The table of both outlines, each drawn anew. */
function table(clearanceMm: number, toleranceMm: number, first = one) {
  const forms = [first, two].map((ring) => ({ ring: ringMoved(ring, 0, 0), flaw: false }));
  return depthsOf(forms, clearanceMm, 0, toleranceMm).find(0, 1).make();
}

test('a table is made once for the same outlines, and another for others, another clearance or tolerance', () => {
  const made = table(2, 0.1);
  expect(table(2, 0.1)).toBe(made);
  const hair = one.with(0, one[0]! + 1e-9);
  for (const other of [table(3, 0.1), table(2, 0.2), table(2, 0.1, hair)]) expect(other).not.toBe(made);
});

test('so many are kept and no more: those that were asked for longest ago are made anew', () => {
  const base = baseOf(one, 0, 100);
  let madeCount = 0;
  const megabyte = (flip: number) =>
    keptTable(base, base, flip, 7, () => {
      madeCount += 1;
      return { ...table(2, 0.1), cells: new Int32Array(2 ** 18) };
    });
  for (let flip = 0; flip < 40; flip++) {
    megabyte(0);
    megabyte(flip);
  }
  expect(madeCount).toBe(40);
  megabyte(39);
  megabyte(0);
  expect(madeCount).toBe(40);
  megabyte(1);
  expect(madeCount).toBe(41);
});

test('a lay is the same whether its tables were there already', () => {
  const jobs = Array.from({ length: 30 }, (_, seed) => randomJob(7000 + seed)).filter((job) => job !== null);
  const firsts = jobs.map((job) => laid(job, 40).placements);
  expect(jobs.map((job) => laid(job, 40).placements)).toEqual(firsts);
});
