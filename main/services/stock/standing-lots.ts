/** Lots that stand: those of which the receipt was not undone. The others are in the ledger alone. */
import { type RawBuilder, sql, type SqlBool } from 'kysely';

/** For queries that have the table `lot`. */
export function lotStands(): RawBuilder<SqlBool> {
  return sql<SqlBool>`not exists (select 1 from movement as back join movement as receipt on receipt.id = back.reverses
    where back.lot_id = lot.id and back.kind = 'reversed' and receipt.kind = 'received')`;
}
