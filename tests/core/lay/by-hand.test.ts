import { describe, expect, test } from 'vitest';
import {
  exchanged,
  finishedLay,
  finishJob,
  type HandLay,
  handLayOf,
  handResult,
  moved,
  pinnedOrNot,
  slid,
  turned,
} from '../../../shared-core/lay/by-hand.ts';
import { isClear, outlinesOf, placedBox, standingOf } from '../../../shared-core/lay/standing.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayJob } from '../../../shared-core/lay/job.ts';
import { dice, job, laid, length, randomJob, rectangle, ring, shape } from './jobs.ts';

const hook = ring([0, 0], [300, 0], [300, 80], [80, 80], [80, 300], [0, 300]);
const table = job(
  [
    shape('hook', hook, { count: 2, turnsDeg: [0, 180] }),
    shape('square', rectangle(100, 100), { count: 2, turnsDeg: [0] }),
  ],
  { lengths: [length('roll', 600, null)], clearanceMm: 2 },
);
const outlines = outlinesOf(table);
const lay = handLayOf(laid(table, 50));

function isSound(asked: LayJob, of: HandLay): boolean {
  const own = outlinesOf(asked);
  return of.placements.every((_, index) => isClear(standingOf(asked, own, of.placements, index)));
}

describe('a piece under my hand', () => {
  test('is said to be in the way just where the lay would be refused for cutting', () => {
    const next = dice(29);
    let refused = 0;
    let sound = 0;
    for (let seed = 0; seed < 160; seed++) {
      const asked = randomJob(seed);
      if (!asked || asked.spread === 'folded') continue;
      const own = outlinesOf(asked);
      let hand = handLayOf(laid(asked, 30));
      if (hand.placements.length === 0) continue;
      const index = Math.floor(next() * hand.placements.length);
      const from = hand.placements[index]!;
      // Many a time by a little, which may be too near without lying on another.
      const by = (next() < 0.5 ? 6 : 200) * (next() - 0.5);
      if (next() < 0.7)
        hand = moved(asked, own, hand, index, { length: from.length, x: from.x + by, y: from.y + by });
      const faults = checkLay(asked, handResult(asked, own, hand, 0));
      expect(isSound(asked, hand), `job ${seed}: ${JSON.stringify(faults)}`).toBe(faults.length === 0);
      if (faults.length > 0) refused += 1;
      else sound += 1;
    }
    expect(refused).toBeGreaterThan(20);
    expect(sound).toBeGreaterThan(40);
  });

  test('never leaves the cloth, however far I pull it', () => {
    const far = moved(table, outlines, lay, 0, { length: 0, x: -5000, y: 9000 });
    const box = placedBox(outlines, far.placements[0]!);
    expect(box.minX).toBeCloseTo(0, 9);
    expect(box.maxY).toBeCloseTo(600, 9);
  });

  test('turns only as its grain allows, about its own middle', () => {
    const hookAt = lay.placements.findIndex((one) => one.shape === 0);
    const squareAt = lay.placements.findIndex((one) => one.shape === 1);
    const after = turned(table, outlines, lay, hookAt);
    expect(after.placements[hookAt]!.turnDeg).not.toBe(lay.placements[hookAt]!.turnDeg);
    const before = placedBox(outlines, lay.placements[hookAt]!);
    const box = placedBox(outlines, after.placements[hookAt]!);
    expect(box.minX + box.maxX).toBeCloseTo(before.minX + before.maxX, 6);
    expect(turned(table, outlines, lay, squareAt)).toBe(lay);
  });

  test('trades places with another, and trades back', () => {
    const there = exchanged(table, outlines, lay, 0, 3);
    const box = (of: HandLay, index: number) => placedBox(outlines, of.placements[index]!);
    const middle = (of: HandLay, index: number) => box(of, index).minX + box(of, index).maxX;
    expect(middle(there, 3)).toBeCloseTo(middle(lay, 0), 6);
    const back = exchanged(table, outlines, there, 0, 3);
    expect(middle(back, 0)).toBeCloseTo(middle(lay, 0), 6);
  });

  test('stays put once it is pinned', () => {
    const pinned = pinnedOrNot(lay, 0);
    expect(moved(table, outlines, pinned, 0, { length: 0, x: 9, y: 9 })).toBe(pinned);
    expect(turned(table, outlines, pinned, 0)).toBe(pinned);
    expect(exchanged(table, outlines, pinned, 0, 1)).toBe(pinned);
    expect(pinnedOrNot(pinned, 0).pinned.size).toBe(0);
  });

  test.each([
    { x: 300, isClear: true },
    { x: 299.999, isClear: true },
    { x: 299.9, isClear: false },
  ])('may touch a flaw, but not lie on it: $x', ({ x, isClear: expected }) => {
    const flawed = job([shape('square', rectangle(100, 100))], {
      lengths: [length('roll', 600, null, [{ x: 200, y: 0, widthX: 100, widthY: 600 }])],
    });
    const place = { shape: 0, length: 0, x, y: 50, turnDeg: 0, mirrored: false, onFold: false };
    const hand: HandLay = { placements: [place], pinned: new Set(), aside: [] };
    expect(checkLay(flawed, handResult(flawed, outlinesOf(flawed), hand, 0)).length === 0).toBe(expected);
    expect(isSound(flawed, hand)).toBe(expected);
  });

  test('slides until it meets the next piece, and keeps its clearance', () => {
    const two = job([shape('square', rectangle(100, 100), { count: 2 })], {
      lengths: [length('roll', 100, null)],
      clearanceMm: 3,
    });
    const own = outlinesOf(two);
    const place = { shape: 0, length: 0, y: 0, turnDeg: 0, mirrored: false, onFold: false };
    const apart: HandLay = {
      placements: [
        { ...place, x: 0 },
        { ...place, x: 777 },
      ],
      pinned: new Set(),
      aside: [],
    };
    const after = slid(two, own, apart, 1, { x: -1, y: 0 });
    expect(after.placements[1]!.x).toBeCloseTo(103, 1);
    expect(checkLay(two, handResult(two, own, after, 0))).toEqual([]);
  });
});

describe('the search finishes what I began', () => {
  test('around what is pinned, and no longer than I had it', () => {
    let hand = lay;
    hand = pinnedOrNot(hand, 1);
    const asked = finishJob(table, hand, 4);
    const after = finishedLay(asked, laid(asked, 1500));
    expect(after.placements[0]).toEqual(hand.placements[1]);
    expect([...after.pinned]).toEqual([0]);
    const result = handResult(table, outlines, after, 0);
    expect(checkLay(table, result)).toEqual([]);
    // Between laid pieces the search leaves hairs that no blade can see.
    expect(result.usedLengthMm[0]!).toBeLessThanOrEqual(
      handResult(table, outlines, hand, 0).usedLengthMm[0]! + 0.05,
    );
  });
});
