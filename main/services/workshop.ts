/** The calls about the workshop itself. The demo is made anew in demo.ts: that one needs the whole file. */
import type { CallInput, WorkshopFacts } from '../../shared-core/contract/contract.ts';
import type { Settings } from '../../shared-core/contract/schemas.ts';
import { found, type Outcome } from '../../shared-core/measure/problem.ts';
import type { CallContext, Calls } from './call.ts';
import { readSettings, writeSettings } from './settings.ts';

export const workshopCalls = { workshopFacts, saveSettings, markUpgradeNotesSeen } satisfies Calls<
  'workshopFacts' | 'saveSettings' | 'markUpgradeNotesSeen'
>;

export async function workshopFacts(context: CallContext): Promise<Outcome<WorkshopFacts>> {
  const { queries, workshop, dataFile, schemaVersion } = context;
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
  return found({
    workshop,
    dataFile,
    schemaVersion,
    settings,
    itemCount: items.count,
    planCount: plans.count,
    upgradeNotes: notes.map(({ note, seen_at }) => ({ note, isSeen: seen_at !== null })),
  });
}

async function saveSettings(
  context: CallContext,
  input: CallInput<'saveSettings'>,
): Promise<Outcome<Settings>> {
  await writeSettings(context.queries, input);
  return found(await readSettings(context.queries));
}

async function markUpgradeNotesSeen(context: CallContext): Promise<Outcome<WorkshopFacts>> {
  await context.queries
    .updateTable('upgrade_note')
    .set({ seen_at: context.now().toISOString() })
    .where('seen_at', 'is', null)
    .execute();
  return workshopFacts(context);
}
