import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { openWorkshop } from '../../../../main/database/file/connection.ts';
import { hasForeignLog, settleLog } from '../../../../main/database/file/log-base.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { seeded } from '../../../fixtures/large-stash.ts';
import { type Asking, down, dump, openAsking, receivedFill, taffeta, tempFolder } from '../../asking.ts';
import { elsewhere, filesOf, leaveAsKilled } from '../../other-program.ts';

let file: string;

beforeEach(() => {
  file = join(tempFolder(), 'own.sqlite');
});

/** Another program has saved entries under that name, and was killed with its log beside the file. */
async function killedWhileOpen(name: string): Promise<void> {
  await leaveAsKilled(file, async (asking) => {
    for (const number of [1, 2, 3]) await asking.get('saveItem', { ...down, name: `${name} ${number}` });
  });
  expect(statSync(`${file}-wal`).size).toBeGreaterThan(0);
}

async function itemNames(asking: Asking): Promise<string[]> {
  const page = { search: '', sortBy: 'name', isDescending: false, offset: 0, limit: 99 } as const;
  return (await asking.get('listItems', { ...page, kinds: [] })).rows.map(({ name }) => name);
}

async function began(): Promise<void> {
  const asking = openAsking({ dataFile: file });
  await receivedFill(asking, 640);
  asking.services.close();
}

async function changedSince(): Promise<void> {
  const asking = openAsking({ dataFile: file });
  await asking.get('saveItem', { ...taffeta, name: 'Saved since' });
  asking.services.close();
}

describe('a copy that was put in place by hand after the program was killed', () => {
  const copies: readonly (readonly [string, () => Promise<string>])[] = [
    [
      'a backup',
      async () => {
        const asking = openAsking({ dataFile: file });
        const { folder, rows } = await asking.get('backUp', {});
        asking.services.close();
        return join(folder, rows[0]!.name);
      },
    ],
    [
      'a copy of the closed file',
      async () => {
        const copy = join(tempFolder(), 'copy.sqlite');
        copyFileSync(file, copy);
        await changedSince();
        return copy;
      },
    ],
    [
      'a copy that another program made while the file was open',
      async () => {
        const copy = join(tempFolder(), 'copy.sqlite');
        await killedWhileOpen('Early');
        // Only the file itself, as such programs do; its log is brought in by the next start.
        copyFileSync(file, copy);
        await changedSince();
        return copy;
      },
    ],
  ];

  test.each(copies)('%s: is shown as it was put there, and the log is kept apart', async (_, take) => {
    await began();
    const copy = await take();
    await killedWhileOpen('Late');
    const log = readFileSync(`${file}-wal`);
    copyFileSync(copy, file);
    const asking = openAsking({ dataFile: file });
    expect(await itemNames(asking)).toEqual(['Fenwalk down']);
    const { fileProblems } = await asking.get('workshopFacts', {});
    expect(fileProblems).toHaveLength(1);
    expect(problemSentence(fileProblems[0]!)).toContain('lay beside the log of another file');
    const folder = /kept in (.*)\.$/.exec(fileProblems[0]!.fix)![1]!;
    expect(readFileSync(join(folder, 'own.sqlite-wal'))).toEqual(log);
    // The work goes on, and the next start has nothing to tell.
    await asking.get('saveItem', taffeta);
    asking.services.close();
    const again = openAsking({ dataFile: file });
    expect(await itemNames(again)).toEqual(['Fenwalk down', taffeta.name]);
    expect((await again.get('workshopFacts', {})).fileProblems).toEqual([]);
  });

  test('is not read by an estimate together with the log', async () => {
    await began();
    const copy = join(tempFolder(), 'copy.sqlite');
    copyFileSync(file, copy);
    await changedSince();
    await killedWhileOpen('Late');
    copyFileSync(copy, file);
    expect(() => openAsking({ dataFile: file, isReadOnly: true })).toThrow('was not closed properly');
    expect(existsSync(`${file}-wal`)).toBe(true);
  });

  test('a new file where only the log was left begins empty, without what the log holds', async () => {
    await began();
    await killedWhileOpen('Late');
    rmSync(file);
    const asking = openAsking({ dataFile: file });
    expect(await itemNames(asking)).toEqual([]);
    expect((await asking.get('workshopFacts', {})).fileProblems).toHaveLength(1);
  });
});

describe('the log of the file itself', () => {
  test('is read after the program was killed, and nothing is told', async () => {
    await began();
    await elsewhere.open(file);
    await elsewhere.save(file, 'Late');
    await elsewhere.kill();
    const left = filesOf(file);
    const asking = openAsking({ dataFile: file });
    expect(await itemNames(asking)).toEqual(['Fenwalk down', 'Late 1', 'Late 2', 'Late 3']);
    expect((await asking.get('workshopFacts', {})).fileProblems).toEqual([]);
    // What the other tests take for a killed program's leaves the same, and is read alike.
    asking.services.close();
    await killedWhileOpen('Later');
    expect(filesOf(file)).toEqual(left);
    const again = openAsking({ dataFile: file });
    expect(await itemNames(again)).toHaveLength(7);
  });

  test('moves to another folder with its file', async () => {
    await began();
    await killedWhileOpen('Late');
    const elsewhere = join(tempFolder(), 'moved.sqlite');
    for (const ending of ['', '-wal', '-pages']) copyFileSync(file + ending, elsewhere + ending);
    const asking = openAsking({ dataFile: elsewhere });
    expect(await itemNames(asking)).toHaveLength(4);
  });

  test('counts as its own where nothing is written down about it', async () => {
    await began();
    await killedWhileOpen('Late');
    rmSync(`${file}-pages`);
    const asking = openAsking({ dataFile: file });
    expect(await itemNames(asking)).toHaveLength(4);
  });

  test('leaves nothing beside the file once it is closed', async () => {
    await began();
    expect(readdirSync(join(file, '..'))).toEqual(['own.sqlite']);
  });

  test('is known again at every instant of its way into the file, and no other file is', () => {
    // Random entries; now and then the log is settled. After each step the files are copied, as a kill would leave them.
    const opened = openWorkshop(file, { now: () => new Date() });
    if (!opened.ok) throw new Error('not opened');
    const { connection } = opened.value;
    const random = seeded(31);
    const folder = tempFolder();
    const insert = connection.prepare("INSERT INTO kept_lay (job_hash, result, kept_at) VALUES (?, ?, '')");
    const earlier: string[] = [];
    let told = 0;
    for (let step = 0; step < 60; step++) {
      if (random() < 0.2) settleLog(connection, file);
      else if (random() < 0.3) connection.exec('DELETE FROM kept_lay WHERE entry % 3 = 0');
      else insert.run(`job ${step}`, JSON.stringify('x'.repeat(Math.floor(random() * 20_000))));
      const killed = join(folder, `${step}.sqlite`);
      for (const ending of ['', '-wal', '-pages']) copyFileSync(file + ending, killed + ending);
      expect(hasForeignLog(killed), `own log at step ${step}`).toBe(false);
      // A kill in the middle of settling: pages of the log are in the file already, in their order.
      const half = join(folder, `${step} half.sqlite`);
      halfSettled(killed, half, random());
      expect(hasForeignLog(half), `half settled at step ${step}`).toBe(false);
      // Any earlier state of the file under this log either gives just the same, or is told.
      for (const other of statSync(`${killed}-wal`).size > 0 ? earlier : []) {
        const mixed = join(folder, 'mixed.sqlite');
        copyFileSync(other, mixed);
        for (const ending of ['-wal', '-pages']) copyFileSync(killed + ending, mixed + ending);
        if (hasForeignLog(mixed)) told++;
        else expect(dump(mixed)).toBe(dump(file));
        for (const ending of ['', '-wal', '-pages', '-shm']) rmSync(mixed + ending, { force: true });
      }
      if (step % 7 === 0) earlier.push(half);
    }
    expect(told).toBeGreaterThan(20);
    opened.value.close();
  });
});

/** The file with its log's pages up to that share of its pages brought in, and the log still whole. */
function halfSettled(from: string, to: string, share: number): void {
  for (const ending of ['-wal', '-pages']) copyFileSync(from + ending, to + ending);
  const settled = `${to}.settled`;
  for (const ending of ['', '-wal']) copyFileSync(from + ending, settled + ending);
  const database = new SqliteDatabase(settled);
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
  const [before, after] = [readFileSync(from), readFileSync(settled)];
  const cut = Math.floor((share * after.length) / 4096) * 4096;
  const half = Buffer.concat([after.subarray(0, cut), before.subarray(cut)]);
  rmSync(settled);
  writeFileSync(to, half);
}
