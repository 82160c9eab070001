import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../../shared-core/demo/coat.ts';
import { seamRing } from '../../../../../shared-core/plan/geometry/outline-ring.ts';
import { lineRoomMm } from '../../../../../shared-core/plan/geometry/piece-line.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { addShape } from '../../../../../shared-core/plan/edits/pieces/shapes.ts';
import { piecesSewnAlong, widenPieces } from '../../../../../shared-core/plan/edits/pieces/widen.ts';
import { areaOutside } from '../../clipper-referee.ts';
import { areaMm2, edited, refusal } from '../../edit-outcomes.ts';
import { pieceOf, vest } from '../../vest.ts';

const coat = fenwalkCoat({});

describe('widening', () => {
  it('the back on the fold is widened on both sides, and the shoulder ceases to fit', () => {
    const { plan, said } = edited(widenPieces(vest(), ['back'], 14, 120));
    expect(said).toBe(
      'Back widened by 14 mm 120 mm from the fold. Back on the fold: 28 mm in all. The seam Shoulder no longer fits.',
    );
    const back = pieceOf(plan, 'back');
    expect(lineRoomMm(back, 'along')).toBe(269);
    // The fold and all within 120 of it stay.
    expect(back.outline.edges[0]!.segments[0]!.to).toEqual({ x: 600, y: 0 });
    expect(planProblems(plan)).toEqual([]);
  });

  it('what is sewn to it over the line is widened with it, and the seams between them fit', () => {
    expect(piecesSewnAlong(vest(), 'back', 120).toSorted()).toEqual(['front']);
    const { plan, said } = edited(widenPieces(vest(), ['back', 'front'], 14, 120));
    expect(said).not.toContain('Shoulder');
    expect(planProblems(plan)).toEqual([]);
  });

  it('grows a rectangle by exactly the width times its length, from whichever side', () => {
    const mm = fc.integer({ min: 60, max: 900 });
    fc.assert(
      fc.property(
        mm,
        mm,
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 5, max: 95 }),
        fc.boolean(),
        (lengthMm, widthMm, byMm, percent, isOnFold) => {
          const { plan } = edited(
            addShape(vest(), {
              name: 'Panel',
              shape: { kind: 'rectangle', lengthMm, widthMm },
              count: 1,
              isMirrored: false,
              isOnFold,
              grainTurnDeg: 0,
              turns: 'grain',
              slotIds: [],
            }),
          );
          const before = plan.pieces.at(-1)!;
          const atMm = (lineRoomMm(before, 'along') * percent) / 100;
          const after = edited(widenPieces(plan, ['panel'], byMm, atMm)).plan.pieces.at(-1)!;
          expect(areaMm2(after) - areaMm2(before)).toBeCloseTo(byMm * lengthMm, 4);
        },
      ),
      { numRuns: 60, seed: 1889 },
    );
  });

  it('grows a coat’s front by the width times a length between its shortest and its longest there', () => {
    const roomMm = lineRoomMm(pieceOf(coat, 'front'), 'along');
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 150 }),
        fc.double({ min: 0.1, max: 0.45, noNaN: true }),
        (mm, share) => {
          const plan = edited(widenPieces(coat, ['front'], mm, share * roomMm)).plan;
          const grown = areaMm2(pieceOf(plan, 'front')) - areaMm2(pieceOf(coat, 'front'));
          // Up to 0.55 of its breadth a line along the front ends at the neckline or the shoulder.
          const longestMm = lineRoomMm(pieceOf(coat, 'front'), 'across');
          expect(grown).toBeGreaterThan(mm * longestMm * 0.9);
          expect(grown).toBeLessThan(mm * longestMm);
          expect(planProblems(plan)).toEqual([]);
        },
      ),
      { numRuns: 40, seed: 1889 },
    );
  });

  it('and narrowing at the same line restores it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 20, max: 200 }), (mm, atMm) => {
        const wider = edited(widenPieces(coat, ['front'], mm, atMm)).plan;
        const back = edited(widenPieces(wider, ['front'], -mm, atMm)).plan;
        const was = seamRing(pieceOf(coat, 'front').outline);
        const is = seamRing(pieceOf(back, 'front').outline);
        // Only its place in its frame may differ.
        const moved = is.map((value, index) => value - is[index % 2]! + was[index % 2]!);
        expect(areaOutside(was, moved)).toBeLessThan(1);
        expect(areaOutside(moved, was)).toBeLessThan(1);
      }),
      { numRuns: 40, seed: 1889 },
    );
  });

  it('notches stay with what they mark', () => {
    const hem = [
      { edge: 'hem', atMm: 40 },
      { edge: 'hem', atMm: 200 },
    ];
    const marked = {
      ...vest(),
      pieces: vest().pieces.map((piece) => (piece.id === 'back' ? { ...piece, notches: hem } : piece)),
    };
    // The hem runs from the side, 255 from the fold, to the fold: 40 along it is beyond the line, 200 within.
    const back = pieceOf(edited(widenPieces(marked, ['back'], 30, 120)).plan, 'back');
    expect(back.notches).toEqual([
      { edge: 'hem', atMm: 40 },
      { edge: 'hem', atMm: 230 },
    ]);
  });

  it.each([
    [0, 120, 'Width to add is 0 mm'],
    [2000, 120, 'Width to add is 2000 mm'],
    [20, 300, 'The line 300 mm from the fold does not cross Back. Choose one up to 255 mm from the fold.'],
    [-140, 120, 'Back has only 135 mm beyond the line'],
  ])('by %s mm at %s mm is refused', (byMm, atMm, sentence) => {
    expect(refusal(widenPieces(vest(), ['back'], byMm, atMm))).toContain(sentence);
  });
});
