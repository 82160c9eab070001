import { describe, expect, test } from 'vitest';
import { firstSteps, mayHaveFirstSteps } from '../../../../renderer/rooms/welcome/first-steps-taken.ts';
import type { WorkshopFacts } from '../../../../shared-core/contract/contract.ts';
import { emptySlot } from '../../../../shared-core/plan/model/coat-plan.ts';

const slot = (itemId: string | null) => ({ ...emptySlot('shell', 'shell', 'cloth'), itemId });
const taken = (facts: Parameters<typeof firstSteps>[0]) => firstSteps(facts).map(({ isTaken }) => isTaken);

describe('the first three steps', () => {
  test('are ticked by what is there, in whatever order it came', () => {
    expect(taken({ hasCloth: false, coat: null })).toEqual([false, false, false]);
    expect(taken({ hasCloth: true, coat: null })).toEqual([true, false, false]);
    expect(taken({ hasCloth: false, coat: { id: 'p', slots: [slot(null)] } })).toEqual([false, true, false]);
    expect(taken({ hasCloth: true, coat: { id: 'p', slots: [slot(null), slot('i')] } })).toEqual([
      true,
      true,
      true,
    ]);
  });

  test('lead into their rooms; the cover is that of the coat, once there is one', () => {
    const routes = (coat: Parameters<typeof firstSteps>[0]['coat']) =>
      firstSteps({ hasCloth: true, coat }).map(({ route }) => route);
    expect(routes(null).at(-1)).toEqual({ kind: 'coats' });
    expect(routes({ id: 'p 7', slots: [] }).at(-1)).toEqual({ kind: 'coat', planId: 'p 7', step: 'cover' });
  });

  test('are of no use in the demo, beside a second coat, or once put away', () => {
    const facts: WorkshopFacts = {
      workshop: 'own',
      dataFile: '/w.sqlite',
      schemaVersion: 1,
      settings: { workshopName: '', system: 'metric', currency: 'EUR' },
      itemCount: 3,
      planCount: 1,
      fileProblems: [],
      upgradeNotes: [],
    };
    expect(mayHaveFirstSteps(facts)).toBe(true);
    expect(mayHaveFirstSteps({ ...facts, workshop: 'demo' })).toBe(false);
    expect(mayHaveFirstSteps({ ...facts, planCount: 2 })).toBe(false);
    const settings = { ...facts.settings, isFirstStepsPutAway: true } as const;
    expect(mayHaveFirstSteps({ ...facts, settings })).toBe(false);
  });
});
