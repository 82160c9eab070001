import { describe, expect, it } from 'vitest';
import {
  customaryAllowanceMm,
  hemEdge,
  setAllAllowances,
  setHemDepth,
} from '../../../../../shared-core/plan/edits/pieces/allowance.ts';
import { setCutCount } from '../../../../../shared-core/plan/edits/pieces/cut-count.ts';
import { grainTurned } from '../../../../../shared-core/plan/edits/pieces/grain.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { edited, refusal } from '../../edit-outcomes.ts';
import { pieceOf, vest, withEdgeChanged } from '../../vest.ts';

describe('allowances', () => {
  it('all edges of the back get 5/8 in, the fold none', () => {
    const { plan, said } = edited(setAllAllowances(vest(), 'back', customaryAllowanceMm));
    expect(pieceOf(plan, 'back').outline.edges.map((edge) => edge.allowanceMm)).toEqual([
      0, 15.875, 15.875, 15.875, 15.875, 15.875,
    ]);
    expect(said).toBe('Allowance of Back is now 15.9 mm at every edge that is cut.');
    expect(pieceOf(plan, 'front')).toEqual(pieceOf(vest(), 'front'));
    expect(planProblems(plan)).toEqual([]);
  });

  it.each([
    [-3, 'Seam allowance of Back is negative'],
    [900, 'Seam allowance of Back is over 200 mm'],
    [Number.NaN, 'Seam allowance of Back is not a number'],
  ])('of %s mm is refused once for the whole piece', (mm, sentence) => {
    const said = refusal(setAllAllowances(vest(), 'back', mm));
    expect(said).toContain(sentence);
    expect(said.split('Seam allowance')).toHaveLength(2);
  });

  it('the hem is 55 mm deep, and no other edge', () => {
    const { plan, said } = edited(setHemDepth(vest(), 'front', 55));
    expect(said).toBe('Hem of Front is now 55 mm deep.');
    expect(pieceOf(plan, 'front').outline.edges.map((edge) => edge.allowanceMm)).toEqual([
      12, 9, 15, 10, 16, 55,
    ]);
  });

  it('a hem is found without its name, at the foot of the piece', () => {
    const unnamed = withEdgeChanged(vest(), 'front', 'hem', (edge) => ({ ...edge, name: 'lower edge' }));
    expect(hemEdge(pieceOf(unnamed, 'front'))).toBe('lower edge');
    // Upside down its foot is the slanting head: no edge there runs across.
    expect(hemEdge(grainTurned(pieceOf(unnamed, 'front'), 180))).not.toBe('lower edge');
    expect(refusal(setHemDepth(vest(), 'yoke', 40))).toContain('The piece yoke is not in the plan');
  });
});

describe('how many are cut', () => {
  it('four of the back instead of one', () => {
    const { plan, said } = edited(setCutCount(vest(), 'front-lining', 4, true));
    expect(said).toContain('4 of Front lining for one coat, half of them mirrored.');
    expect(pieceOf(plan, 'front-lining')).toMatchObject({ cutCount: 4, isMirrored: true });
    expect(refusal(setCutCount(vest(), 'front', 3, true))).toContain('odd for a piece cut in mirrored pairs');
    expect(edited(setCutCount(vest(), 'front', 3, false)).said).toContain('no longer fit');
  });
});
