import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../../shared-core/demo/coat.ts';
import { ringAreaMm2, ringBox } from '../../../../../shared-core/geometry/ring.ts';
import { turnGrain } from '../../../../../shared-core/plan/edits/pieces/grain.ts';
import { cutRing, edgeLengthMm, seamRing } from '../../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { areaMm2, edited, refusal, stitchedMm } from '../../edit-outcomes.ts';
import { pieceOf, vest } from '../../vest.ts';

describe('turning the grain', () => {
  it('by 90° lays what ran along the grain across it, and takes the quilting lines with it', () => {
    const { plan, said } = edited(turnGrain(vest(), 'back', 90));
    expect(said).toBe('Grain of Back turned by 90°: what ran along it now runs across.');
    const back = pieceOf(plan, 'back');
    const box = ringBox(seamRing(back.outline));
    expect([box.maxX - box.minX, box.maxY - box.minY]).toEqual([255, 620]);
    expect(back.quilted).toBe('along');
  });

  it('turns counter-clockwise on the piece: the right side of the front becomes its head', () => {
    const front = pieceOf(edited(turnGrain(vest(), 'front', -90)).plan, 'front');
    // The front edge lies at y = 0, the side at 240; the frame follows the grain.
    expect(ringBox(seamRing(front.outline)).maxX).toBeCloseTo(0, 9);
    const turned = pieceOf(edited(turnGrain(vest(), 'front', 90)).plan, 'front');
    expect(ringBox(seamRing(turned.outline)).maxX).toBeCloseTo(240, 9);
  });

  it('by 45° is the bias, and says that the lines follow the grain', () => {
    expect(edited(turnGrain(vest(), 'back', 45)).said).toBe(
      'Grain of Back turned by 45°: it is cut on the bias. Its quilting lines still run across the grain.',
    );
  });

  it('keeps areas, edges, seams and notches, by any angle, and turning back restores the piece', () => {
    const coat = fenwalkCoat({});
    fc.assert(
      fc.property(
        fc.constantFrom(...coat.pieces.map((piece) => piece.id)),
        fc.double({ min: -179, max: 179, noNaN: true }).filter((deg) => Math.abs(deg) > 0.01),
        (id, deg) => {
          const { plan } = edited(turnGrain(coat, id, deg));
          const was = pieceOf(coat, id);
          const is = pieceOf(plan, id);
          expect(areaMm2(is)).toBeCloseTo(areaMm2(was), 2);
          const cut = (piece: typeof is) => ringAreaMm2(cutRing(piece.outline, piece.foldEdge));
          expect(Math.abs(cut(is) / cut(was) - 1)).toBeLessThan(1e-4);
          expect(is.notches).toEqual(was.notches);
          for (const { name } of was.outline.edges)
            expect(edgeLengthMm(is.outline, name)).toBeCloseTo(edgeLengthMm(was.outline, name), 5);
          for (const [seam, mm] of stitchedMm(coat)) expect(stitchedMm(plan).get(seam)).toBeCloseTo(mm, 4);
          expect(planProblems(plan)).toEqual([]);
          const back = pieceOf(edited(turnGrain(plan, id, -deg)).plan, id);
          expect(back.outline.start.x).toBeCloseTo(was.outline.start.x, 6);
          expect(back.outline.start.y).toBeCloseTo(was.outline.start.y, 6);
          expect(back.quilted).toBe(was.quilted);
        },
      ),
      { numRuns: 15, seed: 1889 },
    );
  });

  it.each([0, 360, Number.NaN, 500])('by %s° is refused', (deg) => {
    expect(refusal(turnGrain(vest(), 'back', deg))).toContain('Turn of the grain of Back is');
  });
});
