import { describe, expect, it } from 'vitest';
import type { CoatPlan, QuiltingOrder } from '../../../../shared-core/plan/model/coat-plan.ts';
import { editEverySize } from '../../../../shared-core/plan/edits/every-size.ts';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import {
  faceSlot,
  isOnPanel,
  quiltingOrder,
  setPieceOrder,
  setPlanOrder,
  setSlotOrder,
  toOutline,
} from '../../../../shared-core/plan/model/quilting-order.ts';
import { orderSentences } from '../../../../shared-core/plan/model/quilting-order-words.ts';
import { slot } from '../../../fixtures/small-workshop.ts';
import { back, front, quiltedCoat } from '../../requirement/small-coat.ts';
import { edited, refusal } from '../edit-outcomes.ts';

const rough = (marginMm: number): QuiltingOrder => ({ kind: 'rough', marginMm });

/** With a lining that no line goes through, and a pocket without lines. */
function coat(more: Partial<CoatPlan> = {}): CoatPlan {
  const cutFrom = ['lining', 'batting', 'shell'].map((slotId) => ({ slotId, plyCount: 1 }));
  return quiltedCoat({
    slots: [slot('lining', 'cloth'), ...quiltedCoat().slots],
    pieces: [
      back({ quilted: 'across', cutFrom }),
      front({ quilted: 'across', cutFrom }),
      front({ id: 'pocket', name: 'pocket', cutFrom }),
    ],
    ...more,
  });
}

/** Piece by piece, slot by slot. */
function orders(of: CoatPlan, pieceId: string): Record<string, QuiltingOrder | null> {
  const piece = of.pieces.find(({ id }) => id === pieceId)!;
  return Object.fromEntries(of.slots.map((each) => [each.id, quiltingOrder(of, piece, each)]));
}

describe('what comes first, cutting or quilting', () => {
  it('is cutting where a plan says nothing of it, as its figures always were', () => {
    expect(orders(coat(), 'back')).toEqual({
      lining: null,
      shell: toOutline,
      batting: toOutline,
      thread: null,
    });
    expect(orders(coat(), 'pocket')).toEqual({ lining: null, shell: null, batting: null, thread: null });
    expect(orders(coat({ quilting: null }), 'back')).toMatchObject({ shell: null });
  });
  it('is a rough cut with 25 mm to spare where a plan is begun', () => {
    expect(newPlan('new', 'Teal', '40').quilting?.order).toEqual(rough(25));
  });
  it('goes by the piece before the slot, and by the slot before the plan', () => {
    const first = edited(setPlanOrder(coat(), rough(25))).plan;
    const second = edited(setSlotOrder(first, 'batting', rough(45))).plan;
    const third = edited(setPieceOrder(second, 'front', toOutline)).plan;
    expect(orders(third, 'back')).toMatchObject({ shell: rough(25), batting: rough(45) });
    expect(orders(third, 'front')).toMatchObject({ shell: toOutline, batting: toOutline });
    expect(planProblems(third)).toEqual([]);
    const again = edited(
      setSlotOrder(edited(setPieceOrder(third, 'front', null)).plan, 'batting', null),
    ).plan;
    expect(again).toEqual(first);
  });
  it('marks a piece on its quilted cloth, not on its batting', () => {
    const of = coat();
    expect(faceSlot(of, of.pieces[0]!)?.id).toBe('shell');
    expect(faceSlot(of, of.pieces[2]!)).toBeNull();
  });
  it('is the same for a piece in every size', () => {
    const sizes = [{ size: '42', coatCount: 1, pieces: coat().pieces }];
    const { plan } = edited(
      editEverySize({ ...coat(), sizes }, 'back', (each) => setPieceOrder(each, 'back', rough(12))),
    );
    expect(plan.sizes?.[0]?.pieces[0]?.quiltingOrder).toEqual(rough(12));
  });
});

describe('a panel', () => {
  const panel: QuiltingOrder = { kind: 'panel', marginMm: 30, widthMm: 900, coats: 'each' };
  it('is quilted of all its layers at once, whatever the batting has of its own', () => {
    const own = edited(setSlotOrder(coat(), 'batting', rough(45))).plan;
    expect(orders(edited(setPieceOrder(own, 'back', panel)).plan, 'back')).toMatchObject({
      shell: panel,
      batting: panel,
    });
    const byShell = edited(setSlotOrder(own, 'shell', panel)).plan;
    expect(orders(byShell, 'front')).toMatchObject({ shell: panel, batting: panel, lining: null });
    expect(isOnPanel(byShell, byShell.pieces[0]!)).toBe(true);
    expect(isOnPanel(byShell, byShell.pieces[2]!)).toBe(false);
    // The whole coat a panel, but its shell rough-cut: then its batting cannot be a panel alone.
    const mixed = edited(setSlotOrder(edited(setPlanOrder(coat(), panel)).plan, 'shell', rough(20))).plan;
    expect(orders(mixed, 'back')).toMatchObject({ shell: rough(20), batting: rough(20) });
  });
  it('is chosen at the cloth it is marked on', () => {
    expect(refusal(setSlotOrder(coat(), 'batting', panel))).toContain(
      'The batting lies under the cloth that it is quilted to, and goes with it',
    );
  });
  it('is as wide as a cloth can be, and its edge may be nothing', () => {
    expect(refusal(setPlanOrder(coat(), { ...panel, widthMm: 40 }))).toContain('a panel 40 mm wide');
    expect(refusal(setPlanOrder(coat(), { ...panel, marginMm: 300 }))).toContain('would be cut with 300 mm');
    expect(edited(setPlanOrder(coat(), { ...panel, marginMm: 0, widthMm: null })).said).toBe(
      'Quilted pieces are cut from a panel that is quilted for each coat.',
    );
    expect(edited(setPlanOrder(coat(), { ...panel, coats: 'all' })).said).toContain(
      'cut from one length that is quilted for all coats',
    );
  });
});

describe('what is said of it', () => {
  it('is what the edits say, and stands beside the notes of the plan', () => {
    const { plan, said } = edited(setPlanOrder(coat(), rough(25)));
    expect(said).toBe(
      'Quilted pieces are cut with 25 mm to spare all round, quilted, and recut to the outline.',
    );
    const own = edited(
      setSlotOrder(edited(setPieceOrder(plan, 'front', toOutline)).plan, 'batting', rough(40)),
    );
    expect(own.said).toBe(
      'The batting is cut with 40 mm to spare all round, quilted, and recut to the outline.',
    );
    expect(orderSentences(own.plan)).toEqual([
      said,
      'The batting: cut with 40 mm to spare all round, quilted, and recut to the outline.',
      'Front: cut to the outline, larger by the take-up, and then quilted.',
    ]);
  });
  it('is nothing where nothing is quilted', () => {
    expect(orderSentences(coat({ quilting: null }))).toEqual([]);
    expect(orderSentences(coat({ pieces: [coat().pieces[2]!] }))).toEqual([]);
  });
});

describe('what cannot be', () => {
  it('a spare of nothing, of a metre, or of no number', () => {
    expect(refusal(setPlanOrder(coat(), rough(0)))).toContain('would be cut with 0 mm to spare');
    expect(refusal(setSlotOrder(coat(), 'shell', rough(1000)))).toContain('up to 200 mm');
    expect(refusal(setPieceOrder(coat(), 'back', rough(Number.NaN)))).toContain('not a number');
    const broken = { ...coat(), quilting: { ...coat().quilting!, order: rough(-3) } };
    expect(planProblems(broken)).toHaveLength(1);
  });
  it('an order for what is not quilted', () => {
    expect(refusal(setSlotOrder(coat(), 'lining', rough(25)))).toBe(
      'The lining is not quilted. Choose a layer of the quilt.',
    );
    expect(refusal(setPieceOrder(coat(), 'pocket', rough(25)))).toContain('pocket is not quilted');
    expect(refusal(setPlanOrder(coat({ quilting: null }), rough(25)))).toContain('is not quilted');
    expect(refusal(setSlotOrder(coat(), 'felt', rough(25)))).toContain('is not in the plan');
  });
});
