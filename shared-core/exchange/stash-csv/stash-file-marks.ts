/** The marks of lots and lengths, by which a stash file speaks of what is booked. */
import { nounInSentence } from '../../wording/in-sentence.ts';
import { say } from '../../wording/say.ts';
import { kindRecords } from '../../stash/kinds.ts';
import type { LengthOnShelf, LotOnShelf } from '../../stash/stash.ts';
import type { FileItem, StashNow } from './stash-file-shape.ts';
import { cellOf, type FileProblems } from './stash-file-place.ts';
import type { StashLine } from './stash-lines.ts';

/** What a lot says in each of its lines. */
export const lotKeys = ['receivedOn', 'supplier', 'dyeLot', 'price', 'received'] as const;

const longestMark = 80;

export function isMark(text: string): boolean {
  return text.length <= longestMark && !/\p{Cc}/u.test(text);
}

/** What is wrong with what is none, and what to do. */
export function noMark(): readonly [string, string] {
  return [
    say('stash-file-marks.is-longer-than-letters-or-has', { longestMark }),
    say('stash-file-marks.leave-it-empty'),
  ];
}

/** Lots and lengths of what is not put away and of the file so far, by their marks. */
export interface KnownMarks {
  readonly lots: ReadonlyMap<string, { readonly lot: LotOnShelf; readonly itemId: string }>;
  readonly lengths: ReadonlyMap<string, LengthOnShelf>;
  readonly used: Set<string>;
}

export function knownMarks(now: StashNow): KnownMarks {
  const lots = now.shelves.flatMap(({ item, lots }) =>
    lots.map((lot) => ({ lot, itemId: item.id as string })),
  );
  return {
    lots: new Map(lots.map((each) => [each.lot.id, each])),
    lengths: new Map(lots.flatMap(({ lot }) => lot.lengths.map((length) => [length.id as string, length]))),
    used: new Set(),
  };
}

/** What was put away keeps its lots and lengths, so their marks are nobody else's. */
export function isPutAway(
  line: StashLine,
  key: 'lotId' | 'lengthId',
  mark: string,
  now: StashNow,
  problems: FileProblems,
): boolean {
  if (!now.archivedIds.has(mark)) return false;
  const what = say('stash-file-marks.is-a-length-of-an-item', { ifKey: key === 'lotId' ? 'yes' : 'no' });
  problems.add(line.line, key, what, say('stash-file-marks.bring-it-back-to-the-shelf'));
  return true;
}

export function isUsedTwice(
  line: StashLine,
  key: string,
  mark: string,
  known: KnownMarks,
  problems: FileProblems,
): boolean {
  const isUsed = known.used.has(mark);
  if (isUsed)
    problems.add(
      line.line,
      key,
      say('stash-file-marks.stands-in-the-file-a-second'),
      say('stash-file-marks.take-one-of-the-lines-out'),
    );
  known.used.add(mark);
  return isUsed;
}

export function noLengthCells({ item }: FileItem, line: StashLine, problems: FileProblems): void {
  for (const key of ['lengthWidth', 'lengthForm', 'worthRatio', 'washed', 'flaws', 'lengthId']) {
    if (cellOf(line, key) === '') continue;
    const label = nounInSentence(kindRecords[item.kind].label);
    problems.add(
      line.line,
      key,
      say('stash-file-marks.is-given-but-does-not-lie', { label }),
      say('stash-file-marks.leave-it-empty'),
    );
  }
}
