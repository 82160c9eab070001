/**
 * Ways to cut a slot from what is free of its item, before it is cut from everything at once: what is seen from one
 * dye lot, what is hidden from the rests. Which of them is best is told by what it leaves on the shelf.
 */
import { usableWidthMm } from '../lay/plan-lay.ts';
import type { LayResult } from '../lay/job.ts';
import type { Slot } from '../plan/model/coat-plan.ts';
import { areaLeftRatio, beforeWashMm } from '../stash/shrinkage.ts';
import type { Item } from '../stash/stash.ts';
import { dyeLotOf, type FreeLength } from './free-lengths.ts';

/** More lays than this for one slot would keep the maker waiting for little. */
const maxTried = 3;

/** A rest that is shorter is of no use for a coat, mm. */
const usefulMm = 300;

/**
 * Lists of lengths that might carry the whole slot, likeliest first. What is seen stays in one dye lot each time, one
 * that cutting has begun with before all others; what is hidden goes to the smallest lengths first.
 * areaMm2: of the cloth that the pieces take, gaps between them counted.
 */
export function assignments(
  free: readonly FreeLength[],
  slot: Slot,
  item: Item,
  areaMm2: number,
  isBegun: (length: FreeLength) => boolean,
): (readonly FreeLength[])[] {
  const smallFirst = (lengths: readonly FreeLength[]) => [...lengths].sort((a, b) => a.freeMm - b.freeMm);
  if (!slot.isSeen) {
    const small = smallFirst(free);
    // The fewest of the smallest that have the area, and some more in case their lay has gaps.
    return [1, 1.25].flatMap((share) => {
      const taken = firstWithArea(small, item, areaMm2 * share);
      return taken ? [taken] : [];
    });
  }
  const groups = new Map<string, FreeLength[]>();
  for (const length of free) {
    const key = dyeLotOf(length.lot);
    groups.set(key, [...(groups.get(key) ?? []), length]);
  }
  const enough = [...groups.values()].filter((lengths) => areaOf(lengths, item) >= areaMm2);
  // The fuller dye lots stand first in `free`; the one begun with goes before them.
  enough.sort((a, b) => Number(b.some(isBegun)) - Number(a.some(isBegun)));
  return enough
    .flatMap((lengths) => (lengths.length > 1 ? [lengths, smallFirst(lengths)] : [lengths]))
    .slice(0, maxTried);
}

function firstWithArea(
  lengths: readonly FreeLength[],
  item: Item,
  areaMm2: number,
): readonly FreeLength[] | null {
  for (let count = 1; count <= lengths.length; count++) {
    const first = lengths.slice(0, count);
    if (areaOf(first, item) >= areaMm2) return first;
  }
  return null;
}

function areaOf(lengths: readonly FreeLength[], item: Item): number {
  return lengths.reduce(
    (sum, { length, freeMm, lost }) =>
      sum + freeMm * usableWidthMm(length.widthMm, item) * areaLeftRatio(lost),
    0,
  );
}

/**
 * How useful what is left of all free lengths is: one long rest counts for more than two of half its length, and one
 * too short for anything counts for nothing. Larger is better; only for comparing ways to cut the same pieces.
 */
export function usefulRest(
  free: readonly FreeLength[],
  used: readonly FreeLength[],
  result: Pick<LayResult, 'usedLengthMm'>,
): number {
  return free.reduce((sum, candidate) => {
    const index = used.indexOf(candidate);
    const usedMm = index < 0 ? 0 : (result.usedLengthMm[index] ?? 0);
    const restMm = candidate.freeMm - beforeWashMm(usedMm, candidate.lost.alongRatio);
    return restMm < usefulMm ? sum : sum + restMm ** 2 * candidate.length.widthMm;
  }, 0);
}
