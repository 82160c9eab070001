import { describe, expect, test } from 'vitest';
import { ringBox, ringTurned } from '../../../shared-core/geometry/ring.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { foldedHalf, job, laid, length, rectangle, ring, shape, wedge } from './jobs.ts';

function soundly(asked: LayJob, iterations = 3000): LayResult {
  const result = laid(asked, iterations);
  expect(checkLay(asked, result)).toEqual([]);
  return result;
}

/** Boxes of what was placed, x and y from the start of its length. */
function boxes(asked: LayJob, result: LayResult) {
  return result.placements.map((placement) => {
    const one = asked.shapes[placement.shape]!;
    const outline = placement.onFold ? one.foldRing! : one.ring;
    const box = ringBox(ringTurned(outline, placement.turnDeg, placement.mirrored));
    return {
      minX: box.minX + placement.x,
      maxX: box.maxX + placement.x,
      minY: box.minY + placement.y,
      maxY: box.maxY + placement.y,
    };
  });
}

describe('grain and nap', () => {
  const wedges = (turnsDeg: readonly number[]) =>
    job([shape('gusset', wedge(700, 390), { count: 2, turnsDeg })], { lengths: [length('roll', 400, null)] });

  test('two wedges share a rectangle when the grain allows half a turn', () => {
    expect(soundly(wedges([0, 180])).usedLengthMm[0]).toBeLessThan(730);
  });

  test('with nap every piece points the same way, and the wedges need more cloth', () => {
    const result = soundly(wedges([0]));
    expect(result.placements.map((placement) => placement.turnDeg)).toEqual([0, 0]);
    expect(result.usedLengthMm[0]).toBeGreaterThan(1000);
  });

  test('a free piece turns across the cloth where that is shorter', () => {
    const strip = (turnsDeg: readonly number[]) =>
      job([shape('binding', rectangle(610, 90), { count: 4, turnsDeg })], {
        lengths: [length('roll', 620, null)],
      });
    expect(soundly(strip([0, 180])).usedLengthMm[0]).toBeCloseTo(610, 3);
    expect(soundly(strip([0, 90, 180, 270])).usedLengthMm[0]).toBeLessThan(4 * 90 + 1);
  });

  test('a mirrored piece lies mirrored, as often as asked', () => {
    const sleeve = ring([0, 0], [400, 40], [370, 310], [90, 250]);
    const result = soundly(job([shape('sleeve', sleeve, { count: 2, mirroredCount: 3, turnsDeg: [0] })]));
    expect(result.placements.filter((placement) => placement.mirrored)).toHaveLength(3);
    expect(result.placements.filter((placement) => !placement.mirrored)).toHaveLength(2);
  });
});

describe('clearance', () => {
  test('pieces stand apart by the clearance but touch the edge and the ends', () => {
    const asked = job([shape('square', rectangle(200, 200), { count: 3 })], {
      lengths: [length('roll', 210, null)],
      clearanceMm: 7,
    });
    expect(soundly(asked).usedLengthMm[0]).toBeGreaterThanOrEqual(614);
    expect(soundly(asked).usedLengthMm[0]).toBeLessThan(614.1);
  });
});

describe('folded cloth', () => {
  test('a pair needs one placement, and only half the width is there', () => {
    const asked = job([shape('front', wedge(500, 290), { count: 1, mirroredCount: 1 })], {
      spread: 'folded',
      lengths: [length('roll', 600, null)],
    });
    const result = soundly(asked);
    expect(result.placements).toHaveLength(1);
    expect(boxes(asked, result)[0]!.maxY).toBeLessThanOrEqual(300.001);
  });

  test('a piece that is its own mirror image is cut twice by one placement', () => {
    const asked = job([shape('pocket', rectangle(210, 170), { count: 5, turnsDeg: [0] })], {
      spread: 'folded',
    });
    expect(soundly(asked).placements).toHaveLength(3);
  });

  test('the back lies with its middle on the fold, even where a lower place is free', () => {
    const { half, whole } = foldedHalf(700, 260, 0.3);
    const asked = job(
      [
        shape('back', whole, { count: 2, foldRing: half }),
        shape('pocket', rectangle(150, 120), { count: 4, mirroredCount: 4 }),
      ],
      { spread: 'folded' },
    );
    const result = soundly(asked);
    const backs = result.placements.map((placement, index) => ({
      placement,
      box: boxes(asked, result)[index]!,
    }));
    const onFold = backs.filter(({ placement }) => placement.shape === 0);
    expect(onFold).toHaveLength(2);
    for (const { placement, box } of onFold) {
      expect(placement.onFold).toBe(true);
      expect(box.minY).toBeCloseTo(0, 6);
    }
  });

  test('on cloth opened flat the same back is cut whole', () => {
    const { half, whole } = foldedHalf(700, 260, 0.3);
    const result = soundly(job([shape('back', whole, { foldRing: half })]));
    expect(result.placements[0]!.onFold).toBe(false);
  });

  test('a flaw in the upper ply spoils the lower one too', () => {
    const flaw = { x: 0, y: 600, widthX: 330, widthY: 500 };
    const asked = job([shape('front', rectangle(300, 280), { mirroredCount: 1 })], {
      spread: 'folded',
      lengths: [length('roll', 1120, null, [flaw])],
    });
    // Opened, the flaw is y 600 to 1100; folded about 560 it spoils 40 to 540 of the 560 that are there.
    expect(boxes(asked, soundly(asked))[0]!.minX).toBeGreaterThanOrEqual(329.99);
  });
});

describe('flaws', () => {
  test('nothing is cut from a flaw, but pieces lie close round it', () => {
    const flaw = { x: 130, y: 0, widthX: 90, widthY: 400 };
    const asked = job([shape('patch', rectangle(120, 190), { count: 4 })], {
      lengths: [length('roll', 400, null, [flaw])],
    });
    const result = soundly(asked);
    for (const box of boxes(asked, result)) expect(box.maxX <= 130.01 || box.minX >= 219.99).toBe(true);
    expect(result.usedLengthMm[0]).toBeCloseTo(340, 1);
  });
});

describe('pattern repeat', () => {
  test('match points stand at their phase of the repeat in both directions, turned or not', () => {
    const match = { x: 37, y: 21, phaseX: 13, phaseY: 55 };
    const asked = job([shape('front', wedge(310, 230), { count: 5, match })], {
      repeat: { alongMm: 160, acrossMm: 90 },
    });
    const result = soundly(asked);
    for (const placement of result.placements) {
      const point = ringTurned(Float64Array.of(37, 21), placement.turnDeg, placement.mirrored);
      expect((((placement.x + point[0]! - 13) % 160) + 160.001) % 160).toBeLessThan(0.01);
      expect((((placement.y + point[1]! - 55) % 90) + 90.001) % 90).toBeLessThan(0.01);
    }
  });

  test('pieces without a match point lie anywhere', () => {
    const asked = job([shape('pocket', rectangle(100, 100), { count: 2 })], {
      lengths: [length('roll', 100, null)],
      repeat: { alongMm: 170, acrossMm: 0 },
    });
    expect(soundly(asked).usedLengthMm[0]).toBeCloseTo(200, 1);
  });
});

describe('several lengths', () => {
  const squares = (count: number) => [shape('square', rectangle(200, 190), { count })];

  test('remnants are filled before the roll', () => {
    const asked = job(squares(5), {
      lengths: [length('remnant', 400, 430), length('roll', 400, null)],
    });
    const result = soundly(asked);
    expect(result.placements.filter((placement) => placement.length === 0)).toHaveLength(4);
    expect(result.usedLengthMm[1]).toBeCloseTo(200, 1);
  });

  test('what no length has room for is said', () => {
    const asked = job(squares(7), { lengths: [length('scrap', 210, 230), length('remnant', 400, 430)] });
    const result = soundly(asked);
    expect(result.unplaced).toEqual([{ shape: 0, mirrored: false, count: 2 }]);
    expect(result.placements).toHaveLength(5);
  });

  test('a piece too wide for the first remnant goes to the next', () => {
    const asked = job([shape('back', rectangle(300, 410), { turnsDeg: [0] })], {
      lengths: [length('narrow', 400, 900), length('wide', 500, 900)],
    });
    expect(soundly(asked).placements[0]!.length).toBe(1);
  });
});

test('two coats of different sizes share one lay', () => {
  const sizes = [38, 44].flatMap((size) => [
    shape(`front ${size}`, wedge(size * 16, size * 7), { count: 1, mirroredCount: 1 }),
    shape(`sleeve ${size}`, ring([0, 0], [size * 13, size], [size * 12, size * 8], [size, size * 9]), {
      count: 1,
      mirroredCount: 1,
    }),
  ]);
  expect(soundly(job(sizes)).placements).toHaveLength(8);
});
