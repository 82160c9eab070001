/** Every balance, value, coat count and cost of the program, held against the book. */
import type { Beside } from '../beside.ts';
import { cutBySize, cutCosts, isSound, itemAccount, type LineValue, lineValues } from './figures.ts';
import { type Place, reservedAt } from './model.ts';
import { coverOf, get, sizes, slotIds, stillNeeded, unlike, type Workshop } from './workshop.ts';

/** Tables that only grow, each with a number that its rows are written by. */
const growing = ['movement', 'cutting', 'lot', 'length'] as const;

/** What stands in the tables that only grow, each row as it was first seen. */
export interface Written {
  readonly rows: Map<string, string>;
  readonly lastEntry: Map<string, number>;
}

export const nothingWritten = (): Written => ({ rows: new Map(), lastEntry: new Map() });

type GrowingRow = { readonly id: string; readonly entry: number };

/** Learns the rows that were added since it was last asked. */
export async function learnWritten(beside: Beside, { rows, lastEntry }: Written): Promise<void> {
  for (const table of growing) {
    const added = (await beside.ask(
      `SELECT * FROM ${table} WHERE entry > ? ORDER BY entry`,
      lastEntry.get(table) ?? 0,
    )) as unknown as GrowingRow[];
    for (const row of added) rows.set(`${table} ${row.id}`, JSON.stringify(row));
    lastEntry.set(table, added.at(-1)?.entry ?? lastEntry.get(table) ?? 0);
  }
}

/** Rows that are no longer as they were first seen. */
export async function rewritten(beside: Beside, { rows }: Written): Promise<string[]> {
  const now = new Map<string, string>();
  for (const table of growing) {
    for (const row of await beside.ask(`SELECT * FROM ${table}`)) {
      now.set(`${table} ${String(row.id)}`, JSON.stringify(row));
    }
  }
  return [...rows].flatMap(([key, row]) => (now.get(key) === row ? [] : [`${key} was rewritten`]));
}

/** Every balance and value, and of some of the plans the coats, what they cost as cut and what is still to cut. */
export async function compare(workshop: Workshop, plans: Iterable<number>): Promise<string[]> {
  const values = lineValues(workshop.book);
  const differences = [...(await balances(workshop, values)), ...(await account(workshop, values))];
  for (const plan of plans) {
    differences.push(...(await costAsCut(workshop, plan, values)), ...(await needed(workshop, plan)));
  }
  return differences;
}

type Row = readonly (string | number | null)[];

const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
/** Rows in one order, whichever they came in. */
const inOrder = (rows: readonly Row[]) => rows.map((row) => row.join(' ')).sort();

async function balances(
  { beside, book, itemIds, plans, lotIds, places }: Workshop,
  values: readonly LineValue[],
): Promise<string[]> {
  const kept = async (sql: string) =>
    inOrder((await beside.ask(sql)).map((row) => Object.values(row) as unknown as Row));
  const together = (some: readonly Place[]) => [sum(some.map(({ hand }) => hand)), sum(some.map(reservedAt))];
  const placesOf = (item: number) => book.places.filter(({ lot }) => book.lots[lot]!.item === item);
  return [
    ...(isSound(book) ? [] : ['the book itself sets aside more than there is']),
    ...unlike(
      'lots',
      await kept('SELECT lot_id, on_hand_milli, reserved_milli FROM lot_balance'),
      inOrder(lotIds.map((id, lot) => [id, ...together(book.places.filter((place) => place.lot === lot))])),
    ),
    ...unlike(
      'lengths',
      await kept('SELECT length_id, on_hand_milli, reserved_milli FROM length_balance'),
      inOrder(
        places.flatMap(({ lengthId }, at) =>
          lengthId === null ? [] : [[lengthId, ...together([book.places[at]!])]],
        ),
      ),
    ),
    ...unlike(
      'items',
      await kept('SELECT item_id, on_hand_milli, reserved_milli, value_minor FROM item_balance'),
      inOrder(
        itemIds.map((id, item) => [id, ...together(placesOf(item)), itemAccount(book, item, values).onHand]),
      ),
    ),
    ...unlike(
      'what coats have set aside',
      await kept(
        `SELECT plan_id, lot_id, length_id, sum(reserved_milli) FROM movement
         WHERE reserved_milli <> 0 GROUP BY 1, 2, 3 HAVING sum(reserved_milli) <> 0`,
      ),
      inOrder(
        book.places.flatMap((place, at) =>
          place.reserved.map(({ plan, milli }) => [
            plans[plan]!.id,
            places[at]!.lotId,
            places[at]!.lengthId,
            milli,
          ]),
        ),
      ),
    ),
  ];
}

async function account(
  { ask, book, itemIds, plans }: Workshop,
  values: readonly LineValue[],
): Promise<string[]> {
  const { items, coats } = await get(ask, 'readAccount', {});
  const ofPlan = ({ cutting }: LineValue, plan: number) =>
    cutting !== null && book.cuttings[cutting]!.plan === plan;
  return [
    ...unlike(
      'the account',
      itemIds.map((id) => {
        const real = items.find((item) => item.itemId === id)?.account;
        return (
          real && [
            real.receivedMinor,
            real.consumedMinor,
            real.writtenOffMinor,
            real.correctedMinor,
            real.onHandMinor,
          ]
        );
      }),
      itemIds.map((_, item) => {
        const own = itemAccount(book, item, values);
        return [own.received, own.consumed, own.writtenOff, own.corrected, own.onHand];
      }),
    ),
    ...unlike(
      'what coats consumed',
      inOrder(
        coats.flatMap(({ planId, consumedMinor }) => (consumedMinor === 0 ? [] : [[planId, consumedMinor]])),
      ),
      inOrder(
        plans.flatMap(({ id }, plan) => {
          const minor = -sum(values.filter((line) => ofPlan(line, plan)).map((line) => line.minor));
          return minor === 0 ? [] : [[id, minor]];
        }),
      ),
    ),
  ];
}

async function costAsCut(
  { ask, book, plans }: Workshop,
  plan: number,
  values: readonly LineValue[],
): Promise<string[]> {
  const { id, plan: coat } = plans[plan]!;
  const { sheet } = await get(ask, 'readCutSheet', { planId: id });
  const costs = cutCosts(book, plan, values);
  const coats = cutBySize(book, plan, 'coats');
  const batchMinor = sum([...costs.values()].map(({ costMinor }) => costMinor));
  return unlike(
    `cost as cut of ${coat.name}`,
    [
      inOrder(sheet.slots.map(({ slotId, costMinor, wasteMinor }) => [slotId, costMinor, wasteMinor])),
      [sheet.batchMinor, sheet.wasteMinor, sheet.coatCount, sum(sheet.perCoatMinor)],
      sizes.map((size) => sheet.coats.find((each) => each.size === size)?.coatCount ?? 0),
    ],
    [
      inOrder([...costs].map(([slot, { costMinor, wasteMinor }]) => [slotIds[slot]!, costMinor, wasteMinor])),
      [
        batchMinor,
        sum([...costs.values()].map(({ wasteMinor }) => wasteMinor)),
        sum(coats),
        sum(coats) === 0 ? 0 : batchMinor,
      ],
      coats,
    ],
  );
}

async function needed(workshop: Workshop, plan: number): Promise<string[]> {
  const { plan: coat, counts } = workshop.plans[plan]!;
  const { needs } = await coverOf(workshop, plan);
  const shell = needs.find((need) => need.slotId === 'shell');
  const backs = (size: string) =>
    shell?.kind === 'shapes'
      ? sum(shell.shapes.filter((shape) => shape.size === size).map(({ count }) => count))
      : null;
  const amount = (slotId: string) => {
    const need = needs.find((each) => each.slotId === slotId);
    return need?.kind === 'amount' ? Math.round(need.amount * 1000) : null;
  };
  const cut = cutBySize(workshop.book, plan, 'backs');
  return unlike(
    `what is still to cut of ${coat.name}`,
    [...sizes.map(backs), amount('fill'), amount('snaps')],
    [
      ...counts.map((count, size) => Math.max(0, count - cut[size]!)),
      stillNeeded(workshop, plan, 1),
      stillNeeded(workshop, plan, 2),
    ],
  );
}
