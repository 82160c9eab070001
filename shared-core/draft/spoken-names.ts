/** A coat as it is drafted, in English, with all its names in the language spoken now. */
import { givenName } from '../wording/given-names.ts';
import { withEdgesRenamed } from '../plan/edits/edge-names.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';

/** Ids stay as they are. Throws a RangeError for a name that the catalogue does not have. */
export function inSpokenNames(plan: CoatPlan): CoatPlan {
  const renamed = withEdgesRenamed(plan, (edge) => givenName('edge', edge));
  return {
    ...renamed,
    slots: renamed.slots.map((slot) => ({ ...slot, name: givenName('slot', slot.name) })),
    pieces: renamed.pieces.map((piece) => ({ ...piece, name: givenName('piece', piece.name) })),
    seams: renamed.seams.map((seam) => ({ ...seam, label: givenName('seam', seam.label) })),
  };
}
