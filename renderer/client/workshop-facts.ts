/** The facts of a workshop. One that is opened for the first time takes the units and the currency of its place. */
import { useQuery } from '@tanstack/react-query';
import type { Workshop, WorkshopFacts } from '../../shared-core/contract/contract.ts';
import { ok, type Result, err } from '../../shared-core/measure/problem.ts';
import { call } from './api.ts';
import { isUnset, unitsOfLocale } from './locale-units.ts';
import { answerOf, queryClient, Refusal, readOptions } from './queries/query-client.ts';
import { type Read, readOf } from './queries/reads.ts';

function factsOptions(workshop: Workshop) {
  return {
    ...readOptions(workshop, 'workshopFacts', {}),
    queryFn: async () => withFirstUnits(await answerOf(workshop, 'workshopFacts', {})),
  };
}

export function useFacts(workshop: Workshop): Read<WorkshopFacts> {
  return readOf<WorkshopFacts>(useQuery(factsOptions(workshop), queryClient));
}

/** The facts of a workshop that is about to be opened; its rooms then have them at once. */
export async function readFacts(workshop: Workshop): Promise<Result<WorkshopFacts>> {
  try {
    return ok(await queryClient.fetchQuery(factsOptions(workshop)));
  } catch (thrown) {
    if (thrown instanceof Refusal) return err(...thrown.problems);
    throw thrown;
  }
}

/** The facts of a new workshop with the proposal kept in its file, so that every room has it from the first; others as they are. */
async function withFirstUnits(facts: WorkshopFacts): Promise<WorkshopFacts> {
  if (!isUnset(facts)) return facts;
  const proposed = { ...facts.settings, ...unitsOfLocale(navigator.languages), unitsFrom: 'locale' as const };
  const saved = await call('saveSettings', facts.workshop, proposed);
  return saved.ok ? { ...facts, settings: saved.value } : facts;
}
