import { expect, test } from 'vitest';
import { plan } from '../../../fixtures/small-workshop.ts';
import { clothLot, down, fillLot, openAsking, taffeta } from '../../asking.ts';

const byTenth = { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 500 } as const;

/** A cloth and a fill with an offer each, and a plan; nothing on the shelf. */
async function atTheShop() {
  const asking = openAsking();
  const { itemId: clothId } = await asking.get('saveItem', taffeta);
  const { itemId: fillId } = await asking.get('saveItem', down);
  const offer = {
    offerId: null,
    supplier: 'Quillstone Cloth',
    priceMinor: 115,
    pricedOn: '2026-10-02',
  } as const;
  const cloth = await asking.get('saveOffer', { ...offer, itemId: clothId, unit: byTenth });
  const fill = await asking.get('saveOffer', {
    ...offer,
    itemId: fillId,
    unit: { kind: 'by mass', stepG: 50, leastG: 100 },
  });
  const open = { ...plan({ slots: [] }), pieces: [] };
  const { planId } = await asking.get('savePlan', { plan: open, basedOn: null, said: '' });
  return { asking, planId, clothId, fillId, clothOffer: cloth.offerId, fillOffer: fill.offerId };
}

test('ticks outlive the program, and are taken off again', async () => {
  const { asking, planId, clothOffer, fillOffer } = await atTheShop();
  await asking.get('setTick', { planId, offerId: fillOffer, isTicked: true });
  await asking.get('setTick', { planId, offerId: clothOffer, isTicked: true });
  await asking.get('setTick', { planId, offerId: clothOffer, isTicked: true });
  asking.services.close();
  const again = openAsking({ dataFile: asking.dataFile });
  expect([...(await again.get('readTicks', { planId })).offerIds].sort()).toEqual(
    [clothOffer, fillOffer].sort(),
  );
  const { offerIds } = await again.get('setTick', { planId, offerId: fillOffer, isTicked: false });
  expect(offerIds).toEqual([clothOffer]);
  await again.get('removeOffer', { offerId: clothOffer });
  expect((await again.get('readTicks', { planId })).offerIds).toEqual([]);
});

test('a tick of what is not there is refused with a sentence', async () => {
  const { asking, planId, clothOffer } = await atTheShop();
  expect((await asking.refusal('setTick', { planId, offerId: 'gone', isTicked: true }))[0]?.what).toBe(
    'is from an offer that is not there any more',
  );
  expect(
    (await asking.refusal('setTick', { planId: 'gone', offerId: clothOffer, isTicked: true }))[0]?.where,
  ).toBe('The plan');
});

test('a whole trip comes onto the shelf in one step, at what was truly paid, and its ticks go', async () => {
  const { asking, planId, clothId, fillId, clothOffer, fillOffer } = await atTheShop();
  await asking.get('setTick', { planId, offerId: clothOffer, isTicked: true });
  await asking.get('setTick', { planId, offerId: fillOffer, isTicked: true });
  const { lotIds } = await asking.get('receiveLots', {
    planId,
    lots: [
      { offerId: clothOffer, lot: clothLot(clothId) },
      { offerId: fillOffer, lot: { ...fillLot(fillId, 350), priceMinor: 4790 } },
    ],
  });
  expect(lotIds).toHaveLength(2);
  expect((await asking.get('readTicks', { planId })).offerIds).toEqual([]);
  const cloth = await asking.get('readItem', { itemId: clothId });
  expect(cloth.shelf.lots.map(({ id, onHand, priceMinor }) => [id, onHand, priceMinor])).toEqual([
    [lotIds[0], 8200.5, 12_345],
  ]);
  const fill = await asking.get('readItem', { itemId: fillId });
  expect(fill.shelf.lots.map(({ id, onHand, priceMinor }) => [id, onHand, priceMinor])).toEqual([
    [lotIds[1], 350, 4790],
  ]);
  expect(fill.movements.map(({ kind }) => kind)).toEqual(['received']);
});

test('one purchase that cannot come in keeps all of them out, and every one is told', async () => {
  const { asking, planId, clothId, fillId, clothOffer, fillOffer } = await atTheShop();
  await asking.get('setTick', { planId, offerId: clothOffer, isTicked: true });
  // refusal() throws where any row has changed, a tick among them.
  const problems = await asking.refusal('receiveLots', {
    planId,
    lots: [
      { offerId: clothOffer, lot: clothLot(clothId) },
      { offerId: clothOffer, lot: { ...clothLot(clothId), lengths: [] } },
      { offerId: fillOffer, lot: { ...fillLot(fillId, 350), amount: null } },
    ],
  });
  expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual([
    'Lengths of Peatwater taffeta are missing',
    'Amount of Fenwalk down is missing',
  ]);
});

test('what is not a purchase is refused with its place', async () => {
  const { asking, planId, clothId, clothOffer } = await atTheShop();
  const [problem] = await asking.refusal('receiveLots', {
    planId,
    lots: [
      { offerId: clothOffer, lot: clothLot(clothId) },
      { offerId: clothOffer, lot: { ...clothLot(clothId), priceMinor: -1 } },
    ],
  });
  expect(problem).toMatchObject({ where: 'Purchase 2, price', what: 'is negative' });
});
