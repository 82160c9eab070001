import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { demoWorkshop } from '../../../../shared-core/demo/demo-workshop.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { clothLot, openAsking, receivedFill, taffeta } from '../../asking.ts';

describe('what is typed wrongly is told by its place', () => {
  const lot = clothLot('any');
  const [first, second] = lot.lengths;
  const cases: readonly (readonly [string, unknown, readonly string[]])[] = [
    ['receiveLot', { ...lot, priceMinor: -4 }, ['Price is negative. Give 0 or more.']],
    ['receiveLot', { ...lot, priceMinor: 12.5 }, ['Price is not a whole number. Type a whole number.']],
    [
      'receiveLot',
      { ...lot, lengths: [first, { ...second, widthMm: 0 }] },
      ['Length 2, width is not above 0. Give more than 0.'],
    ],
    [
      'receiveLot',
      { ...lot, lengths: [{ ...first, flaws: [{ x: 1, y: 2, widthX: 3 }] }] },
      ['Length 1, flaw 1, width across is missing. Fill it in.'],
    ],
    [
      'receiveLot',
      { ...lot, lengths: [{ ...first, lengthMm: 1e9 }] },
      ['Length 1, length is too large to be true. Check the number and its unit: the most is 1,000,000.'],
    ],
    [
      'receiveLot',
      { ...lot, lengths: [{ ...first, form: 'heap' }] },
      ['Length 1, form is not one of the choices. Choose one of: roll, cut, remnant, sheet.'],
    ],
    [
      'receiveLot',
      { ...lot, receivedOn: '2026-02-30' },
      ['Date received is not a date. Give year, month and day, such as 2026-03-27.'],
    ],
    ['receiveLot', { ...lot, amount: Number.POSITIVE_INFINITY }, ['Amount is not a number. Type a number.']],
    ['receiveLot', { ...lot, amount: '12' }, ['Amount is not a number. Type a number.']],
    ['saveItem', { ...taffeta, name: '   ' }, ['Name is empty. Check it and type it anew.']],
    [
      'saveItem',
      { ...taffeta, notes: 'n'.repeat(20_001) },
      ['Notes is too long. Type at most 20,000 letters.'],
    ],
    [
      'saveItem',
      { ...taffeta, kind: 'gravel' },
      ['Kind is not one of the choices. Choose one of: cloth, batting, fill, thread, needle, fastening.'],
    ],
    [
      'saveItem',
      { ...taffeta, owner: 'me' },
      ['What was sent holds what is not known here: owner. Leave it out.'],
    ],
    [
      'saveSettings',
      { workshopName: '', system: 'metric', currency: 'euro' },
      ['Currency is not three capital letters, as in EUR. Check it and type it anew.'],
    ],
    ['saveItem', null, ['What was sent is not what is expected here. Check it and type it anew.']],
    [
      'listItems',
      { search: '', kinds: ['cloth', 'gravel'], sortBy: 'name', isDescending: false, offset: 0, limit: 5 },
      ['Kind 2 is not one of the choices. Choose one of: cloth, batting, fill, thread, needle, fastening.'],
    ],
  ];
  for (const [call, input, sentences] of cases) {
    test(`${call}: ${sentences[0]}`, async () => {
      const asking = openAsking();
      expect((await asking.refusal(call, input)).map(problemSentence)).toEqual(sentences);
    });
  }

  test('in a plan with the names of piece and edge', async () => {
    const asking = openAsking();
    const plan = structuredClone(demoWorkshop().plans[0]!) as unknown as {
      pieces: { name: string; outline: { edges: { name: string; allowanceMm: number }[] } }[];
    };
    const piece = plan.pieces[2]!;
    piece.outline.edges[1]!.allowanceMm = -6;
    const [problem] = await asking.refusal('savePlan', { plan, basedOn: null, said: '' });
    expect(problem?.where).toBe(
      `Piece 3 (${piece.name}), edge 2 (${piece.outline.edges[1]!.name}), allowance`,
    );
  });

  test('a hundred slips are told of twenty at a time', async () => {
    const asking = openAsking();
    const lengths = Array.from({ length: 100 }, () => ({ ...first, widthMm: -1 }));
    expect(await asking.refusal('receiveLot', { ...lot, lengths })).toHaveLength(20);
  });
});

describe('what no door would send', () => {
  const hostile: readonly unknown[] = [
    undefined,
    null,
    7,
    'workshopFacts',
    [],
    {},
    { call: 'workshopFacts' },
    { call: 'workshopFacts', workshop: 'theirs', input: {} },
    { call: 'dropAll', workshop: 'own', input: {} },
    { call: '__proto__', workshop: 'own', input: {} },
    { call: 'constructor', workshop: 'own', input: {} },
    { call: 'workshopFacts', workshop: 'own', input: {}, more: 1 },
    { call: 'workshopFacts', workshop: 'own' },
    { call: 'readItem', workshop: 'own', input: { itemId: { $ne: '' } } },
    { call: 'readItem', workshop: 'own', input: { itemId: "' OR 1 = 1 --" } },
  ];

  test('is answered with problems, never with a throw, and changes nothing', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    const before = await asking.rows();
    for (const envelope of hostile) {
      const outcome = await asking.services.answer(envelope);
      expect([envelope, outcome.ok]).toEqual([envelope, false]);
      expect(outcome.ok ? 0 : outcome.problems.length).toBeGreaterThan(0);
    }
    expect(await asking.rows()).toBe(before);
    expect(asking.logged).toEqual([]);
  });

  test('of very many things is refused in a few words, and not looked through', async () => {
    const asking = openAsking();
    const keys = (count: number, length = 1) =>
      Object.fromEntries(Array.from({ length: count }, (_, i) => [`${'k'.repeat(length)}${i}`, 1]));
    const sentences = async (input: object) => {
      const problems = await asking.refusal('saveItem', input);
      return problems.map(problemSentence);
    };
    const [unknown, ...more] = await sentences({ ...taffeta, ...keys(900, 5000) });
    expect(more).toEqual([]);
    expect(unknown!.length).toBeLessThan(400);
    expect(unknown).toMatch(
      /^What was sent holds what is not known here: k+…, .* and 895 more\. Leave it out\.$/,
    );
    expect(await sentences({ ...taffeta, facts: keys(50_000) })).toEqual([
      'What was sent is a list of more than 200 facts. Check it and type it anew.',
    ]);
    const all = 'What was sent holds more entries than any step takes. Send less at once.';
    expect(await sentences({ ...taffeta, facts: keys(120_000) })).toEqual([all]);
    let nested: object = {};
    for (let depth = 0; depth < 50_000; depth++) nested = { nested };
    expect(await sentences({ ...taffeta, facts: nested })).toEqual([all]);
    expect(asking.logged).toEqual([]);
  });

  test('with signs that cannot be seen loses them, so that what is saved can be read again', async () => {
    const asking = openAsking();
    const notes = 'wash\u0000 first\nthen\u0007 iron';
    const { itemId } = await asking.get('saveItem', {
      ...taffeta,
      name: 'Peat\u0000water\r\ntaffeta',
      notes,
    });
    const { item } = (await asking.get('readItem', { itemId })).shelf;
    expect([item.name, item.notes]).toEqual(['Peat water taffeta', 'wash first\nthen iron']);
    const { text } = await asking.get('stashFile', {});
    expect((await asking.get('lookAtStashFile', { text })).changes).toEqual([]);
    const names = await asking.refusal('bringInStashFile', {
      text: text.replace('taffeta', 'taf\u0000feta'),
    });
    expect(names.map(problemSentence)).toEqual(['The table is not text. Save it as CSV.']);
  });

  test('text that looks like SQL is text', async () => {
    const asking = openAsking();
    const name = "Robin'); DROP TABLE item; --";
    const { itemId } = await asking.get('saveItem', { ...taffeta, name, colour: '"; \0 %_' });
    expect((await asking.get('readItem', { itemId })).shelf.item.name).toBe(name);
  });
});

test('a slip of the program tells the maker that nothing was changed, and tells the log what it was', async () => {
  const asking = openAsking();
  await receivedFill(asking, 640);
  const other = new SqliteDatabase(asking.dataFile);
  other.exec(
    "CREATE TRIGGER trap BEFORE INSERT ON item_balance BEGIN SELECT RAISE(ABORT, 'secret inside'); END",
  );
  other.close();
  const problems = await asking.refusal('saveItem', taffeta);
  expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual(['This step could not be done']);
  expect(JSON.stringify(problems)).not.toContain('secret');
  expect(String(asking.logged[0])).toContain('secret inside');
});
