import { describe, expect, it } from 'vitest';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import {
  setBasting,
  setLiningOvercast,
  setSeamStitches,
} from '../../../../shared-core/plan/edits/stitches.ts';
import { slot } from '../../../fixtures/small-workshop.ts';
import { back, front, sideSeam, smallCoat } from '../../requirement/small-coat.ts';
import { edited, refusal } from '../edit-outcomes.ts';

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
  it('has a stitch length of its own, or the usual one again', () => {
    const { plan, said } = edited(setSeamStitches(coat, 'side seam', { stitchLengthMm: 2.2 }));
    expect([plan.seams[0], said]).toEqual([
      { ...sideSeam, stitchLengthMm: 2.2 },
      'Side: stitch 301, 2.2 mm long.',
    ]);
    expect(planProblems(plan)).toEqual([]);
    expect(edited(setSeamStitches(plan, 'side seam', { stitch: '401' })).plan.seams[0]).toMatchObject({
      stitch: '401',
      stitchLengthMm: 2.2,
    });
    expect(edited(setSeamStitches(plan, 'side seam', { stitchLengthMm: null })).plan).toEqual(coat);
    expect(refusal(setSeamStitches(coat, 'side seam', { stitchLengthMm: 0.2 }))).toContain(
      'Stitch length of Side is no length of a stitch',
    );
    expect(planProblems({ ...coat, seams: [{ ...sideSeam, stitchLengthMm: 60 }] })[0]?.where).toBe(
      'Stitch length of Side',
    );
  });
});

describe('raw edges of a lining', () => {
  const lining = [{ slotId: 'lining', plyCount: 1 }];
  const lined = smallCoat({
    slots: [...smallCoat().slots, slot('lining', 'cloth')],
    pieces: [
      ...smallCoat().pieces,
      { ...inLining(back()), cutFrom: lining },
      { ...inLining(front()), cutFrom: lining },
    ],
    seams: [sideSeam, { ...sideSeam, id: 'lining side', label: 'Lining side' }],
  });
  it('are overcast all at once, and the shell stays as it is', () => {
    const { plan, said } = edited(setLiningOvercast(lined, '504'));
    expect(plan.seams.map(({ overcast }) => overcast)).toEqual([null, '504']);
    expect(said).toBe('Raw edges of the lining are overcast 504.');
    expect(edited(setLiningOvercast(plan, null)).plan).toEqual(lined);
  });
  it('are none where nothing is lined', () => {
    expect(refusal(setLiningOvercast(coat, '504'))).toContain('has no seam in a lining');
  });
});

function inLining(piece: ReturnType<typeof back>): ReturnType<typeof back> {
  const edges = piece.outline.edges.map((edge) =>
    edge.seam === null ? edge : { ...edge, seam: 'lining side' },
  );
  return { ...piece, id: `${piece.id} lining`, outline: { ...piece.outline, edges } };
}

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
