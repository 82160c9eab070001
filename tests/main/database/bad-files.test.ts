import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { migrations } from '../../../main/database/schema/migrations.ts';
import { describe, expect, test } from 'vitest';
import { openServices } from '../../../main/services/calls/services.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { openAsking, receivedCloth, tempFolder } from '../asking.ts';

function open(dataFile: string, waitMs = 50) {
  return openServices({ dataFile, demoFile: `${dataFile}-demo`, waitMs });
}

/** The problems of a file that must be refused; throws where anything in the folder has changed. */
function refusedFile(dataFile: string, folder: string): readonly Problem[] {
  const before = stateOf(folder);
  const opened = open(dataFile);
  if (opened.ok) {
    opened.value.close();
    throw new Error('the file was opened');
  }
  expect(stateOf(folder)).toEqual(before);
  return opened.problems;
}

function stateOf(folder: string): unknown {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .sort()
    .map((name) => {
      const facts = lstatSync(join(folder, name));
      const bytes = facts.isFile() ? readFileSync(join(folder, name)) : '';
      return [name, facts.mtimeMs, createHash('sha256').update(bytes).digest('hex')];
    });
}

/** A sound file of ours with some rows, closed. */
async function soundFile(): Promise<string> {
  const asking = openAsking();
  await receivedCloth(asking);
  asking.services.close();
  return asking.dataFile;
}

function otherProgramsFile(file: string, journal: 'wal' | 'delete'): void {
  const database = new SqliteDatabase(file);
  database.pragma(`journal_mode = ${journal}`);
  database.exec("CREATE TABLE songs (title TEXT); INSERT INTO songs VALUES ('Low tide')");
  database.pragma('user_version = 1');
  database.close();
}

const cases: readonly (readonly [string, (folder: string) => string | Promise<string>, string])[] = [
  [
    'a letter to an aunt',
    (folder) => written(folder, 'Dear aunt, the coat is warm. '.repeat(40)),
    'is not a database',
  ],
  ['a few letters', (folder) => written(folder, 'SQLite'), 'is not a database'],
  ['an empty file', (folder) => written(folder, ''), 'is empty'],
  ['a header and nothing else', (folder) => written(folder, 'SQLite format 3\0'), 'is cut short'],
  ['a folder', (folder) => made(folder, 'drawer'), 'is a folder'],
  ['a file in a folder that is not there', (folder) => join(folder, 'gone', 'own.sqlite'), 'does not exist'],
  ['a file inside a file', (folder) => join(written(folder, 'x'), 'own.sqlite'), 'is not a folder'],
  ['a device', () => '/dev/null', 'is not a file'],
  [
    'another program\u2019s database',
    (folder) => {
      otherProgramsFile(join(folder, 'songs.sqlite'), 'delete');
      return join(folder, 'songs.sqlite');
    },
    'is the database of another program',
  ],
  [
    'another program\u2019s database that keeps a log',
    (folder) => {
      otherProgramsFile(join(folder, 'songs.sqlite'), 'wal');
      return join(folder, 'songs.sqlite');
    },
    'is the database of another program',
  ],
  [
    'a link that leads nowhere',
    (folder) => {
      symlinkSync(join(folder, 'gone.sqlite'), join(folder, 'link.sqlite'));
      return join(folder, 'link.sqlite');
    },
    'cannot be opened',
  ],
  [
    'a link that leads back to itself',
    (folder) => {
      symlinkSync(join(folder, 'round.sqlite'), join(folder, 'round.sqlite'));
      return join(folder, 'round.sqlite');
    },
    'is a link that leads back to itself',
  ],
  [
    'a name that is too long for the disk',
    (folder) => join(folder, `${'coat'.repeat(80)}.sqlite`),
    'has too long a name',
  ],
  [
    'one of ours in a form of a later SQLite',
    async (folder) => formatted(await soundFile(), join(folder, 'own.sqlite'), 18, Buffer.from([3, 3])),
    'is in a form of SQLite that this version cannot read',
  ],
  [
    'one of ours with a schema in a form of a later SQLite',
    async (folder) => formatted(await soundFile(), join(folder, 'own.sqlite'), 44, Buffer.from([0, 0, 0, 5])),
    'is in a form of SQLite that this version cannot read',
  ],
  [
    'one of ours, half copied',
    async (folder) => {
      const file = join(folder, 'own.sqlite');
      copyFileSync(await soundFile(), file);
      truncateSync(file, Math.floor(statSync(file).size / 2));
      return file;
    },
    'is cut short',
  ],
];

function formatted(from: string, to: string, at: number, bytes: Buffer): string {
  const all = readFileSync(from);
  bytes.copy(all, at);
  writeFileSync(to, all);
  return to;
}

function written(folder: string, text: string): string {
  const file = join(folder, 'own.sqlite');
  writeFileSync(file, text);
  return file;
}

function made(folder: string, name: string): string {
  mkdirSync(join(folder, name));
  return join(folder, name);
}

describe('a data file that cannot be used is refused with its place, and nothing is changed or made', () => {
  for (const [name, make, what] of cases) {
    test(name, async () => {
      const folder = tempFolder();
      const file = await make(folder);
      const problems = refusedFile(file, folder);
      expect(problems.map((problem) => problem.what)).toEqual([what]);
      expect(file.startsWith(problems[0]!.where)).toBe(true);
      expect(problems[0]!.fix).not.toBe('');
    });
  }

  test('one written by a newer version', async () => {
    const file = await soundFile();
    const database = new SqliteDatabase(file);
    database.pragma('user_version = 9041');
    database.close();
    const [problem] = refusedFile(file, join(file, '..'));
    expect(problem?.what).toBe(
      `was written by a newer version (its schema is 9041, this version knows ${migrations.length})`,
    );
  });

  test('a blank at the end of its name, which would lead to another file', () => {
    const folder = tempFolder();
    for (const blank of [' ', '\t', '\n', '\u00a0']) {
      const [problem] = refusedFile(join(folder, `own.sqlite${blank}`), folder);
      expect(problem?.what).toBe('has a blank at the end of its name');
    }
    const inside = open(join(folder, ' my own.sqlite'));
    expect(inside.ok).toBe(true);
    if (inside.ok) inside.value.close();
  });

  test('a read-only place', () => {
    // The superuser may write anywhere but where the kernel itself says no.
    const isSuperuser = process.getuid?.() === 0;
    const folder = isSuperuser ? '/proc' : tempFolder();
    if (!isSuperuser) chmodSync(folder, 0o555);
    const opened = open(join(folder, 'own.sqlite'));
    expect(opened.ok ? [] : opened.problems.map((problem) => problem.what)).toEqual([
      isSuperuser ? 'cannot be opened' : 'cannot be written',
    ]);
    expect(existsSync(join(folder, 'own.sqlite'))).toBe(false);
    if (!isSuperuser) chmodSync(folder, 0o755);
  });

  test.skipIf(process.getuid?.() === 0)(
    'a write-protected file (not as the superuser, who may write it)',
    async () => {
      const file = await soundFile();
      chmodSync(file, 0o444);
      expect(refusedFile(file, join(file, '..')).map((problem) => problem.what)).toEqual([
        'cannot be written',
      ]);
    },
  );

  test('one that another program holds', async () => {
    const file = await soundFile();
    const holder = new SqliteDatabase(file);
    holder.exec('BEGIN IMMEDIATE');
    const opened = open(file);
    expect(opened.ok ? [] : opened.problems.map((problem) => problem.what)).toEqual([
      'is held by another program',
    ]);
    holder.exec('ROLLBACK');
    holder.close();
    const again = open(file);
    expect(again.ok).toBe(true);
    if (again.ok) again.value.close();
  });

  test('a page overwritten with rubbish is told of as damage when it is read, not as a slip of ours', async () => {
    const file = await soundFile();
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 4096, bytes.length - 100);
    writeFileSync(file, bytes);
    const opened = open(file);
    const answers = opened.ok
      ? await opened.value.answer({ call: 'workshopFacts', workshop: 'own', input: {} })
      : opened;
    if (opened.ok) opened.value.close();
    expect(answers.ok ? [] : answers.problems.map((problem) => problem.what)).toEqual(['is damaged']);
  });
});

describe('a data file that is not there', () => {
  test('is made, and no half of it is left beside it', () => {
    const folder = tempFolder();
    const opened = open(join(folder, 'own.sqlite'));
    if (!opened.ok) throw new Error('refused');
    opened.value.close();
    expect(readdirSync(folder)).toEqual(['own.sqlite']);
  });

  test('bears our mark, keeps its log beside it and has strict tables', () => {
    const folder = tempFolder();
    const opened = open(join(folder, 'own.sqlite'));
    if (!opened.ok) throw new Error('refused');
    opened.value.close();
    const database = new SqliteDatabase(join(folder, 'own.sqlite'), { readonly: true });
    expect(database.pragma('application_id', { simple: true })).toBe(0x426f4261);
    expect(database.pragma('user_version', { simple: true })).toBe(migrations.length);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    const tables = database.pragma('table_list') as { name: string; type: string; strict: number }[];
    const ours = tables.filter((table) => table.type === 'table' && !table.name.startsWith('sqlite_'));
    expect(ours.filter((table) => table.strict === 0)).toEqual([]);
    expect(ours.length).toBeGreaterThan(8);
    database.close();
  });

  test('may be called ":memory:" and is a file all the same', async () => {
    const folder = tempFolder();
    const before = process.cwd();
    process.chdir(folder);
    try {
      const opened = open(':memory:');
      if (opened.ok) opened.value.close();
    } finally {
      process.chdir(before);
    }
    expect(readdirSync(folder)).toEqual([':memory:']);
  });
});
