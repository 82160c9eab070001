import { afterEach, expect, test } from 'vitest';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { openAsking } from '../asking.ts';

const zoneBefore = process.env.TZ;
afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

test.each([
  ['America/Los_Angeles', '2026-10-15T03:30:00Z', '2026-10-14'],
  ['Pacific/Auckland', '2026-10-14T12:30:00Z', '2026-10-15'],
  ['Europe/London', '2026-10-24T23:30:00Z', '2026-10-25'],
  ['UTC', '2026-10-14T23:30:00Z', '2026-10-14'],
])('prices of a plan are as old as the day in %s says', async (zone, now, today) => {
  process.env.TZ = zone;
  const asking = openAsking({ now: () => new Date(now) });
  const { planId } = await asking.get('savePlan', {
    plan: newPlan('any', 'Fenwalk', '40'),
    basedOn: null,
    said: '',
  });
  expect((await asking.get('flowInput', { planId })).today).toBe(today);
});
