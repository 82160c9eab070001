/**
 * What the finished coat bears in each of the five processes of care: as much as the part of it that bears least. The
 * processes are independent, so each is decided by itself. Source: ISO 3758, from memory; 16 CFR 423 wants a reasonable
 * basis for the whole product, each of its parts.
 */
import { type CoatPlan, type Slot, slotById } from '../../plan/model/coat-plan.ts';
import { type FactsOf, factFields } from '../../stash/kinds.ts';
import type { Item } from '../../stash/stash.ts';
import { ironLimitC } from './iron.ts';
import type { SlotItems } from '../need.ts';

export const careProcesses = ['careWash', 'careBleach', 'careDry', 'careIron', 'careProfessional'] as const;
export type CareProcess = (typeof careProcesses)[number];

/** One process for the whole coat. */
export interface CareLimit {
  readonly process: CareProcess;
  /** "Wash", "Dry clean". */
  readonly name: string;
  /** What the parts bear of which it is known; null while it is of none. */
  readonly limit: string | null;
  /** The parts that bear no more than that. */
  readonly slotIds: readonly string[];
  /** Parts of which it is not written down. */
  readonly unknownSlotIds: readonly string[];
}

/** Kinds with facts of care; thread is taken to bear what is sewn with it. */
type CaredFor = Extract<Item, { readonly facts: Pick<FactsOf<'cloth'>, CareProcess> }>;

function isCaredFor(item: Item): item is CaredFor {
  return item.kind !== 'thread' && item.kind !== 'needle';
}

/** Fastenings that a wash, a dryer or a solvent may harm; of snaps, buttons and labels nobody is asked. */
const tenderForms: readonly string[] = ['zip', 'cord', 'elastic', 'tape', 'hook and loop'];

/** What a material may be treated with at most, the gentlest first; the strings of the stash's field. */
export function careSteps(process: CareProcess): readonly string[] {
  const field = new Map(factFields('cloth')).get(process);
  return field?.kind === 'choice' ? field.options : [];
}

/** Null where neither the maker nor, for the iron, the fibres say. */
export function careOf(item: Item, process: CareProcess): string | null {
  if (!isCaredFor(item)) return null;
  const said = item.facts[process] ?? null;
  if (said !== null || process !== 'careIron') return said;
  const limitC = ironLimitC(item);
  return limitC === null ? null : `iron at ${limitC}`;
}

/** Each process for the coat, in the order of the symbols. Slots without a material are not known. */
export function careLimits(plan: CoatPlan, items: SlotItems): readonly CareLimit[] {
  return careProcesses.map((process) => {
    const steps = careSteps(process);
    const parts = plan.slots.flatMap((slot) => {
      const item = items.get(slot.id);
      const said = item ? careOf(item, process) : null;
      if (said === null && !isAsked(process, slot, item)) return [];
      return [{ slotId: slot.id, step: said === null ? null : steps.indexOf(said) }];
    });
    const known = parts.flatMap(({ step }) => (step === null ? [] : [step]));
    const min = Math.min(...known);
    return {
      process,
      name: new Map(factFields('cloth')).get(process)?.label ?? process,
      limit: steps[min] ?? null,
      slotIds: parts.filter(({ step }) => step === min).map(({ slotId }) => slotId),
      unknownSlotIds: parts.filter(({ step }) => step === null).map(({ slotId }) => slotId),
    };
  });
}

/** Whether a part must be known of; what is not ironed is not asked for its iron. */
function isAsked(process: CareProcess, slot: Slot, item: Item | undefined): boolean {
  switch (slot.kind) {
    case 'cloth':
    case 'batting':
      return true;
    case 'fill':
      return process !== 'careIron';
    case 'fastening':
      return (
        process !== 'careIron' &&
        item?.kind === 'fastening' &&
        item.facts.form !== null &&
        tenderForms.includes(item.facts.form)
      );
    case 'thread':
    case 'needle':
      return false;
    default:
      return slot.kind satisfies never;
  }
}

/** Names of the parts, in the order of the plan: "shell, body lining". */
export function partNames(plan: CoatPlan, slotIds: readonly string[]): string {
  return slotIds.map((slotId) => slotById(plan, slotId).name).join(', ');
}
