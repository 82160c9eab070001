/** From which lots a slot was begun to be cut. */
import type { Cutting } from '../stash/cutting.ts';
import type { LotId } from '../stash/stash.ts';

/** The dye lots that cutting of a slot began with; a lot without one counts by itself. */
export function begunLots(
  slotId: string,
  cuttings: readonly Cutting[],
): { readonly lotIds: ReadonlySet<LotId>; readonly dyeLots: ReadonlySet<string> } {
  const lines = cuttings
    .flatMap((cutting) => cutting.slots)
    .filter((slot) => slot.slotId === slotId)
    .flatMap((slot) => slot.lines);
  return {
    lotIds: new Set(lines.map((line) => line.lotId)),
    dyeLots: new Set(lines.flatMap((line) => (line.dyeLot === '' ? [] : [line.dyeLot]))),
  };
}
