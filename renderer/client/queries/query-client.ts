/**
 * What was read of the workshops, kept by workshop, call and input. A room shows at once what was read before and reads
 * it again. After a change what it touched (touched.ts) is read again where it is shown, and forgotten where it is not.
 */
import { type Query, QueryClient } from '@tanstack/react-query';
import type { CallInput, CallOutput, Workshop } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../api.ts';
import { failureOf } from '../failure.ts';
import { type ChangeName, type ReadName, touched } from './touched.ts';

/** Why a read was not answered. What was read before stays. */
export class Refusal extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ where, what }) => `${where} ${what}`).join('; '));
    this.problems = problems;
  }
}

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      // A problem is an answer, and the program behind the window needs no network.
      retry: false,
      networkMode: 'always',
      refetchOnWindowFocus: false,
      refetchOnReconnect: false,
    },
    mutations: { retry: false, networkMode: 'always' },
  },
});

/** The part of the cache that holds one read. */
export function readOptions<Name extends ReadName>(workshop: Workshop, name: Name, input: CallInput<Name>) {
  return {
    queryKey: [workshop, name, input] as const,
    queryFn: () => answerOf(workshop, name, input),
  };
}

/** The answer of a call; a refusal, and whatever else goes wrong, is thrown as a Refusal. */
export async function answerOf<Name extends ReadName>(
  workshop: Workshop,
  name: Name,
  input: CallInput<Name>,
): Promise<CallOutput<Name>> {
  const answer = await call(name, workshop, input).catch((thrown: unknown) => {
    throw new Refusal([failureOf('The workshop file', thrown, 'Try again.', 'could not be read')]);
  });
  if (!answer.ok) throw new Refusal(answer.problems);
  return answer.value;
}

/** Has everything read again that a change touched. Settles once what is shown is read; a refusal stands where that is. */
export function refreshTouched(workshop: Workshop, change: ChangeName): Promise<void> {
  const names: ReadonlySet<unknown> = new Set(touched[change]);
  return readAgain(({ queryKey: [of, name] }) => of === workshop && names.has(name));
}

/** What is shown is read again; what is not is forgotten, so that no room shows what is known to be old. */
function readAgain(predicate: (query: Query) => boolean): Promise<void> {
  queryClient.removeQueries({ type: 'inactive', fetchStatus: 'idle', predicate });
  return queryClient.invalidateQueries({ predicate });
}

type Listener = () => void;
const listeners = new Set<Listener>();

/** For changes that were made elsewhere: everything is read again, the open coat with it. */
export function refreshAll(): Promise<void> {
  for (const listener of listeners) listener();
  return readAgain(() => true);
}

/** Told when everything is to be read again, for what is kept outside this cache. Gives what ends that. */
export function onRefreshAll(listener: Listener): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}
