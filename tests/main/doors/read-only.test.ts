import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { openWorkshop } from '../../../main/database/file/connection.ts';
import { migrations } from '../../../main/database/schema/migrations.ts';
import { runEstimate } from '../../../main/doors/command.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { openAsking, receivedFill, tempFolder } from '../asking.ts';
import { elsewhere, leaveAsKilled, nobody } from '../other-program.ts';

const command = fileURLToPath(new URL('../../../main/doors/command.ts', import.meta.url));
const words = ['--coat', 'Lapwing', '--json', '--iterations', '20'];
const latest = migrations.length;

let folder: string;
let file: string;

beforeEach(() => {
  folder = join(tempFolder(), 'shelf');
  mkdirSync(folder);
  file = join(folder, 'own.sqlite');
});

/** A workshop with a coat that takes so many grams of a fill, of which 640 g are there. */
async function workshopWithCoat(gramsPerCoat: number): Promise<void> {
  const asking = openAsking({ dataFile: file });
  const fill = await receivedFill(asking, 640);
  const slots = [{ ...emptySlot('fill', 'fill', 'fill'), itemId: fill.itemId, amountPerCoat: gramsPerCoat }];
  const plan = { ...newPlan('any', 'Lapwing', '40'), slots, quilting: null };
  await asking.get('savePlan', { plan, basedOn: null, said: '' });
  asking.services.close();
}

/** Another program has the file open, and what it has written there since is in its log alone. */
async function openInAnotherProgram(): Promise<void> {
  await elsewhere.open(file);
  renameItems();
}

/** As it was killed, with that in its log. */
async function killedInAnotherProgram(): Promise<void> {
  await leaveAsKilled(file, async () => renameItems());
}

function renameItems(): void {
  const writer = new SqliteDatabase(file);
  writer.exec("UPDATE item SET name = 'Renamed meanwhile'");
  writer.close();
}

/** All that lies in the folder, byte for byte. Where readers stand in a log (-shm) is no part of what is kept. */
function everything(): [string, string][] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name))
    .sort()
    .map((path) => [path.slice(folder.length + 1), path.endsWith('-shm') ? '' : sha256(path)]);
}

function sha256(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

async function estimate(): Promise<{ told: string; refusal: string }> {
  let told = '';
  const done = await runEstimate(['--data', file, ...words], (text) => (told += text));
  return { told, refusal: done.ok ? '' : done.problems.map(problemSentence).join('\n') };
}

describe('an estimate without a window', () => {
  test('leaves a closed file as it is and makes nothing beside it', async () => {
    await workshopWithCoat(170);
    const before = everything();
    const { told, refusal } = await estimate();
    expect(refusal).toBe('');
    expect(JSON.parse(told).requirement[0]).toMatchObject({ slot: 'fill' });
    expect(everything()).toEqual(before);
    expect(before.map(([name]) => name)).toEqual(['own.sqlite']);
  });

  test('sees what a window has written a moment ago, and touches none of its files', async () => {
    await workshopWithCoat(170);
    await openInAnotherProgram();
    const before = everything();
    const names = before.map(([name]) => name);
    expect(names).toEqual(expect.arrayContaining(['own.sqlite-open', 'own.sqlite-shm', 'own.sqlite-wal']));
    const { told, refusal } = await estimate();
    expect(refusal).toBe('');
    expect(told).toContain('Renamed meanwhile');
    expect(everything()).toEqual(before);
  });

  test('reads what a window that was killed has left in its log', async () => {
    await workshopWithCoat(170);
    await killedInAnotherProgram();
    const before = everything();
    const { told } = await estimate();
    expect(told).toContain('Renamed meanwhile');
    expect(everything()).toEqual(before);
  });

  test.each(['closed', 'open'])('reads a %s file in a folder where nobody else may write', async (state) => {
    await workshopWithCoat(170);
    if (state === 'open') await openInAnotherProgram();
    chmodSync(join(folder, '..'), 0o755);
    for (const name of readdirSync(folder)) chmodSync(join(folder, name), 0o444);
    chmodSync(folder, 0o555);
    const before = everything();
    const ended = spawnSync(process.execPath, [command, '--data', file, ...words], {
      encoding: 'utf8',
      ...nobody,
    });
    chmodSync(folder, 0o755);
    expect([ended.stderr, ended.status]).toEqual(['', 0]);
    expect(ended.stdout).toContain(state === 'open' ? 'Renamed meanwhile' : 'Fenwalk down');
    expect(everything()).toEqual(before);
  });

  test.each(['closed', 'open'])(
    'refuses a %s file of an older version, and leaves it to the window to bring it up to date',
    async (state) => {
      const older = openWorkshop(file, { now: () => new Date(), migrations: migrations.slice(0, -1) });
      if (!older.ok) throw new Error('not made');
      if (state === 'open') older.value.connection.exec("UPDATE workshop SET name = 'still open'");
      else older.value.close();
      const before = everything();
      const { told, refusal } = await estimate();
      expect(everything()).toEqual(before);
      if (state === 'open') older.value.close();
      expect(told).toBe('');
      expect(refusal).toBe(
        `${file} was written by an older version (its schema is ${latest - 1}, this version reads ${latest}). ` +
          'Open it once in the window, which brings it up to date and keeps a copy.',
      );
    },
  );

  test('refuses a file of the first version that is older by several', async () => {
    copyFileSync(fileURLToPath(new URL('../../fixtures/released/0001.sqlite', import.meta.url)), file);
    const before = everything();
    expect((await estimate()).refusal).toContain('Open it once in the window');
    expect(everything()).toEqual(before);
  });

  test('refuses a file of a newer version', async () => {
    await workshopWithCoat(170);
    const newer = new SqliteDatabase(file);
    newer.pragma(`user_version = ${latest + 1}`);
    newer.close();
    const before = everything();
    expect((await estimate()).refusal).toContain(
      `was written by a newer version (its schema is ${latest + 1}, this version knows ${latest})`,
    );
    expect(everything()).toEqual(before);
  });

  test('refuses a file whose log came along without the rest', async () => {
    await workshopWithCoat(170);
    await killedInAnotherProgram();
    rmSync(`${file}-shm`);
    const before = everything();
    expect((await estimate()).refusal).toBe(
      `${file} was not closed properly. Open it once in the window, which puts it right.`,
    );
    expect(everything()).toEqual(before);
  });

  test('refuses a file with a change that was broken off', async () => {
    await workshopWithCoat(170);
    writeFileSync(`${file}-journal`, 'pages from before');
    const before = everything();
    expect((await estimate()).refusal).toContain('was not closed properly');
    expect(everything()).toEqual(before);
  });
});

test('a workshop that is open for reading changes nothing, whatever it is asked', async () => {
  await workshopWithCoat(170);
  const reading = openAsking({ dataFile: file, isReadOnly: true });
  for (const call of ['openDemo', 'backUp'] as const) {
    const outcome = await reading.ask(call, {});
    expect(outcome.ok ? [] : outcome.problems.map(problemSentence)).toEqual([
      'The workshop is open for reading only. Open it in the window to change it.',
    ]);
  }
  expect(readdirSync(folder)).toEqual(['own.sqlite']);
});
