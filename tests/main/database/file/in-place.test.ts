import { copyFileSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../../main/database/backups/backup-folder.ts';
import { openWorkshop } from '../../../../main/database/file/connection.ts';
import { FileNotInPlace } from '../../../../main/database/file/in-place.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { type Asking, openAsking, receivedFill, taffeta, tempFolder } from '../../asking.ts';

async function sentence(asking: Asking): Promise<string> {
  const outcome = await asking.ask('saveItem', taffeta);
  return outcome.ok ? 'saved' : outcome.problems.map(problemSentence).join(' / ');
}

async function itemCount(asking: Asking): Promise<number> {
  return (await asking.get('workshopFacts', {})).itemCount;
}

describe('a file that goes while it is open', () => {
  const ways: readonly (readonly [string, (file: string) => void])[] = [
    ['removed with all that lies beside it', (file) => removeAll(file)],
    ['removed alone', (file) => rmSync(file)],
    ['moved away', (file) => renameSync(file, `${file}.moved`)],
    [
      'replaced by another version, as a sync program does',
      (file) => {
        copyFileSync(file, `${file}.other`);
        renameSync(`${file}.other`, file);
      },
    ],
    ['left without its log', (file) => rmSync(`${file}-wal`)],
  ];

  test.each(ways)('%s: an entry is refused, and what was kept before is rescued', async (_, lose) => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    lose(asking.dataFile);
    const [first, second] = [await sentence(asking), await sentence(asking)];
    expect(first).toContain('was removed or replaced while it was open. This step was not kept.');
    expect(second).toBe(first);
    const name = /is in the backup (\S+\.sqlite):/.exec(first)![1]!;
    const rescued = openAsking({ dataFile: join(backupFolder(asking.dataFile), name) });
    expect(await itemCount(rescued)).toBe(1);
    const { rows } = await asking.get('listBackups', {});
    expect(rows.map(({ kind }) => kind)).toEqual(['rescued']);
    // What came meanwhile under its name is not written over either.
    const refused = await asking.ask('restoreBackup', { name });
    expect(refused.ok ? '' : refused.problems[0]?.what).toBe('was removed or replaced while it was open');
  });

  test('in the middle of an entry keeps nothing of it and does not say that it did', async () => {
    const opened = openWorkshop(join(tempFolder(), 'own.sqlite'), { now: () => new Date() });
    if (!opened.ok) throw new Error('not opened');
    const { queries, file, close } = opened.value;
    const lay = { job_hash: 'half', result: '1', kept_at: '' };
    const keeping = queries.transaction().execute(async (inside) => {
      await inside.insertInto('kept_lay').values(lay).execute();
      removeAll(file);
    });
    await expect(keeping).rejects.toThrow(FileNotInPlace);
    expect(await queries.selectFrom('kept_lay').select('job_hash').execute()).toEqual([]);
    close();
  });

  test('is not harmed by the program that ends: what lies there then stays as it is', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    removeAll(asking.dataFile);
    for (const ending of ['', '-wal']) writeFileSync(asking.dataFile + ending, `another${ending}`);
    expect(await sentence(asking)).toContain('was removed or replaced');
    asking.services.close();
    expect(readFileSync(asking.dataFile, 'utf8')).toBe('another');
    expect(readFileSync(`${asking.dataFile}-wal`, 'utf8')).toBe('another-wal');
  });

  test('is told by the demo, which has nothing to rescue', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    removeAll(asking.demoFile);
    for (const call of ['openDemo', 'saveItem'] as const) {
      const outcome = await asking.ask(call, call === 'openDemo' ? {} : (taffeta as never), 'demo');
      expect(outcome.ok ? 'done' : outcome.problems.map(problemSentence).join()).toContain(
        'Close the program, look at what lies there now, and start it again.',
      );
    }
    expect(existsSync(asking.demoFile)).toBe(false);
  });
});

function removeAll(file: string): void {
  for (const ending of ['', '-wal', '-shm']) rmSync(file + ending);
}
