/** A purchase comes onto the shelf: its lot, its lengths where the kind has them, and the first rows of their ledger. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { type LotId, toMilli } from '../../../shared-core/stash/stash.ts';
import { type CallContext, newId } from '../calls/call.ts';
import { refreshSearchText } from './item-search.ts';
import { addMovement, amountProblem, type CountedItem, noSuchItem } from './ledger.ts';

/** More would be a slip of the hand: no workshop receives so many pieces of cloth in one parcel. */
const maxLengths = 2000;

export async function receiveLot(
  context: CallContext,
  input: CallInput<'receiveLot'>,
): Promise<Result<{ lotId: LotId }>> {
  const { queries } = context;
  const item = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name', 'facts'])
    .where('id', '=', input.itemId)
    .where('archived', '=', 0)
    .executeTakeFirst();
  if (!item) return err(noSuchItem);
  const problems = receivingProblems(item, input);
  if (problems.length > 0) return err(...problems);

  const lotId: LotId = newId();
  const pieces = input.lengths.flatMap(({ count, ...piece }) => Array.from({ length: count }, () => piece));
  const amountsMilli =
    input.amount === null ? pieces.map((piece) => toMilli(piece.lengthMm)) : [toMilli(input.amount)];
  await queries
    .insertInto('lot')
    .values({
      id: lotId,
      item_id: item.id,
      received_on: input.receivedOn,
      supplier: input.supplier,
      dye_lot: input.dyeLot,
      received_milli: amountsMilli.reduce((sum, amountMilli) => sum + amountMilli, 0),
      price_minor: input.priceMinor,
    })
    .execute();
  const entry = { lotId, kind: 'received', reason: '' } as const;
  if (input.amount !== null)
    await addMovement(context, { ...entry, lengthId: null, onHandMilli: amountsMilli[0]! });
  for (const [index, piece] of pieces.entries()) {
    const lengthId = newId();
    await queries
      .insertInto('length')
      .values({
        id: lengthId,
        lot_id: lotId,
        width_mm: piece.widthMm,
        form: piece.form,
        flaws: JSON.stringify(piece.flaws),
        is_washed: piece.isWashed ? 1 : 0,
      })
      .execute();
    await addMovement(context, { ...entry, lengthId, onHandMilli: amountsMilli[index]! });
  }
  await refreshSearchText(queries, item.id);
  return ok({ lotId });
}

/** What is wrong with a purchase of an item; empty when it can be received. */
export function receivingProblems(
  item: CountedItem,
  input: Omit<CallInput<'receiveLot'>, 'itemId'>,
): Problem[] {
  const { name } = item;
  if (!kindRecords[item.kind].hasLengths) {
    if (input.lengths.length > 0) {
      return [
        {
          where: say('receiving.lengths-of', { name }),
          what: say('receiving.are-given-but-it-has-none'),
          fix: say('receiving.give-one-amount-instead'),
        },
      ];
    }
    if (input.amount === null) {
      return [
        {
          where: say('receiving.amount-of', { name }),
          what: say('common.is-missing'),
          fix: say('common.type-how-much-came-in'),
        },
      ];
    }
    const problem = amountProblem(item, input.amount, say('common.amount'));
    return problem ? [problem] : [];
  }
  if (input.amount !== null) {
    return [
      {
        where: say('receiving.amount-of', { name }),
        what: say('receiving.is-given-but-it-lies-as'),
        fix: say('receiving.give-the-lengths-and-leave-the'),
      },
    ];
  }
  if (input.lengths.length === 0) {
    return [
      {
        where: say('receiving.lengths-of', { name }),
        what: say('receiving.are-missing'),
        fix: say('receiving.give-the-width-and-length-of'),
      },
    ];
  }
  const lengthCount = input.lengths.reduce((sum, { count }) => sum + count, 0);
  if (lengthCount > maxLengths) {
    return [
      {
        where: say('receiving.lengths-of', { name }),
        what: say('receiving.are-more-than-at-once', { lengthCount, maxLengths }),
        fix: say('receiving.receive-them-as-several-lots'),
      },
    ];
  }
  return input.lengths.flatMap((length, index) => lengthProblems(item, length, index + 1));
}

function lengthProblems(
  item: CountedItem,
  length: CallInput<'receiveLot'>['lengths'][number],
  number: number,
): Problem[] {
  const tooSmall = amountProblem(item, length.lengthMm, say('receiving.length', { number }));
  const outside = length.flaws.flatMap((flaw, index) =>
    flaw.x + flaw.widthX > length.lengthMm || flaw.y + flaw.widthY > length.widthMm
      ? [
          {
            where: say('receiving.flaw-of-length', { index: index + 1, number }),
            what: say('receiving.reaches-beyond-the-length'),
            fix: say('receiving.measure-it-from-the-start-of'),
          },
        ]
      : [],
  );
  return tooSmall ? [tooSmall, ...outside] : outside;
}
