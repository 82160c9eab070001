/** The search over everything: items, coats, suppliers and offers in which every word that was typed stands. */
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { type Find, maxFound } from '../../../shared-core/contract/find-calls.ts';
import { folded } from '../../../shared-core/measure/text/folded-text.ts';
import { ok, type Result } from '../../../shared-core/measure/problem.ts';
import { isCodeOf, isItemCode } from '../../../shared-core/stash/item-code.ts';
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import { isFoundBy } from '../../database/schema/query-parts.ts';
import { searchWords } from '../../database/schema/search-text.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { supplierNames } from '../purchasing/suppliers.ts';

export const findCall = { find } satisfies Calls<'find'>;

async function find(
  { queries }: CallContext,
  { text }: CallInput<'find'>,
): Promise<Result<CallOutput<'find'>>> {
  const words = searchWords(text);
  if (words.length === 0) return ok({ finds: [] });
  if (isItemCode(text)) {
    const all = await queries
      .selectFrom('item')
      .select(['id', 'kind', 'name', 'colour', 'archived'])
      .execute();
    return ok({ finds: all.filter(({ id }) => isCodeOf(text, id)).map(itemFind) });
  }
  const best = bestOf(words);
  const items = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name', 'colour', 'archived', 'search_text'])
    .where(({ and }) => and(words.map(isFoundBy)))
    .orderBy('name_key')
    .execute();
  const plans = await queries.selectFrom('plan').select(['id', 'name', 'size']).orderBy('name').execute();
  const offers = await queries
    .selectFrom('offer')
    .innerJoin('item', 'item.id', 'offer.item_id')
    .select(['offer.item_id', 'item.name', 'offer.supplier'])
    .groupBy(['offer.item_id', 'item.name', 'item.name_key', 'offer.supplier'])
    .orderBy('item.name_key')
    .orderBy('offer.supplier')
    .execute();
  return ok({
    finds: [
      ...best(
        items,
        ({ name }) => name,
        ({ search_text }) => search_text,
      ).map(itemFind),
      ...best(
        plans,
        ({ name }) => name,
        ({ name, size }) => folded(`${name} ${size}`),
      ).map(({ id, name, size }): Find => ({ kind: 'coat', planId: id, name, size })),
      ...best(await supplierNames(queries), (name) => name, folded).map(
        (name): Find => ({ kind: 'supplier', name }),
      ),
      ...best(
        offers,
        ({ name }) => name,
        ({ name, supplier }) => folded(`${name} ${supplier}`),
      ).map(({ item_id, name, supplier }): Find => ({ kind: 'offer', itemId: item_id, name, supplier })),
    ],
  });
}

interface FoundItem {
  readonly id: string;
  readonly kind: ItemKind;
  readonly name: string;
  readonly colour: string;
  readonly archived: number;
}

function itemFind({ id, kind, name, colour, archived }: FoundItem): Find {
  return { kind: 'item', itemId: id, name, itemKind: kind, colour, isPutAway: archived === 1 };
}

/** Those in which every word stands; names that begin with the first word come first, else as they came. */
function bestOf(words: readonly string[]) {
  return <Row>(
    rows: readonly Row[],
    nameOf: (row: Row) => string,
    textOf: (row: Row) => string,
  ): readonly Row[] => {
    const hits = rows.filter((row) => words.every((word) => textOf(row).includes(word)));
    const begins = (row: Row) => folded(nameOf(row)).startsWith(words[0]!);
    return [...hits.filter(begins), ...hits.filter((row) => !begins(row))].slice(0, maxFound);
  };
}
