/** Reads of the open workshop for the rooms: shown as they stand in the cache, and read again when a change touched them. */
import {
  type QueryObserverResult,
  skipToken,
  useQueries,
  useQuery,
  type UseQueryOptions,
} from '@tanstack/react-query';
import type { CallInput, CallOutput, Workshop } from '../../../shared-core/contract/contract.ts';
import { ok, type Problem, type Result, err } from '../../../shared-core/measure/problem.ts';
import { useWorkshop } from '../workshop.ts';
import { queryClient, Refusal, readOptions } from './query-client.ts';
import type { ReadName } from './touched.ts';

export interface Read<Output> {
  /** The last answer; undefined until there is one. A later refusal leaves it. */
  readonly data: Output | undefined;
  /** Why the last reading was refused; none where it was answered. */
  readonly problems: readonly Problem[];
  readonly again: () => void;
  /** The data was read since this part of the screen is shown, and not before. */
  readonly isFresh: boolean;
  /** The data is that of the input before, until this one's is here; where keepsBefore asks for it. */
  readonly isOfBefore: boolean;
}

export interface ReadOptions {
  /** What answered the input before stays until the new one is answered. */
  readonly keepsBefore?: boolean;
}

const none: readonly Problem[] = [];

/** A query as a room sees it. The last two are looked at where they are asked for alone, so that nobody else is drawn for them. */
export function readOf<Output>(query: QueryObserverResult<Output>): Read<Output> {
  return {
    data: query.data,
    problems: query.error instanceof Refusal ? query.error.problems : none,
    again: () => void query.refetch(),
    get isFresh() {
      return query.isFetchedAfterMount && query.data !== undefined;
    },
    get isOfBefore() {
      return query.isPlaceholderData;
    },
  };
}

const before = <Output>(data: Output | undefined): Output | undefined => data;

/** input: null while there is nothing to ask yet. */
export function useRead<Name extends ReadName>(
  name: Name,
  input: CallInput<Name> | null,
  options: ReadOptions = {},
): Read<CallOutput<Name>> {
  return useReadIn(useWorkshop().workshop, name, input, options);
}

/** As useRead, where another workshop is meant than the open one, or none is open. */
export function useReadIn<Name extends ReadName>(
  workshop: Workshop,
  name: Name,
  input: CallInput<Name> | null,
  { keepsBefore = false }: ReadOptions = {},
): Read<CallOutput<Name>> {
  const asked: UseQueryOptions<CallOutput<Name>> =
    input === null
      ? { queryKey: [workshop, name, null], queryFn: skipToken }
      : readOptions(workshop, name, input);
  const options = keepsBefore ? { ...asked, placeholderData: before } : asked;
  return readOf(useQuery<CallOutput<Name>>(options, queryClient));
}

/** The same read for several inputs, in their order. */
export function useReads<Name extends ReadName>(
  name: Name,
  inputs: readonly CallInput<Name>[],
): readonly Read<CallOutput<Name>>[] {
  const { workshop } = useWorkshop();
  const queries = useQueries(
    { queries: inputs.map((input) => readOptions(workshop, name, input)) },
    queryClient,
  );
  return (queries as readonly QueryObserverResult<CallOutput<Name>>[]).map(readOf);
}

/** All that was refused of several reads, and one way to try all of those again. */
export function readTogether(reads: readonly Read<unknown>[]): Pick<Read<unknown>, 'problems' | 'again'> {
  const refused = reads.filter(({ problems }) => problems.length > 0);
  return {
    problems: refused.flatMap(({ problems }) => problems),
    again: () => {
      for (const { again } of refused) again();
    },
  };
}

/** Reads once, as at the press of a button; always as the file stands now. */
export async function ask<Name extends ReadName>(
  workshop: Workshop,
  name: Name,
  input: CallInput<Name>,
): Promise<Result<CallOutput<Name>>> {
  try {
    return ok(await queryClient.fetchQuery<CallOutput<Name>>(readOptions(workshop, name, input)));
  } catch (thrown) {
    if (thrown instanceof Refusal) return err(...thrown.problems);
    throw thrown;
  }
}
