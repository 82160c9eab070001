/** Items put away: out of the lists and of what coats are offered, with all their history kept. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { ItemId } from '../../../shared-core/stash/stash.ts';
import type { Queries } from '../../database/store.ts';
import type { CallContext } from '../calls/call.ts';
import { isNameTaken } from './item-names.ts';
import { noSuchItem } from './ledger.ts';
import { setAsideOfItem } from '../cutting/set-aside.ts';

export async function isPutAway(queries: Queries, itemId: ItemId): Promise<boolean> {
  const item = await queries
    .selectFrom('item')
    .select('archived')
    .where('id', '=', itemId)
    .executeTakeFirst();
  return item?.archived === 1;
}

/** What a coat has set aside stays in sight; what comes back must not be told apart by nothing from another item. */
export async function archiveItem(
  { queries }: CallContext,
  { itemId, isPutAway: isAway }: CallInput<'archiveItem'>,
): Promise<Result<{ itemId: ItemId }>> {
  const item = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name', 'colour'])
    .where('id', '=', itemId)
    .executeTakeFirst();
  if (!item) return err(noSuchItem);
  if (isAway) {
    const [reserved] = await setAsideOfItem(queries, itemId);
    if (reserved) {
      return err({
        where: item.name,
        what: say('put-away.is-set-aside-for', { planName: reserved.planName }),
        fix: say('put-away.release-it-in-the-cover-of'),
      });
    }
  } else {
    if (await isNameTaken(queries, { ...item, itemId })) {
      return err({
        where: say('put-away.name', { itemName: item.name }),
        what: say('put-away.is-that-of-another-by-now', {
          kindRecordsLabel: nounInSentence(kindRecords[item.kind].label),
        }),
        fix: say('put-away.give-that-one-another-name-or'),
      });
    }
  }
  await queries
    .updateTable('item')
    .set({ archived: isAway ? 1 : 0 })
    .where('id', '=', itemId)
    .execute();
  return ok({ itemId });
}
