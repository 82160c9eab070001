/** What was asked of a coat's table last, kept on this machine: a view of the plan and not part of it. */
import { type NapAsked, defaultWidths } from '../../../shared-core/flow/requirements-table/table-asked.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';

export interface AskedDraft {
  /** As typed. */
  readonly widths: string;
  readonly nap: NapAsked;
  readonly shownIn: MeasureSystem | 'both';
  /** For the whole table. */
  readonly seconds: '15' | '60' | '300';
  readonly leftOutSlotIds: readonly string[];
}

const storageKey = (planId: string) => `bolt-and-baffle.table.${planId}`;

export function keptAsked(planId: string, system: MeasureSystem): AskedDraft {
  const usual: AskedDraft = {
    widths: defaultWidths[system],
    nap: 'both',
    shownIn: system,
    seconds: '60',
    leftOutSlotIds: [],
  };
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(storageKey(planId)) ?? '{}');
    return { ...usual, ...(kept as Partial<AskedDraft>) };
  } catch {
    return usual;
  }
}

export function keepAsked(planId: string, asked: AskedDraft): void {
  window.localStorage.setItem(storageKey(planId), JSON.stringify(asked));
}
