import { copyFileSync, mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { backupFolder } from '../../../../main/database/backups/backup-folder.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { type Asking, dump, filesIn, openAsking, receivedFill, taffeta } from '../../asking.ts';

/** A clock that goes on by an hour at each look. */
function hours(): () => Date {
  let hour = 0;
  return () => new Date(Date.UTC(2026, 2, 27, hour++, 5, 9));
}

async function names(asking: Asking): Promise<string[]> {
  return (await asking.get('listBackups', {})).rows.map((row) => row.name);
}

describe('backups', () => {
  test('are there for the asking, whole, with date and size', async () => {
    const asking = openAsking({ now: () => new Date('2026-03-27T08:09:10.000Z') });
    await receivedFill(asking, 640);
    expect(await asking.get('listBackups', {})).toEqual({
      folder: backupFolder(asking.dataFile),
      rows: [],
      lastProblem: null,
    });
    const { rows } = await asking.get('backUp', {});
    expect(rows).toEqual([
      {
        name: 'own-0001-2026-03-27T08-09-10-by-hand.sqlite',
        at: '2026-03-27T08:09:10.000Z',
        kind: 'by hand',
        sizeBytes: expect.any(Number),
      },
    ]);
    expect(dump(join(backupFolder(asking.dataFile), rows[0]!.name))).toBe(dump(asking.dataFile));
    // A second one within the second is one more, and takes nothing away.
    expect((await asking.get('backUp', {})).rows).toHaveLength(2);
  });

  test('are made at the start when something was changed since the last, and not otherwise', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    first.services.close();
    const second = openAsking({ dataFile: first.dataFile });
    expect((await second.get('listBackups', {})).rows.map((row) => row.kind)).toEqual(['automatic']);
    second.services.close();
    const third = openAsking({ dataFile: first.dataFile });
    expect(await names(third)).toHaveLength(1);
    await third.get('saveItem', taffeta);
    third.services.close();
    const fourth = openAsking({ dataFile: first.dataFile });
    expect(await names(fourth)).toHaveLength(2);
  });

  test('are not made of a workshop that holds nothing', async () => {
    const first = openAsking();
    first.services.close();
    const second = openAsking({ dataFile: first.dataFile });
    expect(await names(second)).toEqual([]);
  });

  test('made by themselves are kept ten deep; one made by hand stays however old it is', async () => {
    const now = hours();
    const first = openAsking({ now });
    await receivedFill(first, 640);
    await first.get('backUp', {});
    first.services.close();
    for (let day = 0; day < 13; day++) {
      const again = openAsking({ dataFile: first.dataFile, now });
      await again.get('saveItem', { ...taffeta, name: `Cloth ${day}` });
      again.services.close();
    }
    const last = openAsking({ dataFile: first.dataFile, now });
    const { rows } = await last.get('listBackups', {});
    expect(rows.filter((row) => row.kind === 'automatic')).toHaveLength(10);
    expect(rows.at(-1)?.kind).toBe('by hand');
    expect(rows.map((row) => row.at)).toEqual(
      rows
        .map((row) => row.at)
        .toSorted()
        .toReversed(),
    );
    const newest = new SqliteDatabase(join(backupFolder(last.dataFile), rows[0]!.name), { readonly: true });
    expect(newest.prepare("SELECT count(*) FROM item WHERE kind = 'cloth'").pluck().get()).toBe(13);
    newest.close();
  });

  test('that cannot be made keep nobody from working, and it is told of', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    first.services.close();
    writeFileSync(backupFolder(first.dataFile), 'in the way');
    const second = openAsking({ dataFile: first.dataFile });
    expect((await second.get('workshopFacts', {})).itemCount).toBe(1);
    const listed = await second.ask('listBackups', {});
    expect(listed.ok ? [] : listed.problems.map(problemSentence)).toHaveLength(1);
  });

  test('of the demo there are none', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    for (const [call, input] of [
      ['listBackups', {}],
      ['backUp', {}],
      ['restoreBackup', { name: 'x' }],
    ] as const) {
      expect((await asking.refusal(call, input, 'demo'))[0]?.what).toContain('keeps no backups');
    }
  });
});

describe('bringing a backup back', () => {
  async function changedSince(): Promise<{ asking: Asking; name: string; then: string }> {
    const asking = openAsking({ now: hours() });
    await receivedFill(asking, 640);
    const [row] = (await asking.get('backUp', {})).rows;
    const then = dump(asking.dataFile);
    await asking.get('saveItem', taffeta);
    return { asking, name: row!.name, then };
  }

  test('puts everything back as it was, keeps what stood there, and the work goes on', async () => {
    const { asking, name, then } = await changedSince();
    const now = dump(asking.dataFile);
    expect((await asking.get('restoreBackup', { name })).itemCount).toBe(1);
    expect(dump(asking.dataFile)).toBe(then);
    const { rows } = await asking.get('listBackups', {});
    expect(rows.map((row) => row.kind)).toEqual(['before bringing back', 'by hand']);
    expect(dump(join(backupFolder(asking.dataFile), rows[0]!.name))).toBe(now);
    // And back again, with an entry after it.
    expect((await asking.get('restoreBackup', { name: rows[0]!.name })).itemCount).toBe(2);
    await asking.get('saveItem', { ...taffeta, name: 'Slatewater' });
    asking.services.close();
    expect(filesIn(join(asking.dataFile, '..'))).toEqual(['own-backups', 'own.sqlite']);
    const again = openAsking({ dataFile: asking.dataFile });
    expect((await again.get('workshopFacts', {})).itemCount).toBe(3);
  });

  test('waits for calls under way, and those that come meanwhile see the file that was brought back', async () => {
    const { asking, name } = await changedSince();
    const answers = await Promise.all([
      asking.ask('saveItem', { ...taffeta, name: 'Before' }),
      asking.ask('workshopFacts', {}),
      asking.ask('restoreBackup', { name }),
      asking.ask('workshopFacts', {}),
      asking.ask('saveItem', { ...taffeta, name: 'After' }),
    ]);
    expect(answers.map((outcome) => outcome.ok)).toEqual([true, true, true, true, true]);
    expect(answers[3]).toMatchObject({ value: { itemCount: 1 } });
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(2);
    expect(asking.logged).toEqual([]);
  });

  test('refuses a file that is none of ours, damaged, cut short, too new or not there, and changes nothing', async () => {
    const { asking, name } = await changedSince();
    const folder = backupFolder(asking.dataFile);
    const put = (other: string, change: (file: string) => void) => {
      copyFileSync(join(folder, name), join(folder, other));
      change(join(folder, other));
    };
    const edited = (sql: string) => (file: string) => {
      const database = new SqliteDatabase(file);
      database.pragma('foreign_keys = OFF');
      database.exec(sql);
      database.close();
    };
    put('songs.sqlite', edited('PRAGMA application_id = 17'));
    put('new.sqlite', edited('PRAGMA user_version = 9041'));
    put(
      'loose.sqlite',
      edited(
        "INSERT INTO offer (id, item_id, supplier, unit, price_minor, priced_on) VALUES ('o', 'gone', 's', '{}', 3, '2026-03-02')",
      ),
    );
    put('wrong.sqlite', edited("PRAGMA ignore_check_constraints = ON; UPDATE item SET name = ''"));
    put('short.sqlite', (file) => truncateSync(file, 9000));
    put('letter.sqlite', (file) => writeFileSync(file, 'Dear aunt, the coat is warm. '.repeat(40)));
    put('rubbish.sqlite', (file) => {
      const bytes = readFileSync(file);
      bytes.fill(0x5a, 4096 * 3, 4096 * 9);
      writeFileSync(file, bytes);
    });
    const before = [filesIn(join(asking.dataFile, '..')), filesIn(folder)];
    for (const [other, what] of [
      ['songs.sqlite', /is the database of another program/],
      ['new.sqlite', /was written by a newer version/],
      ['loose.sqlite', /refers to what is not in it/],
      ['wrong.sqlite', /is damaged/],
      ['short.sqlite', /is cut short/],
      ['letter.sqlite', /is not a database/],
      ['rubbish.sqlite', /is damaged/],
      ['gone.sqlite', /is no longer there/],
      ['../own.sqlite', /is no longer there/],
    ] as const) {
      const problems = await asking.refusal('restoreBackup', { name: other });
      expect([other, problems.map(({ what }) => what)]).toEqual([other, [expect.stringMatching(what)]]);
    }
    // Nothing was put aside either: each was refused before the file was touched.
    expect([filesIn(join(asking.dataFile, '..')), filesIn(folder)]).toEqual(before);
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(2);
  });

  test('while another program has the file open is refused, and the old one goes on', async () => {
    const { asking, name } = await changedSince();
    const other = new SqliteDatabase(asking.dataFile);
    other.prepare('SELECT count(*) FROM item').get();
    const problems = await asking.refusal('restoreBackup', { name });
    expect(problems.map(({ what }) => what)).toEqual(['is held by another program']);
    other.close();
    expect((await asking.get('restoreBackup', { name })).itemCount).toBe(1);
  });

  test('works with a file that the maker laid into the folder', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    asking.services.close();
    mkdirSync(backupFolder(asking.dataFile));
    copyFileSync(asking.dataFile, join(backupFolder(asking.dataFile), 'from the old machine.sqlite'));
    const again = openAsking({ dataFile: asking.dataFile });
    await again.get('saveItem', taffeta);
    const { rows } = await again.get('listBackups', {});
    expect([rows[0]?.name, ...rows.map((row) => row.kind)]).toEqual([
      'from the old machine.sqlite',
      'put here',
      'automatic',
    ]);
    expect((await again.get('restoreBackup', { name: 'from the old machine.sqlite' })).itemCount).toBe(1);
  });
});
