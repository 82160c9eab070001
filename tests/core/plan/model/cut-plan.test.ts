import { describe, expect, it } from 'vitest';
import { planOfCoats } from '../../../../shared-core/plan/model/cut-plan.ts';
import { piece, plan, rectangle } from '../../../fixtures/small-workshop.ts';

const larger = { size: '44', coatCount: 3, pieces: [piece('panel', rectangle(830, 500))] };

describe('the plan as far as it was cut', () => {
  it('makes as many coats of each size as are on the table', () => {
    const cut = planOfCoats(plan({ coatCount: 6, sizes: [larger] }), [
      { size: '44', coatCount: 2 },
      { size: '40', coatCount: 1 },
    ]);
    expect([cut?.size, cut?.coatCount, cut?.sizes?.[0]?.coatCount]).toEqual(['40', 1, 2]);
  });

  it('brings a size to hand where none of the size at hand was cut', () => {
    const cut = planOfCoats(plan({ coatCount: 6, sizes: [larger] }), [{ size: '44', coatCount: 2 }]);
    expect([cut?.size, cut?.coatCount, cut?.pieces, cut && 'sizes' in cut]).toEqual([
      '44',
      2,
      larger.pieces,
      false,
    ]);
  });

  it('is none where nothing was cut', () => {
    expect(planOfCoats(plan(), [{ size: '40', coatCount: 0 }])).toBeNull();
  });
});
