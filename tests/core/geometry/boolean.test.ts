import { expect, it } from 'vitest';
import { ringWithoutLoops } from '../../../shared-core/geometry/boolean.ts';
import { ringAreaMm2, ringReversed } from '../../../shared-core/geometry/ring.ts';

const ring = (...numbers: number[]) => Float64Array.from(numbers);

it('a ring without loops keeps its area', () => {
  expect(ringAreaMm2(ringWithoutLoops(ring(0, 0, 130, 0, 130, 47, 0, 47))!)).toBeCloseTo(130 * 47, 6);
});

it('a loop that runs backwards at a corner falls away', () => {
  // 100 x 60 with a bow of two crossing lines beyond the top right corner: its far triangle runs clockwise.
  const looped = ring(0, 0, 100, 0, 100, 70, 110, 60, 0, 60);
  const clean = ringWithoutLoops(looped)!;
  expect(ringAreaMm2(clean)).toBeCloseTo(100 * 60, 3);
});

it('a ring that runs clockwise throughout has no inside', () => {
  expect(ringWithoutLoops(ringReversed(ring(0, 0, 90, 0, 90, 31, 0, 31)))).toBeNull();
});

it('a flap that runs backwards outside a side falls away whole', () => {
  const clean = ringWithoutLoops(ring(0, 0, 80, 0, 80, 50, 0, 50, 0, 25, -10, 25, -10, 35, 0, 35))!;
  expect(ringAreaMm2(clean)).toBeCloseTo(80 * 50, 3);
});
