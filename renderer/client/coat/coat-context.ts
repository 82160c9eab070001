/** The open coat, given to the rooms of its road. */
import { createContext, useContext } from 'react';
import type { CoatSession } from './coat-session.ts';

export const CoatContext = createContext<CoatSession | null>(null);

export function useCoat(): CoatSession {
  const session = useContext(CoatContext);
  if (!session) throw new Error('no coat is open');
  return session;
}
