/** The lot, or the length of it, that a line of a cutting is taken from. */
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { Flaw, Item, Length } from '../../../shared-core/stash/stash.ts';
import type { CallContext } from '../calls/call.ts';
import { placeOnShelf } from '../stock/ledger.ts';
import { reservedBy } from './set-aside.ts';

export interface CutPlace {
  readonly key: string;
  readonly item: Item;
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly lot: { readonly priceMinor: number; readonly receivedMilli: number; readonly dyeLot: string };
  /** Null where the kind has no lengths. */
  readonly widthMm: number | null;
  readonly form: Length['form'] | null;
  readonly worthRatio: number;
  /** Its first wash is over. */
  readonly isWashed: boolean;
  readonly flaws: readonly Flaw[];
  readonly onHandMilli: number;
  /** Set aside by this plan, and by others. */
  readonly ownMilli: number;
  readonly othersMilli: number;
  /** Taken by the lines so far. */
  readonly cutMilli: number;
  readonly show: (amountMilli: number) => string;
}

export async function placeToCut(
  context: CallContext,
  planId: string,
  line: { readonly lotId: string; readonly lengthId: string | null },
): Promise<CutPlace | { readonly problems: readonly Problem[] }> {
  const { queries } = context;
  const { lotId, lengthId } = line;
  const place = await placeOnShelf(context, lotId, lengthId);
  if (!place.ok) return place;
  const { itemId, kind, name, facts, onHandMilli, reservedMilli, show } = place.value;
  const lot = await queries
    .selectFrom('lot')
    .select(['price_minor', 'received_milli', 'dye_lot'])
    .where('id', '=', lotId)
    .executeTakeFirstOrThrow();
  const length =
    lengthId === null
      ? null
      : await queries
          .selectFrom('length')
          .select(['width_mm', 'form', 'flaws', 'worth_ratio', 'is_washed'])
          .where('id', '=', lengthId)
          .executeTakeFirstOrThrow();
  const own = (await reservedBy(queries, { planId })).find(
    (each) => each.lotId === lotId && each.lengthId === lengthId,
  );
  const ownMilli = own?.reservedMilli ?? 0;
  return {
    key: `${lotId} ${lengthId ?? ''}`,
    item: { id: itemId, kind, name, facts: JSON.parse(facts) } as Item,
    lotId,
    lengthId,
    lot: { priceMinor: lot.price_minor, receivedMilli: lot.received_milli, dyeLot: lot.dye_lot },
    widthMm: length?.width_mm ?? null,
    form: length?.form ?? null,
    worthRatio: length?.worth_ratio ?? 1,
    isWashed: length?.is_washed === 1,
    flaws: length ? JSON.parse(length.flaws) : [],
    onHandMilli,
    ownMilli,
    othersMilli: reservedMilli - ownMilli,
    cutMilli: 0,
    show,
  };
}
