import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IntlMessageFormat } from 'intl-messageformat';
import { expect, test } from 'vitest';
import german from '../../../shared-core/wording/de.json' with { type: 'json' };
import english from '../../../shared-core/wording/en.json' with { type: 'json' };
import { sayings, sourceFiles } from './messages.ts';

const root = join(import.meta.dirname, '../../..');
const catalogues = { en: english as Record<string, string>, de: german as Record<string, string> };
const said = sourceFiles(root).flatMap(sayings);

/** Names of the placeholders of a message, sorted. Throws where it is no ICU message. */
function placeholders(text: string, language: string): string[] {
  const names = new Set<string>();
  const walk = (elements: readonly unknown[]): void => {
    for (const element of elements as {
      type: number;
      value: string;
      options?: Record<string, { value: unknown[] }>;
    }[]) {
      // 0 is plain text, 7 the # of a plural.
      if (element.type !== 0 && element.type !== 7) names.add(element.value);
      for (const option of Object.values(element.options ?? {})) walk(option.value);
    }
  };
  walk(new IntlMessageFormat(text, language, undefined, { ignoreTag: true }).getAst());
  return [...names].sort();
}

/** English words that change with their neighbours and have no place in another language. */
const englishOnly = ['isOrAre', 'ifCut'];

test('every message that is said stands in the catalogue, and every one that stands there is said', () => {
  const ids = new Set(Object.keys(english));
  expect(said.length).toBeGreaterThan(1000);
  expect(said.filter(({ id }) => !ids.has(id))).toEqual([]);
  const used = new Set(said.map(({ id }) => id));
  // Ids that are handed on rather than said at once stand in the code as texts.
  const code = sourceFiles(root)
    .map((file) => readFileSync(file, 'utf8'))
    .join('\n');
  // Names are given by what they are in English: tests/core/draft/spoken-names.test.ts holds those against the drafts.
  const isByItsWords = (id: string) => /^(code|piece-name|edge-name|seam-name|slot-name)\./.test(id);
  const idle = [...ids].filter((id) => !used.has(id) && !isByItsWords(id) && !code.includes(`'${id}'`));
  expect(idle).toEqual([]);
});

test('whoever says a message gives each of its values, and none that it has no place for', () => {
  const wrong = said.flatMap(({ file, id, values }) => {
    const asked = placeholders((english as Record<string, string>)[id] ?? '', 'en');
    if (values === null) return [];
    const given = [...new Set(values)].sort();
    return given.join() === asked.join()
      ? []
      : [`${file.slice(root.length + 1)}: ${id} asks ${asked.join()}; given ${given.join()}`];
  });
  expect(wrong).toEqual([]);
});

test('the German is whole: each message of the English, with its values', () => {
  expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
  const wrong = Object.entries(catalogues.en).flatMap(([id, text]) => {
    const asked = placeholders(text, 'en').filter((name) => !englishOnly.includes(name));
    const has = placeholders(catalogues.de[id] ?? '', 'de').filter((name) => !englishOnly.includes(name));
    return asked.join() === has.join() ? [] : [`${id}: ${asked.join()} became ${has.join()}`];
  });
  expect(wrong).toEqual([]);
});

test('the German is German: hardly a sentence of several words stands in it as in English', () => {
  const same = Object.entries(catalogues.en).filter(
    ([id, text]) =>
      catalogues.de[id] === text && (text.replace(/\{[^}]*\}/g, ' ').match(/[a-z]{3,}/gi) ?? []).length > 2,
  );
  expect(same.map(([id]) => id)).toEqual([]);
});
