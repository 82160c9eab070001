/** What a change of the stash did, as a sentence without its full stop. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import type { StashFileChanges } from '../../../shared-core/contract/stash-file-calls.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { CallContext } from '../calls/call.ts';
import { itemName, placeOnShelf, showOf } from './ledger.ts';
import { toMilli } from '../../../shared-core/stash/stash.ts';

export async function receivedWords(context: CallContext, input: CallInput<'receiveLot'>): Promise<string> {
  const amount =
    input.amount ?? input.lengths.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
  const { name, show } = await showOf(context, input.itemId);
  return say('change-words.received-of', {
    show: show(toMilli(amount)),
    name,
    receivedOn: dayWords(input.receivedOn),
  });
}

export async function atPlaceWords(
  context: CallContext,
  did: 'wrote off' | 'counted',
  input: { readonly lotId: string; readonly lengthId: string | null; readonly amount: number },
): Promise<string> {
  const place = await placeOnShelf(context, input.lotId, input.lengthId);
  if (!place.ok)
    return say(did === 'wrote off' ? 'change-words.wrote-off-something' : 'change-words.counted-something');
  const { name, show } = place.value;
  const amount = show(toMilli(input.amount));
  return did === 'wrote off'
    ? say('change-words.wrote-off', { amount, name })
    : say('change-words.counted', { amount, name });
}

export function takenStockWords({ correctedCount }: CallOutput<'takeStock'>): string {
  return say('change-words.took-stock', { correctedCount });
}

export async function putAwayWords(
  context: CallContext,
  { itemId, isPutAway }: CallInput<'archiveItem'>,
): Promise<string> {
  const name = await itemName(context, itemId);
  return isPutAway ? say('change-words.put-away', { name }) : say('change-words.brought-back', { name });
}

const offerSaid = {
  added: 'change-words.added-the-offer',
  changed: 'change-words.changed-the-offer',
  removed: 'change-words.removed-the-offer',
} as const;

export async function offerWords(
  context: CallContext,
  did: keyof typeof offerSaid,
  { itemId, supplier }: { readonly itemId: string; readonly supplier: string },
): Promise<string> {
  return say(offerSaid[did], { supplier, itemName: await itemName(context, itemId) });
}

export function fileWords(changes: StashFileChanges): string {
  const parts = [
    [changes.newItemCount, 'change-words.new-items'],
    [changes.changedItemCount, 'change-words.changed-items'],
    [changes.newLotCount, 'change-words.new-lots'],
    [changes.correctionCount, 'change-words.corrections'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, what]) => say(what, { count }));
  return say('change-words.brought-rows-into-the-stash', { said: said.join(', ') });
}
