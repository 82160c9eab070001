import { describe, expect, it } from 'vitest';
import type { Point, Ring } from '../../../../shared-core/geometry/ring.ts';
import { ringAreaMm2, ringBox, ringFromPoints, ringTurned } from '../../../../shared-core/geometry/ring.ts';
import type { Outline } from '../../../../shared-core/plan/model/outline.ts';
import { cutRing, edgeLengthMm, seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { areaOutside } from '../clipper-referee.ts';
import {
  at,
  fourTurns,
  mirroredOutline,
  pointsOf,
  polygon,
  turnedOutline,
  withAllowance,
} from '../drawn-outline.ts';

/** Corners in any order of start: the ring's points rounded to 1/100 mm and sorted. */
function corners(ring: Ring): string[] {
  return Array.from(
    { length: ring.length / 2 },
    (_, i) => `${(ring[2 * i]! + 0).toFixed(2)} ${(ring[2 * i + 1]! + 0).toFixed(2)}`,
  )
    .map((text) => text.replaceAll('-0.00', '0.00'))
    .sort();
}

function expectCorners(outline: Outline, foldEdge: string | null, expected: readonly Point[]): void {
  for (const turnDeg of fourTurns) {
    const turned = ringTurned(ringFromPoints(expected), turnDeg, false);
    expect(corners(cutRing(turnedOutline(outline, turnDeg), foldEdge))).toEqual(corners(turned));
    const mirrored = ringTurned(ringFromPoints(expected), turnDeg, true);
    const drawn = turnedOutline(mirroredOutline(outline), turnDeg);
    expect(corners(cutRing(drawn, foldEdge))).toEqual(corners(mirrored));
  }
}

describe('the cut line', () => {
  it('a rectangle with a deep hem is cut larger by each edge’s own allowance, in four turns and mirrored', () => {
    const rectangle = polygon(
      [
        [0, 0],
        [530, 0],
        [530, 210],
        [0, 210],
      ],
      [7, 16, 11, 40],
    );
    expectCorners(rectangle, null, [at(-40, -7), at(546, -7), at(546, 221), at(-40, 221)]);
  });

  it('a hollow corner keeps both allowances', () => {
    const ell = polygon(
      [
        [0, 0],
        [300, 0],
        [300, 90],
        [130, 90],
        [130, 220],
        [0, 220],
      ],
      [5, 6, 9, 14, 3, 2],
    );
    expectCorners(ell, null, [at(-2, -5), at(306, -5), at(306, 99), at(144, 99), at(144, 223), at(-2, 223)]);
  });

  it('a hollow corner before a short edge keeps the allowance of the long one', () => {
    // The long edge comes from the right; the short one, 12 mm with a deep allowance, turns up and away from it.
    const notch = polygon(
      [
        [0, 0],
        [240, 0],
        [240, 30],
        [60, 30],
        [60, 42],
        [0, 42],
      ],
      [0, 0, 16, 50, 0, 0],
    );
    expectCorners(notch, null, [at(0, 0), at(240, 0), at(240, 46), at(60, 46), at(60, 42), at(0, 42)]);
  });

  it('two edges in one line with different allowances make a step', () => {
    const stepped = polygon(
      [
        [0, 0],
        [200, 0],
        [500, 0],
        [500, 120],
        [0, 120],
      ],
      [10, 25, 0, 0, 0],
    );
    expectCorners(stepped, null, [
      at(0, -10),
      at(200, -10),
      at(200, -25),
      at(500, -25),
      at(500, 120),
      at(0, 120),
    ]);
  });

  it('a sharp point is cut off squarely, a whole allowance beyond it', () => {
    const spike = polygon(
      [
        [0, -40],
        [400, 0],
        [0, 40],
      ],
      [15, 15, 0],
    );
    const ring = cutRing(spike, null);
    expect(ringBox(ring).maxX).toBeCloseTo(415, 2);
    const tip = corners(ring).filter((text) => text.startsWith('415.00'));
    expect(tip).toHaveLength(2);
    for (const turnDeg of fourTurns) {
      expect(ringAreaMm2(cutRing(turnedOutline(spike, turnDeg), null))).toBeCloseTo(ringAreaMm2(ring), 0);
    }
  });

  it('a half on the fold opens to both halves, with nothing added at the fold', () => {
    const half = polygon(
      [
        [0, 0],
        [600, 0],
        [600, 150],
        [0, 230],
      ],
      [0, 12, 16, 30],
    );
    const whole = polygon(
      [
        [0, -230],
        [600, -150],
        [600, 150],
        [0, 230],
      ],
      [16, 12, 16, 30],
    );
    expectCorners(half, '0', pointsOf(cutRing(whole, null)));
  });

  it('a pointed neck on the fold is mitred on the fold as the whole piece is', () => {
    const half = polygon(
      [
        [0, 0],
        [500, 0],
        [560, 40],
        [560, 150],
        [0, 230],
      ],
      [0, 12, 16, 17, 30],
    );
    const whole = polygon(
      [
        [0, -230],
        [560, -150],
        [560, -40],
        [500, 0],
        [560, 40],
        [560, 150],
        [0, 230],
      ],
      [17, 16, 12, 12, 16, 17, 30],
    );
    expectCorners(half, '0', pointsOf(cutRing(whole, null)));
  });

  it('a spike on the fold is cut off squarely to the fold', () => {
    const half = polygon(
      [
        [0, 0],
        [500, 0],
        [0, 60],
      ],
      [0, 14, 9],
    );
    const ring = cutRing(half, '0');
    expect(ringBox(ring).maxX).toBeCloseTo(514, 2);
    const tip = pointsOf(ring).filter((point) => Math.abs(point.x - 514) < 0.01);
    expect(tip).toHaveLength(2);
    expect(tip[0]!.y).toBeCloseTo(-tip[1]!.y, 2);
  });

  it('a slanted fold mirrors over its own line', () => {
    const half = polygon(
      [
        [0, 0],
        [300, 400],
        [150, 500],
        [-80, 60],
      ],
      [0, 8, 21, 13],
    );
    const ring = cutRing(half, '0');
    // 3-4-5: over the line through (300, 400) a point (x, y) goes to ((-7x + 24y) / 25, (24x + 7y) / 25).
    const mirrored = pointsOf(ring).map(({ x, y }) => at((-7 * x + 24 * y) / 25, (24 * x + 7 * y) / 25));
    expect(areaOutside(ring, ringFromPoints(mirrored.reverse()))).toBeLessThan(5);
    expect(ringAreaMm2(cutRing(withAllowance(half, 0), '0'))).toBeCloseTo(2 * ringAreaMm2(seamRing(half)), 0);
  });

  it('a fold that is a curve is refused', () => {
    const half = polygon(
      [
        [0, 0],
        [500, 0],
        [500, 100],
      ],
      [0, 0, 0],
    );
    const curved: Outline = {
      ...half,
      edges: [
        {
          ...half.edges[0]!,
          segments: [{ kind: 'cubic', control1: at(100, -9), control2: at(300, -9), to: at(500, 0) }],
        },
        ...half.edges.slice(1),
      ],
    };
    expect(() => cutRing(curved, '0')).toThrow('not straight');
  });

  it('a round armhole of radius 80 with 16 mm allowance is cut at radius 64', () => {
    const k = 80 * 0.5522847;
    const scoop: Outline = {
      start: at(0, 0),
      edges: [
        {
          name: 'lower',
          segments: [
            { kind: 'line', to: at(300, 0) },
            { kind: 'line', to: at(300, 40) },
          ],
          allowanceMm: 0,
          seam: null,
        },
        {
          name: 'armhole',
          segments: [
            { kind: 'cubic', control1: at(300 - k, 40), control2: at(220, 120 - k), to: at(220, 120) },
          ],
          allowanceMm: 16,
          seam: null,
        },
        {
          name: 'upper',
          segments: [
            { kind: 'line', to: at(0, 120) },
            { kind: 'line', to: at(0, 0) },
          ],
          allowanceMm: 0,
          seam: null,
        },
      ],
    };
    const grown = ringAreaMm2(cutRing(scoop, null, 0.01)) - ringAreaMm2(seamRing(scoop, 0.01));
    expect(grown).toBeCloseTo((Math.PI / 4) * (80 ** 2 - 64 ** 2), -1);
    expect(edgeLengthMm(scoop, 'armhole')).toBeCloseTo((Math.PI / 2) * 80, 0);
  });

  it('a hollow curve tighter than its allowance leaves no loop', () => {
    const notch: Outline = {
      start: at(0, 0),
      edges: [
        {
          name: 'round',
          segments: [
            { kind: 'line', to: at(200, 0) },
            { kind: 'line', to: at(200, 100) },
            { kind: 'line', to: at(108, 100) },
          ],
          allowanceMm: 20,
          seam: null,
        },
        {
          name: 'notch',
          segments: [{ kind: 'cubic', control1: at(106, 80), control2: at(94, 80), to: at(92, 100) }],
          allowanceMm: 20,
          seam: null,
        },
        {
          name: 'rest',
          segments: [
            { kind: 'line', to: at(0, 100) },
            { kind: 'line', to: at(0, 0) },
          ],
          allowanceMm: 20,
          seam: null,
        },
      ],
    };
    expect(ringAreaMm2(cutRing(notch, null))).toBeCloseTo(240 * 140, -1);
  });
});
