import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { quiltingMap } from '../../../../shared-core/quilting/map.ts';
import {
  offsetsToMark,
  pieceTakeUp,
  slotTakeUp,
} from '../../../../shared-core/requirement/cut/slot-take-up.ts';
import { item, measured, piece, plan, rectangle, slot } from '../../../fixtures/small-workshop.ts';

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
    quilting: { spacingMm: 90, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread', ...measured(12, 1) },
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

describe('how much larger quilted cloth is cut', () => {
  const of = (more: Partial<CoatPlan> = {}, loftMm = 4) => {
    const bare = { ...coat().quilting!, measures: [] };
    const each = coat({ quilting: bare, ...more });
    return pieceTakeUp(each, each.pieces[0]!, new Map([['padding', item('batting', 'thin', { loftMm })]]))!;
  };
  it('by 2.5 % both ways over thin batting, since stitches draw in what no arc does', () => {
    expect(of()).toMatchObject({ alongRatio: 0.025, acrossRatio: 0.025, isMeasured: false });
    expect(of().alongRange).toEqual({ minRatio: 0.01, maxRatio: 0.05 });
    expect(of().acrossRange).toEqual({ minRatio: 0.01, maxRatio: 0.05 });
  });
  it('by the arc over the lines where that is more, and 2.5 % along them', () => {
    // Three quarters of 40 mm of loft, half of it on each face: 15 mm over 90.
    const radiusMm = (45 ** 2 + 15 ** 2) / 30;
    const arc = (2 * radiusMm * Math.asin(45 / radiusMm)) / 90 - 1;
    expect(of({}, 40).alongRatio).toBeCloseTo(arc, 12);
    expect(of({}, 40).acrossRatio).toBe(0.025);
    expect(of({}, 40).alongRange?.maxRatio).toBeCloseTo(arc, 12);
    const turned = of({ pieces: [{ ...coat().pieces[0]!, quilted: 'along' }] }, 40);
    expect([turned.alongRatio, turned.acrossRatio]).toEqual([0.025, expect.closeTo(arc, 12)]);
  });
  it('by nothing where nothing pads it', () => {
    const cutFrom = [{ slotId: 'shell', plyCount: 1 }];
    expect(of({ pieces: [{ ...coat().pieces[0]!, cutFrom }] })).toMatchObject({
      alongRatio: 0,
      acrossRatio: 0,
      alongRange: null,
    });
  });
  it('by its own swatch for each number of layers, turned with the lines', () => {
    const two = { overLinesRatio: 0.07, alongLinesRatio: 0.011 };
    const measures = [...measured(null, 1).measures, ...measured(null, 2, two).measures];
    const plies = (plyCount: number, quilted: 'across' | 'along') =>
      of({
        quilting: { ...coat().quilting!, measures },
        pieces: [
          {
            ...coat().pieces[0]!,
            quilted,
            cutFrom: [
              { slotId: 'shell', plyCount: 1 },
              { slotId: 'padding', plyCount },
            ],
          },
        ],
      });
    expect(plies(2, 'across')).toMatchObject({ alongRatio: 0.07, acrossRatio: 0.011, alongRange: null });
    expect(plies(2, 'along')).toMatchObject({ alongRatio: 0.011, acrossRatio: 0.07, isMeasured: true });
    expect(plies(1, 'across')).toMatchObject({ alongRatio: 0.025, isMeasured: false });
  });
});
