import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { layersWords } from '../../../../shared-core/plan/model/quilted-layers.ts';
import {
  forgetSlotTakeUp,
  forgetSwatch,
  saveSwatch,
  setRise,
  type Swatch,
} from '../../../../shared-core/plan/edits/swatch.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import { measured, piece, plan, rectangle, slot } from '../../../fixtures/small-workshop.ts';
import { edited, refusal } from '../edit-outcomes.ts';

/** A body of two layers and a sleeve of one, quilted across at 80 mm. */
const coat: CoatPlan = plan({
  slots: [slot('shell', 'cloth', { isQuilted: true }), slot('batting', 'batting'), slot('thread', 'thread')],
  pieces: (
    [
      ['body', rectangle(700, 500), 2],
      ['sleeve', rectangle(600, 400), 1],
    ] as const
  ).map(([id, outline, plyCount]) =>
    piece(id, outline, {
      quilted: 'across',
      cutFrom: [
        { slotId: 'shell', plyCount: 1 },
        { slotId: 'batting', plyCount },
      ],
    }),
  ),
  quilting: { spacingMm: 80, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread' },
});

const swatch: Swatch = {
  battingPlyCount: 2,
  spacingMm: 80,
  overLinesBeforeMm: 300,
  overLinesAfterMm: 291,
  alongLinesBeforeMm: 310,
  alongLinesAfterMm: 305,
  thicknessMm: 13,
};

function shellMm2(of: CoatPlan): number[] {
  const [shell] = requirement(of, new Map());
  return shell?.kind === 'shapes' ? shell.shapes.map(({ areaMm2 }) => areaMm2) : [];
}

describe('a swatch of 300 x 310 mm that came out 291 x 305 mm, 13 mm thick', () => {
  const { plan: after, said } = edited(saveSwatch(coat, swatch));
  it('is written into the plan as take-up both ways and half of the thickness as rise', () => {
    expect(after.quilting?.measures).toEqual([
      {
        battingPlyCount: 2,
        spacingMm: 80,
        riseMm: 6.5,
        overLinesRatio: 300 / 291 - 1,
        alongLinesRatio: 310 / 305 - 1,
      },
    ]);
    expect(said).toBe('Take-up and rise of 2 layers of batting are as the swatch measured them.');
    expect(planProblems(after)).toEqual([]);
  });
  it('cuts the body of two layers by it, and the sleeve of one as before', () => {
    expect(shellMm2(after)[0]).toBeCloseTo(700 * 500 * (300 / 291) * (310 / 305), 4);
    expect(shellMm2(after)[1]).toBe(shellMm2(coat)[1]);
    expect(shellMm2(coat)[1]).toBeCloseTo(600 * 400 * 1.025 ** 2, 4);
  });
  it('stands before what its slot has of its own, and is forgotten for its layers alone', () => {
    const slots = coat.slots.map((each) =>
      each.id === 'shell' ? { ...each, takeUpAlongRatio: 0.2, takeUpAcrossRatio: 0.3 } : each,
    );
    const old = edited(saveSwatch({ ...coat, slots }, swatch)).plan;
    expect(shellMm2(old)[0]).toBe(shellMm2(after)[0]);
    expect(shellMm2(old)[1]).toBeCloseTo(600 * 400 * 1.2 * 1.3, 4);
    expect(shellMm2(edited(forgetSlotTakeUp(old)).plan)).toEqual(shellMm2(after));
    const both = edited(saveSwatch(after, { ...swatch, battingPlyCount: 1, overLinesAfterMm: 288 })).plan;
    const { plan: one, said: forgotten } = edited(forgetSwatch(both, 2));
    expect(one.quilting?.measures).toMatchObject([{ battingPlyCount: 1, overLinesRatio: 300 / 288 - 1 }]);
    expect(forgotten).toBe('Take-up and rise of 2 layers of batting are estimated again.');
    expect(edited(forgetSwatch(one, 1)).plan).toEqual(coat);
  });
  it('without a thickness leaves the rise that was there', () => {
    const risen = { ...coat, quilting: { ...coat.quilting!, ...measured(4, 2) } };
    const { plan: again, said: words } = edited(saveSwatch(risen, { ...swatch, thicknessMm: null }));
    expect(again.quilting?.measures).toMatchObject([{ riseMm: 4, overLinesRatio: 300 / 291 - 1 }]);
    expect(words).not.toContain('rise');
  });
});

describe('a swatch that cannot be', () => {
  it('grew, has no size after, or is thicker than its lines let it be: all is told at once, nothing changed', () => {
    const sentence = refusal(
      saveSwatch(coat, { ...swatch, overLinesAfterMm: 304, alongLinesAfterMm: 0, thicknessMm: 81 }),
    );
    expect(sentence).toContain('The swatch over its lines grew in quilting');
    expect(sentence).toContain('The swatch along its lines shrank by more than half');
    expect(sentence).toContain('Thickness of the swatch is 81 mm');
    expect(sentence).toContain('Type 0 to 80 mm');
  });
  it('has lines on top of each other, or half a layer', () => {
    expect(refusal(saveSwatch(coat, { ...swatch, spacingMm: 2 }))).toContain('is too small');
    expect(refusal(saveSwatch(coat, { ...swatch, battingPlyCount: 1.5 }))).toContain('no whole number');
    expect(refusal(saveSwatch({ ...coat, quilting: null }, swatch))).toContain('is not quilted');
  });
});

describe('a rise measured with a ruler', () => {
  it('is kept for its layers, up to half of what the lines are apart, and given up again', () => {
    const { plan: risen, said } = edited(setRise(coat, 1, 8.5));
    expect(risen.quilting?.measures).toEqual(measured(8.5, 1, { spacingMm: 80 }).measures);
    expect(said).toBe('One face rises 8.5 mm over 1 layer of batting, as measured.');
    expect(edited(setRise(risen, 1, 40)).plan.quilting?.measures?.[0]?.riseMm).toBe(40);
    expect(refusal(setRise(risen, 1, 41))).toContain('Type 0 to 40 mm');
    expect(refusal(setRise(risen, 1, Number.NaN))).toContain('Rise of the quilting is not a number');
    expect(edited(setRise(risen, 1, null)).plan).toEqual(coat);
    expect(refusal(setRise({ ...coat, quilting: null }, 1, 3))).toContain('is not quilted');
  });
  it('leaves the take-up that a swatch showed', () => {
    const after = edited(saveSwatch(coat, swatch)).plan;
    expect(edited(setRise(after, 2, null)).plan.quilting?.measures).toMatchObject([
      { riseMm: null, overLinesRatio: 300 / 291 - 1 },
    ]);
  });
});

it('layers are named as a maker counts them', () => {
  expect([0, 1, 3].map(layersWords)).toEqual(['loose fill', '1 layer of batting', '3 layers of batting']);
});
