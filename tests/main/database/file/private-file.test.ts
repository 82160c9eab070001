import { chmodSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../../main/database/backups/backup-folder.ts';
import { failureLogFile } from '../../../../main/database/failures/failure-log.ts';
import { openServices } from '../../../../main/services/calls/services.ts';
import { openAsking, receivedFill, taffeta, tempFolder } from '../../asking.ts';

function mode(path: string): string {
  return (statSync(path).mode & 0o777).toString(8);
}

/** Each file below the folder with its mode; folders with theirs. */
function modesIn(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true }).map(String).sort();
  return Object.fromEntries(names.map((name) => [name, mode(join(folder, name))]));
}

describe.skipIf(process.platform === 'win32')('nobody else on the machine reads', () => {
  test('the workshop, its log, its backups, its list of failures, nor the demo', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    await asking.get('openDemo', {}, 'demo');
    const { rows } = await asking.get('backUp', {});
    asking.services.noteFailure('a step', new Error());
    await asking.get('restoreBackup', { name: rows[0]!.name });
    await asking.get('saveItem', taffeta);
    const modes = modesIn(join(asking.dataFile, '..'));
    const { 'own-backups': folder, ...files } = modes;
    expect(folder).toBe('700');
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining([
        'own.sqlite',
        'own.sqlite-wal',
        'own.sqlite-shm',
        'own.sqlite-open',
        'own-log.txt',
      ]),
    );
    expect(Object.entries(files).filter(([, its]) => its !== '600')).toEqual([]);
  });

  test('what an earlier version left open to all: it is closed at the next start', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    await first.get('backUp', {});
    first.services.close();
    const before = join(first.dataFile, '..', 'own-before-0004-2026-03-27T08-09-10.sqlite');
    writeFileSync(before, 'a copy from before');
    for (const path of [first.dataFile, before]) chmodSync(path, 0o644);
    chmodSync(backupFolder(first.dataFile), 0o755);
    openAsking({ dataFile: first.dataFile }).services.close();
    expect([first.dataFile, before, backupFolder(first.dataFile)].map(mode)).toEqual(['600', '600', '700']);
  });

  test('but two people who share a file by their group go on sharing it, and what is made for it', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    first.services.close();
    chmodSync(first.dataFile, 0o664);
    const again = openAsking({ dataFile: first.dataFile });
    await again.get('saveItem', taffeta);
    const { folder, rows } = await again.get('backUp', {});
    const made = [first.dataFile, `${first.dataFile}-wal`, folder, join(folder, rows[0]!.name)];
    expect(made.map(mode)).toEqual(['660', '660', '770', '660']);
  });

  test('and a file of another program is not touched', () => {
    const folder = tempFolder();
    const file = join(folder, 'songs.sqlite');
    writeFileSync(file, 'Low tide');
    chmodSync(file, 0o644);
    mkdirSync(backupFolder(file));
    writeFileSync(join(backupFolder(file), 'a.sqlite'), '');
    const opened = openServices({ dataFile: file, demoFile: `${file}-demo` });
    if (opened.ok) opened.value.close();
    expect(mode(file)).toBe('644');
    expect(failureLogFile(file)).toBe(join(folder, 'songs-log.txt'));
  });
});
