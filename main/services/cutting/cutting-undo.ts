/** Takes a cutting back: each of its rows that moved something is reversed by one that names it, the last one first. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import type { Movement } from '../../../shared-core/stash/stash.ts';
import { type CallContext, newId } from '../calls/call.ts';
import { readCuttings } from './cutting-read.ts';
import { addMovement, placeOnShelf } from '../stock/ledger.ts';
import { reservedBy } from './set-aside.ts';

export async function undoCutting(
  context: CallContext,
  input: CallInput<'undoCutting'>,
): Promise<Result<Cutting>> {
  const [cutting] = await readCuttings(context.queries, input);
  const where = say('common.the-cutting');
  if (!cutting) {
    return err({
      where,
      what: say('cutting-undo.is-not-in-the-ledger'),
      fix: say('cutting-undo.open-the-coat-again-and-choose'),
    });
  }
  if (cutting.undoes !== null) {
    return err({
      where,
      what: say('cutting-undo.is-itself-a-taking-back'),
      fix: say('cutting-undo.record-what-was-cut-anew'),
    });
  }
  if (cutting.undoneBy !== null) {
    return err({
      where,
      what: say('cutting-undo.was-taken-back-already'),
      fix: say('cutting-undo.there-is-nothing-to-undo'),
    });
  }
  const problems = await usedSince(context, cutting);
  if (problems.length > 0) return err(...problems);
  const cuttingId = newId();
  await context.queries
    .insertInto('cutting')
    .values({
      id: cuttingId,
      plan_id: cutting.planId,
      revision: cutting.revision,
      at: context.now().toISOString(),
      coats: '[]',
      slots: '[]',
      note: '',
      undoes: cutting.id,
    })
    .execute();
  await reverse(context, cutting, cuttingId);
  const [undone] = await readCuttings(context.queries, { cuttingId });
  if (!undone) throw new Error(`the cutting ${cuttingId} was not written`);
  return ok(undone);
}

/**
 * What it had set aside elsewhere is released, every row that moved something is reversed, and coats get back what
 * they had set aside before it, as far as they have not let go of it since and it is free.
 */
async function reverse(context: CallContext, cutting: Cutting, cuttingId: string): Promise<void> {
  const reason = say('cutting-undo.the-cutting-was-taken-back');
  const changes = reservedChanges(cutting);
  /** By coat: what had moved to another length and the coat let go of there. */
  const letGo = new Map<string | null, number>();
  for (const { lotId, lengthId, planId, milli } of changes.filter((change) => change.milli > 0)) {
    const reserved = await reservedBy(context.queries, { lotIds: [lotId] });
    const here = reserved.find((each) => each.planId === planId && each.lengthId === lengthId);
    const releasedMilli = Math.min(milli, here?.reservedMilli ?? 0);
    letGo.set(planId, (letGo.get(planId) ?? 0) + milli - releasedMilli);
    if (releasedMilli === 0) continue;
    const released = { kind: 'released', onHandMilli: 0, reservedMilli: -releasedMilli } as const;
    await addMovement(context, { cuttingId, reason, lotId, lengthId, planId, ...released });
  }
  for (const { id, lotId, lengthId, planId, onHandMilli } of [...cutting.movements].reverse()) {
    if (onHandMilli === 0) continue;
    const reversed = { kind: 'reversed', onHandMilli: -onHandMilli, reverses: id } as const;
    await addMovement(context, { cuttingId, reason, lotId, lengthId, planId, ...reversed });
  }
  for (const { lotId, lengthId, planId, milli } of changes.filter((change) => change.milli < 0)) {
    const lessMilli = Math.min(-milli, letGo.get(planId) ?? 0);
    letGo.set(planId, (letGo.get(planId) ?? 0) - lessMilli);
    const place = await placeOnShelf(context, lotId, lengthId);
    // Its receipt was undone since: nothing is there to be set aside.
    if (!place.ok) continue;
    const freeMilli = place.value.onHandMilli - place.value.reservedMilli;
    const reservedMilli = Math.min(-milli - lessMilli, freeMilli);
    if (reservedMilli === 0) continue;
    const reserved = { kind: 'reserved', onHandMilli: 0, reservedMilli } as const;
    await addMovement(context, { cuttingId, reason, lotId, lengthId, planId, ...reserved });
  }
}

/** What a cutting changed of what each coat has set aside, place by place, in the order it first did. */
function reservedChanges({ movements }: Cutting) {
  const changes = new Map<
    string,
    Pick<Movement, 'lotId' | 'lengthId' | 'planId'> & { readonly milli: number }
  >();
  for (const { lotId, lengthId, planId, reservedMilli } of movements) {
    const key = `${planId} ${lotId} ${lengthId}`;
    changes.set(key, { lotId, lengthId, planId, milli: (changes.get(key)?.milli ?? 0) + reservedMilli });
  }
  return [...changes.values()];
}

/** Lengths that came into being by the cutting and are no longer there whole and free. */
async function usedSince(context: CallContext, cutting: Cutting): Promise<Problem[]> {
  const made = new Map<string, { lotId: string; milli: number }>();
  for (const { kind, lotId, lengthId, onHandMilli } of cutting.movements) {
    if (lengthId === null || (kind !== 'returned' && !made.has(lengthId))) continue;
    made.set(lengthId, { lotId, milli: (made.get(lengthId)?.milli ?? 0) + onHandMilli });
  }
  const changes = reservedChanges(cutting);
  const problems: Problem[] = [];
  for (const [lengthId, { lotId, milli }] of made) {
    const place = await placeOnShelf(context, lotId, lengthId);
    if (!place.ok) throw new Error(`the length ${lengthId} is not on the shelf`);
    const { name, show, onHandMilli } = place.value;
    const where = say('cutting-undo.a-remnant-of-long', { name, show: show(milli) });
    // What the cutting itself moved here goes back with it, as far as its coat still has it here.
    const here = (await reservedBy(context.queries, { lotIds: [lotId] })).filter(
      (each) => each.lengthId === lengthId,
    );
    const stayingMilli = here.reduce((sum, { planId, reservedMilli }) => {
      const moved = changes.find((change) => change.lengthId === lengthId && change.planId === planId);
      return sum + Math.max(0, reservedMilli - Math.max(0, moved?.milli ?? 0));
    }, 0);
    if (onHandMilli < milli) {
      problems.push({
        where,
        what: say('cutting-undo.was-used-since'),
        fix: say('cutting-undo.take-back-what-was-cut-from'),
      });
    } else if (stayingMilli > onHandMilli - milli) {
      problems.push({
        where,
        what: say('cutting-undo.was-set-aside-since'),
        fix: say('cutting-undo.release-it-in-that-coat-first'),
      });
    }
  }
  return problems;
}
