/** What each call is given, and the shape that all calls have. */
import { randomUUID } from 'node:crypto';
import type { CallInput, CallName, CallOutput, Workshop } from '../../../shared-core/contract/contract.ts';
import type { Result, Problem } from '../../../shared-core/measure/problem.ts';
import type { Queries } from '../../database/store.ts';

export interface CallContext {
  /** Inside the call's one transaction; what is refused is rolled back whole. */
  readonly queries: Queries;
  readonly workshop: Workshop;
  readonly dataFile: string;
  readonly schemaVersion: number;
  readonly now: () => Date;
  /** What is wrong with the file though it is open. */
  readonly told: readonly Problem[];
}

export type Call<Name extends CallName> = (
  context: CallContext,
  input: CallInput<Name>,
) => Promise<Result<CallOutput<Name>>>;

export type Calls<Names extends CallName> = { readonly [Name in Names]: Call<Name> };

export function newId(): string {
  return randomUUID();
}
