import { existsSync } from 'node:fs';
import SqliteDatabase from 'better-sqlite3';
import { migrations } from '../../../../main/database/schema/migrations.ts';
import { describe, expect, test } from 'vitest';
import { maxKeptLays } from '../../../../main/services/plans/lays.ts';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { demoWorkshop } from '../../../../shared-core/demo/demo-workshop.ts';
import { type Item, itemOnHand } from '../../../../shared-core/stash/stash.ts';
import { openAsking, receivedCloth, receivedFill, taffeta } from '../../asking.ts';

const everything: CallInput<'listItems'> = {
  search: '',
  kinds: [],
  sortBy: 'name',
  isDescending: false,
  offset: 0,
  limit: 500,
};

describe('the workshop', () => {
  test('says where it is kept and what it holds, and keeps its settings', async () => {
    const asking = openAsking();
    await asking.get('saveItem', taffeta);
    const settings = { workshopName: 'Fen & Tarn', system: 'imperial', currency: 'GBP' } as const;
    expect(await asking.get('saveSettings', settings)).toEqual(settings);
    expect(await asking.get('workshopFacts', {})).toEqual({
      workshop: 'own',
      fileProblems: [],
      upgradeNotes: [],
      dataFile: asking.dataFile,
      schemaVersion: migrations.length,
      settings,
      itemCount: 1,
      planCount: 0,
    });
  });

  test('is there again after closing', async () => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    const before = await asking.get('readItem', { itemId });
    asking.services.close();
    const again = openAsking({ dataFile: asking.dataFile });
    expect(await again.get('readItem', { itemId })).toEqual(before);
  });

  test('that is closed answers with a sentence', async () => {
    const asking = openAsking();
    asking.services.close();
    const outcome = await asking.ask('workshopFacts', {});
    expect(outcome.ok ? [] : outcome.problems.map((problem) => problem.what)).toEqual(['is closed']);
  });

  test('held by another program says so, and goes on when it is free again', async () => {
    const asking = openAsking({ waitMs: 30 });
    const holder = new SqliteDatabase(asking.dataFile);
    holder.exec('BEGIN IMMEDIATE');
    expect((await asking.refusal('saveItem', taffeta))[0]?.what).toBe('is held by another program');
    expect((await asking.get('listItems', everything)).total).toBe(0);
    holder.exec('ROLLBACK');
    holder.close();
    await asking.get('saveItem', taffeta);
  });
});

describe('the demo', () => {
  test('is the invented workshop, whole', async () => {
    const asking = openAsking();
    const demo = demoWorkshop();
    const facts = await asking.get('openDemo', {}, 'demo');
    expect(facts).toMatchObject({
      workshop: 'demo',
      dataFile: asking.demoFile,
      settings: { workshopName: demo.workshop.name, currency: demo.workshop.currency },
      itemCount: demo.items.length,
      planCount: demo.plans.length,
    });
    for (const item of demo.items) {
      const { shelf, movements, offers } = await asking.get('readItem', { itemId: item.id }, 'demo');
      const lots = demo.lots.filter((lot) => lot.itemId === item.id);
      const rows = demo.movements.filter((movement) => lots.some((lot) => lot.id === movement.lotId));
      expect(shelf.item).toEqual(item satisfies Item);
      expect(itemOnHand(shelf)).toBeCloseTo(rows.reduce((sum, row) => sum + row.onHandMilli, 0) / 1000, 6);
      expect(movements).toHaveLength(rows.length);
      expect(new Set(offers)).toEqual(new Set(demo.offers.filter((offer) => offer.itemId === item.id)));
    }
    const { plan } = await asking.get('readPlan', { planId: demo.plans[0]!.id }, 'demo');
    expect(plan).toEqual(demo.plans[0]);
  });

  test('passes its own checks: every item and plan can be saved again as it is', async () => {
    const asking = openAsking();
    for (const { id, ...item } of demoWorkshop().items) {
      await asking.get(
        'saveItem',
        { ...item, itemId: id, facts: { ...item.facts }, typed: { ...item.typed } },
        'demo',
      );
    }
    for (const plan of demoWorkshop().plans)
      await asking.get('savePlan', { plan, basedOn: 1, said: '' }, 'demo');
  });

  test('is there when it is first asked for, and stays as it was left until it is made anew', async () => {
    const asking = openAsking();
    expect(existsSync(asking.demoFile)).toBe(false);
    const { total } = await asking.get('listItems', everything, 'demo');
    expect(total).toBe(demoWorkshop().items.length);
    await asking.get('saveItem', taffeta, 'demo');
    asking.services.close();
    const again = openAsking({ dataFile: asking.dataFile, demoFile: asking.demoFile });
    expect((await again.get('listItems', everything, 'demo')).total).toBe(total + 1);
    expect((await again.get('openDemo', {}, 'demo')).itemCount).toBe(total);
    expect((await again.get('openDemo', {}, 'demo')).itemCount).toBe(total);
  });

  test('made anew while other calls are under way loses none of them halfway', async () => {
    const asking = openAsking();
    const calls = Array.from({ length: 30 }, (_, n) =>
      n % 10 === 5
        ? asking.ask('openDemo', {}, 'demo')
        : asking.ask('saveItem', { ...taffeta, name: `Cloth ${n}` }, 'demo'),
    );
    expect((await Promise.all(calls)).map((outcome) => outcome.ok)).toEqual(calls.map(() => true));
    expect(asking.logged).toEqual([]);
  });

  test('never touches the maker\u2019s own workshop, nor is made there', async () => {
    const asking = openAsking();
    await receivedFill(asking, 640);
    const before = await asking.rows();
    await asking.get('openDemo', {}, 'demo');
    await asking.get('saveItem', taffeta, 'demo');
    expect(await asking.rows()).toBe(before);
    expect((await asking.refusal('openDemo', {}, 'own'))[0]?.where).toBe('The demo');
  });
});

describe('offers', () => {
  const offer = {
    offerId: null,
    supplier: 'Quillstone Cloth',
    unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 300 },
    priceMinor: 1790,
    pricedOn: '2026-03-02',
  } as const;

  test('are kept, changed and removed', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const { offerId } = await asking.get('saveOffer', { ...offer, itemId });
    await asking.get('saveOffer', { ...offer, itemId, offerId, priceMinor: 1850 });
    const { offers } = await asking.get('readItem', { itemId });
    expect(offers).toEqual([
      {
        id: offerId,
        itemId,
        supplier: offer.supplier,
        unit: offer.unit,
        priceMinor: 1850,
        pricedOn: offer.pricedOn,
      },
    ]);
    await asking.get('removeOffer', { offerId });
    expect((await asking.get('readItem', { itemId })).offers).toEqual([]);
    expect((await asking.refusal('removeOffer', { offerId }))[0]?.what).toBe('is no longer there');
    expect((await asking.refusal('saveOffer', { ...offer, itemId, offerId }))[0]?.what).toBe(
      'is no longer there',
    );
  });

  test('in a unit that the kind is not sold in are refused', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const problems = await asking.refusal('saveOffer', {
      ...offer,
      itemId,
      unit: { kind: 'spool', threadM: 950 },
    });
    expect(problems[0]).toEqual({
      where: 'Selling unit of Peatwater taffeta',
      what: 'does not suit cloth: spool',
      fix: 'Choose: by length or sheet.',
    });
  });

  test('of one item are never moved to another', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const { itemId: otherId } = await asking.get('saveItem', { ...taffeta, colour: 'rust' });
    const { offerId } = await asking.get('saveOffer', { ...offer, itemId });
    expect(await asking.refusal('saveOffer', { ...offer, itemId: otherId, offerId })).toHaveLength(1);
  });
});

describe('lays', () => {
  const result = {
    placements: [{ shape: 0, length: 0, x: 12.5, y: 7, turnDeg: 180, mirrored: true, onFold: false }],
    unplaced: [],
    usedLengthMm: [742.25],
    utilisation: 0.83,
    floorMm: 701,
    seed: 5,
    iterations: 917,
    seconds: 2.5,
    stoppedBy: 'time',
  } as const;
  const hash = (n: number) => n.toString(16).padStart(64, '0');
  const kept = {
    ...result,
    placements: [...result.placements],
    unplaced: [],
    usedLengthMm: [...result.usedLengthMm],
  };

  test('found once are found again by their job, the later one in place of the earlier', async () => {
    const asking = openAsking();
    expect(await asking.get('readLay', { jobHash: hash(3) })).toEqual({ result: null });
    await asking.get('keepLay', { jobHash: hash(3), result: kept });
    await asking.get('keepLay', { jobHash: hash(3), result: { ...kept, floorMm: 699 } });
    expect(await asking.get('readLay', { jobHash: hash(3) })).toEqual({
      result: { ...result, floorMm: 699 },
    });
    expect(await asking.get('readLay', { jobHash: hash(4) })).toEqual({ result: null });
  });

  test('are kept up to a bound, then the oldest give way', async () => {
    const asking = openAsking();
    await asking.get('keepLay', { jobHash: hash(1), result: kept });
    await asking.get('keepLay', { jobHash: hash(2), result: kept });
    asking.services.close();
    const database = new SqliteDatabase(asking.dataFile);
    const insert = database.prepare("INSERT INTO kept_lay (job_hash, result, kept_at) VALUES (?, '{}', '')");
    database.transaction(() => {
      for (let n = 3; n <= maxKeptLays; n++) insert.run(hash(n));
    })();
    database.close();
    const again = openAsking({ dataFile: asking.dataFile });
    // Kept anew, the first is the youngest; the second is then the one to go.
    await again.get('keepLay', { jobHash: hash(1), result: kept });
    expect((await again.get('readLay', { jobHash: hash(2) })).result).not.toBeNull();
    await again.get('keepLay', { jobHash: hash(99_999), result: kept });
    const left = [1, 2, 3, 99_999].map(
      async (n) => (await again.get('readLay', { jobHash: hash(n) })).result !== null,
    );
    expect(await Promise.all(left)).toEqual([true, false, true, true]);
  });

  test('that are no lays are not kept', async () => {
    const asking = openAsking();
    const placements = [{ ...result.placements[0], x: Number.NaN }];
    const problems = await asking.refusal('keepLay', { jobHash: hash(3), result: { ...result, placements } });
    expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual([
      'Placed piece 1, x is not a number',
    ]);
    expect(await asking.refusal('keepLay', { jobHash: 'short', result })).toHaveLength(1);
  });
});
