import { describe, expect, it } from 'vitest';
import { copyPiece } from '../../../../../shared-core/plan/edits/pieces/copy-piece.ts';
import { planProblems } from '../../../../../shared-core/plan/validation/plan-problems.ts';
import { addSize } from '../../../../../shared-core/plan/model/sizes.ts';
import { splitPiece } from '../../../../../shared-core/plan/edits/pieces/split.ts';
import { areaMm2, edited, refusal, stitchedMm, unfittedSeams } from '../../edit-outcomes.ts';
import { pieceOf, vest } from '../../vest.ts';

describe('a copy of a piece', () => {
  it('is cut from other slots and sewn in no seam, so that the seams stay as they are', () => {
    const { plan, said } = edited(copyPiece(vest(), 'back', ' Back lining ', ['lining']));
    expect(said).toBe('Back lining copied from Back, cut from lining. Its edges are sewn in no seam yet.');
    expect(plan.pieces.map((piece) => piece.name)).toEqual(['Back', 'Back lining', 'Front', 'Front lining']);
    const copy = pieceOf(plan, 'back-lining');
    expect(copy).toMatchObject({ cutFrom: [{ slotId: 'lining', plyCount: 1 }], quilted: null });
    expect(areaMm2(copy)).toBe(areaMm2(pieceOf(vest(), 'back')));
    expect(copy.notches).toEqual(pieceOf(vest(), 'back').notches);
    expect(stitchedMm(plan)).toEqual(stitchedMm(vest()));
    expect(unfittedSeams(plan)).toEqual([]);
    expect(planProblems(plan)).toEqual([]);
  });

  it('for batting is quilted as the first is', () => {
    expect(
      pieceOf(edited(copyPiece(vest(), 'back', 'Back batting', ['batting'])).plan, 'back-batting').quilted,
    ).toBe('across');
  });

  it('split along the front edge gives a facing and leaves the front alone', () => {
    const copied = edited(copyPiece(vest(), 'front', 'Front inside', ['lining'])).plan;
    const { plan } = edited(
      splitPiece(copied, 'front-inside', {
        direction: 'along',
        distanceMm: 85,
        allowanceMm: 12,
        names: ['Front facing', 'Front panel'],
      }),
    );
    expect(pieceOf(plan, 'front')).toEqual(pieceOf(vest(), 'front'));
    expect(pieceOf(plan, 'front-inside').name).toBe('Front facing');
    expect(planProblems(plan)).toEqual([]);
  });

  it('is made in every size', () => {
    const both = edited(addSize(vest(), { ...vest(), size: 'L' }, 2)).plan;
    const { plan } = edited(copyPiece(both, 'back', 'Back lining', ['lining']));
    expect(plan.sizes![0]!.pieces.map((piece) => piece.id)).toContain('back-lining');
  });

  it.each([
    ['back', 'Front', ['lining'], 'The piece Front is in the plan already'],
    ['back', '', ['lining'], 'Name of the copy is missing'],
    ['back', 'Back lining', ['thread'], 'thread is neither cloth nor batting'],
    ['back', 'Back lining', ['felt'], 'The slot felt is not in the plan'],
    ['yoke', 'Yoke lining', ['lining'], 'The piece yoke is not in the plan'],
  ])('of %s called %o for %o is refused', (id, name, slotIds, sentence) => {
    expect(refusal(copyPiece(vest(), id, name, slotIds))).toContain(sentence);
  });
});
