import { describe, expect, it } from 'vitest';
import { setPlies } from '../../../../shared-core/plan/edits/edit.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import {
  setFillAim,
  setOverfill,
  setSpareFill,
  setStuffed,
} from '../../../../shared-core/plan/model/stuffing.ts';
import { quiltedCoat, smallCoat } from '../../requirement/small-coat.ts';
import { piece, rectangle, slot } from '../../../fixtures/small-workshop.ts';
import { edited, refusal } from '../edit-outcomes.ts';

const done = (outcome: Parameters<typeof edited>[0]) => edited(outcome).plan;

const cutFrom = (coat: ReturnType<typeof quiltedCoat>, id: string) =>
  coat.pieces.find((each) => each.id === id)!.cutFrom.map(({ slotId, plyCount }) => [slotId, plyCount]);

describe('stuffing a piece with loose fill', () => {
  it('takes the place of batting and brings a backing that holds it', () => {
    const outcome = setStuffed(quiltedCoat(), 'back', true);
    const coat = done(outcome);
    expect(cutFrom(coat, 'back')).toEqual([
      ['shell', 1],
      ['fill', 1],
      ['backing', 1],
    ]);
    expect(cutFrom(coat, 'front')).toEqual([
      ['shell', 1],
      ['batting', 1],
    ]);
    expect(
      coat.slots.slice(-2).map(({ name, kind, isQuilted, isSeen }) => [name, kind, isQuilted, isSeen]),
    ).toEqual([
      ['loose fill', 'fill', false, false],
      ['backing', 'cloth', true, false],
    ]);
    expect(outcome.ok && outcome.value.said).toBe(
      'back is stuffed with loose fill in the place of its batting, and cut from backing too, which holds the fill.',
    );
    expect(planProblems(coat)).toEqual([]);
  });
  it('the second piece shares slot and backing with the first', () => {
    const coat = done(setStuffed(done(setStuffed(quiltedCoat(), 'back', true)), 'front', true));
    expect(coat.slots).toHaveLength(quiltedCoat().slots.length + 2);
    expect(cutFrom(coat, 'front')).toEqual(cutFrom(coat, 'back'));
  });
  it('a piece with a lining of its own is quilted through that, and needs no backing', () => {
    const lined = quiltedCoat({
      slots: [...quiltedCoat().slots, slot('lining', 'cloth')],
      pieces: quiltedCoat().pieces.map((each) =>
        each.id === 'back'
          ? { ...each, cutFrom: [...each.cutFrom, { slotId: 'lining', plyCount: 1 }] }
          : each,
      ),
    });
    const { plan: coat, said } = edited(setStuffed(lined, 'back', true));
    expect(cutFrom(coat, 'back')).toEqual([
      ['shell', 1],
      ['lining', 1],
      ['fill', 1],
    ]);
    expect(coat.slots.find(({ id }) => id === 'lining')?.isQuilted).toBe(true);
    expect(said).toBe(
      'back is stuffed with loose fill in the place of its batting, and quilted through its lining, which holds the fill.',
    );
    const shared = lined.pieces.map((each) => ({
      ...each,
      cutFrom: [...each.cutFrom.slice(0, 2), { slotId: 'lining', plyCount: 1 }],
    }));
    expect(cutFrom(done(setStuffed({ ...lined, pieces: shared }, 'back', true)), 'back')).toContainEqual([
      'backing',
      1,
    ]);
  });
  it('a plan whose stuffed piece has lost its backing is not sound', () => {
    const coat = done(setPlies(done(setStuffed(quiltedCoat(), 'back', true)), 'back', 'backing', 0));
    expect(planProblems(coat).map(({ where, what }) => `${where} ${what}`)).toEqual([
      'back is stuffed, but has no backing that holds the fill',
    ]);
  });
  it('a collar without lines is held by any two cloths', () => {
    const collar = piece('collar', rectangle(420, 90), {
      cutFrom: [
        { slotId: 'shell', plyCount: 1 },
        { slotId: 'lining', plyCount: 1 },
      ],
    });
    const coat = smallCoat({
      slots: [
        slot('shell', 'cloth'),
        slot('lining', 'cloth'),
        slot('thread', 'thread'),
        slot('down', 'fill'),
      ],
      pieces: [collar],
      seams: [],
    });
    expect(cutFrom(done(setStuffed(coat, 'collar', true)), 'collar')).toEqual([
      ['shell', 1],
      ['lining', 1],
      ['down', 1],
    ]);
  });
  it('is taken out again, and the backing that held it goes', () => {
    const outcome = setStuffed(done(setStuffed(quiltedCoat(), 'back', true)), 'back', false);
    const coat = done(outcome);
    expect(cutFrom(coat, 'back')).toEqual([['shell', 1]]);
    expect(coat.slots.map(({ id }) => id)).not.toContain('backing');
    expect(outcome.ok && outcome.value.said).toBe(
      'back is not stuffed, and no longer cut from backing, which held the fill. It has no padding now.',
    );
    expect(planProblems(coat)).toEqual([]);
  });
  it('a backing that another piece wants stays in the plan', () => {
    const both = done(setStuffed(done(setStuffed(quiltedCoat(), 'back', true)), 'front', true));
    const coat = done(setStuffed(both, 'back', false));
    expect(coat.slots.map(({ id }) => id)).toContain('backing');
    expect(cutFrom(coat, 'front')).toContainEqual(['backing', 1]);
  });
  it('is refused for a piece of no cloth, and twice', () => {
    const padded = quiltedCoat({
      pieces: [piece('pad', rectangle(90, 60), { cutFrom: [{ slotId: 'batting', plyCount: 1 }] })],
    });
    expect(refusal(setStuffed(padded, 'pad', true))).toContain('is cut from no cloth');
    expect(refusal(setStuffed(done(setStuffed(quiltedCoat(), 'back', true)), 'back', true))).toContain(
      'already',
    );
    expect(refusal(setStuffed(quiltedCoat(), 'nowhere', true))).toContain('is not in the plan');
  });
});

describe('how full a chamber is stuffed', () => {
  it('is the maker’s own, within reason, or the usual again', () => {
    const own = done(setSpareFill(done(setOverfill(quiltedCoat(), 1.35)), 0.08));
    expect([own.overfillFactor, own.spareFillRatio]).toEqual([1.35, 0.08]);
    expect(done(setSpareFill(done(setOverfill(own, null)), null))).toEqual(quiltedCoat());
    expect(refusal(setOverfill(own, 12))).toContain('Overfill is 12');
    expect(refusal(setOverfill(own, Number.NaN))).toContain('not a number');
    expect(refusal(setSpareFill(own, -0.01))).toContain('Spare fill');
  });
  it('is a loft or a weight that the maker asks for, one or the other', () => {
    const byLoft = edited(setFillAim(quiltedCoat(), { kind: 'loft', loftMm: 28 }));
    expect(byLoft.said).toBe('Pieces are stuffed to a loft of 28 mm midway between two lines.');
    const byWeight = edited(setFillAim(byLoft.plan, { kind: 'weight', gPerM2: 120 }));
    expect([byWeight.plan.fillAim, byWeight.said]).toEqual([
      { kind: 'weight', gPerM2: 120 },
      'Pieces are stuffed with 120 g/m².',
    ]);
    expect(planProblems(byWeight.plan)).toEqual([]);
    expect(edited(setFillAim(byWeight.plan, null)).plan).toEqual(quiltedCoat());
    expect(refusal(setFillAim(quiltedCoat(), { kind: 'loft', loftMm: 900 }))).toContain(
      'Loft of the fill is 900 mm. Type 3 mm to 200 mm.',
    );
    expect(refusal(setFillAim(quiltedCoat(), { kind: 'weight', gPerM2: 2 }))).toContain(
      '10 g/m² to 1500 g/m²',
    );
  });
});
