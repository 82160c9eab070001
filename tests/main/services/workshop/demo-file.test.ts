import { copyFileSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { openServices } from '../../../../main/services/calls/services.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { type Asking, dump, filesIn, openAsking, receivedFill, taffeta } from '../../asking.ts';

/** A maker's own workshop of which the name is that of the demo beside another. */
async function ownWorkshopAtDemo(): Promise<{ dataFile: string; demoFile: string }> {
  const own = openAsking();
  await receivedFill(own, 640);
  own.services.close();
  const demoFile = join(dirname(own.dataFile), 'demo-second.sqlite');
  renameSync(own.dataFile, demoFile);
  return { dataFile: join(dirname(own.dataFile), 'second.sqlite'), demoFile };
}

async function demoSays(asking: Asking): Promise<string> {
  const outcome = await asking.ask('openDemo', {}, 'demo');
  return outcome.ok ? 'made' : outcome.problems.map(problemSentence).join(' / ');
}

describe('a workshop of the maker’s that has the demo’s name', () => {
  test('is never written over by the demo, and the sentence says what to do', async () => {
    const files = await ownWorkshopAtDemo();
    const before = dump(files.demoFile);
    const asking = openAsking(files);
    expect(await demoSays(asking)).toContain('is not a demo, and the demo would be written over it');
    expect((await asking.ask('listItems', {} as never, 'demo')).ok).toBe(false);
    expect(dump(files.demoFile)).toBe(before);
    const beside = filesIn(dirname(files.demoFile)).filter((name) => name.startsWith('demo-'));
    expect(beside).toEqual(['demo-second.sqlite']);
    renameSync(files.demoFile, `${files.demoFile}.mine`);
    expect(await demoSays(asking)).toBe('made');
  });

  test('is not either while it is open in another window', async () => {
    const files = await ownWorkshopAtDemo();
    const mine = openAsking({ dataFile: files.demoFile });
    const other = openAsking(files);
    expect(await demoSays(other)).toContain('is not a demo');
    expect((await mine.get('workshopFacts', {})).itemCount).toBe(1);
  });
});

describe('the demo’s own file', () => {
  test('is marked and claimed: another window is told that it is open', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    const other = openAsking({ demoFile: asking.demoFile });
    expect(await demoSays(other)).toContain('is open already in another window');
    asking.services.close();
    expect(await demoSays(other)).toBe('made');
    other.services.close();
    expect(filesIn(dirname(asking.demoFile)).filter((name) => name.startsWith('demo'))).toEqual([
      'demo.sqlite',
    ]);
    const database = new SqliteDatabase(asking.demoFile, { readonly: true });
    expect(database.pragma('application_id', { simple: true })).toBe(0x426f4264);
    database.close();
  });

  test('is no place for work of the maker’s own, since it is made anew at any time', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    asking.services.close();
    const opened = openServices({ dataFile: asking.demoFile, demoFile: `${asking.demoFile}-demo` });
    if (opened.ok) opened.value.close();
    expect(opened.ok ? '' : opened.problems[0]?.what).toBe(
      'belongs to the demo, which is made anew at any time',
    );
    // To look at it is another matter.
    const reading = openAsking({ dataFile: asking.demoFile, isReadOnly: true });
    expect((await reading.get('workshopFacts', {})).itemCount).toBeGreaterThan(5);
  });

  test('of an earlier version, without the mark, is known by its coat and marked', async () => {
    const first = openAsking();
    await first.get('openDemo', {}, 'demo');
    await first.get('saveItem', taffeta, 'demo');
    first.services.close();
    const unmark = new SqliteDatabase(first.demoFile);
    unmark.pragma(`application_id = ${0x426f4261}`);
    unmark.close();
    const copy = `${first.demoFile}.copy`;
    copyFileSync(first.demoFile, copy);
    const again = openAsking({ dataFile: first.dataFile, demoFile: first.demoFile });
    const facts = await again.get('workshopFacts', {}, 'demo');
    again.services.close();
    const marked = new SqliteDatabase(first.demoFile, { readonly: true });
    expect(marked.pragma('application_id', { simple: true })).toBe(0x426f4264);
    expect(facts.itemCount).toBe(marked.prepare('SELECT count(*) FROM item').pluck().get());
    marked.close();
    // Under another name it is just as little a demo as any file: one of the maker's with the same mark stays one.
    const renamed = new SqliteDatabase(copy);
    renamed.exec("UPDATE workshop SET name = 'Fen & Tarn'");
    renamed.close();
    expect(await demoSays(openAsking({ demoFile: copy }))).toContain('is not a demo');
  });
});
