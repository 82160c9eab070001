/** Several desks at one workshop: what they do at the same instant, and what becomes of it. */
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { wrongBalances } from '../../../main/database/carry/proof.ts';
import { readAddress } from '../../../main/database/postgres/address.ts';
import { queriesOf } from '../../../main/database/postgres/connecting.ts';
import { type Asking, openDesk, receivedCloth, receivedFill, taffeta } from '../asking.ts';
import { savedPlan } from '../services/cut-workshop.ts';

/** Two desks at one workshop with a cloth, a fill and a plan for each desk. */
async function twoDesks() {
  const first = openDesk();
  const cloth = await receivedCloth(first);
  const fill = await receivedFill(first, 640);
  const fen = await savedPlan(first, cloth.itemId, fill.itemId);
  const tarn = await savedPlan(first, cloth.itemId, fill.itemId, 'Tarn coat');
  const second = openDesk({ dataFile: first.dataFile });
  await second.get('workshopFacts', {});
  return { first, second, cloth, fill, fen, tarn };
}

async function contradictions(asking: Asking): Promise<readonly string[]> {
  const address = readAddress(asking.dataFile);
  if (!address.ok) throw new Error('no address');
  const queries = queriesOf(address.value, 5000);
  try {
    return await wrongBalances(queries);
  } finally {
    await queries.destroy();
  }
}

test('the same cloth set aside at two desks: one gets it, the other a sentence', async () => {
  const { first, second, cloth, fen, tarn } = await twoDesks();
  for (let round = 0; round < 12; round++) {
    const uses = [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount: 5000 }];
    const [one, other] = await Promise.all([
      first.ask('setAside', { planId: fen, uses }),
      second.ask('setAside', { planId: tarn, uses }),
    ]);
    const refused = [one, other].filter((outcome) => !outcome.ok);
    expect(refused).toHaveLength(1);
    const [problem] = refused.flatMap((outcome) => (outcome.ok ? [] : outcome.problems));
    expect(problemSentence(problem!)).toMatch(
      /^Peatwater taffeta is no longer free there: 2.31 m of the 5 m wanted/,
    );
    await first.get('setAside', { planId: one.ok ? fen : tarn, uses: [] });
  }
  expect(await contradictions(first)).toEqual([]);
});

test('nothing that many desks book at once is lost, and entries come in the order in which they were kept', async () => {
  const { first, second, fill } = await twoDesks();
  const third = openDesk({ dataFile: first.dataFile });
  const seen: number[] = [];
  let isOver = false;
  const watching = (async () => {
    // Whoever has seen an entry never sees a lower one come after it.
    while (!isOver) {
      const rows = await third.beside('SELECT entry FROM movement ORDER BY entry');
      seen.push(...rows.map(({ entry }) => Number(entry)).filter((entry) => !seen.includes(entry)));
    }
  })();
  const writeOff = (desk: Asking) =>
    desk.get('writeOff', { lotId: fill.lotId, lengthId: null, amount: 1, reason: 'moths' });
  const count = 40;
  await Promise.all(
    [first, second, third].flatMap((desk) => Array.from({ length: count }, () => writeOff(desk))),
  );
  isOver = true;
  await watching;
  const { shelf, movements } = await first.get('readItem', { itemId: fill.itemId });
  expect(shelf.lots[0]?.onHand).toBe(640 - 3 * count);
  expect(movements).toHaveLength(3 * count + 1);
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
  expect(await contradictions(first)).toEqual([]);
});

test('a plan saved at two desks from the same revision: the second is told', async () => {
  const { first, second, fen } = await twoDesks();
  const { plan, revision } = await first.get('readPlan', { planId: fen });
  const save = (desk: Asking, notes: string) =>
    desk.ask('savePlan', { plan: { ...plan, notes }, basedOn: revision, said: notes });
  const outcomes = await Promise.all([save(first, 'hood'), save(second, 'cuffs')]);
  const refused = outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.problems));
  expect(refused.map(problemSentence)).toEqual([
    'The plan Fen coat was changed meanwhile. Open it again: it then shows the other change, and yours can be made anew.',
  ]);
});

test('the other desk hears of a change within a second, the one that made it does not', async () => {
  const { first, second, fen } = await twoDesks();
  await first.get('workshopFacts', {});
  const heard = { first: 0, second: 0 };
  first.services.onChangeElsewhere(() => heard.first++);
  const since = performance.now();
  const told = new Promise<number>((done) =>
    second.services.onChangeElsewhere(() => {
      heard.second++;
      done(performance.now() - since);
    }),
  );
  await sleep(20);
  await first.get('setAside', { planId: fen, uses: [] });
  expect(await told).toBeLessThan(1000);
  expect(heard).toEqual({ first: 0, second: 1 });
  // Nor is a refusal told, since nothing has changed.
  await first.refusal('saveItem', { ...taffeta });
  await sleep(200);
  expect(heard).toEqual({ first: 0, second: 1 });
});

test('a lay that one desk found is there for the other, and nobody is called for it', async () => {
  const { first, second } = await twoDesks();
  let heard = 0;
  second.services.onChangeElsewhere(() => heard++);
  const result = {
    placements: [{ shape: 0, length: 0, x: 12.5, y: 7, turnDeg: 180, mirrored: true, onFold: false }],
    unplaced: [],
    usedLengthMm: [742.25],
    utilisation: 0.83,
    floorMm: 701,
    seed: 5,
    iterations: 917,
    seconds: 2.5,
    stoppedBy: 'time' as const,
  };
  const jobHash = 'a'.repeat(64);
  await first.get('keepLay', { jobHash, result });
  await first.get('keepLay', { jobHash, result: { ...result, floorMm: 699 } });
  expect((await second.get('readLay', { jobHash })).result).toEqual({ ...result, floorMm: 699 });
  await sleep(200);
  expect(heard).toBe(0);
});

test('the ledger is kept by the database itself, whoever asks', async () => {
  const { first, fill } = await twoDesks();
  const refused = async (sql: string) => {
    const before = await first.rows();
    const error = await first.beside(sql).then(
      () => 'let through',
      (reason: Error) => reason.message,
    );
    expect(await first.rows()).toBe(before);
    return error;
  };
  expect(await refused('UPDATE movement SET on_hand_milli = 1')).toBe('the ledger only grows');
  expect(await refused('DELETE FROM movement')).toBe('the ledger only grows');
  expect(await refused('TRUNCATE movement CASCADE')).toBe('the ledger only grows');
  expect(await refused('DELETE FROM lot')).toBe('what was received stays as it was');
  expect(await refused("UPDATE plan_revision SET said = 'x'")).toBe('a revision of a plan is never changed');
  const moved = (kind: string, onHand: number, reserved: number) =>
    refused(`INSERT INTO movement (id, at, kind, lot_id, on_hand_milli, reserved_milli, reason)
      VALUES ('m', '2026-03-27', '${kind}', '${fill.lotId}', ${onHand}, ${reserved}, '')`);
  expect(await moved('written off', -640_001, 0)).toMatch(/check constraint/);
  expect(await moved('reserved', 0, 640_001)).toMatch(/check constraint/);
});
