/** What the maker settles for each found piece before it comes in. */
import type { FoundPiece } from '../../../shared-core/exchange/pattern/pattern.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';

export interface BroughtDraft {
  readonly key: string;
  readonly isTicked: boolean;
  readonly name: string;
  readonly replacesId: string | null;
  readonly slotIds: readonly string[];
}

/** All ticked; each replaces the piece of its own name, and else is new and cut from the slots that its material names. */
export function draftsOf(plan: CoatPlan, pieces: readonly FoundPiece[]): BroughtDraft[] {
  const cut = plan.slots.filter(({ kind }) => kind === 'cloth' || kind === 'batting');
  return pieces.map((piece) => {
    const same = plan.pieces.find(({ name }) => isAlike(name, piece.name));
    const materials = piece.material.split(/[;,]/).map((word) => word.trim());
    const named = cut.filter(({ name }) => materials.some((material) => isAlike(name, material)));
    const slots = same
      ? same.cutFrom.filter(({ plyCount }) => plyCount > 0).map(({ slotId }) => slotId)
      : (named.length > 0 ? named : cut.slice(0, 1)).map(({ id }) => id);
    return {
      key: piece.key,
      isTicked: true,
      name: piece.name.slice(0, 120),
      replacesId: same?.id ?? null,
      slotIds: slots,
    };
  });
}

function isAlike(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
