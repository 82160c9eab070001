import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openServices } from '../../../../main/services/calls/services.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { dump, filesIn, openAsking, receivedFill, tempFolder } from '../../asking.ts';
import { elsewhere, nobody, otherProgram } from '../../other-program.ts';

function open(dataFile: string) {
  return openServices({ dataFile, demoFile: `${dataFile}-demo`, waitMs: 50 });
}

describe('a workshop that is open already', () => {
  test('is refused to a second window with who has it, and nothing in it or beside it is touched', async () => {
    const file = join(tempFolder(), 'own.sqlite');
    const pid = await elsewhere.open(file);
    const before = [dump(file), filesIn(join(file, '..')), readFileSync(`${file}-open`)];
    const second = open(file);
    const sentences = second.ok ? [] : second.problems.map(problemSentence);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(
      /is open already in another window of this program, since \d\d:\d\d \(process \d+\)\./,
    );
    expect(sentences[0]).toContain(`process ${pid}`);
    expect([dump(file), filesIn(join(file, '..')), readFileSync(`${file}-open`)]).toEqual(before);
    await elsewhere.close(file);
  });

  test('is refused even to a second opening in the same program', () => {
    const first = openAsking();
    const second = open(first.dataFile);
    expect(second.ok).toBe(false);
    first.services.close();
    const third = open(first.dataFile);
    expect(third.ok).toBe(true);
    if (third.ok) third.value.close();
  });

  test('is free again as soon as the first is closed, and nothing is left beside it', async () => {
    const file = join(tempFolder(), 'own.sqlite');
    await elsewhere.open(file);
    await elsewhere.close(file);
    expect(filesIn(join(file, '..'))).toEqual(['own.sqlite']);
    const second = open(file);
    expect(second.ok).toBe(true);
    if (second.ok) second.value.close();
  });

  test('whose program was killed is free at once, though its claim still lies there', async () => {
    const file = join(tempFolder(), 'own.sqlite');
    await elsewhere.open(file);
    await elsewhere.kill();
    expect(existsSync(`${file}-open`)).toBe(true);
    const second = open(file);
    expect(second.ok).toBe(true);
    if (second.ok) second.value.close();
    expect(filesIn(join(file, '..'))).toEqual(['own.sqlite']);
  });

  test('may be read by an estimate meanwhile', async () => {
    const first = openAsking();
    await receivedFill(first, 640);
    const beside = openAsking({ dataFile: first.dataFile, isReadOnly: true });
    expect((await beside.get('workshopFacts', {})).itemCount).toBe(1);
  });

  test('is not kept shut by a claim that is rubbish', () => {
    const file = join(tempFolder(), 'own.sqlite');
    writeFileSync(`${file}-open`, 'left by a broken copy '.repeat(300));
    const opened = open(file);
    expect(opened.ok ? [] : opened.problems).toEqual([]);
    if (opened.ok) opened.value.close();
  });
});

describe('a folder that may not be written to', () => {
  test('is told of to a person who is not its owner, with and without a file in it', async () => {
    const folder = tempFolder();
    chmodSync(folder, 0o755);
    const shut = join(folder, 'shut');
    mkdirSync(shut);
    const file = join(shut, 'own.sqlite');
    const made = open(file);
    if (made.ok) made.value.close();
    chmodSync(file, 0o644);
    chmodSync(shut, 0o555);
    const theirs = otherProgram(nobody);
    for (const dataFile of [file, join(shut, 'new.sqlite')]) {
      await expect(theirs.open(dataFile)).rejects.toThrow(
        'cannot be written. Allow writing to the file and its folder',
      );
    }
    await theirs.kill();
    expect(filesIn(shut)).toEqual(['own.sqlite']);
    chmodSync(shut, 0o755);
  });
});
