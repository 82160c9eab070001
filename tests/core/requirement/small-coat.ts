/** A coat of two rectangles with sums one can do by hand: a back on the fold and a pair of fronts, 700 mm long. */
import type { CoatPlan, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Outline, Seam } from '../../../shared-core/plan/model/outline.ts';
import type { SlotItems } from '../../../shared-core/requirement/need.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { measured, piece, plan, slot } from '../../fixtures/small-workshop.ts';

/** lengthMm along the grain; the first edge lies on y = 0, the side on y = widthMm. */
export function panel(
  lengthMm: number,
  widthMm: number,
  first: string,
  seams: Record<string, string>,
): Outline {
  const edge = (name: string, x: number, y: number) => ({
    name,
    segments: [{ kind: 'line', to: { x, y } }] as const,
    allowanceMm: 0,
    seam: seams[name] ?? null,
  });
  return {
    start: { x: 0, y: 0 },
    edges: [
      edge(first, lengthMm, 0),
      edge('neck', lengthMm, widthMm),
      edge('side', 0, widthMm),
      edge('hem', 0, 0),
    ],
  };
}

export const sideSeam: Seam = {
  id: 'side seam',
  label: 'Side',
  stitch: '301',
  threadSlotId: 'thread',
  overcast: null,
  topstitchRowCount: 0,
};

export function back(more: Partial<Piece> = {}): Piece {
  return piece('back', panel(700, 260, 'fold', { side: 'side seam' }), { foldEdge: 'fold', ...more });
}

export function front(more: Partial<Piece> = {}): Piece {
  return piece('front', panel(700, 240, 'front edge', { side: 'side seam' }), {
    cutCount: 2,
    isMirrored: true,
    ...more,
  });
}

/** Two side seams of 700 mm in each coat. */
export function smallCoat(more: Partial<CoatPlan> = {}): CoatPlan {
  return plan({
    slots: [slot('shell', 'cloth'), slot('thread', 'thread')],
    pieces: [back(), front()],
    seams: [sideSeam],
    threadWastageRatio: 0,
    ...more,
  });
}

/** The same quilted across at 100 mm through one ply of batting: 6 lines on each piece. */
export function quiltedCoat(more: Partial<CoatPlan> = {}): CoatPlan {
  const cutFrom = [
    { slotId: 'shell', plyCount: 1 },
    { slotId: 'batting', plyCount: 1 },
  ];
  return smallCoat({
    slots: [
      slot('shell', 'cloth', { isQuilted: true }),
      slot('batting', 'batting'),
      slot('thread', 'thread'),
    ],
    pieces: [back({ quilted: 'across', cutFrom }), front({ quilted: 'across', cutFrom })],
    quilting: { spacingMm: 100, stitch: '301', stitchLengthMm: 4, threadSlotId: 'thread' },
    ...more,
  });
}

/** The coat stuffed in its channels, rising 12.5 mm on each face. */
export function stuffedCoat(more: Partial<CoatPlan> = {}): CoatPlan {
  const cutFrom = [
    { slotId: 'shell', plyCount: 2 },
    { slotId: 'fill', plyCount: 1 },
  ];
  return smallCoat({
    slots: [slot('shell', 'cloth', { isQuilted: true }), slot('fill', 'fill'), slot('thread', 'thread')],
    pieces: [back({ quilted: 'across', cutFrom }), front({ quilted: 'across', cutFrom })],
    quilting: {
      spacingMm: 100,
      stitch: '301',
      stitchLengthMm: 4,
      threadSlotId: 'thread',
      ...measured(12.5, 0),
    },
    ...more,
  });
}

/** Items by slot. */
export function filled(items: Readonly<Record<string, Item>>): SlotItems {
  return new Map(Object.entries(items));
}

export const nothingChosen: SlotItems = new Map();
