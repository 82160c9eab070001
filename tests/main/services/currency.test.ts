import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type Asking, openAsking, receivedCloth, taffeta } from '../asking.ts';

const settings = { workshopName: 'Fen', system: 'metric', currency: 'EUR' } as const;

/** Each writes down one amount in EUR. */
const amounts: Readonly<Record<string, (asking: Asking) => Promise<unknown>>> = {
  'a purchase': receivedCloth,
  'an offer': async (asking) => {
    const { itemId } = await asking.get('saveItem', taffeta);
    return asking.get('saveOffer', {
      offerId: null,
      itemId,
      supplier: 'Quillstone Cloth',
      unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 0 },
      priceMinor: 1_730,
      pricedOn: '2026-04-02',
    });
  },
  'a delivery': (asking) =>
    asking.get('saveSupplier', { name: 'Tallow Lane', deliveryMinor: 690, freeFromMinor: null, leadDays: 6 }),
  'the rate of an hour': (asking) =>
    asking.get('saveSettings', {
      ...settings,
      pricing: {
        hourlyRateMinor: 1980,
        overhead: null,
        wholesale: { kind: 'margin', ratio: 0.42 },
        retail: { kind: 'mark-up', ratio: 1.1 },
      },
    }),
};

describe('the currency of the workshop', () => {
  test.each(Object.keys(amounts))('with other decimal places is refused once there is %s', async (what) => {
    const asking = openAsking();
    await amounts[what]!(asking);
    expect(
      (await asking.refusal('saveSettings', { ...settings, currency: 'JPY' })).map(problemSentence),
    ).toEqual([
      'Currency cannot become JPY: amounts are written down here in EUR, which has two decimal places where JPY has none. Keep EUR, and begin another workshop for what is paid in JPY.',
    ]);
    await asking.refusal('saveSettings', { ...settings, currency: 'KWD' });
    // The word beside the amounts may change, since they stay as they were typed.
    const { currency } = await asking.get('saveSettings', { ...settings, currency: 'CHF' });
    expect(currency).toBe('CHF');
  });

  test('is free to be any while no amount is written down', async () => {
    const asking = openAsking();
    await asking.get('saveItem', taffeta);
    await asking.get('saveSupplier', { name: 'Tallow', deliveryMinor: 0, freeFromMinor: null, leadDays: 6 });
    for (const currency of ['JPY', 'KWD', 'USD'])
      expect(await asking.get('saveSettings', { ...settings, currency })).toMatchObject({ currency });
  });

  test('goes into its files and back: what cost 1,234 JPY or 1.234 KWD costs the same elsewhere', async () => {
    for (const [currency, price] of [
      ['JPY', '12345'],
      ['KWD', '12.345'],
      ['IQD', '12.345'],
      ['EUR', '123.45'],
    ] as const) {
      const [here, there] = [openAsking(), openAsking()];
      for (const asking of [here, there]) await asking.get('saveSettings', { ...settings, currency });
      const { itemId } = await receivedCloth(here);
      const { text } = await here.get('stashFile', {});
      expect(text).toContain(`,${price},`);
      await there.get('bringInStashFile', { text });
      expect((await there.get('readItem', { itemId })).shelf.lots[0]?.priceMinor).toBe(12_345);
    }
  });
});
