/** Lays found earlier, by the hash of their job: a convenience that may be forgotten, so the oldest give way. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import type { CallContext, Calls } from '../calls/call.ts';

export const layCalls = { readLay, keepLay } satisfies Calls<'readLay' | 'keepLay'>;

export const maxKeptLays = 2000;

/** A lay of some thousand pieces; ten times that is no lay. */
const maxLetters = 4_000_000;

async function readLay(
  context: CallContext,
  input: CallInput<'readLay'>,
): Promise<Result<CallOutput<'readLay'>>> {
  const row = await context.queries
    .selectFrom('kept_lay')
    .select('result')
    .where('job_hash', '=', input.jobHash)
    .executeTakeFirst();
  return ok({ result: row ? JSON.parse(row.result) : null });
}

async function keepLay(
  context: CallContext,
  input: CallInput<'keepLay'>,
): Promise<Result<CallOutput<'keepLay'>>> {
  const { queries } = context;
  const result = JSON.stringify(input.result);
  if (result.length > maxLetters) {
    return err({
      where: say('common.the-lay'),
      what: say('lays.is-too-large-to-be-kept'),
      fix: say('lays.lay-fewer-coats-at-once'),
    });
  }
  await queries.deleteFrom('kept_lay').where('job_hash', '=', input.jobHash).execute();
  await queries
    .insertInto('kept_lay')
    .values({ job_hash: input.jobHash, result, kept_at: context.now().toISOString() })
    .execute();
  const lastToGo = queries
    .selectFrom('kept_lay')
    .select('entry')
    .orderBy('entry', 'desc')
    .limit(1)
    .offset(maxKeptLays);
  await queries.deleteFrom('kept_lay').where('entry', '<=', lastToGo).execute();
  return ok({ jobHash: input.jobHash });
}
