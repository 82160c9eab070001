import { describe, expect, it } from 'vitest';
import { ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import type { LayJob, LayResult, Placement } from '../../../shared-core/lay/job.ts';
import { laySvg, placedRing, ringPath } from '../../../shared-core/lay/lay-svg.ts';
import { piece, plan, rectangle } from '../../fixtures/small-workshop.ts';

/** A right-angled corner piece, 300 along and 170 across: its turns can be told apart. */
const corner = Float64Array.of(0, 0, 300, 0, 0, 170);

const job: LayJob = {
  shapes: [
    { id: 'panel', ring: corner, count: 2, mirroredCount: 1, turnsDeg: [0, 180] },
    {
      id: 'yoke',
      ring: Float64Array.of(0, -110, 240, -110, 240, 110, 0, 110),
      foldRing: Float64Array.of(0, 0, 240, 0, 240, 110, 0, 110),
      count: 1,
      mirroredCount: 0,
      turnsDeg: [0],
    },
  ],
  lengths: [
    {
      id: 'remnant',
      widthMm: 1370,
      lengthMm: 910,
      flaws: [{ x: 620, y: 430, widthX: 55, widthY: 35 }],
    },
    { id: 'spare', widthMm: 1180, lengthMm: 640, flaws: [] },
    { id: 'to buy', widthMm: 1473, lengthMm: null, flaws: [] },
  ],
  clearanceMm: 0,
  spread: 'open',
  repeat: null,
  seed: 1,
};

function placement(more: Partial<Placement>): Placement {
  return { shape: 0, length: 0, x: 0, y: 0, turnDeg: 0, mirrored: false, onFold: false, ...more };
}

const result: LayResult = {
  placements: [
    placement({ x: 12, y: 25 }),
    placement({ x: 500, y: 460, turnDeg: 180 }),
    placement({ length: 2, x: 40, y: 620, mirrored: true }),
  ],
  unplaced: [],
  usedLengthMm: [500, 0, 340],
  utilisation: 0.4,
  floorMm: 300,
  seed: 1,
  iterations: 9,
  seconds: 0.1,
  stoppedBy: 'nothing left to try',
};

const coat = plan({
  pieces: [
    piece('panel', rectangle(300, 170), { name: 'Side <left> & "hem"' }),
    piece('yoke', rectangle(240, 220)),
  ],
});

function drawing(): string {
  return laySvg(coat, { slotId: 'shell', job, result });
}

describe('where a placement lies on the cloth', () => {
  it('a piece as drawn is only moved', () => {
    expect([...placedRing(job, placement({ x: 12, y: 25 }))]).toEqual([12, 25, 312, 25, 12, 195]);
  });

  it('half a turn points the other way along the cloth', () => {
    expect(ringBox(placedRing(job, placement({ x: 500, y: 460, turnDeg: 180 })))).toEqual(
      ringBox(Float64Array.of(200, 290, 500, 290, 500, 460)),
    );
  });

  it('a mirrored piece lies below its own line, before it is turned', () => {
    const box = ringBox(placedRing(job, placement({ x: 40, y: 620, mirrored: true })));
    expect(box).toMatchObject({ minX: 40, maxX: 340, minY: 450, maxY: 620 });
  });

  it('a piece on the fold is drawn as the half that is cut', () => {
    const whole = placedRing(job, placement({ shape: 1 }));
    const half = placedRing(job, placement({ shape: 1, onFold: true }));
    expect(ringAreaMm2(whole)).toBeCloseTo(52_800, 6);
    expect(ringAreaMm2(half)).toBeCloseTo(26_400, 6);
  });

  it('a placement of a shape that the lay does not have is refused', () => {
    expect(() => placedRing(job, placement({ shape: 7 }))).toThrow(/no shape 7/);
  });
});

describe('the drawing of a lay', () => {
  it('a path is closed and exact to a hundredth of a millimetre', () => {
    expect(ringPath(Float64Array.of(0.004, 1.005, 20.126, 3, 7, 9.999))).toBe('M0 1L20.13 3L7 10Z');
  });

  it('is true to scale: one unit is a millimetre, printed and drawn', () => {
    const [, widthMm, heightMm, boxWidth, boxHeight] =
      drawing().match(/<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/) ??
      [];
    expect(Number(widthMm)).toBeGreaterThan(0);
    expect(boxWidth).toBe(widthMm);
    expect(boxHeight).toBe(heightMm);
    expect(drawing()).not.toContain('scale(');
  });

  it('is as wide as the longest length and as high as all of them, with its margins', () => {
    const [, widthMm, heightMm] = drawing().match(/width="([\d.]+)mm" height="([\d.]+)mm"/) ?? [];
    expect(Number(widthMm) - 910).toBeGreaterThan(0);
    expect(Number(widthMm) - 910).toBeLessThan(200);
    expect(Number(heightMm) - (1370 + 1180 + 1473)).toBeGreaterThan(0);
    expect(Number(heightMm) - (1370 + 1180 + 1473)).toBeLessThan(600);
  });

  it('draws each length in its own width, the bought one as long as it is used', () => {
    const sizes = [...drawing().matchAll(/<rect width="(\d+)" height="(\d+)"/g)].map(([, x, y]) => [x, y]);
    expect(sizes).toEqual([
      ['910', '1370'],
      ['640', '1180'],
      ['340', '1473'],
    ]);
  });

  it('draws each piece where the lay put it, under the length it lies on', () => {
    const groups = drawing().split('<g transform="translate(').slice(1);
    expect(groups).toHaveLength(3);
    expect(groups[0]).toContain(ringPath(placedRing(job, result.placements[0]!)));
    expect(groups[0]).toContain(ringPath(placedRing(job, result.placements[1]!)));
    expect(groups[1]).not.toContain('<path d="M12');
    expect(groups[2]).toContain(ringPath(placedRing(job, result.placements[2]!)));
    expect(drawing().match(/<path d="M[^"]*Z"/g)).toHaveLength(3);
  });

  it('is turned over once, so that a piece cut from it is no mirror image', () => {
    const turnedOver = [...drawing().matchAll(/matrix\(1 0 0 -1 0 (\d+)\)/g)].map(([, widthMm]) => widthMm);
    expect(turnedOver).toEqual(['1370', '1180', '1473']);
  });

  it('shows the flaw where it is', () => {
    expect(drawing()).toContain('<rect x="620" y="430" width="55" height="35"');
  });

  it('marks the last cut across the whole width', () => {
    expect(drawing()).toContain('<path d="M500 0V1370"');
    expect(drawing()).toContain('<path d="M340 0V1473"');
  });

  it('a name with signs of its own stays a name', () => {
    expect(drawing()).toContain('>Side &lt;left&gt; &amp; &quot;hem&quot;</text>');
    expect(drawing()).not.toContain('<left>');
  });
});
