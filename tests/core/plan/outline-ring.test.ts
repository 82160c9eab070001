import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingSides } from '../../../shared-core/geometry/crossing.ts';
import {
  type Point,
  type Ring,
  ringAreaMm2,
  ringBox,
  ringFromPoints,
  ringTurned,
} from '../../../shared-core/geometry/ring.ts';
import type { Edge, Outline } from '../../../shared-core/plan/outline.ts';
import { cutRing, edgeLengthMm, seamRing } from '../../../shared-core/plan/outline-ring.ts';
import { areaOutside, discRing, strip, trimmedStrip, unionRing } from './clipper-referee.ts';

/** A polygon with an allowance for each side, edges named 0, 1, 2 ... */
function polygon(points: readonly (readonly [number, number])[], allowancesMm: readonly number[]): Outline {
  const edges = points.map((_, index): Edge => {
    const [x, y] = points[(index + 1) % points.length]!;
    return {
      name: String(index),
      segments: [{ kind: 'line', to: { x, y } }],
      allowanceMm: allowancesMm[index]!,
      seam: null,
    };
  });
  return { start: { x: points[0]![0], y: points[0]![1] }, edges };
}

function transformed(outline: Outline, move: (point: Point) => Point): Outline {
  return {
    start: move(outline.start),
    edges: outline.edges.map((edge) => ({
      ...edge,
      segments: edge.segments.map((segment) =>
        segment.kind === 'line'
          ? { kind: 'line', to: move(segment.to) }
          : {
              kind: 'cubic',
              control1: move(segment.control1),
              control2: move(segment.control2),
              to: move(segment.to),
            },
      ),
    })),
  };
}

/** The outline mirrored (y becomes -y) and drawn backwards, so that it runs counter-clockwise again. */
function mirroredOutline(outline: Outline): Outline {
  const flipped = transformed(outline, (point) => ({ x: point.x, y: -point.y }));
  let from = flipped.start;
  const backwards = flipped.edges.map((edge): Edge => {
    const segments = edge.segments.map((segment) => {
      const start = from;
      from = segment.to;
      return segment.kind === 'line'
        ? ({ kind: 'line', to: start } as const)
        : ({ kind: 'cubic', control1: segment.control2, control2: segment.control1, to: start } as const);
    });
    return { ...edge, segments: segments.reverse() };
  });
  return { start: flipped.start, edges: backwards.reverse() };
}

const fourTurns = [0, 90, 180, 270];

function turnedOutline(outline: Outline, turnDeg: number): Outline {
  return transformed(outline, (point) => {
    const [x, y] = ringTurned(ringFromPoints([point]), turnDeg, false);
    return { x: x!, y: y! };
  });
}

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

const at = (x: number, y: number): Point => ({ x, y });

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

  const allowance = fc.constantFrom(0, 3, 6.5, 16, 16, 40);
  /** Star-shaped round the origin: spikes, hollows and long sides alike. */
  const star = fc
    .array(
      fc.record({
        radius: fc.integer({ min: 40, max: 400 }),
        wedge: fc.integer({ min: 20, max: 100 }),
        allowance,
      }),
      { minLength: 3, maxLength: 9 },
    )
    .map((spokes) => {
      const sum = spokes.reduce((total, spoke) => total + spoke.wedge, 0);
      let turned = 0;
      const points = spokes.map(({ radius, wedge }): [number, number] => {
        turned += (wedge / sum) * 2 * Math.PI;
        return [Math.round(radius * Math.cos(turned) * 8) / 8, Math.round(radius * Math.sin(turned) * 8) / 8];
      });
      return polygon(
        points,
        spokes.map((spoke) => spoke.allowance),
      );
    })
    .filter((outline) => ringAreaMm2(seamRing(outline)) > 2000 && crossingSides(seamRing(outline)) === null);

  it('whatever the corners, each edge has its whole allowance and no more is cut than a mitre reaches', () => {
    fc.assert(
      fc.property(star, (outline) => {
        const seam = seamRing(outline);
        const cut = cutRing(outline, null);
        const points = pointsOf(seam);
        const parts: Ring[] = [seam];
        outline.edges.forEach((edge, index) => {
          const count = points.length;
          const around = (step: number) => (index + step + count) % count;
          parts.push(
            trimmedStrip(points[around(-1)]!, points[index]!, points[around(1)]!, points[around(2)]!, {
              before: outline.edges[around(-1)]!.allowanceMm,
              own: edge.allowanceMm,
              after: outline.edges[around(1)]!.allowanceMm,
            }),
          );
        });
        for (const part of parts) expect(areaOutside(part, cut)).toBeLessThan(1);
        const discs = outline.edges.map((edge, index) => {
          const before = outline.edges[(index + outline.edges.length - 1) % outline.edges.length]!;
          return discRing(points[index]!, 2.5 * Math.max(edge.allowanceMm, before.allowanceMm) + 0.05);
        });
        const wholeStrips = outline.edges.map((edge, index) =>
          strip(points[index]!, points[(index + 1) % points.length]!, edge.allowanceMm),
        );
        expect(areaOutside(cut, unionRing([seam, ...wholeStrips, ...discs]))).toBeLessThan(3);
      }),
      { numRuns: 400 },
    );
  });

  it('turned and mirrored outlines are cut to turned and mirrored rings', () => {
    fc.assert(
      fc.property(star, fc.constantFrom(...fourTurns), fc.boolean(), (outline, turnDeg, mirrored) => {
        const moved = ringTurned(cutRing(outline, null), turnDeg, mirrored);
        const drawn = cutRing(turnedOutline(mirrored ? mirroredOutline(outline) : outline, turnDeg), null);
        expect(areaOutside(moved, drawn)).toBeLessThan(3);
        expect(areaOutside(drawn, moved)).toBeLessThan(3);
      }),
      { numRuns: 200 },
    );
  });

  it('without allowance the cut line is the seam line', () => {
    fc.assert(
      fc.property(star, (outline) => {
        const bare = withAllowance(outline, 0);
        expect(areaOutside(cutRing(bare, null), seamRing(bare))).toBeLessThan(1);
        expect(areaOutside(seamRing(bare), cutRing(bare, null))).toBeLessThan(1);
      }),
    );
  });
});

function pointsOf(ring: Ring): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i) => at(ring[2 * i]!, ring[2 * i + 1]!));
}

function withAllowance(outline: Outline, allowanceMm: number): Outline {
  return { ...outline, edges: outline.edges.map((edge) => ({ ...edge, allowanceMm })) };
}
