import { describe, expect, it } from 'vitest';
import {
  setOwnSpacing,
  setQuilted,
  setRise,
  setStitchLength,
  setSwatch,
  startQuilting,
} from '../../../shared-core/plan/quilted.ts';
import { planProblems } from '../../../shared-core/plan/plan-problems.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { edited, refusal } from './edit-outcomes.ts';
import { piece, plan, rectangle, slot } from '../../fixtures/small-workshop.ts';

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
  quilting: { spacingMm: 80, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread', riseMm: 5 },
});

function areas(of: typeof quilted): number[] {
  return requirement(of, new Map()).map((need) => (need.kind === 'shapes' ? Math.round(need.areaMm2) : 0));
}

describe('what the maker says of the quilting', () => {
  it('a swatch of 300 x 310 that came out 291 x 305 takes the place of the geometry, on quilted cloth alone', () => {
    const swatch = { beforeAlongMm: 300, afterAlongMm: 291, beforeAcrossMm: 310, afterAcrossMm: 305 };
    const outcome = setSwatch(quilted, swatch);
    if (!outcome.ok) throw new Error('refused');
    const [shell, lining] = outcome.value.plan.slots;
    expect(shell?.takeUpAlongRatio).toBeCloseTo(300 / 291 - 1, 12);
    expect(shell?.takeUpAcrossRatio).toBeCloseTo(310 / 305 - 1, 12);
    expect(lining?.takeUpAlongRatio).toBeNull();
    expect(areas(outcome.value.plan)).toEqual([Math.round(700 * 500 * (300 / 291) * (310 / 305)), 350_000]);
  });

  it('and without the swatch the geometry counts again', () => {
    const measured = setSwatch(quilted, {
      beforeAlongMm: 300,
      afterAlongMm: 291,
      beforeAcrossMm: 310,
      afterAcrossMm: 305,
    });
    const back = measured.ok ? setSwatch(measured.value.plan, null) : measured;
    expect(back.ok && back.value.plan).toEqual(quilted);
  });

  it('a swatch that grew, or that has no size after, is refused', () => {
    const grown = setSwatch(quilted, {
      beforeAlongMm: 300,
      afterAlongMm: 304,
      beforeAcrossMm: 310,
      afterAcrossMm: 0,
    });
    expect(grown.ok ? [] : grown.problems.map(({ where, what }) => `${where} ${what}`)).toEqual([
      'The swatch along the grain grew in quilting',
      'The swatch across the grain shrank by more than half',
    ]);
  });

  it('a piece that is not quilted is cut as it is drawn', () => {
    const outcome = setQuilted(quilted, 'back', null);
    expect(outcome.ok && areas(outcome.value.plan)).toEqual([350_000, 350_000]);
    expect(areas(quilted)[0]).toBeGreaterThan(350_000);
    expect(setQuilted(quilted, 'hood', 'along').ok).toBe(false);
  });
});

describe('lines, rise and stitches', () => {
  it('a rise measured with a ruler is kept, up to half of what the lines are apart, and given up again', () => {
    const { plan: risen, said } = edited(setRise(quilted, 8.5));
    expect(risen.quilting).toEqual({ ...quilted.quilting, riseMm: 8.5 });
    expect(said).toBe('The cloth rises 8.5 mm between two lines, as measured.');
    expect(edited(setRise(risen, 40)).plan.quilting?.riseMm).toBe(40);
    expect(refusal(setRise(risen, 41))).toContain('Type 0 to 40 mm');
    expect(refusal(setRise(risen, Number.NaN))).toContain('Rise of the quilting is not a number');
    expect(edited(setRise(risen, null)).plan.quilting?.riseMm).toBeNull();
  });

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
    const risen = edited(setRise(quilted, 8)).plan;
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
    expect(refusal(setRise(plain, 3))).toContain('is not quilted');
    expect(refusal(setStitchLength(plain, 3))).toContain('is not quilted');
  });
});
