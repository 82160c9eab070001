import { describe, expect, it } from 'vitest';
import { type Problem, problemSentence } from '../../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { measured } from '../../../fixtures/small-workshop.ts';
import { vest, withEdgeChanged, withPieceChanged } from '../vest.ts';

/** The one problem of a plan, as a sentence. */
function onlySentence(plan: CoatPlan): string {
  const problems = planProblems(plan);
  expect(problems.map(problemSentence)).toHaveLength(1);
  return problemSentence(problems[0] as Problem);
}

const line = (x: number, y: number) => ({ kind: 'line', to: { x, y } }) as const;

describe('a plan that is well', () => {
  it('has no problems', () => {
    expect(planProblems(vest())).toEqual([]);
  });
});

describe('a piece', () => {
  it('that does not close says by how much', () => {
    const open = withEdgeChanged(vest(), 'front', 'hem', (edge) => ({ ...edge, segments: [line(0, 3.5)] }));
    expect(onlySentence(open)).toBe(
      'Outline of Front is open: its end lies 3.5 mm from its start. End the last edge where the first begins.',
    );
  });

  it('that crosses itself says where', () => {
    const crossing = withEdgeChanged(vest(), 'front', 'armhole', (edge) => ({
      ...edge,
      segments: [line(300, -40), line(430, 240)],
    }));
    expect(onlySentence(crossing)).toMatch(
      /^Outline of Front crosses or touches itself: front edge meets armhole\./,
    );
  });

  it('drawn clockwise is told to turn round', () => {
    const clockwise = withPieceChanged(vest(), 'front-lining', (piece) => ({
      ...piece,
      outline: {
        ...piece.outline,
        start: { x: 0, y: 0 },
        edges: [
          [0, 240],
          [430, 240],
          [560, 170],
          [620, 90],
          [560, 0],
          [0, 0],
        ].map(([x, y], i) => ({ ...piece.outline.edges[i]!, segments: [line(x!, y!)] })),
      },
    }));
    expect(onlySentence(clockwise)).toContain('Outline of Front lining runs clockwise');
  });

  it('with a number that is none names the edge', () => {
    const broken = withEdgeChanged(vest(), 'back', 'side', (edge) => ({
      ...edge,
      segments: [line(0, Number.NaN)],
    }));
    expect(onlySentence(broken)).toBe('Edge side of Back is not a number. Type it again.');
  });

  it('six metres long is hardly true', () => {
    const huge = withPieceChanged(vest(), 'front', (piece) => ({
      ...piece,
      outline: {
        start: { x: 0, y: 0 },
        edges: [
          [6100, 0],
          [6100, 80],
          [3000, 80],
          [2000, 80],
          [0, 80],
          [0, 0],
        ].map(([x, y], i) => ({ ...piece.outline.edges[i]!, segments: [line(x!, y!)] })),
      },
    }));
    expect(onlySentence(huge)).toContain('Outline of Front is 6.10 m long or wide');
  });

  it('cut in mirrored pairs is not cut three times', () => {
    const odd = withPieceChanged(vest(), 'front', (piece) => ({ ...piece, cutCount: 3 }));
    expect(onlySentence(odd)).toBe(
      'Number of Front to cut is 3, odd for a piece cut in mirrored pairs. Make it even, or cut the piece without mirroring.',
    );
  });

  it.each([0, -2, 1.5, Number.NaN, 2000])('is not cut %s times', (cutCount) => {
    expect(onlySentence(withPieceChanged(vest(), 'back', (piece) => ({ ...piece, cutCount })))).toContain(
      `Number of Back to cut is ${cutCount}`,
    );
  });

  it('is not laid to a curved fold', () => {
    const curved = withEdgeChanged(vest(), 'back', 'centre back', (edge) => ({
      ...edge,
      segments: [
        { kind: 'cubic', control1: { x: 200, y: -8 }, control2: { x: 400, y: -8 }, to: { x: 600, y: 0 } },
      ],
    }));
    expect(onlySentence(withPieceChanged(curved, 'back', (piece) => ({ ...piece, notches: [] })))).toContain(
      'Fold of Back lies along centre back, which is not one straight line',
    );
  });

  it('is not laid to a fold that it has not', () => {
    expect(
      onlySentence(withPieceChanged(vest(), 'back', (piece) => ({ ...piece, foldEdge: 'middle' }))),
    ).toContain('Fold of Back is to lie along middle, which is no edge of it');
  });

  it('does not reach over its fold', () => {
    const over = withEdgeChanged(vest(), 'back', 'neckline', (edge) => ({
      ...edge,
      segments: [line(640, -20), line(620, 90)],
    }));
    expect(onlySentence(over)).toContain('Fold of Back is crossed by the piece');
  });

  it('with a negative allowance says at which edge', () => {
    expect(
      onlySentence(withEdgeChanged(vest(), 'front', 'side', (edge) => ({ ...edge, allowanceMm: -4 }))),
    ).toBe('Seam allowance at side of Front is negative. Type 0 or more.');
  });

  it('with two edges of one name cannot be sewn', () => {
    expect(
      planProblems(
        withEdgeChanged(vest(), 'front-lining', 'armhole', (edge) => ({ ...edge, name: 'side' })),
      ).map(problemSentence)[0],
    ).toContain('Edge side of Front lining comes twice');
  });

  it('has its notches on its edges', () => {
    expect(
      onlySentence(
        withPieceChanged(vest(), 'back', (piece) => ({ ...piece, notches: [{ edge: 'side', atMm: 431 }] })),
      ),
    ).toContain('A notch of Back lies beyond the ends of side');
    expect(
      onlySentence(
        withPieceChanged(vest(), 'back', (piece) => ({ ...piece, notches: [{ edge: 'yoke', atMm: 1 }] })),
      ),
    ).toContain('A notch of Back lies on yoke');
  });

  it('is not cut in minus one ply, nor from thread, nor from a slot that is gone', () => {
    const cutFrom = (slotId: string, plyCount: number) =>
      onlySentence(
        withPieceChanged(vest(), 'front', (piece) => ({ ...piece, cutFrom: [{ slotId, plyCount }] })),
      );
    expect(cutFrom('shell', -1)).toContain('Plies of Front in shell are -1');
    expect(cutFrom('shell', 0.5)).toContain('Plies of Front in shell are 0.5');
    expect(cutFrom('thread', 1)).toContain(
      'What Front is cut from is thread, which is neither cloth, batting nor fill',
    );
    expect(cutFrom('felt', 1)).toContain('What Front is cut from is a slot that is not in the plan: felt');
  });

  it('is not sewn in a seam that is gone', () => {
    expect(
      onlySentence({
        ...vest(),
        seams: vest().seams.filter((seam) => seam.id !== 'front edge'),
        pieces: vest().pieces.slice(0, 2),
      }),
    ).toContain('Edge front edge of Front is sewn in a seam that is not in the plan');
  });
});

describe('the plan itself', () => {
  it.each([0, 1001, 2.5, Number.NaN])('does not make %s coats', (coatCount) => {
    expect(onlySentence({ ...vest(), coatCount })).toBe(
      `Number of coats is ${coatCount}. Type a whole number from 1 to 1000.`,
    );
  });

  it.each([1, 1000])('makes %s coats', (coatCount) => {
    expect(planProblems({ ...vest(), coatCount })).toEqual([]);
  });

  it('has a name', () => {
    expect(onlySentence({ ...vest(), name: '  ' })).toContain('Name of the plan is missing');
  });

  it('has no two pieces or slots of one name', () => {
    expect(
      onlySentence(withPieceChanged(vest(), 'front-lining', (piece) => ({ ...piece, name: 'front ' }))),
    ).toContain('The piece front  has the name of another');
    expect(
      onlySentence({
        ...vest(),
        slots: vest().slots.map((slot) => (slot.id === 'lining' ? { ...slot, name: 'Shell' } : slot)),
      }),
    ).toContain('The slot Shell has the name of another');
  });

  it('has no two pieces of one id', () => {
    expect(
      onlySentence(withPieceChanged(vest(), 'front-lining', (piece) => ({ ...piece, id: 'front' }))),
    ).toContain('The piece Front lining has the mark front of another piece');
  });

  it('runs a zip along edges that are there', () => {
    const zip = (pieceId: string, edge: string) => ({
      ...vest(),
      slots: vest().slots.map((slot) =>
        slot.id === 'zip' ? { ...slot, alongEdges: [{ pieceId, edge }] } : slot,
      ),
    });
    expect(onlySentence(zip('front', 'placket'))).toContain(
      'zip runs along placket, which is no edge of Front',
    );
    expect(onlySentence(zip('yoke', 'hem'))).toContain(
      'zip runs along a piece that is not in the plan: yoke',
    );
  });

  it('sews with thread', () => {
    expect(
      onlySentence({
        ...vest(),
        seams: vest().seams.map((seam) => (seam.id === 'side' ? { ...seam, threadSlotId: 'zip' } : seam)),
      }),
    ).toContain('Thread of Side is zip, which is no thread');
  });

  it('states sides of a seam by edges that are sewn in it', () => {
    const firstSide = [{ pieceId: 'back', edge: 'armhole' }];
    expect(
      onlySentence({
        ...vest(),
        seams: vest().seams.map((seam) => (seam.id === 'side' ? { ...seam, firstSide } : seam)),
      }),
    ).toContain('First side of Side names armhole, which is not sewn in it');
  });

  it('quilts at a distance that can be', () => {
    const quilting = (change: object) => ({ ...vest(), quilting: { ...vest().quilting!, ...change } });
    expect(onlySentence(quilting({ spacingMm: 0 }))).toContain('Distance of the quilting lines is too small');
    expect(onlySentence(quilting(measured(31, 2, { spacingMm: 60 })))).toContain(
      'Rise of the quilting is too large',
    );
    expect(onlySentence(quilting(measured(3, 2, { overLinesRatio: 1.2 })))).toContain(
      'Take-up of 2 layers of batting over the lines is too large',
    );
    const twice = [...measured(3, 2).measures, ...measured(4, 2).measures];
    expect(onlySentence(quilting({ measures: twice }))).toContain('are in the plan twice');
    expect(onlySentence(quilting({ threadSlotId: 'shell' }))).toContain(
      'Thread of the quilting is shell, which is no thread',
    );
  });

  it('tells every problem at once', () => {
    const many = withPieceChanged({ ...vest(), coatCount: 0 }, 'back', (piece) => ({
      ...piece,
      cutCount: 0,
    }));
    expect(planProblems(many)).toHaveLength(2);
  });
});
