import { linkSync, mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openServices } from '../../../main/services/calls/services.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { filesIn, openAsking, receivedFill, tempFolder } from '../asking.ts';

function refusal(dataFile: string): string {
  const opened = openServices({ dataFile, demoFile: `${dataFile}-demo`, waitMs: 50 });
  if (!opened.ok) return opened.problems.map(problemSentence).join(' / ');
  opened.value.close();
  return 'opened';
}

describe('one file under two names', () => {
  test('by a link to it, or to its folder, is open already in the other window', async () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'shelf'));
    const file = join(folder, 'shelf', 'own.sqlite');
    const asking = openAsking({ dataFile: file });
    await receivedFill(asking, 640);
    symlinkSync(file, join(folder, 'link.sqlite'));
    symlinkSync(join(folder, 'shelf'), join(folder, 'linked'));
    for (const name of [join(folder, 'link.sqlite'), join(folder, 'linked', 'own.sqlite')])
      expect(refusal(name)).toContain(`${file} is open already in another window`);
    asking.services.close();
    const linked = openAsking({ dataFile: join(folder, 'link.sqlite') });
    const facts = await linked.get('workshopFacts', {});
    expect([facts.itemCount, facts.dataFile]).toEqual([1, file]);
    linked.services.close();
    expect(filesIn(folder)).toEqual(['link.sqlite', 'linked', 'shelf']);
  });

  test('by a hard link is refused under both, until one name is left', async () => {
    const folder = tempFolder();
    const [file, other] = [join(folder, 'own.sqlite'), join(folder, 'second.sqlite')];
    const first = openAsking({ dataFile: file });
    await receivedFill(first, 640);
    first.services.close();
    linkSync(file, other);
    for (const name of [file, other]) expect(refusal(name)).toContain('has a second name on this disk');
    expect(filesIn(folder)).toEqual(['own.sqlite', 'second.sqlite']);
    rmSync(other);
    expect(refusal(file)).toBe('opened');
  });

  test('by a hard link made while it is open keeps the second window out', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    const other = `${asking.dataFile}.second.sqlite`;
    linkSync(asking.dataFile, other);
    expect(refusal(other)).toContain('has a second name on this disk');
    rmSync(other);
  });
});
