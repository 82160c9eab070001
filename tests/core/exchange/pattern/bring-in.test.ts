import { describe, expect, it } from 'vitest';
import {
  bringIn,
  type BroughtPiece,
  matchedEdges,
} from '../../../../shared-core/exchange/pattern/bring-in.ts';
import { write as writeDxf } from '../../../../shared-core/exchange/dxf/dxf-write.ts';
import { fenwalkCoat } from '../../../../shared-core/demo/coat.ts';
import { lengthenPieces } from '../../../../shared-core/plan/edits/pieces/lengthen.ts';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { pieceById } from '../../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { seamWalk } from '../../../../shared-core/plan/geometry/seam-walk.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { line, metric, onlyPiece, patternText, polyline, wellRead, words } from '../dxf-text.ts';

const coat = fenwalkCoat({});
const back = coat.pieces.find(({ name }) => name === 'Back')!;

const yoke = onlyPiece(
  patternText({
    blocks: {
      YOKE: [
        ...words(1, 'Piece Name: Yoke'),
        ...words(1, 'Quantity: 2'),
        ...polyline(1, [
          [0, 0],
          [470, 0],
          [470, 150],
          [0, 150],
        ]),
        ...line(7, [9, 9], [90, 9]),
      ],
    },
    entities: metric,
  }),
  { allowanceMm: 14 },
);

function brought(changes: Partial<BroughtPiece> = {}): BroughtPiece {
  return { found: yoke, name: 'Yoke', replacesId: null, slotIds: ['shell'], ...changes };
}

function edited(plan: CoatPlan, ...pieces: BroughtPiece[]): { plan: CoatPlan; said: string } {
  const outcome = bringIn(plan, pieces);
  if (!outcome.ok) throw new Error(outcome.problems.map(problemSentence).join(' '));
  return outcome.value;
}

function refusals(plan: CoatPlan, ...pieces: BroughtPiece[]): string[] {
  const outcome = bringIn(plan, pieces);
  return outcome.ok ? [] : outcome.problems.map(problemSentence);
}

/** The Back as a file gives it back, after its plan was changed. */
function fromFile(plan: CoatPlan): BroughtPiece {
  const found = wellRead(writeDxf(plan, { unit: 'mm' })).pieces.find(({ name }) => name === 'Back')!;
  return { found, name: 'Back', replacesId: back.id, slotIds: back.cutFrom.map(({ slotId }) => slotId) };
}

describe('a piece that comes into a plan', () => {
  it('new stands after the others, cut from its slots, and the plan is sound', () => {
    const { plan, said } = edited(coat, brought());
    expect(said).toBe('Yoke brought in.');
    expect(plan.pieces.slice(0, -1)).toEqual(coat.pieces);
    expect(plan.pieces.at(-1)).toMatchObject({
      id: 'yoke',
      name: 'Yoke',
      cutCount: 2,
      cutFrom: [{ slotId: 'shell', plyCount: 1 }],
      turns: 'grain',
    });
    expect(planProblems(plan)).toEqual([]);
  });

  it('in place of one keeps its id, plies, turns, quilting, edge names and seams', () => {
    const longer = lengthenPieces(coat, [back.id], 37, 250);
    if (!longer.ok) throw new Error(longer.problems[0]?.what);
    const { plan, said } = edited(coat, fromFile(longer.value.plan));
    const fresh = pieceById(plan, back.id);
    expect(fresh.outline.edges.map(({ name, seam }) => [name, seam])).toEqual(
      back.outline.edges.map(({ name, seam }) => [name, seam]),
    );
    expect(fresh).toMatchObject({
      foldEdge: back.foldEdge,
      cutFrom: back.cutFrom,
      turns: back.turns,
      quilted: back.quilted,
      cutCount: back.cutCount,
    });
    expect(planProblems(plan)).toEqual([]);
    // What no longer fits is said, as after every edit.
    expect(said).toMatch(/^Back replaced from the file\. .*no longer fit/);
    const side = (of: CoatPlan) => seamWalk(of).filter(({ fits }) => !fits).length;
    expect(side(plan)).toBeGreaterThan(side(coat));
  });

  it('in place of itself, unchanged, leaves every seam fitting as before', () => {
    const { plan, said } = edited(coat, fromFile(coat));
    expect(said).toBe('Back replaced from the file.');
    const reports = (of: CoatPlan) => seamWalk(of).map(({ seamId, fits }) => [seamId, fits]);
    expect(reports(plan)).toEqual(reports(coat));
  });

  it('of quite another shape says which edges are no longer sewn, and nothing refers to them', () => {
    const { plan, said } = edited(coat, brought({ replacesId: back.id, name: 'Back' }));
    expect(said).toContain('No longer sewn, since no edge of the file answers to it: ');
    expect(planProblems(plan)).toEqual([]);
  });

  it('that a fastening runs along, of another shape, is not run along where it has no such edge', () => {
    const slot = coat.slots.find(({ alongEdges }) => alongEdges.length > 0)!;
    const { pieceId } = slot.alongEdges[0]!;
    const old = pieceById(coat, pieceId);
    const { plan } = edited(coat, brought({ replacesId: pieceId, name: old.name }));
    const edges = pieceById(plan, pieceId).outline.edges.map(({ name }) => name);
    const along = plan.slots
      .find(({ id }) => id === slot.id)!
      .alongEdges.filter((place) => place.pieceId === pieceId);
    expect(slot.alongEdges.some((place) => place.pieceId === pieceId && !edges.includes(place.edge))).toBe(
      true,
    );
    expect(along.filter((place) => !edges.includes(place.edge))).toEqual([]);
    expect(planProblems(plan)).toEqual([]);
  });

  it('twice takes two ids', () => {
    const { plan } = edited(coat, brought(), brought({ name: 'Yoke (2)' }), brought({ name: 'yoke-2' }));
    expect(plan.pieces.slice(-3).map(({ id }) => id)).toEqual(['yoke', 'yoke-2', 'yoke-2-2']);
  });

  it('is refused with nothing changed where a name is missing or taken, or two replace one', () => {
    expect(refusals(coat)).toEqual(['The file brings no piece. Tick the pieces that are to come in.']);
    expect(refusals(coat, brought({ name: ' ' }))).toEqual(['The piece YOKE has no name. Type one.']);
    expect(refusals(coat, brought({ name: 'back' }))).toEqual([
      'The piece back has the name of another. Type another name, or let it replace that one.',
    ]);
    expect(refusals(coat, brought(), brought())).toHaveLength(1);
    expect(refusals(coat, brought({ slotIds: ['moon'] }))).toEqual([
      'The slot moon is not in the plan. Choose a slot of the plan.',
    ]);
    expect(refusals(coat, brought({ replacesId: 'moon' }))).toEqual([
      'The piece moon is not in the plan. Choose a piece of the plan.',
    ]);
    expect(
      refusals(coat, brought({ replacesId: back.id }), brought({ name: 'Yoke 2', replacesId: back.id })),
    ).toHaveLength(2);
  });
});

it('an edge answers to the one that lay where it lies, never two to one', () => {
  const names = matchedEdges(back.outline, {
    ...back.outline,
    edges: back.outline.edges.map((edge, i) => ({ ...edge, name: `edge ${i + 1}` })),
  });
  expect([...names].sort()).toEqual(back.outline.edges.map(({ name }, i) => [`edge ${i + 1}`, name]));
  const turned = matchedEdges(back.outline, yoke.outline);
  expect(new Set(turned.values()).size).toBe(turned.size);
});
