import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { openAsking } from '../asking.ts';

const settings = { workshopName: 'Lantern Moth', system: 'metric', currency: 'EUR' } as const;
const pricing = {
  hourlyRateMinor: 1980,
  overhead: { kind: 'per coat', amountMinor: 475 },
  wholesale: { kind: 'margin', ratio: 0.42 },
  retail: { kind: 'mark-up', ratio: 1.1 },
} as const;

describe('the rules of the price', () => {
  test('are kept with the workshop, and a workshop without them has none', async () => {
    const asking = openAsking();
    expect((await asking.get('workshopFacts', {})).settings).not.toHaveProperty('pricing');
    expect(await asking.get('saveSettings', { ...settings, pricing })).toEqual({ ...settings, pricing });
    expect((await asking.get('workshopFacts', {})).settings.pricing).toEqual(pricing);
  });

  test.each([
    [
      'a margin that no price has',
      { ...pricing, wholesale: { kind: 'margin', ratio: 1 } },
      'Wholesale price',
    ],
    ['a rate below nothing', { ...pricing, hourlyRateMinor: -1 }, 'Rate of an hour is negative'],
    ['a third way to a price', { ...pricing, retail: { kind: 'guess', ratio: 1 } }, 'Retail price'],
  ])('%s is refused', async (_, given, sentence) => {
    const problems = await openAsking().refusal('saveSettings', { ...settings, pricing: given });
    expect(problems.map(problemSentence).join('\n')).toContain(sentence);
  });
});
