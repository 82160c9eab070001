/** The way to cut a slot: of those that carry it whole the one that leaves the most useful rest. */
import { say } from '../wording/say.ts';
import { endlessLength, layJob, type RunLay, type SlotLay, washedLay } from '../lay/plan-lay.ts';
import { takenInAllMm, takenMm } from '../lay/washed.ts';
import type { Slot } from '../plan/model/coat-plan.ts';
import { marginOfLength } from '../plan/model/margin.ts';
import { lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import type { ShapesNeed } from '../requirement/need.ts';
import type { Item } from '../stash/stash.ts';
import { assignments, usefulRest } from './assignments.ts';
import { begunLots } from './begun-lots.ts';
import type { CoverInput } from './slot-cover.ts';
import { type FreeLength, onShelf, smallestThatHolds } from './free-lengths.ts';

/** How much fuller than the planned lay a way is hoped to be. */
const closerRatio = 0.05;

export interface Assignment {
  /** In the order of the lay's lengths; cloth to be bought, where the lay has some, comes after them. */
  readonly used: readonly FreeLength[];
  readonly lay: SlotLay;
}

/** Where no way carries the slot, everything that is free and more to buy: never more than the planned lay. */
export async function bestAssignment(
  input: CoverInput,
  need: ShapesNeed,
  slot: Slot,
  item: Item,
  free: readonly FreeLength[],
  widthMm: number,
  runLay: RunLay,
): Promise<Assignment> {
  const begun = begunLots(slot.id, input.cuttings ?? []);
  const isBegun = ({ lot }: FreeLength) =>
    begun.lotIds.has(lot.id) || (lot.dyeLot !== '' && begun.dyeLots.has(lot.dyeLot));
  const begunFree = free.filter(isBegun);
  const single = singleLength(input, need, slot, item, [begunFree, free]);
  const found: Assignment[] = single ? [single] : [];
  const toBuyLost = lostBeforeCutting(need.firstWash);
  const toBuy = endlessLength(say('common.to-buy'), widthMm, item, toBuyLost);
  const laid = async (used: readonly FreeLength[], withMore: boolean): Promise<SlotLay> => {
    const more = withMore ? [toBuy] : [];
    const lengths = [...used.map((candidate) => onShelf(candidate, item)), ...more];
    const job = layJob(need, lengths, input.plan.clearanceMm, item, 1);
    const result = await runLay(job, say('best-assignment.on-the-stash', { slotName: slot.name }));
    const lost = [...used.map((candidate) => candidate.lost), ...more.map(() => toBuyLost)];
    return { slotId: slot.id, job, result, ...washedLay(need, lost) };
  };
  // One length that carries all that is seen needs no other way, unless cutting began with another lot.
  const isSettled = single !== null && slot.isSeen && (begunFree.length === 0 || single.used.every(isBegun));
  const tried = await Promise.all(
    (isSettled ? [] : assignments(free, slot, item, clothAreaMm2(input, need), isBegun)).map(
      async (used) => ({ used, lay: await laid(used, false) }),
    ),
  );
  found.push(...tried.filter((each) => carries(need, each)));
  const fromBegun = found.filter(({ used }) => used.every(isBegun));
  const [best] = (fromBegun.length > 0 ? fromBegun : found).sort(
    (a, b) => usefulRest(free, b.used, b.lay.result) - usefulRest(free, a.used, a.lay.result),
  );
  if (best) return best;
  const used = [...begunFree, ...free.filter((candidate) => !isBegun(candidate))];
  const planned = input.lays.get(slot.id);
  const allBought = planned && { used: [], lay: { ...planned, job: { ...planned.job, lengths: [toBuy] } } };
  if (allBought && used.length === 0) return allBought;
  const lay = await laid(used, true);
  // A lay that was looked for on worse luck never asks a maker to buy more than a coat without any stash takes.
  const isWorse = allBought && takenMm(lay, used.length) > takenInAllMm(allBought.lay);
  return isWorse ? allBought : { used, lay };
}

/** Cloth that the pieces take, gaps counted: those of the planned lay, a little closer. To spare lays that cannot come out. */
function clothAreaMm2(input: CoverInput, need: ShapesNeed): number {
  const planned = input.lays.get(need.slotId);
  return need.areaMm2 / Math.min(1, (planned?.result.utilisation ?? 1) + closerRatio);
}

/** The smallest length that takes the planned lay as it is, of the first list that has one. */
function singleLength(
  input: CoverInput,
  need: ShapesNeed,
  slot: Slot,
  item: Item,
  lists: readonly (readonly FreeLength[])[],
): Assignment | null {
  const planned = input.lays.get(slot.id);
  if (!planned) return null;
  const marginMm = marginOfLength(need.margin, takenInAllMm(planned));
  for (const list of lists) {
    const length = smallestThatHolds(planned, list, item, marginMm);
    if (!length) continue;
    const job = { ...planned.job, lengths: [onShelf(length, item)] };
    return { used: [length], lay: { ...planned, job, ...washedLay(need, [length.lost]) } };
  }
  return null;
}

/** Every piece has room, and so has the margin on the lengths in use. */
function carries(need: ShapesNeed, { used, lay }: Assignment): boolean {
  if (lay.result.unplaced.length > 0) return false;
  const restMm = used.reduce((sum, { freeMm }, index) => {
    const usedMm = takenMm(lay, index);
    return usedMm > 0 ? sum + freeMm - usedMm : sum;
  }, 0);
  return restMm + 1 >= marginOfLength(need.margin, takenInAllMm(lay));
}
