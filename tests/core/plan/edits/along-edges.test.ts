import { describe, expect, it } from 'vitest';
import { setAlong } from '../../../../shared-core/plan/edits/along-edges.ts';
import { slotById } from '../../../../shared-core/plan/model/coat-plan.ts';
import { slot } from '../../../fixtures/small-workshop.ts';
import { smallCoat } from '../../requirement/small-coat.ts';
import { edited, refusal } from '../edit-outcomes.ts';

const coat = smallCoat({ slots: [...smallCoat().slots, slot('cord', 'fastening')] });
const hem = [{ pieceId: 'front', edge: 'hem' }];

describe('what a fastening runs along', () => {
  it('is kept with how it ends', () => {
    const { plan, said } = edited(
      setAlong(coat, 'cord', { edges: hem, isEveryCopy: true, shorterByMm: -240, lengthRatio: 1 }),
    );
    expect(slotById(plan, 'cord')).toMatchObject({
      alongEdges: hem,
      alongEveryCopy: true,
      shorterByMm: -240,
    });
    expect(said).toBe('Cord runs along the edges that you chose.');
  });
  it('may be nothing again', () => {
    const { plan } = edited(
      setAlong(coat, 'cord', { edges: hem, isEveryCopy: true, shorterByMm: 60, lengthRatio: 0.85 }),
    );
    expect(slotById(plan, 'cord').lengthRatio).toBe(0.85);
    expect(
      edited(setAlong(plan, 'cord', { edges: [], isEveryCopy: true, shorterByMm: 60, lengthRatio: 0.85 }))
        .plan,
    ).toEqual(coat);
  });
  it('is refused for a thread, an edge that is not there and a cord as long as a house', () => {
    const along = { edges: hem, isEveryCopy: false, shorterByMm: 0, lengthRatio: 1 };
    expect(refusal(setAlong(coat, 'thread', along))).toContain('is no fastening');
    expect(
      refusal(setAlong(coat, 'cord', { ...along, edges: [{ pieceId: 'front', edge: 'cuff' }] })),
    ).toContain('along cuff, which is no edge of the plan');
    expect(refusal(setAlong(coat, 'cord', { ...along, shorterByMm: -9000 }))).toContain('up to 5 m');
    expect(refusal(setAlong(coat, 'cord', { ...along, lengthRatio: 0.1 }))).toContain(
      '70 to 90 % for elastic',
    );
  });
});
