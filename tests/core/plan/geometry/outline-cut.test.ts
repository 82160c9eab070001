import { describe, expect, it } from 'vitest';
import { ringAreaMm2 } from '../../../../shared-core/geometry/ring.ts';
import type { Outline } from '../../../../shared-core/plan/model/outline.ts';
import { outlineCut, placeOnPart } from '../../../../shared-core/plan/geometry/outline-cut.ts';
import {
  edgeIndexOf,
  edgeLengthMm,
  edgePoints,
  seamRing,
} from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { at } from '../drawn-outline.ts';

/** A flap 300 wide whose head is one hump; its right side is drawn in two strokes, 90 and 110 long. */
const flap: Outline = {
  start: at(0, 0),
  edges: [
    {
      name: 'side',
      segments: [
        { kind: 'line', to: at(90, 0) },
        { kind: 'line', to: at(200, 0) },
      ],
      allowanceMm: 7,
      seam: null,
    },
    {
      name: 'head',
      segments: [{ kind: 'cubic', control1: at(350, 40), control2: at(310, 260), to: at(200, 300) }],
      allowanceMm: 8,
      seam: null,
    },
    { name: 'other side', segments: [{ kind: 'line', to: at(0, 300) }], allowanceMm: 9, seam: null },
    { name: 'foot', segments: [{ kind: 'line', to: at(0, 0) }], allowanceMm: 30, seam: null },
  ],
};

function parted(atMm: number, outline = flap) {
  const cut = outlineCut(outline, { direction: 'across', atMm }, 'cut');
  if (cut.kind !== 'parted') throw new Error(`passes ${cut.crossingCount} times`);
  return cut;
}

const area = (outline: Outline) => ringAreaMm2(seamRing(outline, 0.001));

describe('an outline cut by a line', () => {
  it('that takes the top off one curve leaves its two feet, and both parts together are the whole', () => {
    const { low, high } = parted(255);
    expect(high.outline.edges.map((edge) => edge.name)).toEqual(['head', 'cut']);
    expect(low.outline.edges.map((edge) => edge.name).toSorted()).toEqual(
      ['side', 'head', 'head 2', 'other side', 'foot', 'cut'].toSorted(),
    );
    expect(area(low.outline) + area(high.outline)).toBeCloseTo(area(flap), 1);
    for (const { outline, cutEdge } of [low, high]) {
      for (const point of edgePoints(outline, edgeIndexOf(outline, cutEdge)))
        expect(point.x).toBeCloseTo(255, 6);
    }
    const heads =
      edgeLengthMm(high.outline, 'head') +
      edgeLengthMm(low.outline, 'head') +
      edgeLengthMm(low.outline, 'head 2');
    expect(heads).toBeCloseTo(edgeLengthMm(flap, 'head'), 1);
    for (const edge of low.outline.edges.filter(({ name }) => name.startsWith('head')))
      expect(edge.allowanceMm).toBe(8);
  });

  it('places along an edge of several strokes are found on the part that has them', () => {
    const { low, high } = parted(40);
    expect(placeOnPart(low, 'side', 33)).toEqual({ edge: 'side', atMm: 33 });
    expect(placeOnPart(high, 'side', 33)).toBeNull();
    expect(placeOnPart(high, 'side', 70)?.atMm).toBeCloseTo(30, 6);
    // On the second stroke, beyond the corner at 90.
    expect(placeOnPart(high, 'side', 150)?.atMm).toBeCloseTo(110, 6);
    expect(placeOnPart(low, 'foot', 120)).toEqual({ edge: 'foot', atMm: 120 });
  });

  it('through two corners cuts at them and leaves no crumbs', () => {
    const { low, high } = parted(200);
    expect(low.outline.edges.map((edge) => edge.name).toSorted()).toEqual([
      'cut',
      'foot',
      'other side',
      'side',
    ]);
    expect(high.outline.edges).toHaveLength(2);
    expect(area(low.outline)).toBeCloseTo(200 * 300, 6);
  });

  it('beside it, or along one of its edges, parts nothing', () => {
    expect(outlineCut(flap, { direction: 'across', atMm: 400 }, 'cut')).toMatchObject({ crossingCount: 0 });
    expect(outlineCut(flap, { direction: 'across', atMm: 0 }, 'cut')).toMatchObject({
      kind: 'not parted',
      runsAlongEdge: true,
    });
  });
});
