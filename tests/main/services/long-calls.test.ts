import { expect, test } from 'vitest';
import { type Asking, openAsking, taffeta } from '../asking.ts';

const cloths = Array.from({ length: 1500 }, (_, i) => `Sedge lawn ${i}`);

/** A price list of 1,500 cloths, each of one supplier. */
const priceList = [
  'supplier,item,sold as,step or length (cm),width (cm),price (EUR),priced on,breaks',
  ...cloths.map(
    (name, i) => `Fernlow,${name},by length,10,147,${(1 + (i % 90) / 100).toFixed(2)},2026-10-12,15 m = 0.98`,
  ),
].join('\n');

/** A stash file that brings 1,500 cloths with a lot each. */
const stashFile = [
  'kind,name,width (mm),received on (year-month-day),price of the lot (EUR),received (in the unit)',
  ...cloths.map((name, i) => `Cloth,${name},1470,2026-03-27,12.50,${1000 + i}`),
].join('\n');

/** What was answered first, while a long call was under way; and how often the program had a turn for others. */
async function besideOf(asking: Asking, long: () => Promise<unknown>) {
  const answered: string[] = [];
  let turnCount = 0;
  let isOver = false;
  const turn = () => {
    turnCount++;
    if (!isOver) setImmediate(turn);
  };
  setImmediate(turn);
  const longDone = long().then(() => {
    answered.push('the long call');
    isOver = true;
  });
  const asked = ['workshopFacts', 'listSuppliers', 'listPlans'] as const;
  const facts = await asking.get('workshopFacts', {});
  answered.push('a short one');
  for (const call of asked) {
    await asking.get(call, {});
    if (!isOver) answered.push('a short one');
  }
  await longDone;
  return { answered, turnCount, facts };
}

test('a stash file is brought in while the window goes on asking; what it asks is as it stood before', async () => {
  const asking = openAsking();
  const { itemCount: before } = await asking.get('workshopFacts', {});
  const looked = await besideOf(asking, () => asking.get('lookAtStashFile', { text: stashFile }));
  expect(looked.answered.slice(0, 4)).toEqual(Array.from({ length: 4 }, () => 'a short one'));
  const brought = await besideOf(asking, () => asking.get('bringInStashFile', { text: stashFile }));
  expect(brought.answered.slice(0, 4)).toEqual(Array.from({ length: 4 }, () => 'a short one'));
  expect(brought.turnCount).toBeGreaterThan(5);
  expect(brought.facts.itemCount).toBe(before);
  expect((await asking.get('workshopFacts', {})).itemCount).toBe(before + cloths.length);
});

test('a price list is checked and brought in while the window goes on asking', async () => {
  const asking = openAsking();
  await asking.get('bringInStashFile', { text: stashFile });
  const checked = await besideOf(asking, () => asking.get('checkPriceList', { text: priceList }));
  expect(checked.answered.slice(0, 4)).toEqual(Array.from({ length: 4 }, () => 'a short one'));
  const brought = await besideOf(asking, async () => {
    const done = await asking.get('bringInPriceList', { text: priceList });
    expect(done).toEqual({ addedCount: cloths.length, changedCount: 0 });
  });
  expect(brought.answered.slice(0, 4)).toEqual(Array.from({ length: 4 }, () => 'a short one'));
  expect(brought.turnCount).toBeGreaterThan(5);
});

test('what is written meanwhile waits for its turn, and both are kept; a refused file leaves nothing', async () => {
  const asking = openAsking();
  const [, saved] = await Promise.all([
    asking.get('bringInStashFile', { text: stashFile }),
    asking.get('saveItem', taffeta),
  ]);
  expect(saved.itemId).not.toBe('');
  expect((await asking.get('workshopFacts', {})).itemCount).toBe(cloths.length + 1);
  const before = await asking.rows();
  const broken = `${stashFile.replaceAll('Sedge', 'Reed')}\nCloth,Reed lawn,1470,2026-02-30,1,1`;
  await asking.refusal('bringInStashFile', { text: broken });
  expect(await asking.rows()).toBe(before);
});
