import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { startLay } from '../../../shared-core/lay/lay.ts';
import { blob, dice, job, laid, length, rectangle, shape } from './jobs.ts';

/** Pieces of one coat, each once, of about a coat's number. */
function coat(seed: number, group: string, pieceCount = 17): LayJob['shapes'] {
  const next = dice(seed);
  return Array.from({ length: pieceCount }, (_, index) => ({
    ...shape(`${group} ${index}`, blob(next, 420, 240), { count: 1 }),
    group,
  }));
}

function times(shapes: LayJob['shapes'], count: number): LayJob['shapes'] {
  return shapes.map((each) => ({
    ...each,
    count: each.count * count,
    mirroredCount: each.mirroredCount * count,
  }));
}

const roll = [length('roll', 900, null)];
const used = (result: LayResult) => result.usedLengthMm.reduce((sum, each) => sum + each, 0);

describe('several coats', () => {
  test.each([2, 3, 5])('%i of them take no more cloth than their best single lay repeated', (count) => {
    const one = coat(7, '40');
    const iterations = 4000;
    const batch = laid(job(times(one, count), { lengths: roll, clearanceMm: 2 }), iterations);
    // What a batch spends on one coat: three fifths of the moves.
    const single = laid(job(one, { lengths: roll, clearanceMm: 2 }), iterations * 0.6);
    expect(used(batch)).toBeLessThanOrEqual(count * used(single) + (count - 1) * 2.001);
  });

  test('of two sizes take no more than each size repeated', () => {
    const [small, large] = [coat(7, '40'), coat(8, '42')];
    const both = [...times(small, 2), ...times(large, 3)];
    const batch = laid(job(both, { lengths: roll, clearanceMm: 2 }), 4000);
    const alone = [small, large].map((one) => used(laid(job(one, { lengths: roll, clearanceMm: 2 }), 500)));
    expect(used(batch)).toBeLessThanOrEqual(2 * alone[0]! + 3 * alone[1]! + 4 * 2.001);
  });

  test('have a lay at once that is near what one coat’s first lay takes', () => {
    const one = coat(7, '40');
    const single = startLay(job(one, { lengths: roll }), () => 0).best();
    const batch = startLay(job(times(one, 8), { lengths: roll }), () => 0).best();
    expect(used(batch)).toBeLessThanOrEqual(8 * used(single) + 0.1);
  });

  test.each(['roll', 'remnants', 'flaws', 'folded', 'repeat'])(
    'on %s: every lay is sound, and on a roll each is shorter than the one before',
    (kind) => {
      fc.assert(
        fc.property(
          fc.record({ seed: fc.integer({ min: 1, max: 900 }), count: fc.integer({ min: 2, max: 5 }) }),
          ({ seed, count }) => {
            const shapes = times(coat(seed, '40', 16), count);
            const remnants = [length('remnant', 900, 1400), length('narrow', 500, 900), ...roll];
            const flawed = [
              { ...length('flawed', 900, 1700), flaws: [{ x: 610, y: 300, widthX: 80, widthY: 60 }] },
              ...roll,
            ];
            const asked = job(
              kind === 'repeat'
                ? shapes.map((each) => ({ ...each, match: { x: 0, y: 0, phaseX: 0, phaseY: 0 } }))
                : shapes,
              {
                lengths: kind === 'remnants' ? remnants : kind === 'flaws' ? flawed : roll,
                spread: kind === 'folded' ? 'folded' : 'open',
                repeat: kind === 'repeat' ? { alongMm: 90, acrossMm: 0 } : null,
                clearanceMm: 2,
                seed,
              },
            );
            const search = startLay(asked, () => 0, { seconds: null, iterations: 1500 });
            let last = Infinity;
            for (let slice = 0; slice < 15; slice++) {
              const best = search.best();
              expect(checkLay(asked, best)).toEqual([]);
              if (kind === 'roll') {
                expect(used(best)).toBeLessThanOrEqual(last + 1e-6);
                last = used(best);
              }
              search.advance({ ms: null, iterations: 100 });
            }
          },
        ),
        { seed: 11, numRuns: 2 },
      );
    },
  );

  test('of many pieces are worked on window by window, and only get shorter', () => {
    const asked = job([shape('tile', rectangle(180, 90), { count: 60 }), ...times(coat(5, '40', 20), 2)], {
      lengths: roll,
      clearanceMm: 2,
    });
    const few = laid(asked, 3000);
    const more = laid(asked, 9000);
    expect(checkLay(asked, more)).toEqual([]);
    expect(used(more)).toBeLessThan(used(few));
  });
});
