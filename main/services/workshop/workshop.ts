/** The calls about the workshop itself. The demo is made anew in demo.ts: that one needs the whole file. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import { minorPlaces, placesWord } from '../../../shared-core/measure/money/currency.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { hasAmounts, readSettings, writeSettings } from './settings.ts';

export const workshopCalls = { workshopFacts, saveSettings, markUpgradeNotesSeen } satisfies Calls<
  'workshopFacts' | 'saveSettings' | 'markUpgradeNotesSeen'
>;

export async function workshopFacts(context: CallContext): Promise<Result<WorkshopFacts>> {
  const { queries, workshop, dataFile, schemaVersion, told } = context;
  const items = await queries
    .selectFrom('item')
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .where('archived', '=', 0)
    .executeTakeFirstOrThrow();
  const plans = await queries
    .selectFrom('plan')
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  const notes = await queries
    .selectFrom('upgrade_note')
    .select(['note', 'seen_at'])
    .orderBy('entry')
    .execute();
  const settings = await readSettings(queries);
  return ok({
    workshop,
    dataFile,
    schemaVersion,
    settings,
    itemCount: items.count,
    planCount: plans.count,
    fileProblems: told,
    upgradeNotes: notes.map(({ note, seen_at }) => ({ note, isSeen: seen_at !== null })),
  });
}

async function saveSettings(
  context: CallContext,
  input: CallInput<'saveSettings'>,
): Promise<Result<Settings>> {
  const before = await readSettings(context.queries);
  const [from, to] = [before.currency, input.currency];
  if (minorPlaces(from) !== minorPlaces(to) && (await hasAmounts(context.queries, before)))
    return err(otherPlaces(from, to));
  await writeSettings(context.queries, input);
  return ok(await readSettings(context.queries));
}

async function markUpgradeNotesSeen(context: CallContext): Promise<Result<WorkshopFacts>> {
  await context.queries
    .updateTable('upgrade_note')
    .set({ seen_at: context.now().toISOString() })
    .where('seen_at', 'is', null)
    .execute();
  return workshopFacts(context);
}

/** Stored amounts count minor units: under a currency with other places each would be read as another sum. */
function otherPlaces(from: string, to: string): Problem {
  return {
    where: say('common.currency'),
    what: say('workshop.cannot-become-amounts-are-written-down', {
      to,
      from,
      placesWord: placesWord(from) === 'none' ? say('workshop.no') : placesWord(from),
      placesWord2: placesWord(to),
    }),
    fix: say('workshop.keep-and-begin-another-workshop-for', { from, to }),
  };
}
