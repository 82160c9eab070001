/** A padded vest of three plain pieces for plan tests: back on the fold, two fronts, two linings of the fronts. */
import { type CoatPlan, emptySlot, type Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edge, Outline, Seam } from '../../../shared-core/plan/model/outline.ts';
import { measured } from '../../fixtures/small-workshop.ts';

type Corner = readonly [number, number];

function outline(
  start: Corner,
  edges: readonly (readonly [name: string, to: Corner, seam: string | null, allowanceMm: number])[],
): Outline {
  return {
    start: { x: start[0], y: start[1] },
    edges: edges.map(
      ([name, [x, y], seam, allowanceMm]): Edge => ({
        name,
        segments: [{ kind: 'line', to: { x, y } }],
        allowanceMm,
        seam,
      }),
    ),
  };
}

const plain: Omit<Piece, 'id' | 'name' | 'outline' | 'cutFrom'> = {
  cutCount: 1,
  isMirrored: false,
  foldEdge: null,
  turns: 'grain',
  notches: [],
  quilted: null,
};

function seam(id: string, label: string, more: Partial<Seam> = {}): Seam {
  return { id, label, stitch: '301', threadSlotId: 'thread', overcast: null, topstitchRowCount: 0, ...more };
}

/** Side 430 long, shoulder slanting 3 : 4 by 100; hem at x = 0. */
export function vest(): CoatPlan {
  const front = outline(
    [0, 0],
    [
      ['front edge', [560, 0], 'front edge', 12],
      ['neckline', [620, 90], null, 9],
      ['shoulder', [560, 170], 'shoulder', 15],
      ['armhole', [430, 240], null, 10],
      ['side', [0, 240], 'side', 16],
      ['hem', [0, 0], 'hem', 35],
    ],
  );
  return {
    id: 'vest',
    name: 'Harrow vest',
    size: 'M',
    coatCount: 3,
    slots: [
      emptySlot('shell', 'shell', 'cloth'),
      emptySlot('batting', 'batting', 'batting'),
      emptySlot('lining', 'lining', 'cloth'),
      emptySlot('thread', 'thread', 'thread'),
      { ...emptySlot('zip', 'zip', 'fastening'), alongEdges: [{ pieceId: 'front', edge: 'front edge' }] },
    ],
    pieces: [
      {
        ...plain,
        id: 'back',
        name: 'Back',
        foldEdge: 'centre back',
        quilted: 'across',
        outline: outline(
          [0, 0],
          [
            ['centre back', [600, 0], null, 0],
            ['neckline', [620, 90], null, 9],
            ['shoulder', [560, 170], 'shoulder', 15],
            ['armhole', [430, 255], null, 10],
            ['side', [0, 255], 'side', 16],
            ['hem', [0, 0], 'hem', 35],
          ],
        ),
        notches: [
          { edge: 'side', atMm: 90 },
          { edge: 'side', atMm: 400 },
          { edge: 'centre back', atMm: 500 },
        ],
        cutFrom: [
          { slotId: 'shell', plyCount: 1 },
          { slotId: 'batting', plyCount: 2 },
        ],
      },
      {
        ...plain,
        id: 'front',
        name: 'Front',
        cutCount: 2,
        isMirrored: true,
        outline: front,
        cutFrom: [
          { slotId: 'shell', plyCount: 1 },
          { slotId: 'batting', plyCount: 1 },
        ],
      },
      {
        ...plain,
        id: 'front-lining',
        name: 'Front lining',
        cutCount: 2,
        isMirrored: true,
        outline: {
          ...front,
          edges: front.edges.map((edge) => ({
            ...edge,
            seam: edge.name === 'front edge' ? 'front edge' : null,
          })),
        },
        cutFrom: [{ slotId: 'lining', plyCount: 1 }],
      },
    ],
    seams: [
      seam('shoulder', 'Shoulder'),
      seam('side', 'Side'),
      seam('front edge', 'Front edge'),
      seam('hem', 'Hem', {
        firstSide: [
          { pieceId: 'back', edge: 'hem' },
          { pieceId: 'front', edge: 'hem' },
        ],
      }),
    ],
    quilting: {
      spacingMm: 60,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'thread',
      ...measured(7, 2, { spacingMm: 60 }),
    },
    clearanceMm: 2,
    threadWastageRatio: 0.1,
    sewingMinutesPerCoat: 200,
    notes: '',
  };
}

export function pieceOf(plan: CoatPlan, id: string): Piece {
  return plan.pieces.find((piece) => piece.id === id)!;
}

/** The plan with one piece changed. */
export function withPieceChanged(plan: CoatPlan, id: string, change: (piece: Piece) => Piece): CoatPlan {
  return { ...plan, pieces: plan.pieces.map((piece) => (piece.id === id ? change(piece) : piece)) };
}

/** The plan with one edge of a piece changed. */
export function withEdgeChanged(
  plan: CoatPlan,
  id: string,
  name: string,
  change: (edge: Edge) => Edge,
): CoatPlan {
  return withPieceChanged(plan, id, (piece) => ({
    ...piece,
    outline: {
      ...piece.outline,
      edges: piece.outline.edges.map((edge) => (edge.name === name ? change(edge) : edge)),
    },
  }));
}
