/** Parts of queries that must be written as SQL. They mean the same in every dialect. */
import { type RawBuilder, sql, type SqlBool } from 'kysely';
import { itemKinds } from '../../../shared-core/stash/kinds.ts';

/** Lots that stand: those of which the receipt was not undone, the others are in the ledger alone. For queries that have the table `lot`. */
export function lotStands(): RawBuilder<SqlBool> {
  return sql<SqlBool>`not exists (select 1 from movement as back join movement as receipt on receipt.id = back.reverses
    where back.lot_id = lot.id and back.kind = 'reversed' and receipt.kind = 'received')`;
}

/** Items in whose search text the folded word stands. For queries that have the table `item`. PostgreSQL has its instr from its migrations. */
export function isFoundBy(word: string): RawBuilder<SqlBool> {
  return sql<SqlBool>`instr(item.search_text, ${word}) > 0`;
}

/** Sorts items by kind, in the order in which the kinds are listed everywhere. For queries that have the table `item`. */
export function kindOrder(): RawBuilder<number> {
  return sql<number>`case item.kind ${sql.join(
    itemKinds.map((kind, index) => sql`when ${sql.lit(kind)} then ${sql.lit(index)}`),
    sql` `,
  )} end`;
}
