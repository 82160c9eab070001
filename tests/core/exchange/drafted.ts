/** Random drafted pieces for rules that hold for all: straight and curved edges, a fold, notches, allowances of each edge. */
import fc from 'fast-check';
import type { Point } from '../../../shared-core/geometry/ring.ts';
import type { PlanId } from '../../../shared-core/stash/stash.ts';
import type { CoatPlan, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { edgeLengthMm } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { pieceProblems } from '../../../shared-core/plan/validation/outline-problems.ts';
import type { Edge, Segment } from '../../../shared-core/plan/model/outline.ts';

interface Corner {
  readonly radiusMm: number;
  readonly turn: number;
  /** How far the edge after it bows out, in shares of its length; 0 for a straight one. */
  readonly bow: number;
  readonly allowanceMm: number;
  readonly notchRatio: number | null;
}

const corner: fc.Arbitrary<Corner> = fc.record({
  radiusMm: fc.integer({ min: 180, max: 520 }),
  turn: fc.integer({ min: -20, max: 20 }),
  bow: fc.constantFrom(0, 0, 0.08, 0.15, -0.06),
  allowanceMm: fc.constantFrom(8, 10, 13.5, 16, 22),
  notchRatio: fc.option(fc.integer({ min: 30, max: 70 }), { nil: null }),
});

export const draftedName = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
  .map((name) => name.replace(/\s+/g, ' ').trim())
  // A backslash before U+ is how the standard's own files write a letter.
  .filter((name) => name !== '' && !name.includes('\\') && !/\p{Cc}/u.test(name) && name.isWellFormed());

export const draftedPiece: fc.Arbitrary<Piece> = fc
  .record({
    name: draftedName,
    corners: fc.array(corner, { minLength: 4, maxLength: 8 }),
    isFolded: fc.boolean(),
    count: fc.integer({ min: 1, max: 9 }),
    isMirrored: fc.boolean(),
    isRaw: fc.boolean(),
  })
  .map(({ name, corners, isFolded, count, isMirrored, isRaw }) =>
    drafted(
      name,
      isRaw ? corners.map((each) => ({ ...each, allowanceMm: 0 })) : corners,
      isFolded,
      count,
      isMirrored,
    ),
  )
  .filter((piece) => pieceProblems(piece).length === 0);

function drafted(
  name: string,
  corners: readonly Corner[],
  isFolded: boolean,
  count: number,
  isMirrored: boolean,
): Piece {
  // On the fold: all corners in the upper half, the fold along y = 0 from the first to the last of them.
  const sweepDeg = isFolded ? 180 / (corners.length - 1) : 360 / corners.length;
  const points = corners.map(({ radiusMm, turn }, index): Point => {
    const isEnd = isFolded && (index === 0 || index === corners.length - 1);
    const angle = ((index * sweepDeg + (isEnd ? 0 : (turn / 100) * sweepDeg)) * Math.PI) / 180;
    const y = radiusMm * Math.sin(angle);
    return { x: radiusMm * Math.cos(angle), y: isEnd ? 0 : y };
  });
  const edges = corners.map((each, index): Edge => {
    const isFold = isFolded && index === corners.length - 1;
    const from = points[index]!;
    const to = points[(index + 1) % points.length]!;
    return {
      name: isFold ? 'centre' : `side ${index}`,
      segments: [isFold || each.bow === 0 ? { kind: 'line', to } : bowed(from, to, each.bow)],
      allowanceMm: isFold ? 0 : each.allowanceMm,
      seam: null,
    };
  });
  const outline = { start: points[0]!, edges };
  const notches = edges.flatMap((edge, index) => {
    const ratio = corners[index]!.notchRatio;
    return ratio === null || edge.name === 'centre'
      ? []
      : [{ edge: edge.name, atMm: (edgeLengthMm(outline, edge.name) * ratio) / 100 }];
  });
  return {
    id: 'p',
    name,
    outline,
    cutCount: isMirrored ? 2 * count : count,
    isMirrored,
    foldEdge: isFolded ? 'centre' : null,
    turns: 'grain',
    notches,
    cutFrom: [{ slotId: 'shell', plyCount: 1 }],
    quilted: null,
  };
}

function bowed(from: Point, to: Point, bow: number): Segment {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const at = (share: number): Point => ({
    x: from.x + dx * share + dy * bow,
    y: from.y + dy * share - dx * bow,
  });
  return { kind: 'cubic', control1: at(0.3), control2: at(0.65), to };
}

export function planOf(pieces: readonly Piece[], name = 'Saltmarsh jacket', size = '16'): CoatPlan {
  return {
    ...newPlan('plan-1' as PlanId, name, size),
    pieces: pieces.map((piece, index) => ({ ...piece, id: `p${index}` })),
  };
}
