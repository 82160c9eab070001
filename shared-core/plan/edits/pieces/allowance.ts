/** Allowances of a whole piece at once, and the depth of its hem. One edge alone: setAllowance in edit.ts. */
import { speaksOf } from '../../../wording/words-in-names.ts';
import { say } from '../../../wording/say.ts';
import { ringBox } from '../../../geometry/ring.ts';
import { ok, type Result, err } from '../../../measure/problem.ts';
import type { CoatPlan, Piece } from '../../model/coat-plan.ts';
import { setAllowance } from '../edit.ts';
import { type Edited, inMm, notInPlan, withPiece } from '../edited.ts';
import { pieceProblems } from '../../validation/outline-problems.ts';
import { edgePoints, seamRing } from '../../geometry/outline-ring.ts';

/** 5/8 in, the allowance of home patterns: common practice, no source. */
export const customaryAllowanceMm = 15.875;

/** One allowance on every edge that is cut; the fold has none. */
export function setAllAllowances(
  plan: CoatPlan,
  pieceId: string,
  allowanceMm: number,
  text = inMm,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const edges = piece.outline.edges.map((edge) =>
    edge.name === piece.foldEdge ? edge : { ...edge, allowanceMm },
  );
  const changed = { ...piece, outline: { ...piece.outline, edges } };
  const known = new Set(pieceProblems(piece).map((problem) => problem.where));
  const problems = pieceProblems(changed).filter((problem) => !known.has(problem.where));
  // The same number is wrong at every edge in the same way: said once.
  if (problems[0]) {
    const where =
      problems.length > 1 ? say('allowance.seam-allowance-of', { pieceName: piece.name }) : problems[0].where;
    return err({ ...problems[0], where });
  }
  return ok({
    plan: withPiece(plan, changed),
    said: say('allowance.allowance-of-is-now-at-every', { pieceName: piece.name, text: text(allowanceMm) }),
  });
}

/** Name of the edge that is the hem: called so, else the lowest one that runs across the grain; null where none does. */
export function hemEdge(piece: Piece): string | null {
  const { edges } = piece.outline;
  const called = edges.find((edge) => speaksOf('hem', edge.name));
  if (called) return called.name;
  const box = ringBox(seamRing(piece.outline));
  const lowest = edges.find((edge, index) => {
    if (edge.name === piece.foldEdge) return false;
    const points = edgePoints(piece.outline, index);
    const from = points[0]!;
    const to = points.at(-1)!;
    const isLow = Math.min(from.x, to.x) <= box.minX + (box.maxX - box.minX) * 0.1;
    return isLow && Math.abs(to.y - from.y) > 2 * Math.abs(to.x - from.x);
  });
  return lowest?.name ?? null;
}

/** How deep the hem of the piece is turned up. */
export function setHemDepth(plan: CoatPlan, pieceId: string, depthMm: number, text = inMm): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const hem = hemEdge(piece);
  if (hem === null) {
    return err({
      where: piece.name,
      what: say('allowance.has-no-edge-across-the-grain'),
      fix: say('allowance.set-the-allowance-of-the-edge'),
    });
  }
  const edited = setAllowance(plan, pieceId, hem, depthMm, text);
  if (!edited.ok) return edited;
  return ok({
    ...edited.value,
    said: say('allowance.hem-of-is-now-deep', { pieceName: piece.name, text: text(depthMm) }),
  });
}

/** The allowance that most edges of the plan have; customaryAllowanceMm for a plan without edges. */
export function defaultAllowanceMm(plan: CoatPlan): number {
  const counts = new Map<number, number>();
  for (const piece of plan.pieces) {
    for (const edge of piece.outline.edges) {
      if (edge.name !== piece.foldEdge) counts.set(edge.allowanceMm, (counts.get(edge.allowanceMm) ?? 0) + 1);
    }
  }
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? customaryAllowanceMm;
}
