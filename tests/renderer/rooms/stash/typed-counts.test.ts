import { expect, test } from 'vitest';
import { demoItems } from '../../../../shared-core/demo/items.ts';
import {
  countedNow,
  countsCall,
  countsSchema,
  type PlaceOfItem,
} from '../../../../renderer/rooms/stash/stock-take/typed-counts.ts';

const metric = { system: 'metric', currency: 'EUR' } as const;
const cloth = demoItems().find(({ kind }) => kind === 'cloth')!;
const thread = demoItems().find(({ kind }) => kind === 'thread')!;

function place(key: string, item: PlaceOfItem['item'], onHand: number): PlaceOfItem {
  const lengthId = item.kind === 'cloth' ? key : null;
  return { item, place: { key, lotId: `lot of ${key}`, lengthId, onHand, label: `Place ${key}` } };
}

const roll = place('roll', cloth, 4200);
const remnant = place('remnant', cloth, 800);
const spool = place('spool', thread, 500);

test('only what was counted is booked, each in the unit of its kind', () => {
  const counts = { roll: '4 1/2 yd', spool: '450' };
  const read = countsSchema([roll, remnant, spool], metric).parse({ counts, reason: ' stock-take ' });
  const { counts: sent, reason } = countsCall(read);
  expect(reason).toBe('stock-take');
  expect(sent.map(({ lotId, lengthId }) => [lotId, lengthId])).toEqual([
    ['lot of roll', 'roll'],
    ['lot of spool', null],
  ]);
  expect(sent[0]?.counted).toBeCloseTo(4114.8, 9);
  expect(sent[1]?.counted).toBe(450);
});

test('nothing there is a count as well, and an empty field is none', () => {
  expect(countedNow([roll, remnant], { counts: { roll: '0', remnant: ' ' } }, metric)).toEqual([
    { ...roll, value: 0 },
  ]);
});

test('what cannot be read is told at its place, and nothing is booked of the others meanwhile', () => {
  const outcome = countsSchema([roll, spool], metric).safeParse({
    counts: { roll: '4 mm m', spool: '450' },
    reason: '',
  });
  expect(outcome.error?.issues.map(({ path }) => path.join('.'))).toEqual(['counts.roll']);
  expect(countedNow([roll, spool], { counts: { roll: '4 mm m', spool: '450' } }, metric)).toHaveLength(1);
});
