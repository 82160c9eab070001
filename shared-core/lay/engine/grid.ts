/**
 * Pieces whose sides all run along or across the cloth, with every corner on one grid of squares. Whatever valid lay
 * such pieces have can be pushed to the start and to one selvage until each piece touches another or the edge; then
 * every place is a sum of steps of the grid, and the lay has become no longer. So only places on the grid are looked at.
 */
import type { Ring } from '../../geometry/ring.ts';

/** Does every side run along or across, each squarely to the one before? */
function isRightAngled(ring: Ring, nearMm: number): boolean {
  const count = ring.length;
  let wasAlong: boolean | null = null;
  for (let i = 0; i <= count; i += 2) {
    const dx = Math.abs(ring[(i + 2) % count]! - ring[i % count]!);
    const dy = Math.abs(ring[(i + 3) % count]! - ring[(i + 1) % count]!);
    const isAlong = dx > dy;
    if (Math.min(dx, dy) > nearMm || isAlong === wasAlong) return false;
    wasAlong = isAlong;
  }
  return true;
}

/** The greatest length that goes into both, within nearMm. */
function commonStep(one: number, two: number, nearMm: number): number {
  let [step, rest] = [one, two];
  while (rest > nearMm) [step, rest] = [rest, Math.abs(step - Math.round(step / rest) * rest)];
  return step;
}

/** The widest grid step, mm, on which all corners of each ring lie, seen from its first; 0 when it is under leastMm or none. */
export function gridStep(rings: readonly Ring[], leastMm: number, nearMm: number): number {
  if (!rings.every((ring) => isRightAngled(ring, nearMm))) return 0;
  const offsets = rings.flatMap((ring) => Array.from(ring, (value, i) => Math.abs(value - ring[i % 2]!)));
  let step = 0;
  for (const offset of offsets) {
    if (offset > nearMm) step = step === 0 ? offset : commonStep(step, offset, nearMm);
    if (step > 0 && step < leastMm) return 0;
  }
  const isOff = (offset: number): boolean => Math.abs(offset - Math.round(offset / step) * step) > nearMm;
  return offsets.some(isOff) ? 0 : step;
}

/**
 * A right-angled counter-clockwise ring drawn in by a hair on all sides: pieces that touch are then apart, and pieces
 * on the grid that overlap still do, by nearly a step.
 */
export function drawnIn(ring: Ring, byMm: number): Ring {
  const count = ring.length;
  return ring.map((value, i) => {
    const [at, other] = [i % 2, 1 - (i % 2)];
    const corner = i - at;
    const before = ring[(corner + count - 2 + other) % count]! - ring[corner + other]!;
    const after = ring[((corner + 2) % count) + other]! - ring[corner + other]!;
    // The one side of the corner that runs the other way says to which side its inside lies.
    const run = Math.abs(before) > Math.abs(after) ? -before : after;
    return value + byMm * Math.sign(run) * (at === 0 ? -1 : 1);
  });
}
