import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingSides } from '../../../shared-core/geometry/crossing.ts';
import { type Ring, ringAreaMm2, ringTurned } from '../../../shared-core/geometry/ring.ts';
import { cutRing, seamRing } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { areaOutside, discRing, strip, trimmedStrip, unionRing } from './clipper-referee.ts';
import {
  fourTurns,
  mirroredOutline,
  pointsOf,
  polygon,
  turnedOutline,
  withAllowance,
} from './drawn-outline.ts';

describe('any cut line', () => {
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

  /** A hollow corner where the strip of the long edge reaches past the end of a short, deeper one. */
  const shortDeepEdge = polygon(
    [
      [38, 12.5],
      [32.25, 23.75],
      [-9.375, 38.875],
      [-37.375, 14.25],
      [-16, -36.625],
      [15.5, -36.875],
      [186, 0],
    ],
    [40, 0, 0, 0, 0, 0, 16],
  );

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
      { numRuns: 150, examples: [[shortDeepEdge]] },
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
      { numRuns: 80, seed: 1889 },
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
