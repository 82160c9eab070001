import { linkSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../../main/database/backups/backup-folder.ts';
import { filesIn, openAsking, receivedFill, tempFolder } from '../../asking.ts';

const id = '0a1b2c3d-4e5f-4a7b-8c9d-0e1f2a3b4c5d';

describe('what a program that died in the middle has left', () => {
  test('is cleared away at the next start, and nothing else is', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    await first.get('backUp', {});
    first.services.close();
    const [folder, backups] = [join(first.dataFile, '..'), backupFolder(first.dataFile)];
    const left = [`own.sqlite.${id}.new`, `own.sqlite.${id}.new-journal`, `own.sqlite.${id}.new-wal`];
    const others = [
      'own.sqlite.new',
      `own.sqlite.${id}.new.sqlite`,
      `second.sqlite.${id}.new`,
      'own.sqlite.77.part',
    ];
    for (const name of [...left, ...others]) writeFileSync(join(folder, name), 'whole or half');
    for (const name of ['own.sqlite.4321.part', 'own.sqlite.part', 'second.sqlite.4321.part'])
      writeFileSync(join(backups, name), 'half');
    const [backup] = filesIn(backups).filter((name) => name.endsWith('.sqlite'));
    openAsking({ dataFile: first.dataFile }).services.close();
    expect(filesIn(folder)).toEqual([...others, 'own-backups', 'own.sqlite'].sort());
    expect(filesIn(backups)).toEqual([backup, 'own.sqlite.part', 'second.sqlite.4321.part']);
  });

  test('is no second name of a file that was just being made', () => {
    const first = openAsking();
    first.services.close();
    linkSync(first.dataFile, `${first.dataFile}.${id}.new`);
    openAsking({ dataFile: first.dataFile }).services.close();
    expect(statSync(first.dataFile).nlink).toBe(1);
  });

  test('stays while another window has the file, since it may be making it just now', () => {
    const folder = tempFolder();
    const open = openAsking({ dataFile: join(folder, 'own.sqlite') });
    mkdirSync(backupFolder(open.dataFile));
    writeFileSync(join(backupFolder(open.dataFile), 'own.sqlite.4321.part'), 'half');
    expect(() => openAsking({ dataFile: open.dataFile })).toThrow('is open already');
    expect(filesIn(backupFolder(open.dataFile))).toEqual(['own.sqlite.4321.part']);
  });
});
