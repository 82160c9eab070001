import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../main/database/backups/backup-folder.ts';
import {
  appendToFailureLog,
  largestLogBytes,
  failureLogFile,
  readFailureLog,
} from '../../../main/database/failures/failure-log.ts';
import { failureEntry, windowFailureEntry } from '../../../main/services/workshop/failure-entry.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type Asking, filesIn, openAsking, receivedFill, taffeta, tempFolder } from '../asking.ts';

const at = new Date('2026-03-27T08:09:10.123Z');
/** Must never be found in a log. */
const canary = 'Canarywing taffeta';
const price = 987_654_321;

/** A database that refuses every change of the kind, and quotes what the maker typed while it does. */
function quoting(file: string, table: string): void {
  const database = new SqliteDatabase(file);
  database.exec(`CREATE TRIGGER quoting BEFORE INSERT ON ${table}
    BEGIN SELECT RAISE(ABORT, '${canary} at ${price} is refused'); END`);
  database.close();
}

async function failed(asking: Asking, call: 'saveItem', input: CallInput<'saveItem'>): Promise<string> {
  const outcome = await asking.ask(call, input);
  if (outcome.ok) throw new Error(`${call} went well`);
  return outcome.problems.map(problemSentence).join(' / ');
}

describe('what could not be done', () => {
  test('is in the log with its moment, version, step, kind and place, and with nothing that was typed', async () => {
    const asking = openAsking({ now: () => at });
    const { itemId } = await receivedFill(asking, 640);
    quoting(asking.dataFile, 'item');
    const sentence = await failed(asking, 'saveItem', {
      ...taffeta,
      name: canary,
      notes: `${canary} ${price}`,
    });
    expect(sentence).toBe(
      `This step could not be done. Nothing was changed. Try it again. If it fails again, the log says where in the program: ${failureLogFile(asking.dataFile)}. Settings shows it and saves a copy to send.`,
    );
    // The error itself did quote it.
    expect(String(asking.logged[0])).toContain(canary);
    const { text, file } = await asking.get('readFailureLog', {});
    expect(file).toBe(failureLogFile(asking.dataFile));
    expect(text).toBe(readFileSync(file, 'utf8'));
    const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../../../package.json'), 'utf8'));
    expect(text.split('\n')[0]).toBe(
      `${at.toISOString()} ${version} ${process.platform} saveItem: SqliteError SQLITE_CONSTRAINT_TRIGGER`,
    );
    expect(text).toMatch(/^ {4}at .*main\/services\/[\w/-]+\.ts:\d+:\d+$/m);
    for (const secret of [
      canary,
      'Canarywing',
      String(price),
      itemId,
      dirname(asking.dataFile),
      taffeta.place,
    ])
      expect(text).not.toContain(secret);
  });

  test('nor what a disk or a database refuses, of which the maker was told', async () => {
    const asking = openAsking({ now: () => at, waitMs: 20 });
    const holder = new SqliteDatabase(asking.dataFile);
    holder.exec('BEGIN IMMEDIATE');
    await failed(asking, 'saveItem', { ...taffeta, name: canary });
    holder.close();
    const { text } = await asking.get('readFailureLog', {});
    expect(text).toContain('saveItem: SqliteError SQLITE_BUSY');
    expect(text).not.toContain(canary);
  });

  test('is not there for what the maker typed wrong, nor where all goes well', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    await asking.refusal('saveItem', { ...taffeta, name: '' });
    await asking.refusal('no such call', {});
    expect((await asking.get('readFailureLog', {})).text).toBe('');
    expect(filesIn(dirname(asking.dataFile))).not.toContain(basename(failureLogFile(asking.dataFile)));
  });

  test('is told by the demo in the same log', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    quoting(asking.demoFile, 'item');
    await asking.ask('saveItem', { ...taffeta, name: canary }, 'demo');
    const { text, file } = await asking.get('readFailureLog', {}, 'demo');
    expect([text.split('\n')[0]?.split(' ').at(-1), file]).toEqual([
      'SQLITE_CONSTRAINT_TRIGGER',
      failureLogFile(asking.dataFile),
    ]);
  });

  test('is printed alone where a file is only read, and nothing is made beside it', async () => {
    const first = openAsking();
    first.services.close();
    const reading = openAsking({ dataFile: first.dataFile, isReadOnly: true });
    reading.services.noteFailure('a step', new Error(canary));
    expect(filesIn(dirname(first.dataFile))).toEqual(['own.sqlite']);
  });

  test('includes what a file was found in at the start', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    await asking.get('backUp', {});
    asking.services.close();
    writeFileSync(asking.dataFile, '');
    const again = openAsking({ dataFile: asking.dataFile, now: () => at });
    expect((await again.get('readFailureLog', {})).text).toMatch(/ note: the file cannot be opened\n$/);
  });

  test('and why there is no backup from the start', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    asking.services.close();
    writeFileSync(backupFolder(asking.dataFile), 'in the way');
    const again = openAsking({ dataFile: asking.dataFile });
    const { text } = await again.get('readFailureLog', {});
    expect(text).toMatch(/ backup at the start: Error E[A-Z]+\n {4}at /);
    expect(text).not.toContain(dirname(asking.dataFile));
  });
});

describe('a failure in the window', () => {
  const stack = `TypeError: ${canary} is no cloth
    at Shelf (http://127.0.0.1:41234/a-secret-room/assets/index-B2x_9.js:40:12345)
    at http://127.0.0.1:41234/a-secret-room/assets/lay-worker-x.js:1:7
    at ${canary} (<anonymous>)`;

  test('is in the same log, without its words and without the page’s address, which is a secret', async () => {
    const asking = openAsking({ now: () => at });
    await asking.get('noteWindowFailure', { place: 'stash', kind: 'TypeError', stack });
    const { text } = await asking.get('readFailureLog', {});
    expect(text.split('\n').slice(1)).toEqual([
      '    at Shelf assets/index-B2x_9.js:40:12345',
      '    at assets/lay-worker-x.js:1:7',
      '    at elsewhere',
      '',
    ]);
    expect(text.split('\n')[0]).toMatch(/ window, stash: TypeError$/);
  });

  test('cannot bring in words by its kind or its place', async () => {
    expect(windowFailureEntry(at, 'stash', canary, '')).toMatch(/: Error\n$/);
    const asking = openAsking();
    const refused = await asking.refusal('noteWindowFailure', {
      place: `${canary}!`,
      kind: 'Error',
      stack: '',
    });
    expect(refused).toHaveLength(1);
  });
});

describe('an entry', () => {
  test('has no line of the message, however the message is laid out', () => {
    const error = new Error(
      `no cloth\n    at ${canary} (main/services/stock/stash.ts:1:1)\n    at ${price}:1:1`,
    );
    const entry = failureEntry({ at, step: 'a step', error });
    expect(entry).not.toContain('Canarywing');
    expect(entry).not.toContain(String(price));
    expect(entry).toContain('tests/main/services/failure-log.test.ts');
  });

  test('names what was behind it, and what was thrown without being an error', () => {
    const error = new Error(canary, { cause: Object.assign(new RangeError(canary), { code: 'ENOSPC' }) });
    const entry = failureEntry({ at, step: 'a step', error });
    expect(entry).toContain('  because of RangeError ENOSPC\n');
    expect(entry).not.toContain(canary);
    expect(failureEntry({ at, step: 'a step', error: canary })).toMatch(/a step: thrown string\n$/);
    const named = Object.assign(new Error(), { name: canary, code: canary });
    expect(failureEntry({ at, step: 'a step', error: named })).not.toContain(canary);
  });
});

describe('the log', () => {
  test('stays small: the newest are kept, in three files of 256 kB, and the oldest go', () => {
    const file = join(tempFolder(), 'own.sqlite');
    const line = (n: number) => `${String(n).padStart(6, '0')} ${'x'.repeat(992)}\n`;
    for (let n = 0; n < 1000; n++) appendToFailureLog(file, line(n));
    const names = filesIn(dirname(file));
    expect(names).toEqual(['own-log-1.txt', 'own-log-2.txt', 'own-log.txt']);
    for (const name of names)
      expect(statSync(join(dirname(file), name)).size).toBeLessThanOrEqual(largestLogBytes);
    const kept = readFailureLog(file)
      .trimEnd()
      .split('\n')
      .map((text) => Number(text.slice(0, 6)));
    expect(kept.at(-1)).toBe(999);
    expect(kept).toEqual(Array.from({ length: kept.length }, (_, n) => 1000 - kept.length + n));
    expect(kept.length).toBeGreaterThan(2 * 256);
  });

  test('that cannot be written keeps nobody from working', async () => {
    const asking = openAsking();
    mkdirSync(failureLogFile(asking.dataFile));
    asking.services.noteFailure('a step', new Error());
    await asking.get('saveItem', taffeta);
  });
});
