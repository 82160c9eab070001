/** Which workshop is open, the maker's own or the demo, with its facts; shared by every room. */
import { createContext, useContext } from 'react';
import type { Workshop, WorkshopFacts } from '../../shared-core/contract/contract.ts';
import type { MeasureSystem } from '../../shared-core/measure/quantity.ts';
import type { Route } from './route.ts';

export interface OpenWorkshop {
  readonly workshop: Workshop;
  readonly facts: WorkshopFacts;
  /** Opens a workshop at one of its rooms; one that cannot be read leaves the other open. */
  readonly open: (workshop: Workshop, first: Route) => Promise<void>;
}

export const WorkshopContext = createContext<OpenWorkshop | null>(null);

export function useWorkshop(): OpenWorkshop {
  const open = useContext(WorkshopContext);
  if (!open) throw new Error('no workshop is open');
  return open;
}

export function useSystem(): MeasureSystem {
  return useWorkshop().facts.settings.system;
}

/** Whether several desks share it, in a database; else it is a file of this machine. */
export function isSharedWorkshop({ dataFile }: Pick<WorkshopFacts, 'dataFile'>): boolean {
  return dataFile.startsWith('postgres://');
}
