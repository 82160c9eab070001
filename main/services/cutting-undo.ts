/** Takes a cutting back: each of its rows is answered by one that goes the other way, the last one first. */
import type { CallInput } from '../../shared-core/contract/contract.ts';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import type { Cutting } from '../../shared-core/stash/cutting.ts';
import { type CallContext, newId } from './call.ts';
import { readCuttings } from './cutting-read.ts';
import { addMovement, placeOnShelf } from './ledger.ts';
import { reservedBy } from './set-aside.ts';

export async function undoCutting(
  context: CallContext,
  input: CallInput<'undoCutting'>,
): Promise<Outcome<Cutting>> {
  const [cutting] = await readCuttings(context.queries, input);
  const where = 'The cutting';
  if (!cutting) {
    return refused({ where, what: 'is not in the ledger', mend: 'Open the coat again and choose anew.' });
  }
  if (cutting.undoes !== null) {
    return refused({ where, what: 'is itself a taking back', mend: 'Record what was cut anew.' });
  }
  if (cutting.undoneBy !== null) {
    return refused({ where, what: 'was taken back already', mend: 'There is nothing to undo.' });
  }
  const problems = await usedSince(context, cutting);
  if (problems.length > 0) return refused(...problems);
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
  await answerEach(context, cutting, cuttingId);
  const [undone] = await readCuttings(context.queries, { cuttingId });
  if (!undone) throw new Error(`the cutting ${cuttingId} was not written`);
  return found(undone);
}

async function answerEach(context: CallContext, cutting: Cutting, cuttingId: string): Promise<void> {
  // What a coat released meanwhile of what had moved to another length is not set aside for it again.
  const missing = new Map<string | null, number>();
  for (const { lotId, lengthId, planId, onHandMilli, reservedMilli } of [...cutting.movements].reverse()) {
    const back = { lotId, lengthId, planId, cuttingId, reason: 'the cutting was taken back' };
    if (onHandMilli !== 0)
      await addMovement(context, { ...back, kind: 'corrected', onHandMilli: -onHandMilli });
    if (reservedMilli > 0) {
      const now = (await reservedBy(context.queries, { lotIds: [lotId] })).find(
        (each) => each.planId === planId && each.lengthId === lengthId,
      );
      const releasedMilli = Math.min(reservedMilli, now?.reservedMilli ?? 0);
      missing.set(planId, (missing.get(planId) ?? 0) + reservedMilli - releasedMilli);
      if (releasedMilli > 0)
        await addMovement(context, {
          ...back,
          kind: 'released',
          onHandMilli: 0,
          reservedMilli: -releasedMilli,
        });
    } else if (reservedMilli < 0) {
      const lessMilli = Math.min(-reservedMilli, missing.get(planId) ?? 0);
      missing.set(planId, (missing.get(planId) ?? 0) - lessMilli);
      const againMilli = -reservedMilli - lessMilli;
      if (againMilli > 0)
        await addMovement(context, { ...back, kind: 'reserved', onHandMilli: 0, reservedMilli: againMilli });
    }
  }
}

/** Lengths that came back by the cutting and are no longer there whole. */
async function usedSince(context: CallContext, cutting: Cutting): Promise<Problem[]> {
  const returned = new Map<string, { lotId: string; onHandMilli: number; reservedMilli: number }>();
  for (const { kind, lotId, lengthId, onHandMilli, reservedMilli } of cutting.movements) {
    if (lengthId === null || (kind !== 'returned' && !returned.has(lengthId))) continue;
    const before = returned.get(lengthId);
    returned.set(lengthId, {
      lotId,
      onHandMilli: (before?.onHandMilli ?? 0) + onHandMilli,
      reservedMilli: (before?.reservedMilli ?? 0) + reservedMilli,
    });
  }
  const problems: Problem[] = [];
  for (const [lengthId, { lotId, onHandMilli, reservedMilli }] of returned) {
    const place = await placeOnShelf(context, lotId, lengthId);
    if (!place.ok) throw new Error(`the length ${lengthId} is not on the shelf`);
    const { name, show } = place.value;
    const where = `A remnant of ${name}, ${show(onHandMilli)} long,`;
    if (place.value.onHandMilli < onHandMilli) {
      problems.push({
        where,
        what: 'was used since',
        mend: 'Take back what was cut from it first, or count what lies there.',
      });
    } else if (place.value.reservedMilli > place.value.onHandMilli - onHandMilli + reservedMilli) {
      problems.push({ where, what: 'was set aside since', mend: 'Release it in that coat first.' });
    }
  }
  return problems;
}
