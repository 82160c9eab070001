/** Rows of the ledger and the places they are about: what is written off adds one and changes none. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Selectable } from 'kysely';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { type Counted, type ItemKind, kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { Movement, MovementKind } from '../../../shared-core/stash/stash.ts';
import { fromMilli, toMilli } from '../../../shared-core/stash/stash.ts';
import type { Schema } from '../../database/schema/schema.ts';
import { type CallContext, newId } from '../calls/call.ts';
import { readSettings } from '../workshop/settings.ts';
import { lotStands } from '../../database/schema/query-parts.ts';

const countedAs: Readonly<Record<Counted, QuantityKind>> = {
  length: 'length',
  mass: 'mass',
  thread: 'threadLength',
  pieces: 'count',
};

/** Answers what is left of the length, or of the lot where the kind has no lengths. */
export async function writeOff(
  context: CallContext,
  input: CallInput<'writeOff'>,
): Promise<Result<{ onHand: number }>> {
  const shelf = await placeOnShelf(context, input.lotId, input.lengthId);
  if (!shelf.ok) return shelf;
  const { onHandMilli, reservedMilli, lotId, lengthId, show } = shelf.value;
  const wholeness = amountProblem(shelf.value, input.amount, say('common.amount'));
  if (wholeness) return err(wholeness);
  const amountMilli = toMilli(input.amount);
  const freeMilli = Math.max(0, onHandMilli - reservedMilli);
  if (amountMilli > freeMilli) {
    const reserved = reservedMilli > 0 ? say('ledger.of-it-reserved', { show: show(reservedMilli) }) : '';
    const fix =
      freeMilli > 0
        ? say('ledger.write-off-or-less-or-correct', { show: show(freeMilli) })
        : say('ledger.nothing-is-free-to-write-off');
    return err({
      where: say('ledger.amount-of', { name: shelf.value.name }),
      what: say('ledger.is-more-than-is-free-is', { show: show(onHandMilli), reserved }),
      fix,
    });
  }
  await addMovement(context, {
    lotId,
    lengthId,
    kind: 'written off',
    onHandMilli: -amountMilli,
    reason: input.reason,
  });
  return ok({ onHand: fromMilli(onHandMilli - amountMilli) });
}

export interface NewMovement {
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly kind: MovementKind;
  readonly onHandMilli: number;
  /** Absent: 0. */
  readonly reservedMilli?: number;
  readonly planId?: string | null;
  readonly cuttingId?: string;
  /** The movement that it takes back: of a reversal, and of nothing else. */
  readonly reverses?: string;
  readonly reason: string;
}

export async function addMovement(context: CallContext, movement: NewMovement): Promise<void> {
  await context.queries.insertInto('movement').values(movementRow(context, movement)).execute();
}

/** The row of a movement that is booked now. */
export function movementRow(context: CallContext, movement: NewMovement) {
  return {
    id: newId(),
    at: context.now().toISOString(),
    kind: movement.kind,
    lot_id: movement.lotId,
    length_id: movement.lengthId,
    on_hand_milli: movement.onHandMilli,
    reserved_milli: movement.reservedMilli ?? 0,
    plan_id: movement.planId ?? null,
    reason: movement.reason,
    cutting_id: movement.cuttingId ?? null,
    reverses: movement.reverses ?? null,
  };
}

export function movementOf(row: Selectable<Schema['movement']>): Movement {
  return {
    id: row.id,
    at: row.at,
    kind: row.kind,
    lotId: row.lot_id,
    lengthId: row.length_id,
    onHandMilli: row.on_hand_milli,
    reservedMilli: row.reserved_milli,
    planId: row.plan_id,
    reason: row.reason,
    ...(row.cutting_id === null ? {} : { cuttingId: row.cutting_id }),
    ...(row.reverses === null ? {} : { reverses: row.reverses }),
  };
}

export interface CountedItem {
  readonly kind: ItemKind;
  readonly name: string;
  readonly facts: string;
}

export interface PlaceOnShelf extends CountedItem {
  readonly itemId: string;
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly onHandMilli: number;
  readonly reservedMilli: number;
  readonly show: (amountMilli: number) => string;
}

/** The lot, or the length of it, with what is there. A kind with lengths must name one, another kind none. */
export async function placeOnShelf(
  context: CallContext,
  lotId: string,
  lengthId: string | null,
): Promise<Result<PlaceOnShelf>> {
  const { queries } = context;
  const lot = await queries
    .selectFrom('lot')
    .innerJoin('item', 'item.id', 'lot.item_id')
    .innerJoin('lot_balance', 'lot_balance.lot_id', 'lot.id')
    .select([
      'item.id as itemId',
      'item.kind',
      'item.name',
      'item.facts',
      'lot_balance.on_hand_milli',
      'lot_balance.reserved_milli',
    ])
    .where('lot.id', '=', lotId)
    .where(lotStands())
    .executeTakeFirst();
  if (!lot)
    return err({
      where: say('ledger.the-lot'),
      what: say('ledger.is-not-in-the-stash'),
      fix: say('ledger.open-the-item-again-and-choose'),
    });
  const { hasLengths, counted, label } = kindRecords[lot.kind];
  if (hasLengths && lengthId === null) {
    return err({
      where: say('ledger.length-of', { lotName: lot.name }),
      what: say('ledger.is-not-named'),
      fix: say('ledger.lies-as-lengths-choose-which', { label }),
    });
  }
  if (!hasLengths && lengthId !== null) {
    return err({
      where: say('ledger.length-of', { lotName: lot.name }),
      what: say('ledger.is-named-but-there-are-none'),
      fix: say('ledger.leave-the-length-out'),
    });
  }
  const { system } = await readSettings(queries);
  const show = (amountMilli: number) => showQuantity(countedAs[counted], fromMilli(amountMilli), { system });
  const { itemId, kind, name, facts } = lot;
  const place = { itemId, kind, name, facts, lotId, lengthId, show };
  if (lengthId === null) {
    return ok({ ...place, onHandMilli: lot.on_hand_milli, reservedMilli: lot.reserved_milli });
  }
  const length = await queries
    .selectFrom('length')
    .innerJoin('length_balance', 'length_balance.length_id', 'length.id')
    .select(['length_balance.on_hand_milli', 'length_balance.reserved_milli'])
    .where('length.id', '=', lengthId)
    .where('length.lot_id', '=', lotId)
    .executeTakeFirst();
  if (!length) {
    return err({
      where: say('ledger.length-of', { lotName: lot.name }),
      what: say('ledger.is-not-one-of-this-lot'),
      fix: say('ledger.open-the-item-again-and-choose-2'),
    });
  }
  return ok({ ...place, onHandMilli: length.on_hand_milli, reservedMilli: length.reserved_milli });
}

/** The name of an item, and how its amounts are shown. */
export async function showOf(
  { queries }: CallContext,
  itemId: string,
): Promise<{ readonly name: string; readonly show: (amountMilli: number) => string }> {
  const { kind, name } = await queries
    .selectFrom('item')
    .select(['kind', 'name'])
    .where('id', '=', itemId)
    .executeTakeFirstOrThrow();
  const { system } = await readSettings(queries);
  const { counted } = kindRecords[kind];
  return {
    name,
    show: (amountMilli) => showQuantity(countedAs[counted], fromMilli(amountMilli), { system }),
  };
}

export async function itemName(context: CallContext, itemId: string): Promise<string> {
  return (await showOf(context, itemId)).name;
}

export const noSuchItem: Problem = {
  get where() {
    return say('ledger.the-item');
  },
  get what() {
    return say('ledger.is-not-in-the-stash');
  },
  get fix() {
    return say('ledger.open-the-stash-again-and-choose');
  },
};

/** Fastenings that are cut to size, so that a part of one may lie on the shelf. */
const cutForms: readonly unknown[] = ['cord', 'elastic', 'tape', 'hook and loop'];

/** The ledger counts thousandths; things that come one by one are counted whole. */
export function amountProblem(item: CountedItem, amount: number, field: string): Problem | null {
  const where = say('ledger.of', { field, itemName: item.name });
  if (toMilli(amount) <= 0)
    return {
      where,
      what: say('ledger.is-too-small-to-be-counted'),
      fix: say('common.check-the-number-and-its-unit'),
    };
  const isWhole =
    kindRecords[item.kind].counted === 'pieces' && !cutForms.includes(JSON.parse(item.facts).form);
  if (isWhole && !Number.isInteger(amount)) {
    return { where, what: say('common.is-not-a-whole-number'), fix: say('ledger.count-the-pieces-1-2-3') };
  }
  return null;
}
