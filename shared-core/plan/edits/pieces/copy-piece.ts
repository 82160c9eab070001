/** A piece copied to be cut from other slots: a lining or a facing from the shell's own piece. */
import { say } from '../../../wording/say.ts';
import { ok, type Result, err } from '../../../measure/problem.ts';
import type { CoatPlan } from '../../model/coat-plan.ts';
import { listed } from '../../../wording/listed.ts';
import { type Edited, notInPlan } from '../edited.ts';
import { freePieceId, inEverySize, pieceNameProblem } from '../every-size.ts';

/**
 * The same outline once more under a name of its own, in every size, one ply from each of the slots. It is sewn in no
 * seam yet, as the seams have their edges already; it is quilted as the first is if a slot of it is.
 */
export function copyPiece(
  plan: CoatPlan,
  pieceId: string,
  name: string,
  slotIds: readonly string[],
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const called = name.trim();
  const slots = slotIds.map((id) => ({ id, slot: plan.slots.find((candidate) => candidate.id === id) }));
  const problems = [
    pieceNameProblem(plan, called, 'copy'),
    ...slots.map(({ id, slot }) =>
      slot === undefined
        ? notInPlan('slot', id)
        : slot.kind === 'cloth' || slot.kind === 'batting'
          ? null
          : {
              where: slot.name,
              what: say('copy-piece.is-neither-cloth-nor-batting'),
              fix: say('copy-piece.choose-a-slot-that-pieces-are'),
            },
    ),
  ].filter((problem) => problem !== null);
  if (problems.length > 0) return err(...problems);
  const id = freePieceId(plan, called);
  const isQuilted = slots.some(({ slot }) => slot?.isQuilted);
  const copied = inEverySize(plan, (pieces) =>
    ok(
      pieces.flatMap((each) =>
        each.id === pieceId
          ? [
              each,
              {
                ...each,
                id,
                name: called,
                outline: {
                  ...each.outline,
                  edges: each.outline.edges.map((edge) => ({ ...edge, seam: null })),
                },
                cutFrom: [...new Set(slotIds)].map((slotId) => ({ slotId, plyCount: 1 })),
                quilted: isQuilted ? each.quilted : null,
              },
            ]
          : [each],
      ),
    ),
  );
  if (!copied.ok) return copied;
  const names = slots.map(({ slot }) => slot!.name);
  const from = names.length === 0 ? say('copy-piece.no-slot-yet') : listed(names);
  return ok({
    plan: copied.value,
    said: say('copy-piece.copied-from-cut-from-its-edges', { called, pieceName: piece.name, from }),
  });
}
