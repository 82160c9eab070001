import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Result } from '../../../../shared-core/measure/problem.ts';
import { say } from '../../../../shared-core/wording/say.ts';
import { openServicesAt, type Services } from '../../../../main/services/calls/services.ts';
import { speakAtHome, speakingFor } from '../../../../main/services/calls/speaking.ts';

let folder = '';
let services: Services;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'speaking-'));
  const opened = await openServicesAt({
    dataFile: join(folder, 'workshop.sqlite'),
    demoFile: join(folder, 'demo.sqlite'),
  });
  if (!opened.ok) throw new Error('not opened');
  services = opened.value;
});

afterEach(async () => {
  await services.close();
  rmSync(folder, { recursive: true });
  speakAtHome('en');
});

/** What is wrong with asking for an item that is not there, in the language that the call names. */
async function told(language?: string): Promise<string> {
  const outcome = (await services.answer({
    call: 'readItem',
    workshop: 'own',
    input: { itemId: 'no such item' },
    ...(language !== undefined && { language }),
  })) as Result<unknown>;
  if (outcome.ok) throw new Error('it was there');
  const { where, what, fix } = outcome.problems[0]!;
  return `${where} ${what}. ${fix}`;
}

test('two windows at one workshop are each answered in their own language, also when they ask at once', async () => {
  const english = await told('en');
  const german = await told('de');
  expect(german).not.toBe(english);
  const all = await Promise.all(
    Array.from({ length: 20 }, (_, index) => told(index % 2 === 0 ? 'en' : 'de-AT')),
  );
  expect(all).toEqual(Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? english : german)));
});

test('a window that names no language, or a strange one, hears that of the program', async () => {
  const english = await told('en');
  expect(await told()).toBe(english);
  expect(await told('tlh')).toBe(english);
  speakAtHome('de-CH');
  expect(await told()).toBe(await told('de'));
});

test('what comes of a call later on is said in its language', async () => {
  const later = speakingFor({ language: 'de' }, async () => {
    await new Promise((then) => setImmediate(then));
    return say('common.is-empty');
  });
  expect(say('common.is-empty')).toBe('is empty');
  expect(await later).toBe('ist leer');
});
