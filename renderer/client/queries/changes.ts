/** Changes of the open workshop; what each touched is read again before its answer is given. */
import { useMutation } from '@tanstack/react-query';
import type { CallInput, CallOutput, Workshop } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { call } from '../api.ts';
import { useWorkshop } from '../workshop.ts';
import { queryClient, refreshTouched } from './query-client.ts';
import type { ChangeName } from './touched.ts';

export interface Change<Name extends ChangeName> {
  /** Gives the call's answer; a refusal changed nothing. */
  readonly make: (input: CallInput<Name>) => Promise<Result<CallOutput<Name>>>;
  readonly isUnderWay: boolean;
}

export function useChange<Name extends ChangeName>(name: Name): Change<Name> {
  return useChangeIn(useWorkshop().workshop, name);
}

/** As useChange, where another workshop is meant than the open one, or none is open. */
export function useChangeIn<Name extends ChangeName>(workshop: Workshop, name: Name): Change<Name> {
  const mutation = useMutation<Result<CallOutput<Name>>, Error, CallInput<Name>>(
    { mutationFn: (input) => change(workshop, name, input) },
    queryClient,
  );
  return { make: mutation.mutateAsync, isUnderWay: mutation.isPending };
}

/** A change outside of what is drawn. */
export async function change<Name extends ChangeName>(
  workshop: Workshop,
  name: Name,
  input: CallInput<Name>,
): Promise<Result<CallOutput<Name>>> {
  const answer = await call(name, workshop, input);
  if (answer.ok) await refreshTouched(workshop, name);
  return answer;
}
