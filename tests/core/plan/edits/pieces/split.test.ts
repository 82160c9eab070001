import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../../shared-core/demo/coat.ts';
import type { Piece } from '../../../../../shared-core/plan/model/coat-plan.ts';
import { edgeLengthMm } from '../../../../../shared-core/plan/geometry/outline-ring.ts';
import { lineRoomMm } from '../../../../../shared-core/plan/geometry/piece-line.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { seamWalk } from '../../../../../shared-core/plan/geometry/seam-walk.ts';
import { addSize } from '../../../../../shared-core/plan/model/sizes.ts';
import {
  type Split,
  splitPiece,
  defaultSplitNames,
} from '../../../../../shared-core/plan/edits/pieces/split.ts';
import { polygon } from '../../drawn-outline.ts';
import { areaMm2, edited, refusal, stitchedMm, unfittedSeams } from '../../edit-outcomes.ts';
import { pieceOf, vest, withPieceChanged } from '../../vest.ts';

const yoke: Split = {
  direction: 'across',
  distanceMm: 390,
  allowanceMm: 13,
  names: ['Back lower', 'Back yoke'],
};

describe('a split', () => {
  it('of the vest back across gives two halves on the fold that are sewn together again', () => {
    const { plan, said } = edited(splitPiece(vest(), 'back', yoke));
    expect(said).toBe(
      'Back split 390 mm above the hem into Back lower and Back yoke, with 13 mm of allowance on both at the split.',
    );
    expect(planProblems(plan)).toEqual([]);
    const lower = pieceOf(plan, 'back');
    const upper = pieceOf(plan, 'back-yoke');
    expect(plan.pieces.map((piece) => piece.name)).toEqual([
      'Back lower',
      'Back yoke',
      'Front',
      'Front lining',
    ]);
    expect([lower.foldEdge, upper.foldEdge]).toEqual(['centre back', 'centre back']);
    expect(areaMm2(lower)).toBeCloseTo(390 * 255, 6);
    expect(areaMm2(upper)).toBeCloseTo(areaMm2(pieceOf(vest(), 'back')) - 390 * 255, 6);
    expect(edgeLengthMm(lower.outline, 'side')).toBeCloseTo(390, 9);
    expect(edgeLengthMm(upper.outline, 'side')).toBeCloseTo(40, 9);
    const split = seamWalk(plan).find((report) => report.label === 'Back lower to Back yoke')!;
    expect(split).toMatchObject({ sides: 'two', fits: true, stitchedMm: 510 });
    expect(lower.outline.edges.find((edge) => edge.name === 'split')!.allowanceMm).toBe(13);
  });

  it('keeps every seam: the side is still sewn to both parts, the hem by itself', () => {
    const { plan } = edited(splitPiece(vest(), 'back', yoke));
    expect(unfittedSeams(plan)).toEqual(unfittedSeams(vest()));
    const before = stitchedMm(vest());
    const after = stitchedMm(plan);
    for (const [id, mm] of before) expect(after.get(id)).toBeCloseTo(mm, 6);
  });

  it('notches go with their own part', () => {
    const { plan } = edited(splitPiece(vest(), 'back', yoke));
    // The side runs down from 430: 90 along it is at 340, 400 at 30. The fold runs up: 500 is in the yoke.
    expect(notchesOf(pieceOf(plan, 'back'))).toEqual(['side 50', 'side 360']);
    expect(notchesOf(pieceOf(plan, 'back-yoke'))).toEqual(['centre back 110']);
  });

  it('along the fold gives a middle on the fold and a mirrored pair of sides', () => {
    const { plan } = edited(
      splitPiece(vest(), 'back', {
        ...yoke,
        direction: 'along',
        distanceMm: 160,
        names: ['Back', 'Side back'],
      }),
    );
    expect(pieceOf(plan, 'back')).toMatchObject({ foldEdge: 'centre back', cutCount: 1, isMirrored: false });
    expect(pieceOf(plan, 'side-back')).toMatchObject({ foldEdge: null, cutCount: 2, isMirrored: true });
    expect(planProblems(plan)).toEqual([]);
    const hem = seamWalk(plan).find((report) => report.seamId === 'hem')!;
    expect(hem).toMatchObject({ sides: 'one', firstMm: 2 * 255 + 2 * 240 });
  });

  it('an edge that meets its mirror image does so in both parts', () => {
    const gilet = withPieceChanged(vest(), 'back', (back) => ({
      ...back,
      foldEdge: null,
      cutCount: 2,
      isMirrored: true,
      outline: {
        ...back.outline,
        edges: back.outline.edges.map((edge) =>
          edge.name === 'centre back' ? { ...edge, seam: 'back seam' } : edge,
        ),
      },
    }));
    const plan = {
      ...gilet,
      seams: [...gilet.seams, { ...gilet.seams[0]!, id: 'back seam', label: 'Centre back' }],
    };
    const after = edited(splitPiece(plan, 'back', yoke)).plan;
    const mirrored = seamWalk(after).filter((report) => report.sides === 'mirror');
    expect(mirrored.map((report) => [report.label, Math.round(report.firstMm * 1e6) / 1e6])).toEqual([
      ['Centre back', 390],
      ['Centre back, Back yoke', 210],
    ]);
    expect(planProblems(after)).toEqual([]);
  });

  it('is made in every size, at the same share of the piece', () => {
    const larger = withPieceChanged({ ...vest(), size: 'L' }, 'back', (back) => ({
      ...back,
      outline: {
        ...back.outline,
        edges: back.outline.edges.map((edge) => ({
          ...edge,
          segments: edge.segments.map((segment) => ({
            ...segment,
            to: { x: segment.to.x * 1.1, y: segment.to.y },
          })),
        })),
      },
    }));
    const both = edited(addSize(vest(), larger, 2)).plan;
    const { plan } = edited(splitPiece(both, 'back', yoke));
    const names = plan.sizes![0]!.pieces.map((piece) => piece.name);
    expect(names).toEqual(['Back lower', 'Back yoke', 'Front', 'Front lining']);
    expect(areaMm2(plan.sizes![0]!.pieces[0]!)).toBeCloseTo(429 * 255, 6);
  });

  const coat = fenwalkCoat({});

  it('of any piece of a coat keeps its area and every seam, with curves divided exactly', () => {
    const pieceIds = fc.constantFrom(...coat.pieces.map((piece) => piece.id));
    let splitCount = 0;
    fc.assert(
      fc.property(
        pieceIds,
        fc.double({ min: 0.04, max: 0.96, noNaN: true }),
        fc.constantFrom('across' as const, 'along' as const),
        (id, share, direction) => {
          const whole = pieceOf(coat, id);
          const distanceMm = share * lineRoomMm(whole, direction);
          const outcome = splitPiece(coat, id, {
            direction,
            distanceMm,
            allowanceMm: 11,
            names: defaultSplitNames(whole, direction),
          });
          if (!outcome.ok) {
            expect(outcome.problems[0]!.what).toMatch(/times|along an edge/);
            return;
          }
          splitCount++;
          const { plan } = outcome.value;
          const parts = plan.pieces.filter((piece) => !coat.pieces.some((old) => old === piece));
          expect(parts).toHaveLength(2);
          const sum = parts.reduce((total, part) => total + areaMm2(part), 0);
          expect(Math.abs(sum - areaMm2(whole))).toBeLessThan(3);
          expect(planProblems(plan)).toEqual([]);
          expect(unfittedSeams(plan)).toEqual(unfittedSeams(coat));
          const notchCount = parts.reduce((total, part) => total + part.notches.length, 0);
          expect(notchCount).toBeGreaterThanOrEqual(whole.notches.length);
        },
      ),
      { numRuns: 150, seed: 1889 },
    );
    expect(splitCount).toBeGreaterThan(100);
  });

  it.each([
    [{ distanceMm: 700 }, 'The line 700 mm above the hem does not cross Back. Choose one up to 620 mm'],
    [{ names: ['Front', 'Yoke'] }, 'The piece Front is in the plan already'],
    [{ names: ['Yoke', 'yoke'] }, 'Both parts of Back have one name'],
    [{ names: ['Yoke', ' '] }, 'Name of the part is missing'],
    [{ allowanceMm: -2 }, 'Seam allowance at split of Back lower is negative'],
  ] as const)('with %o is refused', (change, sentence) => {
    expect(refusal(splitPiece(vest(), 'back', { ...yoke, ...change }))).toContain(sentence);
  });

  it('at a line that passes the outline four times is refused', () => {
    const forked = withPieceChanged(vest(), 'front', (front) => ({
      ...front,
      notches: [],
      outline: polygon(
        [
          [0, 0],
          [500, 0],
          [500, 90],
          [210, 120],
          [500, 150],
          [500, 260],
          [0, 260],
        ],
        [1, 2, 3, 4, 5, 6, 7],
      ),
    }));
    const across = { ...yoke, names: ['Fork', 'Tines'] as const };
    expect(refusal(splitPiece(forked, 'front', across))).toBe(
      'The line 390 mm above the hem passes the outline of Front 4 times. Choose a line that crosses the piece once from side to side.',
    );
    expect(edited(splitPiece(forked, 'front', { ...across, distanceMm: 180 })).plan.pieces).toHaveLength(4);
  });
});

function notchesOf(piece: Piece): string[] {
  return piece.notches.map((notch) => `${notch.edge} ${Number(notch.atMm.toFixed(6))}`);
}
