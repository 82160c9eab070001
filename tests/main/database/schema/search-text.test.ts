import { expect, test } from 'vitest';
import { searchText, searchWords, sortKey } from '../../../../main/database/schema/search-text.ts';
import { folded } from '../../../../shared-core/measure/text/folded-text.ts';

test('capitals, accents and joined letters make no difference', () => {
  expect(folded('  Écru\u0301  GRÖSSE ')).toBe('ecru grosse');
  expect(folded('Straße Smørrebrød Łódź Œillet ﬁne')).toBe('strasse smorrebrod lodz oeillet fine');
  expect(folded('İstanbul')).toBe('istanbul');
  expect(folded('cafe\u0301')).toBe(folded('café'));
});

test('a search is its words, each once', () => {
  expect(searchWords('  Moss  taffeta moss ')).toEqual(['moss', 'taffeta']);
  expect(searchWords('   ')).toEqual([]);
});

test('no word is found across two fields', () => {
  expect(searchText(['Moss', '', 'Taffeta', 'MOSS'])).toBe('moss\ntaffeta');
});

test('numbers inside a text are sorted by size', () => {
  const names = ['Zip 10', 'zip 9', 'Zip 9 b', 'Äpfel', 'zebra'];
  expect([...names].sort((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1))).toEqual([
    'Äpfel',
    'zebra',
    'zip 9',
    'Zip 9 b',
    'Zip 10',
  ]);
});
