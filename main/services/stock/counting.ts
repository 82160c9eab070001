/** What was counted on the shelf: the difference to what is booked goes into the ledger, and nothing else changes. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { fromMilli, toMilli } from '../../../shared-core/stash/stash.ts';
import type { CallContext } from '../calls/call.ts';
import { addMovement, amountProblem, placeOnShelf } from './ledger.ts';
import { planNames, releaseBeyond } from '../cutting/set-aside.ts';

/** 1 km, as for a length that is received. */
const maxLengthMilli = toMilli(1e6);

/**
 * Books the difference to what was counted; where there is none, nothing. Answers what is now on hand there.
 * The shelf is right: where less is there than coats have set aside, the coat that set aside last gives way first, and
 * the answer names it.
 */
export async function correctCount(
  context: CallContext,
  input: CallInput<'correctCount'>,
): Promise<Result<CallOutput<'correctCount'>>> {
  const shelf = await placeOnShelf(context, input.lotId, input.lengthId);
  if (!shelf.ok) return shelf;
  const { lotId, lengthId, onHandMilli } = shelf.value;
  const problem =
    input.counted === 0 ? null : amountProblem(shelf.value, input.counted, say('counting.count'));
  if (problem) return err(problem);
  const countedMilli = toMilli(input.counted);
  if (lengthId !== null && countedMilli > maxLengthMilli) {
    return err({
      where: say('counting.count-of', { name: shelf.value.name }),
      what: say('counting.is-too-long-to-be-true'),
      fix: say('common.check-the-number-and-its-unit'),
    });
  }
  const { reason } = input;
  const released = await bookCount(context, { lotId, lengthId, onHandMilli, countedMilli, reason });
  const names = await planNames(
    context.queries,
    released.map(({ planId }) => planId),
  );
  return ok({
    onHand: fromMilli(countedMilli),
    released: released.map(({ planId, milli }) => ({
      planId,
      planName: names.get(planId) ?? '',
      amount: fromMilli(milli),
    })),
  });
}

/** Books each difference; where one count cannot be right, none is booked. */
export async function takeStock(
  context: CallContext,
  { counts, reason }: CallInput<'takeStock'>,
): Promise<Result<CallOutput<'takeStock'>>> {
  const problems: Problem[] = [];
  const releasedFrom = new Set<string>();
  let correctedCount = 0;
  for (const { lotId, lengthId, counted } of counts) {
    const place = await placeOnShelf(context, lotId, lengthId);
    const done = place.ok ? await correctCount(context, { lotId, lengthId, counted, reason }) : place;
    if (!done.ok) problems.push(...done.problems);
    else {
      if (place.ok && place.value.onHandMilli !== toMilli(counted)) correctedCount += 1;
      for (const { planName } of done.value.released) releasedFrom.add(planName);
    }
  }
  return problems.length > 0 ? err(...problems) : ok({ correctedCount, releasedFrom: [...releasedFrom] });
}

export interface Count {
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly onHandMilli: number;
  readonly countedMilli: number;
  readonly reason: string;
}

/** Answers what coats lost of what they had set aside there. */
export async function bookCount(
  context: CallContext,
  { lotId, lengthId, onHandMilli, countedMilli, reason }: Count,
): Promise<{ readonly planId: string; readonly milli: number }[]> {
  const differenceMilli = countedMilli - onHandMilli;
  if (differenceMilli === 0) return [];
  const released = await releaseBeyond(context, { lotId, lengthId, onHandMilli: countedMilli });
  await addMovement(context, { lotId, lengthId, kind: 'corrected', onHandMilli: differenceMilli, reason });
  return released;
}
