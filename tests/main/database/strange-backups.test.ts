import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../main/database/backups/backup-folder.ts';
import { migrations } from '../../../main/database/schema/migrations.ts';
import { openServices } from '../../../main/services/calls/services.ts';
import { releasedFolder } from '../../fixtures/released/make.ts';
import { type Asking, filesIn, openAsking, receivedFill, tempFolder } from '../asking.ts';

const endless = 'WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) FROM n';

/** What a backup may look like that was changed elsewhere, and what is said of it. */
const changes: readonly (readonly [string, string, string])[] = [
  [
    'a trigger that never ends',
    `CREATE TRIGGER wait AFTER UPDATE ON workshop BEGIN ${endless}; END`,
    'holds the trigger wait, which belongs to no workshop',
  ],
  ['a ledger that may be changed', 'DROP TRIGGER movement_stays', 'lacks the trigger movement_stays'],
  [
    'a trigger that does something else',
    'DROP TRIGGER item_begins; CREATE TRIGGER item_begins AFTER INSERT ON item BEGIN SELECT 1; END',
    'holds the trigger item_begins in another form than a workshop has it',
  ],
  [
    'a view in place of a table',
    `PRAGMA foreign_keys = OFF; DROP TABLE workshop; CREATE VIEW workshop AS ${endless}`,
    'holds the view workshop, which belongs to no workshop',
  ],
  [
    'a table too many',
    'CREATE TABLE songs (title TEXT)',
    'holds the table songs, which belongs to no workshop',
  ],
  [
    'a column too many',
    "ALTER TABLE item ADD COLUMN shelf_mark TEXT NOT NULL DEFAULT 'none'",
    'holds the table item in another form than a workshop has it',
  ],
  ['an index too few', 'DROP INDEX offer_by_item', 'lacks the index offer_by_item'],
  ['no row for the workshop', 'DELETE FROM workshop', 'holds no workshop'],
];

function changed(file: string, sql: string): void {
  const database = new SqliteDatabase(file);
  database.exec(sql);
  database.close();
}

async function withBackup(): Promise<{ asking: Asking; folder: string; name: string }> {
  const asking = openAsking();
  await receivedFill(asking, 640);
  const { folder, rows } = await asking.get('backUp', {});
  return { asking, folder, name: rows[0]!.name };
}

describe('a backup that is no workshop through and through', () => {
  test.each(changes)('%s: is refused, and nothing is changed', async (_, sql, what) => {
    const { asking, folder, name } = await withBackup();
    copyFileSync(join(folder, name), join(folder, 'odd.sqlite'));
    changed(join(folder, 'odd.sqlite'), sql);
    const before = filesIn(folder);
    const [problem] = await asking.refusal('restoreBackup', { name: 'odd.sqlite' });
    expect(problem).toEqual({
      where: join(folder, 'odd.sqlite'),
      what,
      fix: 'Choose another backup; this one was left as it was.',
    });
    expect(filesIn(folder)).toEqual(before);
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(1);
  });

  test('one without any table is refused, whatever version it says it is', async () => {
    const { asking, folder } = await withBackup();
    for (const version of [0, 1, migrations.length]) {
      const file = join(folder, `bare ${version}.sqlite`);
      changed(file, `PRAGMA application_id = ${0x426f4261}; PRAGMA user_version = ${version}`);
      const [problem] = await asking.refusal('restoreBackup', { name: `bare ${version}.sqlite` });
      expect(problem?.what).toMatch(version === 0 ? /^holds no workshop$/ : /^lacks the table /);
    }
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(1);
  });

  test('of an earlier version is brought back and brought forward', async () => {
    const { asking, folder } = await withBackup();
    for (const [name, itemCount] of [
      ['0001.sqlite', 1],
      ['0006.sqlite', 4],
    ] as const) {
      copyFileSync(join(releasedFolder, name), join(folder, name));
      expect((await asking.get('restoreBackup', { name })).itemCount).toBe(itemCount);
    }
    const facts = await asking.get('workshopFacts', {});
    expect([facts.schemaVersion, facts.fileProblems]).toEqual([migrations.length, []]);
  });
});

describe('a file of that kind put in place by hand', () => {
  test.each(changes)('%s: is not opened either', async (_, sql, what) => {
    const { asking, folder, name } = await withBackup();
    const elsewhere = join(tempFolder(), 'own.sqlite');
    copyFileSync(join(folder, name), elsewhere);
    changed(elsewhere, sql);
    asking.services.close();
    const opened = openServices({ dataFile: elsewhere, demoFile: `${elsewhere}-demo` });
    if (opened.ok) opened.value.close();
    expect(opened.ok ? 'opened' : opened.problems[0]?.what).toBe(what);
    expect(() => openAsking({ dataFile: elsewhere, isReadOnly: true })).toThrow(what);
    expect(filesIn(join(elsewhere, '..'))).toEqual(['own.sqlite']);
    expect(backupFolder(elsewhere)).not.toBe(folder);
  });
});
