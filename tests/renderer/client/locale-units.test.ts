import { describe, expect, test } from 'vitest';
import { currencies, isUnset, unitsOfLocale } from '../../../renderer/client/locale-units.ts';
import type { WorkshopFacts } from '../../../shared-core/contract/contract.ts';

describe('what a new workshop begins with', () => {
  test.each([
    [['en-US'], 'imperial', 'USD'],
    [['en-GB', 'en-US'], 'metric', 'GBP'],
    [['de'], 'metric', 'EUR'],
    [['de-CH'], 'metric', 'CHF'],
    [['ja'], 'metric', 'JPY'],
    [['zh-Hant-TW'], 'metric', 'TWD'],
    [['en-LR'], 'imperial', 'LRD'],
    // Latin America is no one place; the next locale is.
    [['es-419', 'es-MX'], 'metric', 'MXN'],
    [['not a locale!'], 'metric', 'EUR'],
    [[], 'metric', 'EUR'],
  ])('%j: %s, %s', (locales, system, currency) => {
    expect(unitsOfLocale(locales)).toEqual({ system, currency });
  });

  test('every currency can be kept in the settings', () => {
    expect(currencies.length).toBeGreaterThan(120);
    for (const code of currencies) expect(code).toMatch(/^[A-Z]{3}$/);
    expect([...currencies].sort()).toEqual(currencies);
  });

  test('only where nobody has set or entered anything', () => {
    const facts: WorkshopFacts = {
      workshop: 'own',
      dataFile: '/w.sqlite',
      schemaVersion: 1,
      settings: { workshopName: '', system: 'metric', currency: 'EUR' },
      itemCount: 0,
      planCount: 0,
      fileProblems: [],
      upgradeNotes: [],
    };
    expect(isUnset(facts)).toBe(true);
    expect(isUnset({ ...facts, workshop: 'demo' })).toBe(false);
    expect(isUnset({ ...facts, itemCount: 3 })).toBe(false);
    expect(isUnset({ ...facts, planCount: 1 })).toBe(false);
    expect(isUnset({ ...facts, settings: { ...facts.settings, currency: 'GBP' } })).toBe(false);
    expect(isUnset({ ...facts, settings: { ...facts.settings, unitsFrom: 'maker' } })).toBe(false);
  });
});
