import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import {
  type Asking,
  clothLot,
  down,
  fillLot,
  openAsking,
  receivedCloth,
  receivedFill,
  taffeta,
} from '../../asking.ts';

async function foundCount(asking: Asking, search: string): Promise<number> {
  const page = { kinds: [], sortBy: 'name', isDescending: false, offset: 0, limit: 9 } as const;
  return (await asking.get('listItems', { ...page, kinds: [], search })).total;
}

describe('items', () => {
  test('a saved cloth is read back as it was typed, with what is not known left open', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const { shelf, movements, offers } = await asking.get('readItem', { itemId });
    const { itemId: _, ...typed } = taffeta;
    expect(shelf.item).toMatchObject({
      ...typed,
      id: itemId,
      facts: { widthMm: 1470, fibre: null },
    });
    expect([shelf.lots, movements, offers]).toEqual([[], [], []]);
  });

  test('a changed item keeps its id and its lots', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    await asking.get('saveItem', { ...taffeta, itemId, name: 'Slatewater taffeta', place: 'shelf C' });
    const { shelf } = await asking.get('readItem', { itemId });
    expect(shelf.item).toMatchObject({ name: 'Slatewater taffeta', place: 'shelf C' });
    expect(shelf.lots).toHaveLength(1);
    expect(await foundCount(asking, 'peatwater')).toBe(0);
  });

  test('two cloths of one name and colour would be mistaken for each other', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const problems = await asking.refusal('saveItem', {
      ...taffeta,
      name: 'PEATWATER  Täffeta',
      colour: 'Moss',
    });
    expect(problems.map(problemSentence)).toEqual([
      'Name PEATWATER  Täffeta is already that of another cloth in Moss. Give it another name or colour, or add a lot to the item that is there.',
    ]);
    await asking.get('saveItem', { ...taffeta, colour: 'rust' });
    await asking.get('saveItem', { ...taffeta, itemId, notes: 'from the fair' });
  });

  test('facts that cannot be true are refused by name', async () => {
    const asking = openAsking();
    const problems = await asking.refusal('saveItem', {
      ...taffeta,
      facts: { widthMm: -3, loftMm: 4, careWash: 'boil' },
    });
    expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual([
      'loftMm of Peatwater taffeta is not a fact of cloth',
      'Width of Peatwater taffeta is negative',
      'Wash of Peatwater taffeta is not known: boil',
    ]);
  });

  test('a cloth never becomes a batting', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const [problem] = await asking.refusal('saveItem', { ...taffeta, itemId, kind: 'batting' });
    expect(problem).toMatchObject({
      where: 'Kind of Peatwater taffeta',
      what: 'is cloth and cannot be changed',
    });
  });

  test('an item that is not there is not read, changed or received', async () => {
    const asking = openAsking();
    for (const [call, input] of [
      ['readItem', { itemId: 'gone' }],
      ['saveItem', { ...taffeta, itemId: 'gone' }],
      ['receiveLot', clothLot('gone')],
    ] as const) {
      expect((await asking.refusal(call, input))[0]?.where).toBe('The item');
    }
  });
});

describe('a purchase', () => {
  test('puts each length on the shelf with its flaws, and its first rows in the ledger', async () => {
    const asking = openAsking({ now: () => new Date('2026-04-01T08:09:10.000Z') });
    const { itemId, lotId } = await receivedCloth(asking);
    const { shelf, movements } = await asking.get('readItem', { itemId });
    const [lot] = shelf.lots;
    expect(lot).toMatchObject({
      id: lotId,
      itemId,
      receivedOn: '2026-03-27',
      supplier: 'Quillstone Cloth',
      dyeLot: 'P-2207',
      receivedMilli: 8_200_500,
      priceMinor: 12_345,
      onHand: 8200.5,
      reserved: 0,
    });
    expect(
      lot!.lengths.map(({ widthMm, onHandMm, form, flaws }) => [widthMm, onHandMm, form, flaws]),
    ).toEqual([
      [1470, 7310.5, 'cut', [{ x: 2140, y: 930, widthX: 65, widthY: 40 }]],
      [1465, 890, 'remnant', []],
    ]);
    expect(movements.map(({ kind, at, onHandMilli }) => [kind, at, onHandMilli])).toEqual([
      ['received', '2026-04-01T08:09:10.000Z', 890_000],
      ['received', '2026-04-01T08:09:10.000Z', 7_310_500],
    ]);
  });

  test('of three equal sheets gives three lengths', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', { ...taffeta, kind: 'batting', name: 'Fleecewell' });
    const sheet = { widthMm: 2290, lengthMm: 2740, form: 'sheet' as const, flaws: [], count: 3 };
    await asking.get('receiveLot', { ...clothLot(itemId), lengths: [sheet] });
    const { shelf } = await asking.get('readItem', { itemId });
    expect(shelf.lots[0]!.onHand).toBe(8220);
    expect(shelf.lots[0]!.lengths.map((length) => length.onHandMm)).toEqual([2740, 2740, 2740]);
  });

  test('that makes no sense is refused, with its place', async () => {
    const asking = openAsking();
    const { itemId: clothId } = await asking.get('saveItem', taffeta);
    const { itemId: fillId } = await asking.get('saveItem', down);
    const { itemId: needleId } = await asking.get('saveItem', {
      ...down,
      kind: 'needle',
      name: 'Sharp 75',
      facts: {},
    });
    const lot = clothLot(clothId);
    const [first] = lot.lengths;
    const flaw = { x: 7300, y: 5, widthX: 11, widthY: 3 };
    const cases: readonly (readonly [CallInput<'receiveLot'>, string])[] = [
      [{ ...lot, amount: 12 }, 'Amount of Peatwater taffeta is given, but it lies as lengths'],
      [{ ...lot, lengths: [] }, 'Lengths of Peatwater taffeta are missing'],
      [
        { ...lot, lengths: [first!, { ...first!, flaws: [flaw] }] },
        'Flaw 1 of length 2 reaches beyond the length',
      ],
      [
        { ...lot, lengths: [{ ...first!, lengthMm: 0.0001, flaws: [] }] },
        'Length 1 of Peatwater taffeta is too small to be counted',
      ],
      [
        { ...lot, lengths: Array.from({ length: 5 }, () => ({ ...first!, count: 450 })) },
        'Lengths of Peatwater taffeta are 2250, more than 2000 at once',
      ],
      [{ ...fillLot(fillId, 3), amount: null }, 'Amount of Fenwalk down is missing'],
      [{ ...lot, itemId: fillId }, 'Lengths of Fenwalk down are given, but it has none'],
      [fillLot(needleId, 2.5), 'Amount of Sharp 75 is not a whole number'],
    ];
    for (const [input, sentence] of cases) {
      const problems = await asking.refusal('receiveLot', input);
      expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual([sentence]);
    }
  });

  test('half a cord may lie on the shelf, half a snap may not', async () => {
    const asking = openAsking();
    const notion = { ...down, kind: 'fastening' } as const;
    const { itemId: cordId } = await asking.get('saveItem', {
      ...notion,
      name: 'Cord',
      facts: { form: 'cord' },
    });
    const { itemId: snapId } = await asking.get('saveItem', {
      ...notion,
      name: 'Snap',
      facts: { form: 'snap' },
    });
    await asking.get('receiveLot', fillLot(cordId, 1.5));
    expect(await asking.refusal('receiveLot', fillLot(snapId, 1.5))).toHaveLength(1);
  });
});

describe('writing off', () => {
  test('takes it off the length and says what is left of it', async () => {
    const asking = openAsking();
    const { itemId, lotId, cutId } = await receivedCloth(asking);
    const left = await asking.get('writeOff', { lotId, lengthId: cutId, amount: 310.25, reason: 'moth' });
    expect(left).toEqual({ onHand: 7000.25 });
    const { shelf, movements } = await asking.get('readItem', { itemId });
    expect(shelf.lots[0]).toMatchObject({
      onHand: 7890.25,
      lengths: [{ onHandMm: 7000.25 }, { onHandMm: 890 }],
    });
    expect(movements[0]).toMatchObject({
      kind: 'written off',
      onHandMilli: -310_250,
      reason: 'moth',
      lengthId: cutId,
    });
  });

  test('of more than there is says how much there is, though the lot holds enough', async () => {
    const asking = openAsking();
    const { lotId, remnantId } = await receivedCloth(asking);
    const problems = await asking.refusal('writeOff', {
      lotId,
      lengthId: remnantId,
      amount: 1200,
      reason: 'moth',
    });
    expect(problems.map(problemSentence)).toEqual([
      'Amount of Peatwater taffeta is more than is free: 890 mm is on hand. Write off 890 mm or less, or correct the count first.',
    ]);
  });

  test('shows amounts in the measures of the workshop', async () => {
    const asking = openAsking();
    await asking.get('saveSettings', { workshopName: 'Fen', system: 'imperial', currency: 'USD' });
    const { lotId } = await receivedFill(asking, 907.18474);
    const [problem] = await asking.refusal('writeOff', {
      lotId,
      lengthId: null,
      amount: 5000,
      reason: 'damp',
    });
    expect(problem?.what).toBe('is more than is free: 2 lb is on hand');
  });

  test('names a length where there are lengths, and none where there are none', async () => {
    const asking = openAsking();
    const { lotId, cutId } = await receivedCloth(asking);
    const fill = await receivedFill(asking, 640);
    for (const [input, what] of [
      [{ lotId, lengthId: null }, 'is not named'],
      [{ lotId: fill.lotId, lengthId: cutId }, 'is named, but there are none'],
      [{ lotId, lengthId: 'gone' }, 'is not one of this lot'],
      [{ lotId: 'gone', lengthId: null }, 'is not in the stash'],
    ] as const) {
      for (const [call, rest] of [
        ['writeOff', { amount: 1, reason: 'r' }],
        ['correctCount', { counted: 1, reason: 'r' }],
      ] as const) {
        expect((await asking.refusal(call, { ...input, ...rest })).map((problem) => problem.what)).toEqual([
          what,
        ]);
      }
    }
  });

  test('without a reason is refused', async () => {
    const asking = openAsking();
    const { lotId } = await receivedFill(asking, 640);
    const problems = await asking.refusal('writeOff', { lotId, lengthId: null, amount: 1, reason: '' });
    expect(problems.map(problemSentence)).toEqual(['Reason is missing. Check it and type it anew.']);
  });
});

describe('counting the shelf', () => {
  test('books the difference, down and up, and nothing where there is none', async () => {
    const asking = openAsking();
    const { itemId, lotId } = await receivedFill(asking, 640);
    const count = (counted: number) =>
      asking.get('correctCount', { lotId, lengthId: null, counted, reason: 'counted' });
    expect([await count(611.5), await count(611.5), await count(700), await count(0)]).toEqual([
      { onHand: 611.5, released: [] },
      { onHand: 611.5, released: [] },
      { onHand: 700, released: [] },
      { onHand: 0, released: [] },
    ]);
    const { movements } = await asking.get('readItem', { itemId });
    expect(movements.map((movement) => movement.onHandMilli)).toEqual([-700_000, 88_500, -28_500, 640_000]);
  });

  test('of a length says one that is too long to be true', async () => {
    const asking = openAsking();
    const { lotId, cutId } = await receivedCloth(asking);
    expect(
      await asking.refusal('correctCount', { lotId, lengthId: cutId, counted: 2e6, reason: 'r' }),
    ).toHaveLength(1);
  });
});
