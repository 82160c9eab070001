/** Edges under other names, in a plan or a piece: seams, fastenings, notches, folds and bands keep naming the same edges. */
import type { CoatPlan, Piece } from '../model/coat-plan.ts';
import type { EdgePlace } from '../model/outline.ts';

/** `rename` is asked for each edge of each piece, and must not give two edges of one piece the same name. */
export type RenameEdge = (edge: string, pieceId: string) => string;

export function withEdgesRenamed(plan: CoatPlan, rename: RenameEdge): CoatPlan {
  const places = placesRenamed(rename);
  return {
    ...plan,
    slots: plan.slots.map((slot) => ({ ...slot, alongEdges: places(slot.alongEdges) })),
    pieces: plan.pieces.map((piece) => pieceWithEdgesRenamed(piece, rename)),
    seams: plan.seams.map((seam) => (seam.firstSide ? { ...seam, firstSide: places(seam.firstSide) } : seam)),
  };
}

export function pieceWithEdgesRenamed(piece: Piece, rename: RenameEdge): Piece {
  const named = (edge: string) => rename(edge, piece.id);
  return {
    ...piece,
    outline: {
      ...piece.outline,
      edges: piece.outline.edges.map((edge) => ({ ...edge, name: named(edge.name) })),
    },
    foldEdge: piece.foldEdge === null ? null : named(piece.foldEdge),
    notches: piece.notches.map((notch) => ({ ...notch, edge: named(notch.edge) })),
    ...(piece.band && { band: { ...piece.band, edges: placesRenamed(rename)(piece.band.edges) } }),
  };
}

function placesRenamed(rename: RenameEdge) {
  return (places: readonly EdgePlace[]): EdgePlace[] =>
    places.map(({ pieceId, edge }) => ({ pieceId, edge: rename(edge, pieceId) }));
}
