import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import { releasedFolder } from '../../fixtures/released/make.ts';
import { openAsking, tempFolder } from '../asking.ts';

/** A file from before care had five processes, with these items on its shelf. */
async function broughtForward(items: readonly (readonly [name: string, kind: string, facts: object])[]) {
  const file = join(tempFolder(), '0008.sqlite');
  copyFileSync(join(releasedFolder, '0008.sqlite'), file);
  const database = new SqliteDatabase(file);
  const insert = database.prepare(
    `INSERT INTO item (id, kind, name_key, place_key, search_text, name, colour, place, typed, facts, notes)
     VALUES (?, ?, lower(?), '', '', ?, '', '', '{}', ?, '')`,
  );
  for (const [name, kind, facts] of items) insert.run(name, kind, name, name, JSON.stringify(facts));
  database.close();
  const asking = openAsking({ dataFile: file });
  const facts = async (itemId: string) => (await asking.get('readItem', { itemId })).shelf.item.facts;
  const { upgradeNotes } = await asking.get('workshopFacts', {});
  return { facts, notes: upgradeNotes.map(({ note }) => note) };
}

test('a cloth for dry cleaning is not washed and is dry cleaned; the hottest wash stays the hottest wash', async () => {
  const { facts } = await broughtForward([
    ['satin', 'cloth', { widthMm: 1140, care: 'dry clean' }],
    ['drill', 'cloth', { widthMm: 1490, care: 'wash at 60' }],
    ['cluster', 'fill', { care: null }],
  ]);
  expect(await facts('satin')).toEqual({
    widthMm: 1140,
    careWash: 'do not wash',
    careBleach: null,
    careDry: null,
    careIron: null,
    careProfessional: 'dry clean P',
  });
  expect(await facts('drill')).toMatchObject({ careWash: 'wash at 60', careProfessional: null });
  expect(await facts('cluster')).toMatchObject({ careWash: null, careProfessional: null });
});

test('a zip that was ticked as separating is one that comes apart, or two-way by its name, and the maker is told', async () => {
  const { facts, notes } = await broughtForward([
    ['Heron zip', 'fastening', { form: 'zip', isSeparating: true }],
    ['Heron two-way zip', 'fastening', { form: 'zip', isSeparating: true }],
    ['pocket zip', 'fastening', { form: 'zip', isSeparating: false }],
    ['cord', 'fastening', { form: 'cord', isSeparating: null }],
  ]);
  const opening = async (itemId: string) => ((await facts(itemId)) as { opening?: unknown }).opening;
  expect([await opening('Heron zip'), await opening('Heron two-way zip')]).toEqual([
    'separating',
    'two-way, separating',
  ]);
  expect([await opening('pocket zip'), await opening('cord')]).toEqual(['closed at the bottom', null]);
  expect(await facts('Heron zip')).not.toHaveProperty('isSeparating');
  expect(notes).toEqual([
    'How Heron two-way zip opens was set to two-way, separating: comes wholly apart at the bottom. Change it at the item where it does not.',
    'How Heron zip opens was set to separating: comes wholly apart at the bottom. Change it at the item where it does not.',
  ]);
});
