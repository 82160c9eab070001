/** What the finished coat is: its mass, its fibres for the label, its warmth, and the room it takes when packed. */
import type { Basis } from '../measure/basis.ts';
import type { CoatPlan } from '../plan/coat-plan.ts';
import { type FibreLabel, fibreLabel } from './label.ts';
import { type CoatMass, coatMass } from './mass.ts';
import type { Need, SlotItems } from './need.ts';
import { type Warmth, warmth } from './warmth.ts';

export interface PackedVolume {
  readonly leastL: number;
  readonly mostL: number;
  readonly basis: Basis;
}

export interface FinishedCoat {
  readonly mass: CoatMass;
  readonly label: FibreLabel;
  /** Null without padding, or where a loft is not written down. */
  readonly warmth: Warmth | null;
  /** Null while a part of the mass is not known. */
  readonly packed: PackedVolume | null;
}

/** Mass for each volume of a coat stuffed into a sack, g/cm3: hard at most, by hand at least. Common practice, no source. */
const packedGPerCm3 = { least: 0.08, most: 0.16 } as const;

/** The finished coat of a plan. needs: the plan's requirement, one for each slot. */
export function finishedCoat(plan: CoatPlan, items: SlotItems, needs: readonly Need[]): FinishedCoat {
  const mass = coatMass(plan, items, needs);
  const label = fibreLabel(plan, items, new Map(mass.lines.map((line) => [line.slotId, line.massG])));
  return {
    mass,
    label,
    warmth: warmth(plan, items),
    packed: mass.isComplete ? packedVolume(mass.knownG) : null,
  };
}

/** Room that a coat of a mass takes in a sack, litres. */
export function packedVolume(massG: number): PackedVolume {
  return {
    leastL: massG / packedGPerCm3.most / 1000,
    mostL: massG / packedGPerCm3.least / 1000,
    basis: {
      kind: 'rule of thumb',
      how: 'mass over 0.08 to 0.16 g/cm³, packed by hand or hard',
      source: 'common practice, no source',
    },
  };
}
