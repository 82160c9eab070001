/** What the lays behind an estimate, or behind some of its slots, may still bring: said wherever one would buy on it. */
import { say } from '../wording/say.ts';
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
    ? say('falls-of-estimate.still-improving-usually-shorter', { stillFallsWords: stillFallsWords(falls) })
    : say('falls-of-estimate.looked-for-shortly-usually-shorter-when', {
        stillFallsWords: stillFallsWords(falls),
      });
}

/** At the head of what is used from the stash and what is short. */
export function coverSentence(falls: StillFalls, isBeingLookedFor: boolean): string {
  const lays = isBeingLookedFor
    ? say('falls-of-estimate.the-lays-are-still-improving')
    : say('falls-of-estimate.the-lays-were-looked-for-shortly');
  return say('falls-of-estimate.they-usually-take-less-cloth-so', {
    lays,
    stillFallsWords: stillFallsWords(falls),
  });
}

/** At the head of the list to buy. */
export function listSentence(falls: StillFalls): string {
  return say('falls-of-estimate.this-list-may-still-get-shorter', {
    stillFallsWords: stillFallsWords(falls),
  });
}
