/**
 * Movements of one change taken back: each that moved something is reversed by one that names it, and coats get back what
 * a count took from what they had set aside. Only where nothing that followed stands on them.
 */
import { say } from '../../../shared-core/wording/say.ts';
import type { Selectable } from 'kysely';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { Schema } from '../../database/schema/schema.ts';
import type { CallContext } from '../calls/call.ts';
import { inParts } from '../calls/in-parts.ts';
import { slices } from '../calls/in-slices.ts';
import { planNames, reservedBy } from '../cutting/set-aside.ts';
import { movementRow, type NewMovement, placeOnShelf } from './ledger.ts';

/** Both included; from > to: none. */
export interface Entries {
  readonly from: number;
  readonly to: number;
}

type Row = Selectable<Schema['movement']>;

const rowsAtOnce = 100;
const reason = 'undone';

/** Books the reversals, or answers what forbids them and books none. */
export async function undoMovements(context: CallContext, entries: Entries): Promise<Problem[]> {
  if (entries.from > entries.to) return [];
  const rows = await context.queries
    .selectFrom('movement')
    .selectAll()
    .where('entry', '>=', entries.from)
    .where('entry', '<=', entries.to)
    .orderBy('entry', 'desc')
    .execute();
  const problems = [
    ...(await followedBy(context, rows, entries)),
    ...(await setAsideAnew(context, rows, entries)),
  ];
  if (problems.length > 0) return problems;
  const back = rows.filter((row) => row.on_hand_milli !== 0).map(reversal);
  const given = rows.filter((row) => row.kind === 'released').map(givenBack);
  const pause = slices();
  for (const part of inParts([...back, ...given], rowsAtOnce)) {
    await pause();
    const some = part.map((movement) => movementRow(context, movement));
    await context.queries.insertInto('movement').values(some).execute();
  }
  return [];
}

function reversal({ id, lot_id, length_id, plan_id, on_hand_milli }: Row): NewMovement {
  const place = { lotId: lot_id, lengthId: length_id, planId: plan_id };
  return { ...place, kind: 'reversed', onHandMilli: -on_hand_milli, reverses: id, reason };
}

function givenBack({ lot_id, length_id, plan_id, reserved_milli }: Row): NewMovement {
  const place = { lotId: lot_id, lengthId: length_id, planId: plan_id };
  return { ...place, kind: 'reserved', onHandMilli: 0, reservedMilli: -reserved_milli, reason };
}

/** A lot must lie there as it came; another place must not be cut or counted since, and hold what is taken off again. */
async function followedBy(context: CallContext, rows: readonly Row[], entries: Entries): Promise<Problem[]> {
  const problems: Problem[] = [];
  const newLots = new Set(rows.filter(({ kind }) => kind === 'received').map((row) => row.lot_id));
  const later = Map.groupBy(await standingSince(context, entries), (row) => row.lot_id);
  const balances = await balancesOf(context, entries);
  const pause = slices();
  const places = new Map<string, { lotId: string; lengthId: string | null; change: number }>();
  for (const { lot_id: lotId, length_id: lengthId, on_hand_milli } of rows) {
    const key = `${lotId} ${lengthId}`;
    places.set(key, { lotId, lengthId, change: (places.get(key)?.change ?? 0) + on_hand_milli });
  }
  for (const { lotId, lengthId, change } of places.values()) {
    await pause();
    const since = later.get(lotId) ?? [];
    const isNew = newLots.has(lotId);
    const forbids = since.find(({ kind, length_id }) =>
      isNew ? true : length_id === lengthId && (kind === 'cut' || kind === 'corrected'),
    );
    const { onHandMilli, reservedMilli } = balances.get(lengthId ?? lotId)!;
    const isWrittenOff = change > onHandMilli;
    if (!forbids && !isWrittenOff && reservedMilli <= onHandMilli - change) continue;
    const place = await placeOnShelf(context, lotId, lengthId);
    if (!place.ok) throw new Error(`the place ${lotId} ${lengthId ?? ''} is not on the shelf`);
    const { name } = place.value;
    if (forbids || isWrittenOff) problems.push(followed(name, forbids?.kind ?? 'written off'));
    else problems.push(await setAsideProblem(context, name, { lotId, lengthId }));
  }
  return [...new Map(problems.map((problem) => [`${problem.where} ${problem.what}`, problem])).values()];
}

/** What is there now where these movements were: of each length, and of each lot, by id. */
async function balancesOf({ queries }: CallContext, { from, to }: Entries) {
  const moved = queries.selectFrom('movement').where('entry', '>=', from).where('entry', '<=', to);
  const lots = await queries
    .selectFrom('lot_balance')
    .select(['lot_id as id', 'on_hand_milli as onHandMilli', 'reserved_milli as reservedMilli'])
    .where('lot_id', 'in', moved.select('lot_id'))
    .execute();
  const lengths = await queries
    .selectFrom('length_balance')
    .select(['length_id as id', 'on_hand_milli as onHandMilli', 'reserved_milli as reservedMilli'])
    .where(
      'length_id',
      'in',
      moved.where('length_id', 'is not', null).select('length_id').$castTo<{ length_id: string }>(),
    )
    .execute();
  return new Map([...lots, ...lengths].map((row) => [row.id, row]));
}

/** Movements after these, of their lots, that moved something and were not taken back. */
function standingSince({ queries }: CallContext, { from, to }: Entries) {
  return queries
    .selectFrom('movement as later')
    .select(['later.kind', 'later.lot_id', 'later.length_id'])
    .where('later.entry', '>', to)
    .where('later.on_hand_milli', '<>', 0)
    .where('later.kind', '<>', 'reversed')
    .where('later.lot_id', 'in', (own) =>
      own.selectFrom('movement').select('lot_id').where('entry', '>=', from).where('entry', '<=', to),
    )
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(selectFrom('movement as back').select('back.id').whereRef('back.reverses', '=', 'later.id')),
      ),
    )
    .orderBy('later.entry')
    .execute();
}

function followed(name: string, kind: Row['kind']): Problem {
  switch (kind) {
    case 'cut':
    case 'returned':
      return {
        where: name,
        what: say('movement-undo.was-cut-since'),
        fix: say('movement-undo.take-the-cutting-back-first-or'),
      };
    case 'corrected':
      return {
        where: name,
        what: say('movement-undo.was-counted-since'),
        fix: say('movement-undo.the-last-count-holds-count-it'),
      };
    default:
      return {
        where: name,
        what: say('movement-undo.was-written-off-since'),
        fix: say('movement-undo.count-what-lies-there-instead'),
      };
  }
}

async function setAsideProblem(
  { queries }: CallContext,
  name: string,
  { lotId, lengthId }: { readonly lotId: string; readonly lengthId: string | null },
): Promise<Problem> {
  const [first] = (await reservedBy(queries, { lotIds: [lotId] })).filter(
    (each) => each.lengthId === lengthId,
  );
  const plan = first && (await planNames(queries, [first.planId])).get(first.planId);
  const fix = say('movement-undo.release-it-in-the-cover-of');
  return {
    where: name,
    what: say('movement-undo.is-set-aside', { plan: plan ? ` ${say('movement-undo.for', { plan })}` : '' }),
    fix,
  };
}

/** What a coat set aside or let go of meanwhile holds; what the count took from it is then not given back on top. */
async function setAsideAnew(
  { queries }: CallContext,
  rows: readonly Row[],
  { to }: Entries,
): Promise<Problem[]> {
  const problems: Problem[] = [];
  const released = new Map(
    rows.filter(({ kind }) => kind === 'released').map((row) => [`${row.plan_id} ${row.lot_id}`, row]),
  );
  for (const { plan_id: planId, lot_id: lotId } of released.values()) {
    const item = await queries
      .selectFrom('lot')
      .innerJoin('item', 'item.id', 'lot.item_id')
      .select(['item.id', 'item.name'])
      .where('lot.id', '=', lotId)
      .executeTakeFirstOrThrow();
    const anew = await queries
      .selectFrom('movement')
      .innerJoin('lot', 'lot.id', 'movement.lot_id')
      .select('movement.id')
      .where('movement.entry', '>', to)
      .where('movement.plan_id', '=', planId)
      .where('movement.reserved_milli', '<>', 0)
      .where('lot.item_id', '=', item.id)
      .executeTakeFirst();
    if (!anew || planId === null) continue;
    problems.push({
      where: item.name,
      what: say('movement-undo.was-set-aside-anew-for-since', {
        get: (await planNames(queries, [planId])).get(planId) ?? say('movement-undo.a-coat'),
      }),
      fix: say('movement-undo.count-what-lies-there-instead'),
    });
  }
  return problems;
}
