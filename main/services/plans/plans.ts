/** The calls about coat plans. Each change is a further revision; an undo is one too, so nothing is ever lost. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput, PlanRow } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../shared-core/plan/validation/plan-problems.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { PlanId } from '../../../shared-core/stash/stash.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';

export const planCalls = { listPlans, readPlan, savePlan, undoPlan } satisfies Calls<
  'listPlans' | 'readPlan' | 'savePlan' | 'undoPlan'
>;

export const noSuchPlan: Problem = {
  get where() {
    return say('plans.the-plan');
  },
  get what() {
    return say('plans.is-not-there');
  },
  get fix() {
    return say('plans.open-the-list-of-plans-and');
  },
};

/** The one last changed comes first. */
async function listPlans(context: CallContext): Promise<Result<{ rows: readonly PlanRow[] }>> {
  const rows = await context.queries
    .selectFrom('plan')
    .selectAll()
    .orderBy('changed_at', 'desc')
    .orderBy('name')
    .orderBy('id')
    .execute();
  return ok({
    rows: rows.map((row) => ({
      id: row.id,
      name: row.name,
      size: row.size,
      coatCount: row.coat_count,
      changedAt: row.changed_at,
    })),
  });
}

async function readPlan(
  context: CallContext,
  input: CallInput<'readPlan'>,
): Promise<Result<CallOutput<'readPlan'>>> {
  const latest = await latestRevision(context, input.planId);
  if (!latest) return err(noSuchPlan);
  return ok(planAnswer(latest));
}

/** A new plan gets an id of its own, whichever one it came with. */
async function savePlan(
  context: CallContext,
  input: CallInput<'savePlan'>,
): Promise<Result<CallOutput<'savePlan'>>> {
  const { basedOn, said } = input;
  const problems = [...planProblems(input.plan), ...(await stashProblems(context, input.plan))];
  if (problems.length > 0) return err(...problems);
  if (basedOn === null) {
    const plan = { ...input.plan, id: newId() };
    await context.queries
      .insertInto('plan')
      .values(planRow(context, plan, 1))
      .execute();
    await addRevision(context, { plan, revision: 1, said, undoTo: null });
    return ok({ planId: plan.id, revision: 1 });
  }
  const latest = await latestRevision(context, input.plan.id);
  if (!latest) return err(noSuchPlan);
  if (latest.revision !== basedOn) {
    return err({
      where: say('plans.the-plan-2', { planName: latest.plan.name }),
      what: say('plans.was-changed-meanwhile'),
      fix: say('plans.open-it-again-it-then-shows'),
    });
  }
  const revision = await addNext(context, latest.revision, {
    plan: input.plan,
    said,
    undoTo: latest.revision,
  });
  return ok({ planId: input.plan.id, revision });
}

/** Undoing again goes one step further back, to the first revision at most. */
async function undoPlan(
  context: CallContext,
  input: CallInput<'undoPlan'>,
): Promise<Result<CallOutput<'undoPlan'>>> {
  const latest = await latestRevision(context, input.planId);
  if (!latest) return err(noSuchPlan);
  if (latest.undoTo === null) {
    return err({
      where: say('plans.the-plan-2', { planName: latest.plan.name }),
      what: say('plans.has-no-earlier-state'),
      fix: say('plans.there-is-nothing-to-undo'),
    });
  }
  const before = await readRevision(context, input.planId, latest.undoTo);
  if (!before) throw new Error(`plan ${input.planId} lacks revision ${latest.undoTo}`);
  const said = say('plans.back-to-before', {
    said: latest.said === '' ? say('plans.the-last-change') : latest.said,
  }).slice(0, 1000);
  const undone = { plan: before.plan, said, undoTo: before.undoTo };
  const revision = await addNext(context, latest.revision, undone);
  return ok(planAnswer({ ...undone, revision }));
}

interface Revision {
  readonly plan: CoatPlan;
  readonly revision: number;
  readonly said: string;
  readonly undoTo: number | null;
}

export async function latestRevision(context: CallContext, planId: PlanId): Promise<Revision | null> {
  const plan = await context.queries
    .selectFrom('plan')
    .select('revision')
    .where('id', '=', planId)
    .executeTakeFirst();
  return plan ? readRevision(context, planId, plan.revision) : null;
}

export async function readRevision(
  context: CallContext,
  planId: PlanId,
  revision: number,
): Promise<Revision | null> {
  const row = await context.queries
    .selectFrom('plan_revision')
    .select(['plan', 'said', 'undo_to'])
    .where('plan_id', '=', planId)
    .where('revision', '=', revision)
    .executeTakeFirst();
  return row ? { plan: JSON.parse(row.plan), revision, said: row.said, undoTo: row.undo_to } : null;
}

async function addNext(
  context: CallContext,
  lastRevision: number,
  next: Omit<Revision, 'revision'>,
): Promise<number> {
  const revision = lastRevision + 1;
  const { id, ...row } = planRow(context, next.plan, revision);
  await context.queries.updateTable('plan').set(row).where('id', '=', id).execute();
  await addRevision(context, { ...next, revision });
  return revision;
}

function planRow(context: CallContext, plan: CoatPlan, revision: number) {
  const changed_at = context.now().toISOString();
  return { id: plan.id, name: plan.name, size: plan.size, coat_count: plan.coatCount, revision, changed_at };
}

async function addRevision(context: CallContext, revision: Revision): Promise<void> {
  await context.queries
    .insertInto('plan_revision')
    .values({
      plan_id: revision.plan.id,
      revision: revision.revision,
      plan: JSON.stringify(revision.plan),
      said: revision.said,
      at: context.now().toISOString(),
      undo_to: revision.undoTo,
    })
    .execute();
}

function planAnswer({ plan, revision, said, undoTo }: Revision) {
  return { plan, revision, said, canUndo: undoTo !== null };
}

/** Slots must be filled from the stash, with items of their kind. */
async function stashProblems(context: CallContext, plan: CoatPlan): Promise<Problem[]> {
  const filled = plan.slots.filter((slot) => slot.itemId !== null);
  if (filled.length === 0) return [];
  const items = await context.queries
    .selectFrom('item')
    .select(['id', 'kind', 'name'])
    .where(
      'id',
      'in',
      filled.map((slot) => slot.itemId as string),
    )
    .execute();
  const byId = new Map(items.map((item) => [item.id, item]));
  return filled.flatMap((slot) => {
    const item = byId.get(slot.itemId as string);
    const where = say('plans.slot', { slotName: slot.name });
    if (!item)
      return [
        { where, what: say('plans.names-an-item-that-is-not'), fix: say('plans.choose-an-item-or-leave-it') },
      ];
    if (item.kind === slot.kind) return [];
    const wanted = nounInSentence(kindRecords[slot.kind].label);
    return [
      {
        where,
        what: say('plans.is-filled-with-which-is-not', { itemName: item.name, wanted }),
        fix: say('plans.choose', { wanted }),
      },
    ];
  });
}
