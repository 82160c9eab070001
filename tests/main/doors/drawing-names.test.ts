import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runEstimate } from '../../../main/doors/command.ts';
import { drawingNames } from '../../../main/doors/drawing-names.ts';
import { openAsking, tempFolder } from '../asking.ts';
import { laysHere } from './lays-here.ts';

test('slots named in Cyrillic and Japanese are each drawn into a file of their own', async () => {
  const asking = openAsking();
  await asking.get('openDemo', {}, 'demo');
  const [row] = (await asking.get('listPlans', {}, 'demo')).rows;
  const { plan } = await asking.get('readPlan', { planId: row!.id }, 'demo');
  const renamed: Record<string, string> = { shell: 'Верх', 'body-lining': 'Подкладка', batting: '中綿' };
  const slots = plan.slots.map((slot) => ({ ...slot, itemId: null, name: renamed[slot.id] ?? slot.name }));
  const own = { ...plan, name: 'Lapwing', slots };
  await asking.get('savePlan', { plan: own, basedOn: null, said: '' });
  asking.services.close();
  const lays = join(tempFolder(), 'lays');
  let out = '';
  const words = ['--data', asking.dataFile, '--svg', lays, '--json', '--iterations', '1'];
  expect(await runEstimate(words, (text) => (out += text), laysHere)).toMatchObject({ ok: true });
  const drawn = readdirSync(lays).map((name) => name.normalize('NFC'));
  expect(drawn).toEqual(expect.arrayContaining(['верх.svg', 'подкладка.svg', '中綿.svg']));
  expect(drawn).toHaveLength(JSON.parse(out).lays.length);
});

test('a name keeps its letters, and what no file may be called is left out', () => {
  expect(
    drawingNames([
      'Body lining',
      '  Futter: "Ärmel" / <innen>  ',
      'हिन्दी कपड़ा',
      'Ο ΦΟΔΡΑΣ',
      '表地',
      '..\\..\\own.sqlite',
      'trailing dot.',
    ]),
  ).toEqual([
    'body-lining.svg',
    'futter-ärmel-innen.svg',
    'हिन्दी-कपड़ा.svg',
    'ο-φοδρας.svg',
    '表地.svg',
    'own-sqlite.svg',
    'trailing-dot.svg',
  ]);
});

test('a name without a letter or digit is called a slot', () => {
  expect(drawingNames(['!?', '', '🧵'])).toEqual(['slot.svg', 'slot-2.svg', 'slot-3.svg']);
});

test('names that some disk takes for one are told apart by a number', () => {
  const composed = 'Caf\u00e9';
  const decomposed = 'Cafe\u0301';
  expect(drawingNames([composed, decomposed, 'CAFÉ 2', 'Straße', 'STRASSE'])).toEqual([
    'café.svg',
    'café-2.svg',
    'café-2-2.svg',
    'straße.svg',
    'strasse-2.svg',
  ]);
});

test('names that Windows keeps for its devices are avoided', () => {
  expect(drawingNames(['Con', 'AUX', 'lpt1', 'COM¹', 'Conin$', 'console'])).toEqual([
    'con-slot.svg',
    'aux-slot.svg',
    'lpt1-slot.svg',
    'com¹-slot.svg',
    'conin.svg',
    'console.svg',
  ]);
});

test('a name as long as the maker likes still fits a disk, whole letters only', () => {
  const folder = tempFolder();
  const [first, second] = drawingNames(['綿'.repeat(300), '綿'.repeat(301)]);
  writeFileSync(join(folder, first!), 'one');
  writeFileSync(join(folder, second!), 'two');
  expect(readFileSync(join(folder, first!), 'utf8')).toBe('one');
  expect(first).toMatch(/^綿+\.svg$/);
  expect(second).toMatch(/^綿+-2\.svg$/);
});
