/** The calls about price lists: what a list would do, doing it, and the offers of the workshop as one. */
import { priceListSteps } from '../../../shared-core/exchange/price-list/price-list.ts';
import type { PriceList } from '../../../shared-core/exchange/price-list/price-list-shape.ts';
import { priceListCsv } from '../../../shared-core/exchange/price-list/price-list-write.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';
import { inSlices, slices } from '../calls/in-slices.ts';
import { offerRow } from './offers.ts';
import { readSettings } from '../workshop/settings.ts';
import { readOffers } from '../stock/shelf.ts';
import { supplierSpelling } from './suppliers.ts';

export const priceListCalls = { checkPriceList, bringInPriceList, priceList } satisfies Calls<
  'checkPriceList' | 'bringInPriceList' | 'priceList'
>;

/** More than a maker mends before trying again; checking tells of all. */
const maxProblems = 60;

/** Problems are part of the answer here: the maker sees what the list would do, line by line. */
async function checkPriceList(
  context: CallContext,
  input: CallInput<'checkPriceList'>,
): Promise<Result<PriceList>> {
  return ok(await inSlices(priceListSteps(input.text, await sources(context))));
}

/** All of it or nothing: one line with a problem keeps the whole list out. */
async function bringInPriceList(
  context: CallContext,
  input: CallInput<'bringInPriceList'>,
): Promise<Result<{ readonly addedCount: number; readonly changedCount: number }>> {
  const { queries } = context;
  const { rows, problems } = await inSlices(priceListSteps(input.text, await sources(context)));
  if (problems.length > 0) return err(...problems.slice(0, maxProblems));
  const spelling = await supplierSpelling(queries);
  let addedCount = 0;
  let changedCount = 0;
  const pause = slices();
  for (const { offer, does } of rows) {
    if (does === 'nothing new') continue;
    await pause();
    const row = offerRow({ ...offer, supplier: spelling(offer.supplier) });
    if (does === 'adds') {
      addedCount++;
      await queries
        .insertInto('offer')
        .values({ ...row, id: newId() })
        .execute();
    } else {
      changedCount++;
      await queries.updateTable('offer').set(row).where('id', '=', offer.id).execute();
    }
  }
  return ok({ addedCount, changedCount });
}

async function priceList(context: CallContext): Promise<Result<{ readonly text: string }>> {
  const { items, offers, currency } = await sources(context);
  return ok({ text: priceListCsv(items, offers, currency) });
}

async function sources({ queries }: CallContext) {
  const items = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name', 'colour'])
    .where('archived', '=', 0)
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  const offers = await readOffers(
    queries,
    items.map(({ id }) => id),
  );
  return { items, offers, currency: (await readSettings(queries)).currency };
}
