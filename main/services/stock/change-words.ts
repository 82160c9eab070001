/** What a change of the stash did, as a sentence without its full stop. */
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
  return `Received ${show(toMilli(amount))} of ${name}, ${dayWords(input.receivedOn)}`;
}

export async function atPlaceWords(
  context: CallContext,
  did: 'Wrote off' | 'Counted',
  input: { readonly lotId: string; readonly lengthId: string | null; readonly amount: number },
): Promise<string> {
  const place = await placeOnShelf(context, input.lotId, input.lengthId);
  return place.ok ? `${did} ${place.value.show(toMilli(input.amount))} of ${place.value.name}` : did;
}

export function takenStockWords({ correctedCount }: CallOutput<'takeStock'>): string {
  return `Took stock and corrected ${counted(correctedCount, 'count')}`;
}

export async function putAwayWords(
  context: CallContext,
  { itemId, isPutAway }: CallInput<'archiveItem'>,
): Promise<string> {
  const name = await itemName(context, itemId);
  return isPutAway ? `Put ${name} away` : `Brought ${name} back`;
}

export async function offerWords(
  context: CallContext,
  did: 'Added' | 'Changed' | 'Removed',
  { itemId, supplier }: { readonly itemId: string; readonly supplier: string },
): Promise<string> {
  return `${did} the offer of ${supplier} for ${await itemName(context, itemId)}`;
}

export function fileWords(changes: StashFileChanges): string {
  const parts = [
    [changes.newItemCount, 'new item'],
    [changes.changedItemCount, 'changed item'],
    [changes.newLotCount, 'new lot'],
    [changes.correctionCount, 'correction'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, what]) => counted(count, what));
  return `Brought rows into the stash: ${said.join(', ')}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
