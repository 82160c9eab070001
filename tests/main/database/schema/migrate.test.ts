import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { openWorkshop } from '../../../../main/database/file/connection.ts';
import type { Migration } from '../../../../main/database/schema/migration.ts';
import { migrations } from '../../../../main/database/schema/migrations.ts';
import { dump, filesIn, openAsking, receivedFill, tempFolder } from '../../asking.ts';

const now = () => new Date('2026-05-06T07:08:09.012Z');
/** The steps of tests come after the last there is. */
const last = migrations.length;
const second: Migration = {
  number: last + 1,
  what: 'shelf marks',
  sql: "ALTER TABLE item ADD COLUMN shelf_mark TEXT NOT NULL DEFAULT 'none'",
};
const third: Migration = {
  number: last + 2,
  what: 'moons',
  sql: 'CREATE TABLE moon (day TEXT PRIMARY KEY) STRICT',
};

function copyName(migration: Migration, ending = ''): string {
  return `own-before-${String(migration.number).padStart(4, '0')}-2026-05-06T07-08-09${ending}.sqlite`;
}

function open(file: string, list: readonly Migration[]) {
  return openWorkshop(file, { now, migrations: list, waitMs: 50 });
}

async function firstFile(): Promise<{ folder: string; file: string }> {
  const folder = tempFolder();
  const file = join(folder, 'own.sqlite');
  const asking = openAsking({ dataFile: file });
  await receivedFill(asking, 640);
  asking.services.close();
  return { folder, file };
}

function versionOf(file: string): unknown {
  const database = new SqliteDatabase(file, { readonly: true });
  const version = database.pragma('user_version', { simple: true });
  database.close();
  return version;
}

describe('an older file', () => {
  test('is brought forward step by step, with a dated copy from before each step', async () => {
    const { folder, file } = await firstFile();
    const before = dump(file);
    const opened = open(file, [...migrations, second, third]);
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    opened.value.close();
    const copies = [copyName(second), copyName(third)];
    expect(filesIn(folder)).toEqual([...copies, 'own.sqlite']);
    expect([versionOf(file), ...copies.map((copy) => versionOf(join(folder, copy)))]).toEqual([
      last + 2,
      last,
      last + 1,
    ]);
    expect(dump(join(folder, copies[0]!))).toBe(before);
    expect(dump(file)).toContain('"none"');
  });

  test('has a copy that opens as a workshop of its own', async () => {
    const { folder, file } = await firstFile();
    const opened = open(file, [...migrations, second]);
    if (opened.ok) opened.value.close();
    const asking = openAsking({ dataFile: join(folder, copyName(second)) });
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(1);
  });

  test('is left as it was by a step that fails halfway, and the sentence names the copy', async () => {
    const { folder, file } = await firstFile();
    const before = dump(file);
    const failing = { ...second, sql: `${second.sql}; UPDATE item SET name = ''` };
    const opened = open(file, [...migrations, failing, third]);
    const copy = copyName(second);
    expect(opened.ok ? null : opened.problems[0]?.what).toContain(
      `could not be brought up to schema ${last + 1} (shelf marks)`,
    );
    expect(opened.ok ? null : opened.problems[0]?.fix).toContain(copy);
    expect([dump(file), versionOf(file), filesIn(folder)]).toEqual([before, last, [copy, 'own.sqlite']]);
    expect(open(file, migrations).ok).toBe(true);
  });

  test('is not left with rows that refer to nothing', async () => {
    const { file } = await firstFile();
    const before = dump(file);
    const breaking = {
      ...second,
      sql: "UPDATE offer SET item_id = 'gone'; INSERT INTO offer (id, item_id, supplier, unit, price_minor, priced_on) VALUES ('o', 'gone', '', '{}', 1, '')",
    };
    const opened = open(file, [...migrations, breaking]);
    expect(opened.ok ? null : opened.problems[0]?.what).toMatch(/1 rows would refer to nothing/);
    expect(dump(file)).toBe(before);
  });

  test('may have its tables rebuilt, and references are enforced again afterwards', async () => {
    const { file } = await firstFile();
    const rebuilding = {
      ...second,
      sql: `CREATE TABLE offer_new (id TEXT PRIMARY KEY NOT NULL, item_id TEXT NOT NULL REFERENCES item (id)) STRICT;
        DROP TABLE offer; ALTER TABLE offer_new RENAME TO offer`,
    };
    const opened = open(file, [...migrations, rebuilding]);
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    expect(() => opened.value.connection.exec("INSERT INTO offer VALUES ('o', 'gone')")).toThrow(
      /FOREIGN KEY/,
    );
    opened.value.close();
  });

  test('gets no second copy where a copy of that name is there: the earlier one stays', async () => {
    const { folder, file } = await firstFile();
    const failing = { ...second, sql: 'nonsense' };
    open(file, [...migrations, failing]);
    open(file, [...migrations, failing]);
    expect(filesIn(folder)).toEqual([copyName(second, '-2'), copyName(second), 'own.sqlite']);
  });
});

describe('a file of today', () => {
  test('is opened again without a copy', async () => {
    const { folder, file } = await firstFile();
    const opened = open(file, migrations);
    if (opened.ok) opened.value.close();
    expect(filesIn(folder)).toEqual(['own.sqlite']);
  });

  test('is refused by a version from before its last step, and unchanged', async () => {
    const { folder, file } = await firstFile();
    const opened = open(file, [...migrations, second]);
    if (opened.ok) opened.value.close();
    const before = dump(file);
    const again = open(file, migrations);
    expect(again.ok ? null : again.problems[0]?.what).toBe(
      `was written by a newer version (its schema is ${last + 1}, this version knows ${last})`,
    );
    expect([dump(file), filesIn(folder).length]).toEqual([before, 2]);
  });

  test('is told by two programs that begin at once: one makes it, the other opens it', () => {
    const file = join(tempFolder(), 'own.sqlite');
    const opened = [open(file, migrations), open(file, migrations)];
    expect(opened.map((one) => one.ok)).toEqual([true, true]);
    for (const one of opened) if (one.ok) one.value.close();
  });
});

test('migrations without a gap, in order: anything else is a programmer\u2019s mistake', () => {
  const file = join(tempFolder(), 'own.sqlite');
  expect(() => open(file, [...migrations, third])).toThrow(
    `migration ${last + 2} stands in place ${last + 1}`,
  );
  expect(migrations.map((migration) => migration.number)).toEqual(migrations.map((_, index) => index + 1));
});
