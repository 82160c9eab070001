/** The calls about what suppliers sell. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { type Offer, offerProblems, soldAs } from '../../../shared-core/stash/offer.ts';
import type { OfferId } from '../../../shared-core/stash/stash.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';
import { offerWords } from '../stock/change-words.ts';
import { keepingChange } from '../stock/last-change.ts';
import { noSuchItem } from '../stock/ledger.ts';
import { supplierSpelling } from './suppliers.ts';

export const offerCalls = {
  saveOffer: (context, input) =>
    keepingChange(
      context,
      { offerIds: input.offerId === null ? [] : [input.offerId] },
      () => saveOffer(context, input),
      async ({ offerId }) => ({
        offerIds: [offerId],
        said: await offerWords(context, input.offerId === null ? 'added' : 'changed', input),
      }),
    ),
  removeOffer: async (context, input) => {
    const said = await removalWords(context, input.offerId);
    return keepingChange(
      context,
      { offerIds: [input.offerId] },
      () => removeOffer(context, input),
      () => ({ said }),
    );
  },
} satisfies Calls<'saveOffer' | 'removeOffer'>;

async function removalWords(context: CallContext, offerId: string): Promise<string> {
  const offer = await context.queries
    .selectFrom('offer')
    .select(['item_id as itemId', 'supplier'])
    .where('id', '=', offerId)
    .executeTakeFirst();
  return offer ? offerWords(context, 'removed', offer) : '';
}

const noSuchOffer: Problem = {
  get where() {
    return say('offers.the-offer');
  },
  get what() {
    return say('common.is-no-longer-there');
  },
  get fix() {
    return say('offers.open-the-item-again-it-may');
  },
};

async function saveOffer(
  context: CallContext,
  input: CallInput<'saveOffer'>,
): Promise<Result<{ offerId: OfferId }>> {
  const { queries } = context;
  const item = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name'])
    .where('id', '=', input.itemId)
    .where('archived', '=', 0)
    .executeTakeFirst();
  if (!item) return err(noSuchItem);
  const units = soldAs[kindRecords[item.kind].counted];
  if (!units.includes(input.unit.kind)) {
    return err({
      where: say('offers.selling-unit-of', { itemName: item.name }),
      what: say('offers.does-not-suit', {
        kindRecordsLabel: nounInSentence(kindRecords[item.kind].label),
        kind: input.unit.kind,
      }),
      fix: say('offers.choose', { units: units.join(' or ') }),
    });
  }
  const problems = offerProblems(input);
  if (problems.length > 0) return err(...problems);
  const offerId: OfferId = input.offerId ?? newId();
  const row = offerRow({ ...input, supplier: (await supplierSpelling(queries))(input.supplier) });
  if (input.offerId === null) {
    await queries
      .insertInto('offer')
      .values({ ...row, id: offerId })
      .execute();
    return ok({ offerId });
  }
  const changed = await queries
    .updateTable('offer')
    .set(row)
    .where('id', '=', offerId)
    .where('item_id', '=', item.id)
    .executeTakeFirst();
  return changed.numUpdatedRows === 0n ? err(noSuchOffer) : ok({ offerId });
}

/** The columns of an offer but its id. */
export function offerRow(offer: Omit<Offer, 'id'>) {
  return {
    item_id: offer.itemId,
    supplier: offer.supplier,
    unit: JSON.stringify(offer.unit),
    price_minor: offer.priceMinor,
    priced_on: offer.pricedOn,
    breaks: JSON.stringify(offer.breaks ?? []),
    least_count: offer.leastCount ?? 1,
  };
}

async function removeOffer(
  context: CallContext,
  input: CallInput<'removeOffer'>,
): Promise<Result<{ offerId: OfferId }>> {
  const removed = await context.queries
    .deleteFrom('offer')
    .where('id', '=', input.offerId)
    .executeTakeFirst();
  return removed.numDeletedRows === 0n ? err(noSuchOffer) : ok({ offerId: input.offerId });
}
