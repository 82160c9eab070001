import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { type Asking, clothLot, openAsking, receivedFill, taffeta } from '../asking.ts';
import { asOfSchema } from '../older-schema.ts';

/** A file as it was when every currency was kept in hundredths: amounts of 1,234.00 and the like. */
async function oldFile(currency: string): Promise<Asking> {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', taffeta);
  await asking.get('receiveLot', { ...clothLot(itemId), priceMinor: 123_400 });
  await asking.get('saveOffer', {
    offerId: null,
    itemId,
    supplier: 'Quillstone Cloth',
    unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 0 },
    priceMinor: 57_600,
    pricedOn: '2026-04-02',
    breaks: [
      { fromCount: 10, priceMinor: 55_500 },
      { fromCount: 50, priceMinor: 44_400 },
    ],
  });
  await receivedFill(asking, 640);
  await asking.get('saveSupplier', {
    name: 'Tallow',
    deliveryMinor: 69_000,
    freeFromMinor: 8_250_000,
    leadDays: 6,
  });
  await asking.get('saveSupplier', { name: 'Marl', deliveryMinor: 40, freeFromMinor: 40, leadDays: null });
  await asking.get('saveSettings', {
    workshopName: 'Fen',
    system: 'metric',
    currency: 'EUR',
    pricing: {
      hourlyRateMinor: 198_000,
      overhead: { kind: 'per coat', amountMinor: 47_500 },
      wholesale: { kind: 'margin', ratio: 0.42 },
      retail: { kind: 'mark-up', ratio: 1.1 },
    },
  });
  const { planId } = await asking.get('savePlan', {
    plan: { ...newPlan('any', 'Fenwalk', '40'), quilting: null },
    basedOn: null,
    said: '',
  });
  asking.services.close();
  const database = new SqliteDatabase(asking.dataFile);
  const lines = [
    { costMinor: 12_300, area: { pieceMm2: 0.1, wasteMinor: 4_500 } },
    { costMinor: 6_700, area: null },
  ];
  database
    .prepare(
      `INSERT INTO cutting (id, plan_id, revision, at, coats, slots, note) VALUES ('c1', ?, 1, '', '[]', ?, '')`,
    )
    .run(
      planId,
      JSON.stringify([
        { slotId: 'none', lines: [] },
        { slotId: 'shell', lines },
      ]),
    );
  database.prepare(`UPDATE workshop SET settings = json_set(settings, '$.currency', ?)`).run(currency);
  asOfSchema(database, 7);
  database.close();
  return asking;
}

/** Every amount of the file, brought forward. */
async function amounts(file: string) {
  const asking = openAsking({ dataFile: file });
  const { settings } = await asking.get('workshopFacts', {});
  const { rows } = await asking.get('listItems', {
    search: '',
    kinds: [],
    sortBy: 'name',
    isDescending: false,
    offset: 0,
    limit: 9,
  });
  const { shelf, offers } = await asking.get('readItem', {
    itemId: rows.find(({ kind }) => kind === 'cloth')!.id,
  });
  const suppliers = (await asking.get('listSuppliers', {})).rows;
  const database = new SqliteDatabase(file, { readonly: true });
  const slots = JSON.parse(database.prepare('SELECT slots FROM cutting').pluck().get() as string);
  database.close();
  return {
    values: rows.map(({ valueMinor }) => valueMinor),
    lot: shelf.lots[0]?.priceMinor,
    offer: [offers[0]?.priceMinor, ...(offers[0]?.breaks ?? []).map(({ priceMinor }) => priceMinor)],
    suppliers: suppliers.flatMap(({ facts }) => (facts ? [[facts.deliveryMinor, facts.freeFromMinor]] : [])),
    pricing: [settings.pricing?.hourlyRateMinor, settings.pricing?.overhead],
    slots,
  };
}

const inHundredths = {
  values: [12_345, 123_400],
  lot: 123_400,
  offer: [57_600, 55_500, 44_400],
  suppliers: [
    [40, 40],
    [69_000, 8_250_000],
  ],
  pricing: [198_000, { kind: 'per coat', amountMinor: 47_500 }],
  slots: [
    { slotId: 'none', lines: [] },
    {
      slotId: 'shell',
      lines: [
        { costMinor: 12_300, area: { pieceMm2: 0.1, wasteMinor: 4_500 } },
        { costMinor: 6_700, area: null },
      ],
    },
  ],
};

/** The same sums in another unit; what is less than half of it is nothing, but no delivery becomes free from nothing. */
function scaled(by: number) {
  const of = (minor: number) => Math.round(minor * by);
  return {
    values: inHundredths.values.map(of),
    lot: of(123_400),
    offer: inHundredths.offer.map(of),
    suppliers: [
      [of(40), Math.max(1, of(40))],
      [of(69_000), of(8_250_000)],
    ],
    pricing: [of(198_000), { kind: 'per coat', amountMinor: of(47_500) }],
    slots: [
      { slotId: 'none', lines: [] },
      {
        slotId: 'shell',
        lines: [
          { costMinor: of(12_300), area: { pieceMm2: 0.1, wasteMinor: of(4_500) } },
          { costMinor: of(6_700), area: null },
        ],
      },
    ],
  };
}

test.each([
  ['EUR', 1],
  ['JPY', 0.01],
  ['KWD', 10],
  ['UYW', 100],
])('amounts of an older file in %s are the same sums in its own minor units', async (currency, by) => {
  const { dataFile } = await oldFile(currency);
  expect(await amounts(dataFile)).toEqual(by === 1 ? inHundredths : scaled(by));
});

test('prices that were rounded are told of, and where none was there is nothing to tell', async () => {
  const notes = async (currency: string) => {
    const { dataFile } = await oldFile(currency);
    const { upgradeNotes } = await openAsking({ dataFile }).get('workshopFacts', {});
    return upgradeNotes.map(({ note }) => note);
  };
  // 123.45 for the fill, and 0.40 for a delivery.
  expect(await notes('JPY')).toEqual([
    'Prices were kept in hundredths, which JPY does not have: 2 prices were rounded to the nearest whole amount.',
  ]);
  expect(await notes('KWD')).toEqual([]);
});

test('what was received and cut is guarded again afterwards', async () => {
  const { dataFile } = await oldFile('JPY');
  openAsking({ dataFile }).services.close();
  const database = new SqliteDatabase(dataFile);
  expect(() => database.exec('UPDATE lot SET price_minor = 1')).toThrow('what was received stays as it was');
  expect(() => database.exec("UPDATE cutting SET slots = '[]'")).toThrow('the ledger only grows');
  database.close();
});
