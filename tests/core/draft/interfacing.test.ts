import { describe, expect, it } from 'vitest';
import { draftCoat } from '../../../shared-core/draft/draft.ts';
import type { DraftInput } from '../../../shared-core/draft/draft-input.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { type CoatPlan, pieceById } from '../../../shared-core/plan/model/coat-plan.ts';
import { edgeLengthMm } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { clothLot, item, layHere, onShelf } from '../../fixtures/small-workshop.ts';
import { coat } from './bodies.ts';

function planOf(input: DraftInput): CoatPlan {
  const outcome = draftCoat(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value.plan;
}

describe('a drafted coat', () => {
  it('interfaces facings, collar and placket and stays the fronts, from a cloth of its own, or not at all', () => {
    const interfaced = (input: DraftInput) =>
      planOf(input).pieces.flatMap(({ id, cutFrom, cutCount }) =>
        cutFrom.some(({ slotId }) => slotId === 'interfacing') ? [[id, cutCount]] : [],
      );
    expect(interfaced(coat('women'))).toEqual([
      ['front-facing', 2],
      ['back-neck-facing', 1],
      ['collar-facing', 1],
      ['placket', 1],
      ['front-stay', 2],
    ]);
    const plan = planOf(coat('women'));
    expect(plan.slots.find(({ id }) => id === 'interfacing')).toMatchObject({ kind: 'cloth', isSeen: false });
    expect(pieceById(plan, 'front-stay').name).toBe('Stay along the zip');
    const frontEdgeMm = (id: string) => edgeLengthMm(pieceById(plan, id).outline, 'front edge');
    expect(frontEdgeMm('front-stay')).toBeCloseTo(frontEdgeMm('front'), 6);
    const plain = coat('women', { hasInterfacing: false });
    expect([interfaced(plain), planOf(plain).slots.some(({ id }) => id === 'interfacing')]).toEqual([
      [],
      false,
    ]);
  });

  it('needs, lays, covers and costs its interfacing like any cloth', async () => {
    const whole = planOf(coat('women'));
    const stiff = whole.pieces.filter(({ cutFrom }) =>
      cutFrom.some(({ slotId }) => slotId === 'interfacing'),
    );
    const plan: CoatPlan = {
      ...whole,
      slots: whole.slots
        .filter(({ id }) => id === 'interfacing')
        .map((slot) => ({ ...slot, itemId: 'muslin' })),
      pieces: stiff.map((piece) => ({
        ...piece,
        cutFrom: [{ slotId: 'interfacing', plyCount: 1 }],
        quilted: null,
      })),
      seams: [],
      quilting: null,
    };
    const muslin = item('cloth', 'muslin', { widthMm: 900, arealMassGPerM2: 70 });
    const shelf = [onShelf(muslin, clothLot('muslin', 'roll', 900, [3000], 1500))];
    const found = await estimate({ plan, shelf, offers: [], suppliers: [] }, layHere, solveHere);
    const [need] = found.requirement;
    expect(need?.kind === 'shapes' && need.shapes.map(({ pieceId }) => pieceId)).toEqual(
      stiff.map(({ id }) => id),
    );
    expect(found.lays.map(({ result }) => result.unplaced)).toEqual([[]]);
    expect(found.cover.map(({ state }) => state)).toEqual(['covered']);
    expect(found.cost.lines[0]?.costMinor).toBeGreaterThan(300);
    expect(found.cost.lines[0]?.costMinor).toBeLessThan(1500);
    expect(found.finished.coats[0]?.massG).toBeGreaterThan(10);
    // Held in the coat's shape and in no line of its label.
    expect(found.finished.coats[0]?.label.lines).toEqual([]);
  });
});
