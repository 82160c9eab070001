import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../../shared-core/demo/coat.ts';
import { cubicPoint } from '../../../../../shared-core/geometry/curve.ts';
import { ringAreaMm2, ringBox } from '../../../../../shared-core/geometry/ring.ts';
import { cutRing, edgeLengthMm, seamRing } from '../../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import {
  addShape,
  circleErrorRatio,
  type Shape,
  type ShapePiece,
  shapeOutline,
} from '../../../../../shared-core/plan/edits/pieces/shapes.ts';
import { addSize } from '../../../../../shared-core/plan/model/sizes.ts';
import { areaMm2, edited, refusal } from '../../edit-outcomes.ts';
import { vest } from '../../vest.ts';

const strip: ShapePiece = {
  name: 'Side strip',
  shape: { kind: 'strip', lengthMm: 610, widthMm: 72 },
  count: 2,
  isMirrored: false,
  isOnFold: false,
  grainTurnDeg: 0,
  turns: 'grain',
  slotIds: ['shell', 'batting'],
};

function shaped(shape: Shape, more: Partial<ShapePiece> = {}) {
  const { plan, said } = edited(
    addShape(vest(), { ...strip, name: 'Patch', count: 1, shape, allowanceMm: 9, ...more }),
  );
  expect(planProblems(plan)).toEqual([]);
  return { piece: plan.pieces.at(-1)!, said };
}

describe('a strip', () => {
  it('is added as a rectangle with the plan’s usual allowance', () => {
    const { plan, said } = edited(addShape(fenwalkCoat({}), strip));
    expect(said).toBe('2 of Side strip added, 610 mm by 72 mm and 16 mm of allowance all round.');
    const piece = plan.pieces.at(-1)!;
    expect(piece).toMatchObject({
      id: 'side-strip',
      cutCount: 2,
      cutFrom: [
        { slotId: 'shell', plyCount: 1 },
        { slotId: 'batting', plyCount: 1 },
      ],
    });
    expect(ringAreaMm2(cutRing(piece.outline, null))).toBeCloseTo(642 * 104, 6);
    expect(edgeLengthMm(piece.outline, 'long edge')).toBe(610);
    expect(planProblems(plan)).toEqual([]);
  });

  it('wider than long has its long edges across the grain', () => {
    const { piece } = shaped({ kind: 'strip', lengthMm: 50, widthMm: 300 });
    expect(edgeLengthMm(piece.outline, 'long edge')).toBe(300);
    expect(edgeLengthMm(piece.outline, 'end')).toBe(50);
  });

  it('in a plan without pieces gets 5/8 in all round', () => {
    const bare = {
      ...vest(),
      pieces: [],
      seams: [],
      slots: vest().slots.map((slot) => ({ ...slot, alongEdges: [] })),
    };
    const piece = edited(addShape(bare, strip)).plan.pieces[0]!;
    expect(piece.outline.edges.map((edge) => edge.allowanceMm)).toEqual([15.875, 15.875, 15.875, 15.875]);
  });

  it('of a second name gets an id of its own', () => {
    const once = edited(addShape(vest(), { ...strip, name: 'Tab!' })).plan;
    expect(edited(addShape(once, { ...strip, name: 'Tab?' })).plan.pieces.at(-1)!.id).toBe('tab-2');
  });

  it('is added in every size', () => {
    const both = edited(addSize(vest(), { ...vest(), size: 'L' }, 2)).plan;
    const { plan } = edited(addShape(both, strip));
    expect(plan.sizes![0]!.pieces.map((piece) => piece.name)).toContain('Side strip');
    expect(planProblems(plan)).toEqual([]);
  });

  it.each([
    [{ name: ' ' }, 'Name of the strip is missing'],
    [{ name: 'back' }, 'The piece back is in the plan already'],
    [{ shape: { kind: 'strip', lengthMm: 610, widthMm: 0 } }, 'Width of Side strip is 0 mm'],
    [
      { shape: { kind: 'strip', lengthMm: 5200, widthMm: 72 } },
      'Outline of Side strip is 5.20 m long or wide',
    ],
    [
      { shape: { kind: 'taper', lengthMm: 300, fromMm: -4, toMm: 0 } },
      'Width at the foot of Side strip is -4 mm',
    ],
    [{ shape: { kind: 'circle', diameterMm: Number.NaN } }, 'Diameter of Side strip is NaN mm'],
    [{ count: 0 }, 'Number of Side strip to cut is 0'],
    [{ count: 3, isMirrored: true }, 'odd for a piece cut in mirrored pairs'],
    [{ slotIds: ['felt'] }, 'The slot felt is not in the plan'],
    [
      { shape: { kind: 'trapezoid', lengthMm: 90, footMm: 80, topMm: 40, setInMm: 0 }, isOnFold: true },
      'is not alike on both sides',
    ],
  ] as const)('with %o is refused', (change, sentence) => {
    expect(refusal(addShape(vest(), { ...strip, ...change }))).toContain(sentence);
  });
});

describe('a shape by typed measures', () => {
  it('a rectangle runs its length along the grain', () => {
    const { piece } = shaped({ kind: 'rectangle', lengthMm: 210, widthMm: 340 });
    expect(ringBox(seamRing(piece.outline))).toEqual({ minX: 0, minY: 0, maxX: 210, maxY: 340 });
  });

  it('a taper goes from one width to another, or to a point', () => {
    const { piece, said } = shaped({ kind: 'taper', lengthMm: 480, fromMm: 90, toMm: 32 });
    expect(areaMm2(piece)).toBeCloseTo(480 * 61, 6);
    expect(edgeLengthMm(piece.outline, 'foot')).toBe(90);
    expect(edgeLengthMm(piece.outline, 'top')).toBe(32);
    expect(edgeLengthMm(piece.outline, 'side')).toBeCloseTo(edgeLengthMm(piece.outline, 'other side'), 9);
    expect(said).toBe('Patch added, from 90 mm to 32 mm over 480 mm and 9 mm of allowance all round.');
    const point = shaped({ kind: 'taper', lengthMm: 480, fromMm: 90, toMm: 0 }).piece;
    expect(point.outline.edges).toHaveLength(3);
    expect(areaMm2(point)).toBeCloseTo(480 * 45, 6);
  });

  it('a triangle has half of its box, a trapezoid its mean width times its length', () => {
    expect(areaMm2(shaped({ kind: 'triangle', baseMm: 70, heightMm: 260 }).piece)).toBeCloseTo(9100, 6);
    const { piece } = shaped({ kind: 'trapezoid', lengthMm: 150, footMm: 220, topMm: 130, setInMm: 17 });
    expect(areaMm2(piece)).toBeCloseTo(150 * 175, 6);
    expect(edgeLengthMm(piece.outline, 'side')).toBeCloseTo(Math.hypot(150, 17), 9);
  });

  it('a circle of four curves is round within the stated error, and outside it only', () => {
    const outline = shapeOutline({ kind: 'circle', diameterMm: 2 }, 0);
    let from = outline.start;
    const radii: number[] = [];
    for (const segment of outline.edges[0]!.segments) {
      if (segment.kind !== 'cubic') throw new Error('a circle is drawn in curves');
      for (let i = 0; i <= 1000; i++) {
        const { x, y } = cubicPoint(from, segment.control1, segment.control2, segment.to, i / 1000);
        radii.push(Math.hypot(x - 1, y - 1));
      }
      from = segment.to;
    }
    expect(Math.min(...radii)).toBeGreaterThan(1 - 1e-12);
    expect(Math.max(...radii)).toBeLessThan(1 + circleErrorRatio);
    expect(Math.max(...radii)).toBeGreaterThan(1 + circleErrorRatio * 0.99);
    const { piece, said } = shaped({ kind: 'circle', diameterMm: 118 });
    expect(Math.abs(areaMm2(piece) / (Math.PI * 59 ** 2) - 1)).toBeLessThan(0.0004);
    expect(said).toContain('118 mm across, round within 0.03 % of its radius');
  });

  it('on the fold it is drafted as a half of the typed measures, whatever the shape', () => {
    const measure = fc.integer({ min: 25, max: 900 });
    const shape: fc.Arbitrary<Shape> = fc.oneof(
      fc.record({
        kind: fc.constantFrom('rectangle' as const, 'strip' as const),
        lengthMm: measure,
        widthMm: measure,
      }),
      fc.record({ kind: fc.constant('taper' as const), lengthMm: measure, fromMm: measure, toMm: measure }),
      fc.record({ kind: fc.constant('circle' as const), diameterMm: measure }),
      fc.record({ kind: fc.constant('triangle' as const), baseMm: measure, heightMm: measure }),
    );
    fc.assert(
      fc.property(shape, fc.constantFrom(0, 45, 90, 30), (drawn, grainTurnDeg) => {
        const whole = shaped(drawn, { grainTurnDeg }).piece;
        const half = shaped(drawn, { isOnFold: true, grainTurnDeg }).piece;
        expect(half.foldEdge).toBe('fold');
        expect(areaMm2(half) * 2).toBeCloseTo(areaMm2(whole), 1);
        const cut = (of: typeof half) => ringAreaMm2(cutRing(of.outline, of.foldEdge));
        expect(Math.abs(cut(half) / cut(whole) - 1)).toBeLessThan(0.001);
      }),
      { numRuns: 80, seed: 1889 },
    );
  });

  it('on the bias it lies at 45° to the grain', () => {
    const { piece, said } = shaped({ kind: 'strip', lengthMm: 900, widthMm: 41 }, { grainTurnDeg: 45 });
    const box = ringBox(seamRing(piece.outline));
    expect(box.maxX - box.minX).toBeCloseTo((900 + 41) * Math.SQRT1_2, 6);
    expect(said).toContain('Its grain is turned by 45°.');
  });
});
