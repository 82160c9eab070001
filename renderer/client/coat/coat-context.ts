/** The open coat, given to the rooms of its road. Each part names what it shows, and is drawn anew for nothing else. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
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
