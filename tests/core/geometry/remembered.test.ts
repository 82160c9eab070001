import { describe, expect, test } from 'vitest';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { remembered } from '../../../shared-core/geometry/remembered.ts';
import { cutRing } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { meetingReport } from '../../../shared-core/quilting/meeting.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';

describe('what is remembered of an object', () => {
  test('is worked out once for each way of asking, and anew for another object', () => {
    let count = 0;
    const lengthMm = remembered((edge: { readonly mm: number }, words: string, times: number) => {
      count += 1;
      return `${edge.mm * times} ${words}`;
    });
    const edge = { mm: 7 };
    expect([lengthMm(edge, 'a', 2), lengthMm(edge, 'a', 2), lengthMm(edge, 'a', 3)]).toEqual([
      '14 a',
      '14 a',
      '21 a',
    ]);
    expect(count).toBe(2);
    expect(lengthMm({ mm: 7 }, 'a', 2)).toBe('14 a');
    expect(count).toBe(3);
  });

  test('may be nothing', () => {
    let count = 0;
    const nothing = remembered((_: object) => {
      count += 1;
      return undefined;
    });
    const of = {};
    nothing(of);
    nothing(of);
    expect(count).toBe(1);
  });

  test('is not kept where it could not be worked out', () => {
    let fails = true;
    const once = remembered((_: object) => {
      if (fails) throw new RangeError('no inside');
      return 'a ring';
    });
    const of = {};
    expect(() => once(of)).toThrow('no inside');
    fails = false;
    expect(once(of)).toBe('a ring');
  });
});

/** All that is worked out from the outlines of a plan. */
const allOf = (plan: CoatPlan) => ({
  cut: plan.pieces.map((piece) => cutRing(piece.outline, piece.foldEdge)),
  seams: seamWalk(plan),
  quilting: quiltingMap(plan),
  meetings: meetingReport(plan),
  needs: requirement(plan, new Map()),
});

test('every room that reads the geometry of a coat leaves it as it was: a coat read twice is a coat copied and read', () => {
  for (const plan of demoWorkshop().plans) {
    const read = allOf(plan);
    expect(allOf(plan)).toEqual(read);
    expect(allOf(structuredClone(plan))).toEqual(read);
  }
});

test('a piece that is changed is worked out anew, and the others are not', () => {
  const [plan] = demoWorkshop().plans;
  const [first, second] = plan!.pieces;
  const ring = cutRing(first!.outline, first!.foldEdge);
  const wider = {
    ...first!.outline,
    edges: first!.outline.edges.map((edge) => ({ ...edge, allowanceMm: edge.allowanceMm + 5 })),
  };
  expect(cutRing(wider, first!.foldEdge)).not.toEqual(ring);
  expect(cutRing(first!.outline, first!.foldEdge)).toBe(ring);
  expect(cutRing(second!.outline, second!.foldEdge)).toBe(cutRing(second!.outline, second!.foldEdge));
});
