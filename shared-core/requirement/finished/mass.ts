/** What one finished coat weighs, slot by slot. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { type CoatPlan, type Slot, slotById } from '../../plan/model/coat-plan.ts';
import type { Item } from '../../stash/stash.ts';
import { spareRatio } from '../fill/fill.ts';
import { unwashedMm2 } from '../cut/first-wash.ts';
import type { Need, SlotItems } from '../need.ts';
import { trimmedMm2 } from '../cut/trimmings.ts';

export interface MassLine {
  readonly slotId: string;
  readonly slotName: string;
  /** Of one coat; null where a fact that it hangs on is not written down. */
  readonly massG: number | null;
  /** What is missing when massG is null: "weight of Grey taffeta". Empty otherwise. */
  readonly missing: string;
}

export interface CoatMass {
  /** Slots that stay in the coat; needles do not. */
  readonly lines: readonly MassLine[];
  /** Sum of the known lines: the coat weighs at least this. */
  readonly knownG: number;
  readonly isComplete: boolean;
  readonly basis: readonly Basis[];
}

/**
 * Mass of one coat of the size at hand from what each slot needs.
 * needs: the requirement of the plan without other sizes, one for each slot.
 */
export function coatMass(plan: CoatPlan, items: SlotItems, needs: readonly Need[]): CoatMass {
  const lines: MassLine[] = [];
  for (const need of needs) {
    const slot = slotById(plan, need.slotId);
    if (slot.kind === 'needle') continue;
    const item = items.get(slot.id);
    const massG = item ? slotMassG(plan, slot, item, need) : null;
    const missing =
      massG !== null
        ? ''
        : item
          ? say('mass.weight-of', { itemName: item.name })
          : say('mass.a-material-for', { slotName: slot.name });
    lines.push({ slotId: slot.id, slotName: slot.name, massG, missing });
  }
  return {
    lines,
    knownG: lines.reduce((sum, line) => sum + (line.massG ?? 0), 0),
    isComplete: lines.every((line) => line.massG !== null),
    basis: [
      {
        kind: 'computed',
        how: say('mass.area-as-cut-allowances-take-up'),
        source: '',
      },
    ],
  };
}

/** Grams of a slot in one coat, or null when the item does not say what it weighs. */
function slotMassG(plan: CoatPlan, slot: Slot, item: Item, need: Need): number | null {
  switch (item.kind) {
    case 'cloth':
    case 'batting': {
      const weight = item.facts.arealMassGPerM2;
      if (need.kind !== 'shapes' || weight === null) return null;
      return ((unwashedMm2(need, need.areaMm2 - trimmedMm2(need.shapes)) / 1e6) * weight) / plan.coatCount;
    }
    case 'fill':
      if (need.kind !== 'amount') return null;
      // What is spare stays on the shelf; an amount that the maker weighed is what went in.
      return need.amount / (slot.amountPerCoat === null ? 1 + spareRatio(plan) : 1) / plan.coatCount;
    case 'thread': {
      if (need.kind !== 'amount' || item.facts.sizeTex === null) return null;
      // An amount that the maker measured is what went in; an estimate holds the wastage, which did not.
      const sewnM = slot.amountPerCoat === null ? need.amount / (1 + plan.threadWastageRatio) : need.amount;
      return threadMassG(sewnM, item.facts.sizeTex) / plan.coatCount;
    }
    case 'fastening': {
      const { massG, lengthMm } = item.facts;
      if (need.kind !== 'amount' || massG === null) return null;
      // A cord or zip that is cut shorter than it is sold weighs its share.
      const isCut = lengthMm !== null && need.wantedLengthMm !== null && need.wantedLengthMm < lengthMm;
      const share = isCut ? need.wantedLengthMm / lengthMm : 1;
      return (need.amount * massG * share) / plan.coatCount;
    }
    case 'needle':
      return 0;
    default:
      return item satisfies never;
  }
}

/** Grams of thread: tex is g for each 1,000 m. */
export function threadMassG(threadM: number, tex: number): number {
  return (threadM * tex) / 1000;
}
