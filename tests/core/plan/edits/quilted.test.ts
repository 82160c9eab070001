import { describe, expect, it } from 'vitest';
import {
  setOwnSpacing,
  setQuilted,
  setStitchLength,
  startQuilting,
} from '../../../../shared-core/plan/edits/quilted.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import { edited, refusal } from '../edit-outcomes.ts';
import { measured, piece, plan, rectangle, slot } from '../../../fixtures/small-workshop.ts';

const quilted = plan({
  slots: [slot('shell', 'cloth', { isQuilted: true }), slot('lining', 'cloth')],
  pieces: [
    piece('back', rectangle(700, 500), {
      quilted: 'across',
      cutFrom: [
        { slotId: 'shell', plyCount: 1 },
        { slotId: 'lining', plyCount: 1 },
      ],
    }),
  ],
  quilting: { spacingMm: 80, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread', ...measured(5, 0) },
});

function areas(of: typeof quilted): number[] {
  return requirement(of, new Map()).map((need) => (need.kind === 'shapes' ? Math.round(need.areaMm2) : 0));
}

describe('what the maker says of the quilting', () => {
  it('a piece that is not quilted is cut as it is drawn', () => {
    const outcome = setQuilted(quilted, 'back', null);
    expect(outcome.ok && areas(outcome.value.plan)).toEqual([350_000, 350_000]);
    expect(areas(quilted)[0]).toBeGreaterThan(350_000);
    expect(setQuilted(quilted, 'hood', 'along').ok).toBe(false);
  });
});

describe('lines and stitches', () => {
  it('stitches are as long as the maker says, within reason', () => {
    expect(edited(setStitchLength(quilted, 3.5)).plan.quilting?.stitchLengthMm).toBe(3.5);
    expect(refusal(setStitchLength(quilted, 0.2))).toContain('Type a length from 0.5 mm to 50 mm');
  });

  it('one piece has lines of its own distance, and gives them up again', () => {
    const { plan: own, said } = edited(setOwnSpacing(quilted, 'back', 45));
    expect(said).toMatch(/^Lines of \w+ are now 45 mm apart\.$/);
    expect(own.pieces.find(({ id }) => id === 'back')).toMatchObject({ quiltingSpacingMm: 45 });
    expect(refusal(setOwnSpacing(quilted, 'back', 3))).toContain('is too small');
    const again = edited(setOwnSpacing(own, 'back', null));
    expect(again.plan).toEqual(quilted);
    expect(again.said).toContain('80 mm apart, as in the whole coat');
    const tooNear = { ...own, pieces: own.pieces.map((each) => ({ ...each, quiltingSpacingMm: 2 })) };
    expect(planProblems(tooNear).map(({ where }) => where)).toContain('Distance of the lines of back');
  });

  it('nearer lines of one piece take up more of its cloth alone', () => {
    const risen = { ...quilted, quilting: { ...quilted.quilting!, ...measured(8, 0) } };
    const cut = (plan: typeof quilted) => {
      const [need] = requirement(plan, new Map()).filter((each) => each.kind === 'shapes');
      return need!.kind === 'shapes' ? need!.areaMm2 : 0;
    };
    const nearer = edited(setOwnSpacing(risen, 'back', 40)).plan;
    // Arc over chord of 8 mm in 80 mm, and of 8 mm in 40 mm.
    const arcOverChord = (chordMm: number) => {
      const radiusMm = (chordMm ** 2 / 4 + 64) / 16;
      return (2 * radiusMm * Math.asin(chordMm / 2 / radiusMm)) / chordMm;
    };
    expect(cut(nearer) / cut(risen)).toBeCloseTo(arcOverChord(40) / arcOverChord(80), 9);
  });

  it('a plan without quilting is given lines in its quilting thread, and only once', () => {
    const plain = {
      ...quilted,
      quilting: null,
      slots: [...quilted.slots, slot('seams', 'thread'), slot('quilting thread', 'thread')],
    };
    const { plan: begun } = edited(startQuilting(plain));
    expect(begun.quilting).toMatchObject({ spacingMm: 76.2, threadSlotId: 'quilting thread' });
    expect(refusal(startQuilting(begun))).toContain('is quilted already');
    expect(refusal(startQuilting({ ...plain, slots: [] }))).toContain('has no slot for thread');
    expect(refusal(setStitchLength(plain, 3))).toContain('is not quilted');
  });
});
