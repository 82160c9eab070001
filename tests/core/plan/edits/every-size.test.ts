import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { removePiece, setPlies } from '../../../../shared-core/plan/edits/edit.ts';
import { editEverySize } from '../../../../shared-core/plan/edits/every-size.ts';
import { lengthenPieces } from '../../../../shared-core/plan/edits/pieces/lengthen.ts';
import { edgeLengthMm } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { edited, refusal } from '../edit-outcomes.ts';
import { pieceOf, vest } from '../vest.ts';

const both = ['back', 'front'];
const longer = (plan: CoatPlan) => lengthenPieces(plan, both, 30);
/** The vest with another size that is 24 longer, and one that has no front. */
const style: CoatPlan = {
  ...vest(),
  size: 'M',
  sizes: [
    { size: 'L', coatCount: 2, pieces: edited(lengthenPieces(vest(), both, 24)).plan.pieces },
    { size: 'S', coatCount: 1, pieces: vest().pieces.filter((piece) => piece.id !== 'front') },
  ],
};

function sideMm(plan: CoatPlan, size: string, pieceId: string): number {
  const pieces = size === plan.size ? plan.pieces : plan.sizes!.find((each) => each.size === size)!.pieces;
  return edgeLengthMm(pieces.find((piece) => piece.id === pieceId)!.outline, 'side');
}

describe('a change in every size', () => {
  it('lengthens the piece in each size that has it, and says so', () => {
    const { plan, said } = edited(editEverySize(style, 'front', longer));
    for (const size of ['M', 'L'])
      for (const pieceId of both)
        expect(sideMm(plan, size, pieceId)).toBeCloseTo(sideMm(style, size, pieceId) + 30, 6);
    expect(plan.sizes![1]).toEqual(style.sizes![1]);
    expect(said).toMatch(/lengthened by 30 mm at the lower third\. .*In size L as well\.$/);
    expect(planProblems(plan)).toEqual(planProblems(style));
  });

  it('one that another size forbids changes none, and names the size', () => {
    expect(refusal(editEverySize(style, 'back', longer))).toContain(
      'Size S: The piece front is not in the plan',
    );
  });

  it('says which size has a seam that no longer fits', () => {
    const uneven = {
      ...style,
      sizes: [{ ...style.sizes![0]!, pieces: edited(lengthenPieces(vest(), ['front'], 24)).plan.pieces }],
    };
    // In size L the side did not fit before, and does so no worse now.
    const backOnly = (plan: CoatPlan) => lengthenPieces(plan, ['back'], 30);
    expect(edited(editEverySize(uneven, 'back', backOnly)).said).not.toContain('Size L:');
    expect(edited(editEverySize(style, 'back', backOnly)).said).toMatch(
      /In sizes L and S as well\. Size L: The seams? .*no longer fits?\./,
    );
  });

  it('plies change and pieces go in all', () => {
    const plied = edited(editEverySize(style, 'back', (plan) => setPlies(plan, 'back', 'batting', 3))).plan;
    for (const { pieces } of [plied, ...plied.sizes!]) {
      const back = pieces.find((piece) => piece.id === 'back')!;
      expect(back.cutFrom).toContainEqual({ slotId: 'batting', plyCount: 3 });
    }
    const fewer = { ...style, sizes: [style.sizes![0]!] };
    const without = edited(editEverySize(fewer, 'front', (plan) => removePiece(plan, 'front'))).plan;
    expect(without.sizes![0]!.pieces.map(({ id }) => id)).not.toContain('front');
    expect(planProblems(without)).toEqual([]);
  });

  it('of a plan in one size is the change alone', () => {
    expect(edited(editEverySize(vest(), 'front', longer))).toEqual(edited(longer(vest())));
    expect(pieceOf(edited(editEverySize(vest(), 'front', longer)).plan, 'front')).not.toEqual(
      pieceOf(vest(), 'front'),
    );
  });
});
