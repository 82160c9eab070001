/** Makes the demo file anew in one transaction: at any instant it holds either the old demo or the new one. */
import type { Database } from 'better-sqlite3';
import { type DemoWorkshop, demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { supplierKey } from '../../../shared-core/stash/supplier.ts';
import { applySteps, markSchema } from '../schema/migrate.ts';
import { migrations } from '../schema/migrations.ts';
import { searchText, sortKey } from '../schema/search-text.ts';

/** No query may be under way on the connection. Throws when the file cannot be written. */
export function rebuildDemo(connection: Database, now: () => Date): void {
  connection.pragma('foreign_keys = OFF');
  try {
    connection
      .transaction(() => {
        dropEverything(connection);
        for (const migration of migrations) applySteps(connection, migration);
        markSchema(connection, migrations.length);
        fill(connection, demoWorkshop(), now().toISOString());
        const broken = connection.pragma('foreign_key_check') as readonly unknown[];
        if (broken.length > 0) throw new Error(`the demo refers ${broken.length} times to what is not in it`);
      })
      .immediate();
  } finally {
    connection.pragma('foreign_keys = ON');
  }
}

/** The triggers go first, so that the ledger lets itself be dropped. */
function dropEverything(connection: Database): void {
  for (const kind of ['trigger', 'view', 'table']) {
    const names = connection
      .prepare("SELECT name FROM sqlite_schema WHERE type = ? AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
      .pluck()
      .all(kind) as string[];
    for (const name of names) connection.exec(`DROP ${kind} "${name}"`);
  }
}

function fill(connection: Database, demo: DemoWorkshop, at: string): void {
  const insert = (table: string, row: Readonly<Record<string, unknown>>) => {
    const columns = Object.keys(row);
    const marks = columns.map((column) => `@${column}`);
    connection.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${marks.join(', ')})`).run(row);
  };
  const { currency, pricing } = demo.workshop;
  const settings = { system: 'metric', currency, pricing };
  connection
    .prepare('UPDATE workshop SET name = ?, settings = ?')
    .run(demo.workshop.name, JSON.stringify(settings));
  for (const item of demo.items) {
    const words = demo.lots
      .filter((lot) => lot.itemId === item.id)
      .flatMap((lot) => [lot.supplier, lot.dyeLot]);
    insert('item', {
      id: item.id,
      kind: item.kind,
      name: item.name,
      colour: item.colour,
      place: item.place,
      notes: item.notes,
      facts: JSON.stringify(item.facts),
      typed: JSON.stringify(item.typed),
      name_key: sortKey(item.name),
      place_key: sortKey(item.place),
      search_text: searchText([item.name, item.colour, item.place, ...words]),
    });
  }
  for (const lot of demo.lots) {
    insert('lot', {
      id: lot.id,
      item_id: lot.itemId,
      received_on: lot.receivedOn,
      supplier: lot.supplier,
      dye_lot: lot.dyeLot,
      received_milli: lot.receivedMilli,
      price_minor: lot.priceMinor,
    });
  }
  for (const { id, lotId, widthMm, form, flaws } of demo.lengths) {
    insert('length', { id, lot_id: lotId, width_mm: widthMm, form, flaws: JSON.stringify(flaws) });
  }
  for (const plan of demo.plans) {
    const { id, name, size } = plan;
    insert('plan', { id, name, size, coat_count: plan.coatCount, revision: 1, changed_at: at });
    insert('plan_revision', { plan_id: id, revision: 1, plan: JSON.stringify(plan), said: '', at });
  }
  for (const [index, { planId, coatCount }] of demo.season.entries()) {
    insert('season_plan', { plan_id: planId, place: index + 1, coat_count: coatCount });
  }
  for (const movement of [...demo.movements].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))) {
    insert('movement', {
      id: movement.id,
      at: movement.at,
      kind: movement.kind,
      lot_id: movement.lotId,
      length_id: movement.lengthId,
      on_hand_milli: movement.onHandMilli,
      reserved_milli: movement.reservedMilli,
      plan_id: movement.planId,
      reason: movement.reason,
    });
  }
  for (const { name, deliveryMinor, freeFromMinor, leadDays } of demo.suppliers) {
    insert('supplier', {
      key: supplierKey(name),
      name,
      delivery_minor: deliveryMinor,
      free_from_minor: freeFromMinor,
      lead_days: leadDays,
    });
  }
  for (const { id, itemId, supplier, unit, priceMinor, pricedOn, breaks } of demo.offers) {
    insert('offer', {
      id,
      item_id: itemId,
      supplier,
      unit: JSON.stringify(unit),
      price_minor: priceMinor,
      priced_on: pricedOn,
      breaks: JSON.stringify(breaks ?? []),
    });
  }
}
