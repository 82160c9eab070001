import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenwalkCoat } from '../../../../shared-core/demo/coat.ts';
import { ringAreaMm2 } from '../../../../shared-core/geometry/ring.ts';
import { type Result, problemSentence } from '../../../../shared-core/measure/problem.ts';
import type { CoatPlan, Piece } from '../../../../shared-core/plan/model/coat-plan.ts';
import {
  bindSlot,
  describePlan,
  removePiece,
  setAllowance,
  setCoatCount,
  setPlies,
  setQuiltingSpacing,
} from '../../../../shared-core/plan/edits/edit.ts';
import type { Edited } from '../../../../shared-core/plan/edits/edited.ts';
import {
  lengthenPiece,
  lengthenPieces,
  piecesSewnAcross,
} from '../../../../shared-core/plan/edits/pieces/lengthen.ts';
import { edgeLengthMm, seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { seamWalk } from '../../../../shared-core/plan/geometry/seam-walk.ts';
import { areaOutside } from '../clipper-referee.ts';
import { pieceOf, vest } from '../vest.ts';

function edited(outcome: Result<Edited>): Edited {
  if (!outcome.ok) throw new Error(outcome.problems.map(problemSentence).join(' '));
  return outcome.value;
}

function refusal(outcome: Result<Edited>): string {
  if (outcome.ok) throw new Error(`was not refused: ${outcome.value.said}`);
  return outcome.problems.map(problemSentence).join(' ');
}

const coat = fenwalkCoat({});
const body = ['back', 'front', 'front-facing', 'front-lining', 'back-lining'];
const area = (piece: Piece) => ringAreaMm2(seamRing(piece.outline));

describe('lengthening', () => {
  it('a vest back by 40 mm at the lower third grows by 40 mm across its width and says so', () => {
    const { plan, said } = edited(lengthenPieces(vest(), ['back', 'front'], 40));
    expect(said).toBe(
      'Back and Front lengthened by 40 mm at the lower third. The seam Front edge no longer fits.',
    );
    expect(area(pieceOf(plan, 'back')) - area(pieceOf(vest(), 'back'))).toBeCloseTo(40 * 255, 6);
    expect(edgeLengthMm(pieceOf(plan, 'back').outline, 'side')).toBeCloseTo(470, 6);
    expect(pieceOf(plan, 'back').outline.edges[1]).toEqual(pieceOf(vest(), 'back').outline.edges[1]);
  });

  it('the back alone leaves the side seam unfitting, and says so', () => {
    expect(edited(lengthenPiece(vest(), 'back', 25, 310)).said).toBe(
      'Back lengthened by 25 mm at the middle. The seam Side no longer fits.',
    );
  });

  it('notches stay with what they mark', () => {
    const back = pieceOf(edited(lengthenPiece(vest(), 'back', 30, 200)).plan, 'back');
    // The side runs down from the armhole: 90 is above the line, 400 below it. The fold runs up: 500 is above.
    expect(back.notches).toEqual([
      { edge: 'side', atMm: 90 },
      { edge: 'side', atMm: 430 },
      { edge: 'centre back', atMm: 530 },
    ]);
  });

  it('a coat’s body is front, back, facing and linings together, found from one of them', () => {
    expect(piecesSewnAcross(coat, 'back', 350).toSorted()).toEqual(body.toSorted());
    expect(piecesSewnAcross(coat, 'under-sleeve', 200)).toEqual(['under-sleeve', 'top-sleeve']);
  });

  const byMm = fc.integer({ min: 1, max: 180 });
  const aboveHemMm = fc.integer({ min: 200, max: 700 });

  it('all of a coat’s body together keeps every seam fitting, longer or shorter', () => {
    fc.assert(
      fc.property(byMm, fc.boolean(), aboveHemMm, (mm, longer, up) => {
        const { plan } = edited(lengthenPieces(coat, body, longer ? mm : -mm, up));
        expect(seamWalk(plan).filter((report) => !report.fits)).toEqual([]);
        expect(planProblems(plan)).toEqual([]);
      }),
      { numRuns: 40, seed: 1889 },
    );
  });

  it('and shortening again restores the coat', () => {
    fc.assert(
      fc.property(byMm, aboveHemMm, (mm, up) => {
        const longer = edited(lengthenPieces(coat, body, mm, up)).plan;
        const back = edited(lengthenPieces(longer, body, -mm, up + mm)).plan;
        for (const id of body) {
          const was = pieceOf(coat, id);
          const is = pieceOf(back, id);
          expect(areaOutside(seamRing(was.outline), seamRing(is.outline))).toBeLessThan(0.5);
          expect(areaOutside(seamRing(is.outline), seamRing(was.outline))).toBeLessThan(0.5);
          expect(is.notches.map((notch) => notch.atMm.toFixed(6))).toEqual(
            was.notches.map((notch) => notch.atMm.toFixed(6)),
          );
        }
      }),
      { numRuns: 40, seed: 1889 },
    );
  });

  it('grows a piece by the length times a width between its narrowest and its hem', () => {
    fc.assert(
      fc.property(byMm, aboveHemMm, (mm, up) => {
        const longer = pieceOf(edited(lengthenPieces(coat, ['front'], mm, up)).plan, 'front');
        const grown = area(longer) - area(pieceOf(coat, 'front'));
        // Front: 299 wide at the underarm, 290 at the waist, 360 at the hem.
        expect(grown).toBeGreaterThan(mm * 290 - 60);
        expect(grown).toBeLessThan(mm * 361);
      }),
      { numRuns: 60, seed: 1889 },
    );
  });

  it('leaves no corner where the line crosses a curve', () => {
    const front = pieceOf(edited(lengthenPieces(coat, ['front'], 60, 350)).plan, 'front');
    const side = front.outline.edges.find((edge) => edge.name === 'side')!;
    const [upper, lower] = side.segments;
    if (upper?.kind !== 'cubic' || lower?.kind !== 'cubic')
      throw new Error('the side is drawn in two curves');
    const before = Math.atan2(upper.to.y - upper.control2.y, upper.to.x - upper.control2.x);
    const after = Math.atan2(lower.control1.y - upper.to.y, lower.control1.x - upper.to.x);
    expect(after).toBeCloseTo(before, 9);
  });

  it('shortening takes out the band below the line, and what ended in it ends on the line', () => {
    const back = pieceOf(edited(lengthenPiece(vest(), 'back', -60, 450)).plan, 'back');
    const ends = back.outline.edges.map((edge) => edge.segments[0]!.to.x);
    expect(ends).toEqual([600, 620, 560, 450, 60, 60]);
    // 340 and 30 above the hem as drawn; the side itself starts 20 higher now.
    expect(back.notches.map((notch) => notch.atMm)).toEqual([50, 360, 440]);
  });

  it.each([0, Number.NaN, 2500])('by %s mm is refused', (mm) => {
    expect(refusal(lengthenPiece(vest(), 'back', mm))).toContain('Length to add is');
  });

  it('at a line outside the piece is refused', () => {
    expect(refusal(lengthenPiece(vest(), 'back', 20, 700))).toContain('does not cross Back');
    expect(refusal(lengthenPieces(vest(), ['back', 'yoke'], 20))).toContain(
      'The piece yoke is not in the plan',
    );
  });

  it('shortening by more than lies below the line is refused and changes nothing', () => {
    const plan = vest();
    expect(refusal(lengthenPieces(plan, ['back'], -210, 200))).toContain(
      'Back has only 200 mm below the line',
    );
    expect(plan).toEqual(vest());
  });
});

describe('plies, slots and numbers', () => {
  it('the front gets a second layer of batting', () => {
    const { plan, said } = edited(setPlies(vest(), 'front', 'batting', 2));
    expect(said).toBe('Front is cut from batting in 2 plies.');
    expect(pieceOf(plan, 'front').cutFrom).toEqual([
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 2 },
    ]);
  });

  it('the lining gets batting that it had not, and loses it again', () => {
    const { plan } = edited(setPlies(vest(), 'front-lining', 'batting', 1));
    expect(pieceOf(plan, 'front-lining').cutFrom).toEqual([
      { slotId: 'lining', plyCount: 1 },
      { slotId: 'batting', plyCount: 1 },
    ]);
    expect(edited(setPlies(plan, 'front-lining', 'batting', 0)).plan).toEqual(vest());
  });

  it('plies of thread, minus plies and missing pieces are refused', () => {
    expect(refusal(setPlies(vest(), 'front', 'thread', 1))).toContain('thread is neither cloth nor batting');
    expect(refusal(setPlies(vest(), 'front', 'shell', -1))).toContain('Plies of Front in shell are -1');
    expect(refusal(setPlies(vest(), 'yoke', 'shell', 1))).toContain('The piece yoke is not in the plan');
  });

  it('eleven coats instead of three', () => {
    expect(edited(setCoatCount(vest(), 11))).toEqual({
      plan: { ...vest(), coatCount: 11 },
      said: '11 coats.',
    });
    expect(refusal(setCoatCount(vest(), 0))).toContain('Number of coats is 0');
  });

  it('a slot is filled and emptied', () => {
    const { plan, said } = edited(bindSlot(vest(), 'shell', 'item-7', 'Peatwater nylon'));
    expect(said).toBe('Shell is now Peatwater nylon.');
    expect(plan.slots[0]!.itemId).toBe('item-7');
    expect(edited(bindSlot(plan, 'shell', null))).toEqual({
      plan: vest(),
      said: 'Shell is still to be chosen.',
    });
  });

  it('a plan gets another name, size and notes, but never no name', () => {
    const head = { name: ' Furrow vest ', size: ' 46 long', notes: vest().notes };
    const { plan, said } = edited(describePlan(vest(), head));
    expect(plan).toEqual({ ...vest(), name: 'Furrow vest', size: '46 long' });
    expect(said).toBe(`${vest().name} is now called Furrow vest. Its size is now 46 long.`);
    expect(edited(describePlan(vest(), { ...vest(), notes: 'Sew the welt first.' })).said).toBe(
      'Its notes were changed.',
    );
    expect(edited(describePlan(vest(), vest())).plan).toEqual(vest());
    expect(refusal(describePlan(vest(), { ...head, name: '   ' }))).toContain('Name of the plan is missing');
  });

  it('a size beside others keeps a name of its own', () => {
    const two = { ...vest(), size: '44', sizes: [{ size: '48', coatCount: 2, pieces: vest().pieces }] };
    expect(refusal(describePlan(two, { ...two, size: '48' }))).toContain('Size 48 is in the plan already');
    expect(refusal(describePlan(two, { ...two, size: ' ' }))).toContain('Size of the plan is missing');
    expect(edited(describePlan(two, { ...two, size: '46' })).plan.size).toBe('46');
  });

  it('a removed piece leaves nothing that refers to it', () => {
    const { plan, said } = edited(removePiece(vest(), 'front'));
    expect(said).toBe('Front removed.');
    expect(planProblems(plan)).toEqual([]);
    expect(plan.slots.find((slot) => slot.id === 'zip')!.alongEdges).toEqual([]);
    const onePiece = { ...vest(), pieces: [pieceOf(vest(), 'back')] } as CoatPlan;
    expect(refusal(removePiece(onePiece, 'back'))).toContain('Back is the last piece of the plan');
  });

  it('the hem of the front gets 52 mm, and no other edge', () => {
    const { plan, said } = edited(setAllowance(vest(), 'front', 'hem', 52));
    expect(said).toBe('Allowance at hem of Front is now 52 mm.');
    expect(pieceOf(plan, 'front').outline.edges.map((edge) => edge.allowanceMm)).toEqual([
      12, 9, 15, 10, 16, 52,
    ]);
    expect(refusal(setAllowance(vest(), 'front', 'hem', -1))).toContain(
      'Seam allowance at hem of Front is negative',
    );
    expect(refusal(setAllowance(vest(), 'back', 'centre back', 9))).toContain('lies on the fold');
    expect(refusal(setAllowance(vest(), 'front', 'yoke', 9))).toContain('Edge yoke is not on Front');
  });

  it('quilting lines move together, and a rise that cannot be between them is forgotten', () => {
    expect(edited(setQuiltingSpacing(vest(), 45)).plan.quilting).toMatchObject({
      spacingMm: 45,
      measures: [{ riseMm: 7 }],
    });
    const { plan, said } = edited(setQuiltingSpacing(vest(), 12));
    expect(plan.quilting).toEqual({
      spacingMm: 12,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'thread',
    });
    expect(said).toContain('no longer holds');
    expect(refusal(setQuiltingSpacing(vest(), 2))).toContain('Distance of the quilting lines is too small');
    expect(refusal(setQuiltingSpacing({ ...vest(), quilting: null }, 60))).toContain(
      'Harrow vest is not quilted',
    );
  });
});
