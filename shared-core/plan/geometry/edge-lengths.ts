/** How long some edges of a coat are together. */
import type { Piece } from '../model/coat-plan.ts';
import type { EdgePlace } from '../model/outline.ts';
import { edgeLengthMm } from './outline-ring.ts';

/**
 * Sum of the edges, mm; one that runs over a fold counts whole. isEveryCopy: of each copy of the pieces, left and right.
 * Null where a size of the coat has not the pieces.
 */
export function edgesLengthMm(
  pieces: readonly Piece[],
  edges: readonly EdgePlace[],
  isEveryCopy: boolean,
): number | null {
  let sumMm = 0;
  for (const { pieceId, edge } of edges) {
    const piece = pieces.find((candidate) => candidate.id === pieceId);
    if (!piece?.outline.edges.some(({ name }) => name === edge)) return null;
    const copies = isEveryCopy ? piece.cutCount : 1;
    sumMm += edgeLengthMm(piece.outline, edge) * (touchesFold(piece, edge) ? 2 : 1) * copies;
  }
  return sumMm;
}

/** True for an edge that starts or ends on the fold, and so runs on over it. */
export function touchesFold(piece: Piece, edgeName: string): boolean {
  if (piece.foldEdge === null) return false;
  const count = piece.outline.edges.length;
  const fold = piece.outline.edges.findIndex((edge) => edge.name === piece.foldEdge);
  const edge = piece.outline.edges.findIndex((candidate) => candidate.name === edgeName);
  return edge === (fold + 1) % count || edge === (fold + count - 1) % count;
}
