/** A workshop that is opened for the first time takes the units and the currency of its place. */
import type { WorkshopFacts } from '../../shared-core/contract/contract.ts';
import { call } from './api.ts';
import { isUnset, unitsOfLocale } from './locale-units.ts';

/** The facts of a new workshop with the proposal kept in its file, so that every room has it from the first; others as they are. */
export async function withFirstUnits(facts: WorkshopFacts): Promise<WorkshopFacts> {
  if (!isUnset(facts)) return facts;
  const proposed = { ...facts.settings, ...unitsOfLocale(navigator.languages), unitsFrom: 'locale' as const };
  const saved = await call('saveSettings', facts.workshop, proposed);
  return saved.ok ? { ...facts, settings: saved.value } : facts;
}
