import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { type Asking, openAsking, receivedCloth, receivedFill, taffeta } from '../../asking.ts';

/** The saved stash as a table that a test can write in as a maker would in a spreadsheet. */
async function sheet(asking: Asking, workshop: 'own' | 'demo' = 'own') {
  const { text } = await asking.get('stashFile', {}, workshop);
  const [headings = [], ...rows] = Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
  const column = (heading: string) => {
    const at = headings.findIndex((each) => each.startsWith(heading));
    if (at < 0) throw new Error(`no column ${heading}`);
    return at;
  };
  return {
    text,
    rows,
    put: (row: number, heading: string, value: string) => {
      rows[row]![column(heading)] = value;
    },
    get: (row: number, heading: string) => rows[row]![column(heading)],
    add: (cells: Readonly<Record<string, string>>) => {
      const row = headings.map(() => '');
      for (const [heading, value] of Object.entries(cells)) row[column(heading)] = value;
      rows.push(row);
    },
    written: (delimiter = ',') => Papa.unparse([headings, ...rows], { delimiter }),
  };
}

async function mixedStash(): Promise<Asking> {
  const asking = openAsking({ now: () => new Date('2026-04-01T08:09:10.000Z') });
  await receivedCloth(asking);
  await receivedFill(asking, 640);
  await asking.get('saveItem', {
    ...taffeta,
    name: '=Écru; "lawn", 2,5',
    colour: "'-grey",
    notes: 'wash first\nthen iron\r\n@home',
    facts: { widthMm: 1143, arealMassGPerM2: 54.249293, shrinkageAlongRatio: 0.035, hasNap: false },
  });
  return asking;
}

const sentences = async (asking: Asking, text: string) =>
  (await asking.refusal('bringInStashFile', { text })).map(problemSentence);

describe('the stash as a file', () => {
  test('read again as it was saved changes nothing, whatever the texts hold and the cells are parted by', async () => {
    const asking = await mixedStash();
    const before = await asking.rows();
    const saved = await sheet(asking);
    expect(saved.rows).toHaveLength(4);
    for (const text of [saved.text, `\ufeff${saved.text}`, saved.written(';'), saved.written('\t')]) {
      const changes = await asking.get('bringInStashFile', { text });
      expect(changes).toEqual({
        lineCount: 4,
        newItemCount: 0,
        changedItemCount: 0,
        newLotCount: 0,
        correctionCount: 0,
        changes: [],
      });
    }
    expect(await asking.rows()).toBe(before);
  });

  test('of the whole demo is read again without a change, and fills an empty workshop with the same', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    const { text } = await asking.get('stashFile', {}, 'demo');
    expect((await asking.get('lookAtStashFile', { text }, 'demo')).changes).toEqual([]);
    const looked = await asking.get('lookAtStashFile', { text });
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(0);
    expect(await asking.get('bringInStashFile', { text })).toEqual(looked);
    expect((await asking.get('stashFile', {})).text.length).toBeGreaterThan(5000);
    const all = {
      search: '',
      kinds: [],
      sortBy: 'name',
      isDescending: false,
      offset: 0,
      limit: 500,
    } as const;
    const bare = (
      rows: readonly { name: string; onHand: number; lengthCount: number; valueMinor: number }[],
    ) => rows.map(({ name, onHand, lengthCount }) => [name, onHand, lengthCount]);
    const here = await asking.get('listItems', { ...all, kinds: [] });
    const there = await asking.get('listItems', { ...all, kinds: [] }, 'demo');
    expect(bare(here.rows)).toEqual(bare(there.rows));
    for (const [index, row] of here.rows.entries())
      expect(row.valueMinor).toBe(there.rows[index]!.valueMinor);
    expect((await asking.get('lookAtStashFile', { text })).changes).toEqual([]);
    // Found by the words of their lots, too.
    for (const search of ['quillstone', 'marl wick', 'p-2207', '88 c']) {
      const same = await asking.get('listItems', { ...all, search, kinds: [] }, 'demo');
      expect(same.rows.length).toBeGreaterThan(0);
      expect(bare((await asking.get('listItems', { ...all, search, kinds: [] })).rows)).toEqual(
        bare(same.rows),
      );
    }
  });

  test('keeps a formula from running in a spreadsheet', async () => {
    const asking = await mixedStash();
    const { text } = await asking.get('stashFile', {});
    expect(text).toContain('"\'=Écru; ""lawn"", 2,5"');
    for (const row of Papa.parse<string[]>(text).data)
      for (const cell of row) expect(cell).not.toMatch(/^[=+\-@]/);
  });

  test('changes what is known of an item, and shows it before', async () => {
    const asking = await mixedStash();
    const saved = await sheet(asking);
    const taffetaRows = [0, 1, 2, 3].filter((row) => saved.get(row, 'name') === 'Peatwater taffeta');
    expect(taffetaRows).toHaveLength(2);
    for (const row of taffetaRows) {
      saved.put(row, 'place', 'shelf D');
      saved.put(row, 'width (mm)', '57 in');
    }
    const looked = await asking.get('lookAtStashFile', { text: saved.written() });
    expect(looked).toMatchObject({
      changedItemCount: 1,
      newItemCount: 0,
      newLotCount: 0,
      correctionCount: 0,
    });
    expect(looked.changes[0]?.text).toBe('place: shelf B, left → shelf D; width (mm): 1470 → 1447.8');
    await asking.get('bringInStashFile', { text: saved.written() });
    const { rows } = await asking.get('listItems', {
      search: 'shelf d',
      kinds: [],
      sortBy: 'name',
      isDescending: false,
      offset: 0,
      limit: 9,
    });
    const { shelf } = await asking.get('readItem', { itemId: rows[0]!.id });
    expect(shelf.item).toMatchObject({ facts: { widthMm: 1447.8 }, typed: { widthMm: '57 in' } });
    expect(shelf.lots).toHaveLength(1);
  });

  test('books another amount as a correction with its reason, and refuses it without', async () => {
    const asking = await mixedStash();
    const saved = await sheet(asking);
    const row = [0, 1, 2, 3].find((each) => saved.get(each, 'kind') === 'Loose fill')!;
    saved.put(row, 'on hand', '611,5');
    expect(await sentences(asking, saved.written())).toEqual([
      `Line ${row + 2}, column "on hand (in the unit)" is another than is booked: 640. Put it back, or say in the column "reason for another amount" why it differs; it is then booked as a correction.`,
    ]);
    saved.put(row, 'reason', 'weighed anew');
    expect(await asking.get('bringInStashFile', { text: saved.written() })).toMatchObject({
      correctionCount: 1,
      changes: [{ kind: 'correction', text: 'Count 640 g → 611.5 g: weighed anew' }],
    });
    const { movements } = await asking.get('readItem', { itemId: saved.get(row, 'item mark')! });
    expect(movements[0]).toMatchObject({ kind: 'corrected', onHandMilli: -28_500, reason: 'weighed anew' });
    expect(movements).toHaveLength(2);
  });

  test('brings new items and lots, several lengths to a lot, worth their share of the price', async () => {
    const asking = await mixedStash();
    const saved = await sheet(asking);
    const lot = {
      kind: 'cloth',
      name: 'Rowan lawn',
      'width (mm)': '1400',
      'received on': '27.3.2026',
      price: '60.00',
      'received (in': '12000',
      'lot mark': 'A1',
    };
    saved.add({ ...lot, 'on hand': '4000', 'lies as': 'Roll', flaws: '100 20 30 40' });
    saved.add({ ...lot, 'on hand': '1000', 'width of this length': '55 in' });
    saved.add({
      kind: 'Needles',
      name: 'Sharp 75',
      'needle size': '75/11',
      'received on': '2026-03-02',
      price: '3.10',
      'received (in': '5',
    });
    const text = saved.written();
    const looked = await asking.get('lookAtStashFile', { text });
    expect(looked).toMatchObject({
      newItemCount: 2,
      newLotCount: 2,
      changedItemCount: 0,
      correctionCount: 0,
    });
    expect(looked.changes.map((change) => change.text)).toContain('Lot of 2026-03-27: 2 lengths, 5 m');
    await asking.get('bringInStashFile', { text });
    const { rows } = await asking.get('listItems', {
      search: 'rowan',
      kinds: [],
      sortBy: 'name',
      isDescending: false,
      offset: 0,
      limit: 9,
    });
    expect(rows[0]).toMatchObject({ onHand: 5000, lengthCount: 2, valueMinor: 2500 });
    const { shelf } = await asking.get('readItem', { itemId: rows[0]!.id });
    expect(shelf.lots[0]?.lengths.map(({ widthMm, form, flaws }) => [widthMm, form, flaws.length])).toEqual([
      [1400, 'roll', 1],
      [1397, 'cut', 0],
    ]);
  });

  test('with anything wrong writes nothing, and says where it is and how to mend it', async () => {
    const asking = await mixedStash();
    const clothRow = (await sheet(asking)).rows.findIndex((row) => row[1] === 'Peatwater taffeta');
    const wrong = async (heading: string, value: string, row = clothRow) => {
      const saved = await sheet(asking);
      saved.put(row, heading, value);
      return (await sentences(asking, saved.written())).join(' / ');
    };
    const line = clothRow + 2;
    expect(await wrong('kind', 'fabric')).toContain(`Line ${line}, column "kind" says "fabric"`);
    expect(await wrong('kind', 'batting')).toContain('cannot be changed');
    expect(await wrong('name', '')).toContain('column "name" is empty');
    expect(await wrong('width (mm)', '-5')).toContain('column "width (mm)" is negative');
    expect(await wrong('weight (g/m2)', 'heavy')).toContain('which is not a cloth weight');
    expect(await wrong('loft (mm)', '4')).toContain('is not a fact of cloth');
    expect(await wrong('nap or one-way', 'perhaps')).toContain('Write yes or no');
    expect(await wrong('supplier', 'Marl & Wick')).toContain('is another than was booked: Quillstone Cloth');
    expect(await wrong('price', '99.00')).toContain('is another than was booked: 123.45');
    expect(await wrong('received on', '2026-13-45')).toContain('is another than was booked: 2026-03-27');
    expect(await wrong('on hand', 'lots')).toContain('which is not an amount');
    expect(await wrong('length mark', '')).toContain('is empty, though the lot is booked');
    expect(await wrong('unit', 'yd')).toContain('Amounts of cloth are in mm.');
    expect(await wrong('place', 'elsewhere')).toContain(
      `is another than in line ${line}, which is the same item`,
    );
    const twice = await sheet(asking);
    twice.rows.push([...twice.rows[clothRow]!]);
    expect((await sentences(asking, twice.written())).join()).toContain('stands in the file a second time');
  });
});

test('an item that was put away is in no file, and is not changed by an older one', async () => {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', taffeta);
  const { text } = await asking.get('stashFile', {});
  await asking.get('archiveItem', { itemId, isPutAway: true });
  expect((await asking.get('stashFile', {})).text).not.toContain('Peatwater');
  expect(await sentences(asking, text)).toEqual([
    'Line 2, column "item mark" is an item that was put away. Bring it back to the shelf first, or take its lines out.',
  ]);
});

describe('a file that is no stash file, or a broken one', () => {
  test('gets a sentence and changes nothing', async () => {
    const asking = await mixedStash();
    const { text } = await asking.get('stashFile', {});
    const [headings = '', ...lines] = text.split('\r\n');
    const cases: readonly (readonly [string, RegExp])[] = [
      ['', /is empty/],
      ['Dear aunt, the coat is warm.', /does not begin with the headings of a stash file/],
      [headings.replaceAll(',', '|'), /does not begin with the headings/],
      [headings, /has headings and no line below them/],
      [text.slice(0, text.length - 12), /^(?=.*Line \d+)/],
      [text.slice(0, text.indexOf(lines[1]!) + 60), /has \d+ of \d+ cells|never closed/],
      [`${headings}\r\n"cloth,Taffeta`, /quotation mark that is never closed/],
      [text.replace('(EUR)', '(GBP)'), /this workshop counts in EUR/],
      [text.replace('colour,', 'hue,'), /is "hue", which is no column of a stash file/],
      [text.replace('wash,', 'care,'), /which files had before.*Head it "wash"/],
      [text.replace('colour,', 'place,'), /has the heading "place" a second time/],
      [`${headings}\r\n${'x\r\n'.repeat(60_000)}`, /has more than the 50000 lines that are read at once/],
      [`${headings}\r\n${'"'.repeat(2_000_001)}`, /never closed/],
      [`${headings}\r\n${'x'.repeat(16_000_001)}`, /is larger than/],
    ];
    for (const [hostile, what] of cases) {
      const told = (await sentences(asking, hostile)).join(' / ');
      expect([hostile.slice(0, 30), told]).toEqual([hostile.slice(0, 30), expect.stringMatching(what)]);
    }
  });

  test('with a thousand wrong lines tells the first and how many more', async () => {
    const asking = openAsking();
    const wrong = Array.from({ length: 1000 }, (_, n) => `cloth,Cloth ${n},-${n + 3}`).join('\n');
    const told = await sentences(asking, `kind,name,width (mm)\n${wrong}`);
    expect(told).toHaveLength(41);
    expect(told.at(-1)).toContain('has 960 more problems like these');
  });
});
