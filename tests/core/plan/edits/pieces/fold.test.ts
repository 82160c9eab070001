import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../../shared-core/demo/coat.ts';
import type { CoatPlan, Piece } from '../../../../../shared-core/plan/model/coat-plan.ts';
import { foldPiece, openPiece } from '../../../../../shared-core/plan/edits/pieces/fold.ts';
import { cutRing, edgeLengthMm } from '../../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { seamWalk } from '../../../../../shared-core/plan/geometry/seam-walk.ts';
import { wholeSeamRing } from '../../../../../shared-core/quilting/lines.ts';
import { areaOutside } from '../../clipper-referee.ts';
import { areaMm2, edited, refusal, stitchedMm, unfittedSeams } from '../../edit-outcomes.ts';
import { pieceOf, vest, withEdgeChanged, withPieceChanged } from '../../vest.ts';

/** How much of the one cut whole lies outside the other. */
function differenceMm2(one: Piece, other: Piece): number {
  const a = cutRing(one.outline, one.foldEdge);
  const b = cutRing(other.outline, other.foldEdge);
  return areaOutside(a, b) + areaOutside(b, a);
}

describe('opening a piece that is on the fold', () => {
  it('gives the whole back, twice as wide, its hem one hem and its sides two', () => {
    const { plan, said } = edited(openPiece(vest(), 'back'));
    const whole = pieceOf(plan, 'back');
    expect(said).toBe(
      'Back is opened flat: drafted and cut whole. One notch had no match on the other half and was left out.',
    );
    expect(areaMm2(whole)).toBeCloseTo(2 * areaMm2(pieceOf(vest(), 'back')), 6);
    expect(whole.outline.edges.map((edge) => edge.name)).toEqual([
      'neckline',
      'shoulder',
      'armhole',
      'side',
      'hem',
      'other side',
      'other armhole',
      'other shoulder',
    ]);
    expect(edgeLengthMm(whole.outline, 'hem')).toBe(510);
    expect(planProblems(plan)).toEqual([]);
  });

  it('mirrors the notches', () => {
    const whole = pieceOf(edited(openPiece(vest(), 'back')).plan, 'back');
    expect(whole.notches).toEqual([
      { edge: 'side', atMm: 90 },
      { edge: 'other side', atMm: 340 },
      { edge: 'side', atMm: 400 },
      { edge: 'other side', atMm: 30 },
    ]);
  });

  it('notches of an edge that ends at the fold stand on both halves of it', () => {
    const marked = withPieceChanged(vest(), 'back', (back) => ({
      ...back,
      notches: [
        { edge: 'hem', atMm: 60 },
        { edge: 'neckline', atMm: 25 },
      ],
    }));
    const whole = pieceOf(edited(openPiece(marked, 'back')).plan, 'back');
    const neckMm = edgeLengthMm(pieceOf(vest(), 'back').outline, 'neckline');
    // The hem runs to the fold, 255 from the side; the neckline begins at it.
    expect(whole.notches.map(({ edge, atMm }) => [edge, Math.round(atMm * 1e6) / 1e6])).toEqual([
      ['hem', 60],
      ['hem', 450],
      ['neckline', Math.round((neckMm + 25) * 1e6) / 1e6],
      ['neckline', Math.round((neckMm - 25) * 1e6) / 1e6],
    ]);
  });

  it('leaves the seams as long and as fitting as they were', () => {
    const { plan } = edited(openPiece(vest(), 'back'));
    expect(unfittedSeams(plan)).toEqual([]);
    expect(stitchedMm(plan)).toEqual(stitchedMm(vest()));
  });

  it('cuts the same cloth, and folding it again restores the half', () => {
    const coat = fenwalkCoat({});
    const folded = coat.pieces.filter((piece) => piece.foldEdge !== null);
    expect(folded.length).toBeGreaterThan(1);
    for (const piece of folded) {
      const open = edited(openPiece(coat, piece.id)).plan;
      expect(differenceMm2(pieceOf(open, piece.id), piece)).toBeLessThan(2);
      expect(planProblems(open)).toEqual([]);
      const again = edited(foldPiece(open, piece.id)).plan;
      expect(differenceMm2(pieceOf(again, piece.id), piece)).toBeLessThan(2);
      expect(areaMm2(pieceOf(again, piece.id))).toBeCloseTo(areaMm2(piece), 0);
      expect(unfittedSeams(again)).toEqual(unfittedSeams(coat));
      expect(planProblems(again)).toEqual([]);
    }
  });

  it('a piece that is not on the fold is refused', () => {
    expect(refusal(openPiece(vest(), 'front'))).toContain('Front is not on the fold');
  });
});

describe('folding a symmetric piece', () => {
  const open = edited(openPiece(vest(), 'back')).plan;

  it('drafts it as the half again, with its seams', () => {
    const { plan, said } = edited(foldPiece(open, 'back'));
    expect(said).toBe('Back is now drafted as a half and cut on the fold.');
    const half = pieceOf(plan, 'back');
    expect(areaMm2(half) * 2).toBeCloseTo(areaMm2(pieceOf(open, 'back')), 6);
    expect(half.foldEdge).toBe('fold');
    expect(half.notches).toHaveLength(2);
    expect(stitchedMm(plan)).toEqual(stitchedMm(open));
  });

  it('two edges sewn to each other become one that meets its mirror image, and are sewn as long as before', () => {
    const sewn = (edge: string, plan: CoatPlan) =>
      withEdgeChanged(plan, 'back', edge, (drawn) => ({ ...drawn, seam: 'tube' }));
    const tube = {
      ...vest().seams[0]!,
      id: 'tube',
      label: 'Tube',
      firstSide: [{ pieceId: 'back', edge: 'side' }],
    };
    const whole = sewn('side', sewn('other side', { ...open, seams: [...open.seams, tube] }));
    const before = seamWalk(whole).find((report) => report.seamId === 'tube')!;
    expect(before).toMatchObject({ sides: 'two', stitchedMm: 430 });
    const after = seamWalk(edited(foldPiece(whole, 'back')).plan).find((report) => report.seamId === 'tube')!;
    expect(after).toMatchObject({ sides: 'mirror', fits: true, stitchedMm: 430 });
  });

  it('a front with a neckline at one side only is refused, with how far the halves part', () => {
    expect(refusal(foldPiece(vest(), 'front'))).toMatch(
      /^Front is not alike on both sides of its middle: they part by [\d.]+ mm\. Cut it whole/,
    );
  });

  it('allowances that differ left and right are refused', () => {
    const uneven = withEdgeChanged(open, 'back', 'other side', (edge) => ({ ...edge, allowanceMm: 21 }));
    expect(refusal(foldPiece(uneven, 'back'))).toContain('of Back differ, and the fold makes them one');
  });

  it('half a millimetre off is still alike, two millimetres are not', () => {
    const nudged = (byMm: number): CoatPlan =>
      withEdgeChanged(open, 'back', 'armhole', (edge) => ({
        ...edge,
        segments: edge.segments.map((segment) => ({
          ...segment,
          to: { x: segment.to.x + byMm, y: segment.to.y },
        })),
      }));
    expect(foldPiece(nudged(0.5), 'back').ok).toBe(true);
    expect(foldPiece(nudged(2.5), 'back').ok).toBe(false);
  });

  it('a notch that only one half has is left out and said', () => {
    const marked = withPieceChanged(open, 'back', (back) => ({
      ...back,
      notches: [...back.notches, { edge: 'side', atMm: 222 }],
    }));
    const half = edited(foldPiece(marked, 'back'));
    const other = withPieceChanged(open, 'back', (back) => ({
      ...back,
      notches: [...back.notches, { edge: 'other side', atMm: 222 }],
    }));
    const otherHalf = edited(foldPiece(other, 'back'));
    const lost = [half, otherHalf].filter(({ said }) => said.includes('One notch had no match'));
    expect(lost).toHaveLength(1);
  });

  it('any half opened has twice its area at the seam line, wherever its fold lies', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 40, max: 300 }), (deg, widthMm) => {
        const turned = withPieceChanged(vest(), 'back', (back) => turnedBy(back, deg, widthMm));
        const plan = edited(openPiece(turned, 'back')).plan;
        const area = areaMm2(pieceOf(plan, 'back'));
        expect(area).toBeCloseTo(2 * areaMm2(pieceOf(turned, 'back')), 4);
        expect(planProblems(plan)).toEqual([]);
        expect(
          areaOutside(wholeSeamRing(pieceOf(turned, 'back')), wholeSeamRing(pieceOf(plan, 'back'))),
        ).toBeLessThan(1);
      }),
      { numRuns: 40, seed: 1889 },
    );
  });
});

function turnedBy(piece: Piece, deg: number, moreMm: number): Piece {
  const turn = ({ x, y }: { x: number; y: number }) => {
    const a = (deg * Math.PI) / 180;
    const wide = y > 200 ? y + moreMm : y;
    return { x: x * Math.cos(a) - wide * Math.sin(a), y: x * Math.sin(a) + wide * Math.cos(a) };
  };
  return {
    ...piece,
    notches: [],
    outline: {
      start: turn(piece.outline.start),
      edges: piece.outline.edges.map((edge) => ({
        ...edge,
        segments: edge.segments.map((segment) => ({ kind: 'line', to: turn(segment.to) })),
      })),
    },
  };
}
