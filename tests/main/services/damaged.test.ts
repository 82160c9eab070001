import { copyFileSync, existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { backupFolder, keptCount } from '../../../main/database/backups/backup-folder.ts';
import { openServices } from '../../../main/services/calls/services.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type Asking, filesIn, openAsking, receivedFill, taffeta } from '../asking.ts';

/** A closed workshop of two items with a backup of the first. */
async function withBackup(): Promise<{ file: string; name: string }> {
  const asking = openAsking();
  await receivedFill(asking, 640);
  const { rows } = await asking.get('backUp', {});
  await asking.get('saveItem', taffeta);
  asking.services.close();
  return { file: asking.dataFile, name: rows[0]!.name };
}

async function told(asking: Asking): Promise<string> {
  const outcome = await asking.ask('workshopFacts', {});
  const problems = outcome.ok ? outcome.value.fileProblems : outcome.problems;
  return `${outcome.ok ? 'open' : 'shut'}: ${problems.map(problemSentence).join(' / ')}`;
}

const faults: readonly (readonly [string, (file: string) => void, RegExp])[] = [
  ['is empty', (file) => writeFileSync(file, ''), /is empty/],
  ['is a letter to an aunt', (file) => writeFileSync(file, 'Dear aunt. '.repeat(400)), /is not a database/],
  ['is cut short', (file) => truncateSync(file, 9000), /is cut short/],
  ['has rubbish in its first page', (file) => overwrite(file, 108, 400), /is damaged/],
  ['is of a newer version', (file) => changed(file, 'PRAGMA user_version = 9041'), /by a newer version/],
  ['lacks a trigger', (file) => changed(file, 'DROP TRIGGER movement_stays'), /lacks the trigger/],
];

function overwrite(file: string, from: number, to: number): void {
  const bytes = readFileSync(file);
  bytes.fill(0x5a, from, to);
  writeFileSync(file, bytes);
}

function overwriteWith(file: string, at: number, bytes: Buffer): void {
  const all = readFileSync(file);
  bytes.copy(all, at);
  writeFileSync(file, all);
}

function changed(file: string, sql: string): void {
  const database = new SqliteDatabase(file);
  database.exec(sql);
  database.close();
}

/** A row of the items is in its table and missing from the index that lists go by; no call would tell. */
function loseFromIndex(file: string): void {
  const database = new SqliteDatabase(file);
  const [page, bytes] = [
    database.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'lot_by_item'").pluck().get(),
    database.pragma('page_size', { simple: true }),
  ] as [number, number];
  database.close();
  // The number of cells on the index's one page: sqlite.org/fileformat2.html, section 1.6.
  overwriteWith(file, (page - 1) * bytes + 3, Buffer.from([0, 0]));
}

describe('a workshop that cannot be opened', () => {
  test.each(faults)(
    'because it %s: a backup is brought back from there, and the file is kept apart',
    async (_, spoil, what) => {
      const { file, name } = await withBackup();
      spoil(file);
      const bytes = readFileSync(file);
      const asking = openAsking({ dataFile: file });
      expect(await told(asking)).toMatch(what);
      expect(await told(asking)).toMatch(/^shut/);
      expect(readFileSync(file)).toEqual(bytes);
      const { folder, rows } = await asking.get('listBackups', {});
      expect(rows.map((row) => row.name)).toEqual([name]);
      expect((await asking.get('restoreBackup', { name })).itemCount).toBe(1);
      const apart = readdirSync(folder).filter((entry) => entry.startsWith('kept-apart-'));
      expect(apart).toHaveLength(1);
      expect(readFileSync(join(folder, apart[0]!, 'own.sqlite'))).toEqual(bytes);
      await asking.get('saveItem', { ...taffeta, name: 'Slatewater' });
      asking.services.close();
      const again = openAsking({ dataFile: file });
      expect((await again.get('workshopFacts', {})).itemCount).toBe(2);
    },
  );

  test('is kept apart with the log that lay beside it, and the log is not read into the backup', async () => {
    const { file, name } = await withBackup();
    writeFileSync(file, 'Dear aunt. '.repeat(400));
    writeFileSync(`${file}-wal`, 'the log of what was there before');
    const asking = openAsking({ dataFile: file });
    expect((await asking.get('restoreBackup', { name })).itemCount).toBe(1);
    const { folder } = await asking.get('listBackups', {});
    const [apart] = readdirSync(folder).filter((entry) => entry.startsWith('kept-apart-'));
    expect(readdirSync(join(folder, apart!))).toEqual(['own.sqlite', 'own.sqlite-wal']);
  });

  test('stays shut and as it is where the backup is no good either', async () => {
    const { file, name } = await withBackup();
    overwrite(join(backupFolder(file), name), 4096 * 3, 4096 * 9);
    overwrite(file, 108, 400);
    const bytes = readFileSync(file);
    const asking = openAsking({ dataFile: file });
    const refused = await asking.ask('restoreBackup', { name });
    expect(refused.ok ? '' : problemSentence(refused.problems[0]!)).toContain(
      'is damaged. Choose another backup; this one was left as it was.',
    );
    expect(await told(asking)).toMatch(/^shut/);
    expect(readFileSync(file)).toEqual(bytes);
    expect(filesIn(backupFolder(file))).toEqual([name]);
  });

  test('opens by itself once the maker has mended it by hand', async () => {
    const { file, name } = await withBackup();
    writeFileSync(file, '');
    const asking = openAsking({ dataFile: file });
    expect(await told(asking)).toMatch(/^shut/);
    copyFileSync(join(backupFolder(file), name), file);
    expect(await told(asking)).toMatch(/^open: $/);
    await asking.get('saveItem', taffeta);
  });

  test('has its demo all the same, and is claimed like any other', async () => {
    const { file } = await withBackup();
    writeFileSync(file, '');
    const asking = openAsking({ dataFile: file });
    expect((await asking.get('openDemo', {}, 'demo')).itemCount).toBeGreaterThan(3);
    const second = openServices({ dataFile: file, demoFile: `${file}-demo`, waitMs: 20 });
    expect(second.ok ? '' : second.problems[0]?.what).toContain('is open already in another window');
  });

  test('without any backup ends the start with a sentence that names the files beside it', async () => {
    const asking = openAsking();
    asking.services.close();
    overwrite(asking.dataFile, 108, 400);
    const opened = openServices({ dataFile: asking.dataFile, demoFile: `${asking.dataFile}-demo` });
    expect(opened.ok ? '' : opened.problems.map(problemSentence).join()).toMatch(
      /is damaged\. .*together with those beside it that end in -wal and -shm\./,
    );
    expect(existsSync(`${asking.dataFile}-open`)).toBe(false);
  });
});

describe('a workshop with damage that no call would tell of', () => {
  test('is opened, and told at the start and in every room', async () => {
    const { file } = await withBackup();
    loseFromIndex(file);
    const asking = openAsking({ dataFile: file });
    expect(await told(asking)).toMatch(/^open: .*is damaged\. What you see may lack entries\./);
    const reading = () => openAsking({ dataFile: file, isReadOnly: true });
    expect(reading).toThrow('is damaged');
  });

  test('makes no backup at the start, and none of those from before gives way', async () => {
    const { file } = await withBackup();
    for (let day = 0; day < keptCount + 2; day++)
      copyFileSync(file, join(backupFolder(file), `own-000${day}-2026-03-27T08-09-10-automatic.sqlite`));
    const before = filesIn(backupFolder(file));
    loseFromIndex(file);
    const asking = openAsking({ dataFile: file });
    expect(await told(asking)).toContain(
      'Until then no backup is made at the start, and none is taken away.',
    );
    expect(filesIn(backupFolder(file))).toEqual(before);
  });

  test('is healed by a backup, and is kept as it was even where SQLite can copy it no more', async () => {
    for (const spoil of [loseFromIndex, (file: string) => overwrite(file, 4096 * 8, 4096 * 14)]) {
      const { file, name } = await withBackup();
      spoil(file);
      const bytes = readFileSync(file);
      const asking = openAsking({ dataFile: file });
      expect(await told(asking)).toContain('is damaged');
      expect((await asking.get('restoreBackup', { name })).itemCount).toBe(1);
      expect(await told(asking)).toBe('open: ');
      const { folder, rows } = await asking.get('listBackups', {});
      const apart = readdirSync(folder).filter((entry) => entry.startsWith('kept-apart-'));
      const kept = rows.filter(({ kind }) => kind === 'before bringing back');
      expect(apart.length + kept.length).toBe(1);
      if (apart[0]) expect(readFileSync(join(folder, apart[0], 'own.sqlite'))).toEqual(bytes);
      asking.services.close();
    }
  });
});
