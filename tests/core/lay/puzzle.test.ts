import { describe, expect, test } from 'vitest';
import type { Ring } from '../../../shared-core/geometry/ring.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { modelOf } from '../../../shared-core/lay/engine/model.ts';
import { LIKENESSES, puzzleOf } from '../../../shared-core/lay/engine/puzzle/puzzle-pieces.ts';
import { mayBePuzzle } from '../../../shared-core/lay/engine/puzzle/puzzle.ts';
import { startTiling } from '../../../shared-core/lay/engine/puzzle/tiling.ts';
import { randomFrom } from '../../../shared-core/lay/engine/random.ts';
import type { LayJob } from '../../../shared-core/lay/job.ts';
import { madeInstances } from '../../bench/instances/all-made.ts';
import { shellJob } from '../../bench/instances/demo-shell.ts';
import { type MadeInstance, madeJob } from '../../bench/instances/made.ts';
import { startLay } from '../../../shared-core/lay/lay.ts';
import { job, laid, length, rectangle, shape, wedge } from './jobs.ts';

/** How much of the cloth is used, %, once it is `enough` or the moves are made; the lay is sound. */
function usedPercent(asked: LayJob, { lengthMm }: MadeInstance, iterations: number, enough: number): number {
  const search = startLay(asked, () => 0, { seconds: null, iterations });
  const used = () => (lengthMm / search.best().usedLengthMm[0]!) * 100;
  while (used() < enough && search.best().iterations < iterations) {
    if (!search.advance({ ms: null, iterations: 100 })) break;
  }
  expect(checkLay(asked, search.best())).toEqual([]);
  return used();
}

/** With every corner rounded to so many digits of a millimetre. */
function rounded(asked: LayJob, digits: number): LayJob {
  const shapes = asked.shapes.map((one) => ({
    ...one,
    ring: one.ring.map((v) => Number(v.toFixed(digits))),
  }));
  return { ...asked, shapes };
}

function cut(kinds: readonly string[], families: readonly number[]): MadeInstance[] {
  return families.flatMap((family) => madeInstances(family)).filter(({ kind }) => kinds.includes(kind));
}

describe('pieces that were cut from a strip without loss', () => {
  test('by straight cuts, in the cloth nearest to points or with knobs, fill it again', () => {
    for (const one of cut(['guillotine', 'nearest', 'jigsaw'], [1, 2, 3])) {
      expect({ name: one.name, used: usedPercent(madeJob(one, 3), one, 400, 99.999) }).toEqual({
        name: one.name,
        used: expect.closeTo(100, 2),
      });
    }
  });

  test('into twenty rectangles fill it again', () => {
    for (const one of cut(['rectangles'], [1, 2]).filter(({ pieces }) => pieces.length === 20)) {
      expect(usedPercent(madeJob(one, 3), one, 600_000, 99.999)).toBeCloseTo(100, 3);
    }
  });

  test('along a grid of squares fill it but for one column of squares or two', () => {
    for (const one of cut(['polyominoes'], [1, 2]).filter(({ pieces }) => pieces.length < 40)) {
      const columns = one.lengthMm / 50;
      const enough = (100 * columns) / (columns + 2) - 1e-6;
      expect(usedPercent(madeJob(one, 3), one, 200_000, enough)).toBeGreaterThanOrEqual(enough);
    }
  });

  test('and drawn to a hundredth or a tenth of a millimetre come within half a per cent', () => {
    for (const one of cut(['guillotine', 'nearest'], [1])) {
      for (const digits of [2, 1]) {
        expect(usedPercent(rounded(madeJob(one, 3), digits), one, 20_000, 99.5)).toBeGreaterThanOrEqual(99.5);
      }
    }
  });

  test('fill the first of several lengths where it is long enough', () => {
    const [one] = cut(['nearest'], [2]);
    const asked = madeJob(one!, 3);
    const result = laid(
      { ...asked, lengths: [length('rest', one!.widthMm, one!.lengthMm + 40), length('roll', 900, null)] },
      400,
    );
    expect(result.usedLengthMm[0]).toBeCloseTo(one!.lengthMm, 6);
    expect(result.usedLengthMm[1]).toBe(0);
  });
});

describe('pieces that are no puzzle', () => {
  /** After how many steps it is plain that they fill no rectangle; Infinity when it is not by `most`. */
  function stepsUntilPlain(asked: LayJob, most: number): number {
    const tiling = startTiling(puzzleOf(modelOf(asked)), LIKENESSES[0]!, 'fewest', randomFrom(1));
    for (let step = 1; step <= most; step++) if (!tiling.step()) return tiling.found() ? Infinity : step;
    return Infinity;
  }

  test('show it soon, as those of a coat do', () => {
    expect(stepsUntilPlain(shellJob(1, 1), 2000)).toBeLessThan(2000);
  });

  test('show it at once where no edges add up to the width', () => {
    const odd: readonly Ring[] = [
      rectangle(300, 310),
      rectangle(420, 350),
      rectangle(280, 330),
      wedge(200, 370),
    ];
    expect(stepsUntilPlain(job(odd.map((ring, at) => shape(`${at}`, ring))), 10)).toBeLessThanOrEqual(2);
  });

  test('are not tried where they keep a clearance, and where a flaw or a repeat stands in the way', () => {
    const shapes = [shape('one', rectangle(700, 500)), shape('two', rectangle(700, 500))];
    const flaw = { x: 10, y: 10, widthX: 5, widthY: 5 };
    const may = (more: Partial<LayJob>) => mayBePuzzle(modelOf(job(shapes, more)));
    expect(may({})).toBe(true);
    expect(may({ clearanceMm: 1 })).toBe(false);
    expect(may({ lengths: [length('roll', 1400, null, [flaw])] })).toBe(false);
    expect(may({ spread: 'folded' })).toBe(false);
    expect(may({ repeat: { alongMm: 100, acrossMm: 0 } })).toBe(false);
    expect(may({ lengths: [length('rest', 1400, 400), length('roll', 1400, null)] })).toBe(false);
  });
});
