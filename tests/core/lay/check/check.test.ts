import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult, Placement } from '../../../../shared-core/lay/job.ts';
import { foldedHalf, job, laid, length, rectangle, shape, wedge } from '../jobs.ts';

const asked = job(
  [
    shape('front', wedge(400, 300), { count: 2, mirroredCount: 1 }),
    shape('pocket', rectangle(180, 160), { count: 2, match: { x: 10, y: 20, phaseX: 30, phaseY: 5 } }),
  ],
  {
    lengths: [
      length('remnant', 700, 900, [{ x: 500, y: 500, widthX: 90, widthY: 120 }]),
      length('roll', 700, null),
    ],
    repeat: { alongMm: 50, acrossMm: 25 },
    clearanceMm: 4,
  },
);
const sound = laid(asked, 400);

function said(what: LayJob, result: LayResult): string[] {
  return checkLay(what, result).map((problem) => problem.what);
}

function changed(index: number, change: Partial<Placement>): LayResult {
  return {
    ...sound,
    placements: sound.placements.map((placement, at) =>
      at === index ? { ...placement, ...change } : placement,
    ),
  };
}

const front = sound.placements.findIndex((placement) => placement.shape === 0);
const pocket = sound.placements.findIndex((placement) => placement.shape === 1);

describe('the check objects', () => {
  test('to nothing in a sound lay', () => {
    expect(said(asked, sound)).toEqual([]);
  });

  test('to a piece that lies on another', () => {
    const { x, y } = sound.placements[pocket]!;
    expect(said(asked, changed(front, { x, y }))).toContain('lies nearer than 4 mm to Shape pocket');
  });

  test('to a clearance missed by a twentieth of a millimetre', () => {
    const pair = job([shape('square', rectangle(200, 200), { count: 2 })], {
      lengths: [length('roll', 205, null)],
      clearanceMm: 7,
    });
    const result = laid(pair, 50);
    const far = result.placements[0]!.x > result.placements[1]!.x ? 0 : 1;
    const nearer = (byMm: number): LayResult => ({
      ...result,
      placements: result.placements.map((one, at) => (at === far ? { ...one, x: one.x - byMm } : one)),
      usedLengthMm: [result.usedLengthMm[0]! - byMm],
    });
    const spareMm = result.usedLengthMm[0]! - 407;
    expect(said(pair, nearer(spareMm + 0.05))).toContain('lies nearer than 7 mm to Shape square');
    expect(said(pair, nearer(spareMm))).toEqual([]);
  });

  test('to a piece over the selvage or before the beginning', () => {
    expect(said(asked, changed(front, { y: -60 }))).toContain('lies outside the usable width');
    expect(said(asked, changed(front, { x: -420 }))).toContain('lies beyond the end of its length');
  });

  test('to a piece beyond the end of a remnant', () => {
    // Turned end for end it would reach back from there.
    expect(said(asked, changed(front, { length: 0, x: 880, turnDeg: 0, mirrored: false }))).toContain(
      'lies beyond the end of its length',
    );
  });

  test('to a piece on a flaw', () => {
    expect(said(asked, changed(front, { length: 0, x: 480, y: 480, turnDeg: 0, mirrored: false }))).toContain(
      'lies on a flaw',
    );
  });

  test('to a turn against the grain', () => {
    expect(said(asked, changed(front, { turnDeg: 90 }))).toContain(
      'is turned by 90 degrees, which its grain does not allow',
    );
  });

  test('to a match point off the repeat', () => {
    expect(said(asked, changed(pocket, { y: sound.placements[pocket]!.y + 0.4 }))).toContain(
      'does not meet the pattern repeat',
    );
  });

  test('to a piece that is missing, or mirrored instead', () => {
    const short = { ...sound, placements: sound.placements.filter((_, at) => at !== pocket) };
    expect(said(asked, short)).toContain('is laid 1 times instead of 2');
    const drawn = sound.placements.findIndex((one) => one.shape === 0 && !one.mirrored);
    expect(said(asked, changed(drawn, { mirrored: true }))).toContain('is laid 2 times instead of 1');
  });

  test('to a piece left out while the roll goes on', () => {
    const result = {
      ...sound,
      placements: sound.placements.filter((_, at) => at !== pocket),
      unplaced: [{ shape: 1, mirrored: false, count: 1 }],
    };
    expect(said(asked, result)).toContain('is left out although the cloth is endless');
  });

  test('to lengths, utilisation and floors that are not so', () => {
    expect(said(asked, { ...sound, usedLengthMm: [10, 10] })).toContain(
      'is used to another extent than the lay says',
    );
    expect(said(asked, { ...sound, utilisation: sound.utilisation + 0.01 })).toContain(
      'claims another utilisation than it has',
    );
    expect(said(asked, { ...sound, floorMm: 99_000 })).toContain('is shorter than the floor that it claims');
  });

  test('to a place that is not a number', () => {
    expect(said(asked, changed(front, { x: Number.NaN }))).toContain('lies nowhere');
  });

  test('to a back that is off the fold', () => {
    const { half, whole } = foldedHalf(500, 210, 0.2);
    const folded = job([shape('back', whole, { foldRing: half })], { spread: 'folded' });
    const result = laid(folded, 20);
    const moved = (change: Partial<Placement>) => ({
      ...result,
      placements: [{ ...result.placements[0]!, ...change }],
    });
    expect(said(folded, result)).toEqual([]);
    expect(said(folded, moved({ y: 12 }))).toContain('does not lie on the fold');
    expect(said(folded, moved({ onFold: false }))).toContain('is not laid on the fold');
  });
});
