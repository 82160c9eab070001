/** A whole workshop carried from a file to a database and back, and kept only where both are the same. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openWorkshop } from '../../../main/database/file/connection.ts';
import { moveWorkshop } from '../../../main/database/move.ts';
import { runMove } from '../../../main/doors/move-command.ts';
import { openServices } from '../../../main/services/calls/services.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { fillLargeStash, largeStash } from '../../fixtures/large-stash.ts';
import { dump, openDesk, tempFolder } from '../asking.ts';
import { createDatabase, dropDatabase, dumpDatabase, freshAddress, queryAt } from './test-database.ts';

const now = () => new Date('2026-10-04T08:00:00.000Z');
const moving = (from: string, to: string) => moveWorkshop({ from, to, now, waitMs: 5000 });
const told = (outcome: Awaited<ReturnType<typeof moving>>) =>
  outcome.ok ? 'moved' : outcome.problems.map(problemSentence).join('\n');

/** A file with every kind of row: the demo with a photo, a cutting taken back and a kept lay would be found in it. */
async function fullFile(folder: string): Promise<string> {
  const file = join(folder, 'own.sqlite');
  const opened = openWorkshop(file, { now });
  if (!opened.ok) throw new Error('no file');
  fillLargeStash(opened.value.connection, {
    ...largeStash,
    itemCount: 60,
    lotCount: 200,
    movementCount: 1500,
  });
  const { connection } = opened.value;
  connection.exec(`
    INSERT INTO plan VALUES ('p', 'Fen coat', 'EU 42', 6, 2, '2026-03-27');
    INSERT INTO plan_revision VALUES ('p', 1, '{"a":1}', '', '2026-03-27', NULL), ('p', 2, '{"é":"\\ud83e"}', 'x', '2026-03-28', 1);
    INSERT INTO cutting (id, plan_id, revision, at, coats, slots, note, undoes)
      VALUES ('c', 'p', 1, '2026', '[]', '[]', '', NULL), ('d', 'p', 1, '2026', '[]', '[]', '', 'c');
    INSERT INTO offer VALUES ('o', 'item-1', 'Marl & Wick', '{}', 12, '2026-01-01', '[]', 3);
    INSERT INTO supplier VALUES ('marl', 'Marl & Wick', 1, NULL, 4);
    INSERT INTO shopping_tick VALUES ('p', 'o', '2026');
    INSERT INTO season_plan VALUES ('p', 1, NULL);
    INSERT INTO item_photo VALUES ('item-2', 'image/jpeg', x'00ff7f80', 3, 4, '2026');
    INSERT INTO kept_lay (entry, job_hash, result, kept_at) VALUES (7, 'h', '{}', '2026');
    INSERT INTO upgrade_note (schema, note, seen_at) VALUES (9, 'A note.', NULL);
    INSERT INTO last_change VALUES (1, 'l', 'Counted', 3, 4, '[]', '[]');
  `);
  opened.value.close();
  return file;
}

/** Tables in which nothing stands would prove nothing. */
function emptyTables(dumped: string): readonly unknown[] {
  return (JSON.parse(dumped) as [string, unknown[]][])
    .filter(([, rows]) => rows.length === 0)
    .map(([name]) => name);
}

/** Whichever order the rows of a table were written in. */
function inOrder(dumped: string): string {
  const tables = JSON.parse(dumped) as [string, unknown[]][];
  return JSON.stringify(tables.map(([name, rows]) => [name, rows.map((row) => JSON.stringify(row)).sort()]));
}

test('from a file to a database and back: the file that comes of it is the same, row for row', async () => {
  const folder = tempFolder();
  const file = await fullFile(folder);
  const before = dump(file);
  expect(emptyTables(before)).toEqual([]);
  const address = freshAddress();
  await createDatabase(address, 'empty');
  const out: string[] = [];
  expect(await runMove([file, address], (text) => out.push(text))).toEqual({ ok: true, value: null });
  expect(out.join('\n')).toContain('movement: 1,500');
  expect(out.join('\n')).not.toContain('Fenwalk');
  expect(emptyTables(await dumpDatabase(address))).toEqual([]);
  const back = join(folder, 'back.sqlite');
  expect(told(await moving(address, back))).toBe('moved');
  expect(inOrder(dump(back)) === inOrder(before)).toBe(true);
  expect(dump(file) === before).toBe(true);
  // Both are workshops like any other.
  const opened = openServices({ dataFile: back, demoFile: join(folder, 'demo.sqlite') });
  expect(opened.ok).toBe(true);
  if (opened.ok) await opened.value.close();
  const desk = openDesk({ dataFile: address });
  const { rows } = await desk.get('listItems', {
    search: '',
    kinds: [],
    sortBy: 'name',
    isDescending: false,
    offset: 0,
    limit: 100,
  });
  expect(rows).toHaveLength(60);
  await desk.services.close();
  await dropDatabase(address);
});

test('what is there already is never written over, neither a file nor a workshop', async () => {
  const folder = tempFolder();
  const file = await fullFile(folder);
  const address = freshAddress();
  await createDatabase(address);
  const before = await dumpDatabase(address);
  expect(told(await moving(file, address))).toContain('holds a workshop already');
  expect((await dumpDatabase(address)) === before).toBe(true);
  const there = join(folder, 'there.sqlite');
  expect(told(await moving(file, there))).toBe('moved');
  const kept = dump(there);
  expect(told(await moving(address, there))).toContain('is there already');
  expect(dump(there) === kept).toBe(true);
  expect(readdirSync(folder).filter((name) => name.includes('.new'))).toEqual([]);
  await dropDatabase(address);
});

test('an empty database is no source, and stays empty', async () => {
  const address = freshAddress();
  await createDatabase(address, 'empty');
  expect(told(await moving(address, join(tempFolder(), 'to.sqlite')))).toContain('holds no workshop');
  expect(await queryAt(address, "select tablename from pg_tables where schemaname = 'public'")).toEqual([]);
  await dropDatabase(address);
});

test('a balance that its movements do not add up to is carried nowhere', async () => {
  const folder = tempFolder();
  const file = await fullFile(folder);
  const forged = new SqliteDatabase(file);
  const trigger = forged
    .prepare("SELECT sql FROM sqlite_schema WHERE name = 'lot_counts'")
    .pluck()
    .get() as string;
  // The value of the item follows, so that only the ledger can tell.
  forged.exec(
    `DROP TRIGGER lot_counts; UPDATE lot_balance SET on_hand_milli = on_hand_milli + 1 WHERE lot_id = 'lot-3'; ${trigger}`,
  );
  forged.close();
  const address = freshAddress();
  await createDatabase(address, 'empty');
  expect(told(await moving(file, address))).toContain(
    'contradicts itself: lot_balance lot-3 is not what its movements add up to',
  );
  expect(await queryAt(address, "select tablename from pg_tables where schemaname = 'public'")).toEqual([]);
  await dropDatabase(address);
});

test('a row that does not come out as it went in is noticed, and nothing of it all is kept', async () => {
  const folder = tempFolder();
  const file = await fullFile(folder);
  const address = freshAddress();
  await createDatabase(address, 'empty');
  // A database that changes what it is given: a rule is put on the table as it is made.
  await queryAt(
    address,
    `create function forge() returns event_trigger language plpgsql as $$
     begin
       if exists (select 1 from pg_event_trigger_ddl_commands() where object_identity = 'public.supplier') then
         create rule forged as on insert to supplier do also update supplier set lead_days = 5;
       end if;
     end $$;
     create event trigger forging on ddl_command_end when tag in ('CREATE TABLE') execute function forge()`,
  );
  expect(told(await moving(file, address))).toContain(
    'did not keep what was carried: supplier marl is not the same',
  );
  expect(await queryAt(address, "select tablename from pg_tables where schemaname = 'public'")).toEqual([]);
  await dropDatabase(address);
});

test('a file of an older version is opened in the window first, and one that is not there is said to be so', async () => {
  const folder = tempFolder();
  const to = join(folder, 'to.sqlite');
  expect(told(await moving(join(folder, 'none.sqlite'), to))).not.toBe('moved');
  const file = await fullFile(folder);
  const older = new SqliteDatabase(file);
  older.pragma('user_version = 12');
  older.close();
  expect(told(await moving(file, to))).toContain('was written by an older version');
  expect(existsSync(to)).toBe(false);
  expect(await runMove([file], () => {})).toMatchObject({ ok: false });
});

test('a desk makes a backup that is a workshop of its own, and brings one back for every desk', async () => {
  const first = openDesk();
  const { itemId } = await first.get('saveItem', {
    itemId: null,
    kind: 'fill',
    name: 'Fenwalk down',
    colour: '',
    place: '',
    notes: '',
    facts: {},
    typed: {},
  });
  const then = await first.rows();
  const { rows, folder } = await first.get('backUp', {});
  expect(rows.map(({ kind }) => kind)).toEqual(['by hand']);
  expect(await dumpTables(join(folder, rows[0]!.name))).toBe(then);
  const second = openDesk({ dataFile: first.dataFile });
  await second.get('archiveItem', { itemId, isPutAway: true });
  const now = await first.rows();
  const heard = new Promise<void>((done) => second.services.onChangeElsewhere(done));
  await first.get('restoreBackup', { name: rows[0]!.name });
  await heard;
  expect(await first.rows()).toBe(then);
  // What stood there is kept, and the ledger goes on under its rules.
  const backups = (await first.get('listBackups', {})).rows;
  expect(backups.map(({ kind }) => kind)).toEqual(['before bringing back', 'by hand']);
  expect(await dumpTables(join(folder, backups[0]!.name))).toBe(now);
  expect((await second.get('readItem', { itemId })).isPutAway).toBe(false);
  await second.get('receiveLot', {
    itemId,
    receivedOn: '2026-03-27',
    supplier: '',
    dyeLot: '',
    priceMinor: 1,
    amount: 2,
    lengths: [],
  });
  await expect(second.beside('DELETE FROM movement')).rejects.toThrow('the ledger only grows');
});

/** A file's tables as dumpDatabase gives those of a database. */
async function dumpTables(file: string): Promise<string> {
  const address = freshAddress();
  await createDatabase(address, 'empty');
  try {
    expect(told(await moving(file, address))).toBe('moved');
    return await dumpDatabase(address);
  } finally {
    await dropDatabase(address);
  }
}
