import { describe, expect, it } from 'vitest';
import { planProblems } from '../../../shared-core/plan/plan-problems.ts';
import { setBasting, setSeamStitches } from '../../../shared-core/plan/stitches.ts';
import { slot } from '../../fixtures/small-workshop.ts';
import { sideSeam, smallCoat } from '../requirement/small-coat.ts';
import { edited, refusal } from './edit-outcomes.ts';

const coat = smallCoat({ slots: [...smallCoat().slots, slot('silk', 'thread')] });

describe('how a seam is sewn', () => {
  it('is changed in part, the rest stays', () => {
    const { plan, said } = edited(
      setSeamStitches(coat, 'side seam', { stitch: '516', topstitchRowCount: 2 }),
    );
    expect(plan.seams).toEqual([{ ...sideSeam, stitch: '516', topstitchRowCount: 2 }]);
    expect(said).toBe('Side: stitch 516, 2 rows of topstitching.');
    const other = edited(setSeamStitches(plan, 'side seam', { overcast: '503', threadSlotId: 'silk' }));
    expect(other.plan.seams[0]).toMatchObject({ stitch: '516', overcast: '503', threadSlotId: 'silk' });
  });
  it('is refused for half a row, a cloth as thread and a seam that is not there', () => {
    expect(refusal(setSeamStitches(coat, 'side seam', { topstitchRowCount: 1.5 }))).toContain('are 1.5');
    expect(refusal(setSeamStitches(coat, 'side seam', { threadSlotId: 'shell' }))).toContain('is no thread');
    expect(refusal(setSeamStitches(coat, 'hem', { stitch: '401' }))).toContain('is not in the plan');
  });
});

describe('basting', () => {
  it('is done with a thread of the plan, or not at all', () => {
    const { plan } = edited(setBasting(coat, 'silk'));
    expect(plan.bastingThreadSlotId).toBe('silk');
    expect(planProblems(plan)).toEqual([]);
    expect(edited(setBasting(plan, null)).plan).toEqual(coat);
    expect(refusal(setBasting(coat, 'shell'))).toContain('Thread for basting is no thread');
    expect(planProblems({ ...coat, bastingThreadSlotId: 'gone' }).map(({ where }) => where)).toEqual([
      'Thread for basting',
    ]);
  });
});
