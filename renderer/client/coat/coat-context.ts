/** The open coat, given to the rooms of its road. Each part names what it shows, and is drawn anew for nothing else. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { type Change, useChange } from '../queries/changes.ts';
import type { ChangeName } from '../queries/touched.ts';
import type { CoatState, CoatStore } from './coat-store.ts';

export const CoatContext = createContext<CoatStore | null>(null);

/** The store itself, for what is asked at a click and not shown. */
export function useCoatStore(): CoatStore {
  const store = useContext(CoatContext);
  if (!store) throw new Error('no coat is open');
  return store;
}

/** These parts of the open coat. */
export function useCoat<Name extends keyof CoatState>(...names: readonly Name[]): Pick<CoatState, Name> {
  return useStore(
    useCoatStore(),
    useShallow(
      (coat) => Object.fromEntries(names.map((name) => [name, coat[name]])) as Pick<CoatState, Name>,
    ),
  );
}

/** One value worked out of the open coat. select: gives the same value, not an equal one, where nothing has changed. */
export function useCoatValue<Value>(select: (coat: CoatState) => Value): Value {
  return useStore(useCoatStore(), select);
}

/**
 * A change of the workshop that the open coat rests on: once it is made, the coat is read and estimated again. The lays
 * of that take their time, and nobody waits for them.
 */
export function useCoatChange<Name extends ChangeName>(name: Name): Change<Name> {
  const { make, isUnderWay } = useChange(name);
  const { reload } = useCoat('reload');
  return {
    isUnderWay,
    make: async (input: CallInput<Name>): Promise<Result<CallOutput<Name>>> => {
      const answer = await make(input);
      if (answer.ok) void reload();
      return answer;
    },
  };
}
