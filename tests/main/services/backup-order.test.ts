import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../main/database/backups/backup-folder.ts';
import { backupName, readBackupName } from '../../../main/database/backups/backup-name.ts';
import { type Asking, openAsking, receivedFill, taffeta } from '../asking.ts';

const today = new Date('2026-03-27T08:09:10.000Z');
const ahead = new Date('2027-05-01T08:09:10.000Z');

async function saved(asking: Asking, name: string): Promise<void> {
  await asking.get('saveItem', { ...taffeta, name });
}

async function started(dataFile: string, now: Date, change?: string): Promise<string[]> {
  const asking = openAsking({ dataFile, now: () => now });
  const { rows } = await asking.get('listBackups', {});
  if (change !== undefined) await saved(asking, change);
  asking.services.close();
  return rows.map(({ name }) => name);
}

async function begun(now: Date): Promise<string> {
  const asking = openAsking({ now: () => now });
  await receivedFill(asking, 640);
  asking.services.close();
  return asking.dataFile;
}

describe('on a machine whose clock was a year ahead for a while', () => {
  test('what is changed today is backed up at the next start, and stays', async () => {
    const file = await begun(ahead);
    for (let day = 0; day < 12; day++) await started(file, ahead, `Cloth ${day}`);
    const then = await started(file, today, 'Cloth of today');
    const names = await started(file, today);
    expect(names).toHaveLength(10);
    expect(names.slice(1)).toEqual(then.slice(0, 9));
    expect(names[0]).toMatch(/^own-0014-2026-03-27T08-09-10-automatic\.sqlite$/);
    // And nothing more at a start after which nothing was changed.
    expect(await started(file, today)).toEqual(names);
  });

  test('the order of the list is that in which they were made', async () => {
    const file = await begun(today);
    await started(file, ahead, 'One');
    await started(file, today, 'Two');
    const names = await started(file, ahead);
    expect(names.map((name) => name.slice(4, 8))).toEqual(['0003', '0002', '0001']);
  });

  test('a file whose date says that it is older than its backup is backed up all the same', async () => {
    const file = await begun(today);
    await started(file, today);
    // Another cloth of the same length of name: the file is no larger, and its date may be anything.
    await started(file, today, 'Cloth A');
    expect(await started(file, today)).toHaveLength(2);
  });
});

describe('copies that pile up', () => {
  test('from before something was brought back are kept ten deep, those made by hand all', async () => {
    const asking = openAsking({ now: () => today });
    await receivedFill(asking, 640);
    const { rows } = await asking.get('backUp', {});
    for (let time = 0; time < 12; time++) {
      await saved(asking, `Cloth ${time}`);
      await asking.get('restoreBackup', { name: rows[0]!.name });
    }
    const left = (await asking.get('listBackups', {})).rows;
    expect(
      left.filter(({ kind }) => kind === 'before bringing back').map(({ name }) => name.slice(4, 8)),
    ).toEqual(Array.from({ length: 10 }, (_, n) => String(13 - n).padStart(4, '0')));
    expect(left.filter(({ kind }) => kind === 'by hand')).toHaveLength(1);
  });
});

describe('the name of a backup', () => {
  const at = new Date('2026-03-27T08:09:10.000Z');

  test.each(['own.sqlite', 'shelf-2025.sqlite', 'shelf-2025-0031.db', 'no ending', 'a.b.c.sqlite3'])(
    'of %s says its number, moment and reason',
    (file) => {
      for (const kind of ['automatic', 'by hand', 'before bringing back', 'rescued'] as const) {
        const name = backupName(`/shelf/${file}`, { number: 31, at, kind });
        expect(readBackupName(`/shelf/${file}`, name)).toEqual({ number: 31, at, kind });
      }
    },
  );

  test('of an earlier version has no number, also where the file’s own name ends in digits', () => {
    const read = readBackupName(
      '/shelf/coats-2025.sqlite',
      'coats-2025-2026-03-27T08-09-10-by-hand-2.sqlite',
    );
    expect(read).toEqual({ number: 0, at, kind: 'by hand' });
    expect(readBackupName('/shelf/own.sqlite', 'from the old machine.sqlite')).toBeNull();
  });

  test('of an earlier version is older than every one with a number', async () => {
    const file = await begun(today);
    const [made] = await started(file, today);
    const earlier = ['own-2026-03-28T08-09-10-automatic.sqlite', 'own-2026-03-29T08-09-10-automatic.sqlite'];
    for (const name of earlier) writeFileSync(join(backupFolder(file), name), 'a backup');
    expect(await started(file, today)).toEqual([made, earlier[1], earlier[0]]);
  });
});
