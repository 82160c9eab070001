/** What a stash file would change, in sentences for the maker. */
import { nounInSentence } from '../../wording/in-sentence.ts';
import { say } from '../../wording/say.ts';
import type { MeasureSystem, QuantityKind } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import { type Counted, type ItemKind, kindRecords } from '../../stash/kinds.ts';
import { fromMilli } from '../../stash/stash.ts';
import type { StashChange } from './stash-change.ts';

const quantities: Readonly<Record<Counted, QuantityKind>> = {
  length: 'length',
  mass: 'mass',
  thread: 'threadLength',
  pieces: 'count',
};

/** "width (mm) 1470 → 1473", "Received on 2026-03-27 from Quillstone Cloth: 2 lengths, 8.2 m". */
export function stashChangeText(change: StashChange, system: MeasureSystem): string {
  const amount = (milli: number) => amountText(change.itemKind, milli, system);
  switch (change.kind) {
    case 'new item':
      return [
        say('stash-change-words.new', {
          kindRecordsLabel: nounInSentence(kindRecords[change.itemKind].label),
        }),
        change.item.colour,
        change.item.place,
      ]
        .filter((word) => word !== '')
        .join(', ');
    case 'changed item':
      return change.changed
        .map(({ label, from, to }) => `${label}: ${short(from)} → ${short(to)}`)
        .join('; ');
    case 'new lot': {
      const { receivedOn, supplier, lengths, amountMilli } = change.lot;
      const from = supplier === '' ? '' : ` ${say('stash-change-words.from', { supplier })}`;
      const count =
        lengths.length === 0
          ? ''
          : `${lengths.length} ${say('stash-change-words.lengths', { lengthsCount: lengths.length })}, `;
      return say('stash-change-words.lot-of', { receivedOn, from, count, amount: amount(amountMilli) });
    }
    case 'correction':
      return say('stash-change-words.count', {
        amount: amount(change.fromMilli),
        amount2: amount(change.toMilli),
        reason: change.reason,
      });
    default:
      return change satisfies never;
  }
}

function amountText(kind: ItemKind, milli: number, system: MeasureSystem): string {
  return showQuantity(quantities[kindRecords[kind].counted], fromMilli(milli), { system });
}

function short(text: string): string {
  if (text === '') return say('common.not-known');
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 58)}…` : line;
}
