import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '../../../shared-core/plan/coat-plan.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { offsetsToMark, pieceTakeUp, slotTakeUp } from '../../../shared-core/requirement/take-up.ts';
import { piece, plan, rectangle, slot } from '../../fixtures/small-workshop.ts';

const coat = (more: Partial<CoatPlan> = {}) =>
  plan({
    slots: [
      slot('lining', 'cloth'),
      slot('padding', 'batting', { isQuilted: true }),
      slot('shell', 'cloth', { isQuilted: true }),
    ],
    pieces: [
      piece('back', rectangle(370, 260), {
        quilted: 'across',
        cutFrom: ['lining', 'padding', 'shell'].map((slotId) => ({ slotId, plyCount: 1 })),
      }),
    ],
    quilting: { spacingMm: 90, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread', riseMm: 12 },
    ...more,
  });

const marked = (of: CoatPlan) =>
  offsetsToMark(quiltingMap(of)[0]!, pieceTakeUp(of, of.pieces[0]!, new Map()));

describe('where lines are marked on the flat cloth', () => {
  it('each arc further than the finished line, as quilting draws the cloth in', () => {
    const radiusMm = (45 ** 2 + 12 ** 2) / 24;
    const arcMm = 2 * radiusMm * Math.asin(45 / radiusMm);
    expect(quiltingMap(coat())[0]?.offsetsMm).toEqual([90, 180, 270, 360]);
    for (const [index, mm] of marked(coat()).entries()) expect(mm).toBeCloseTo((index + 1) * arcMm, 9);
  });

  it('by the swatch of the shell, where it was measured', () => {
    const slots = coat().slots.map((each) =>
      each.id === 'shell' ? { ...each, takeUpAlongRatio: 0.05, takeUpAcrossRatio: 0.01 } : each,
    );
    expect(marked(coat({ slots }))[1]).toBeCloseTo(189, 9);
    expect(pieceTakeUp(coat({ slots }), coat().pieces[0]!, new Map())).toMatchObject({ isMeasured: true });
  });

  it('where they lie, on a piece that no quilted slot is cut for', () => {
    const [back] = coat().pieces;
    const lined = coat({ pieces: [{ ...back!, cutFrom: [{ slotId: 'lining', plyCount: 1 }] }] });
    expect(marked(lined)).toEqual([90, 180, 270, 360]);
    expect(slotTakeUp(coat(), coat().slots[0]!, back!, new Map())).toBeNull();
  });
});
