/** What the lays behind an estimate, or behind some of its slots, may still bring: said wherever one would buy on it. */
import type { Estimate } from './estimate.ts';
import {
  layStillFalls,
  maxStillFalling,
  type StillFalls,
  stillFallsWords,
} from '../lay/still-falls/still-falls.ts';

/** The most that a lay of those slots usually still falls by: what the coats need and what lies on the stash. */
export function slotsStillFall(
  { lays, cover }: Pick<Estimate, 'lays' | 'cover'>,
  slotIds: readonly string[],
  isBeingLookedFor: boolean,
): StillFalls | null {
  const onStash = cover.flatMap((slotCover) => (slotCover.lay ? [slotCover.lay] : []));
  return maxStillFalling(
    [...lays, ...onStash]
      .filter(({ slotId }) => slotIds.includes(slotId))
      .map(({ result }) => layStillFalls(result, isBeingLookedFor)),
  );
}

/** Slots of which something is bought. */
export function slotsBought({ toBuy }: Pick<Estimate, 'toBuy'>): readonly string[] {
  return [...new Set(toBuy.lines.flatMap(({ slotIds }) => slotIds))];
}

/** Beside a lay, and where it is looked for no longer but was only shortly. */
export function laySentence(falls: StillFalls, isBeingLookedFor: boolean): string {
  return isBeingLookedFor
    ? `Still improving: usually ${stillFallsWords(falls)} shorter.`
    : `Looked for shortly: usually ${stillFallsWords(falls)} shorter when it is looked for longer.`;
}

/** At the head of what is used from the stash and what is short. */
export function coverSentence(falls: StillFalls, isBeingLookedFor: boolean): string {
  const lays = isBeingLookedFor ? 'The lays are still improving' : 'The lays were looked for shortly';
  return `${lays}: they usually take ${stillFallsWords(falls)} less cloth, so what is short now may yet be enough.`;
}

/** At the head of the list to buy. */
export function listSentence(falls: StillFalls): string {
  return `This list may still get shorter: lays like these usually take ${stillFallsWords(falls)} less cloth when they are looked for longer.`;
}
