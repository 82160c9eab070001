/** What the finished coat is: its mass, its fibres for the label, its warmth, and the room it takes when packed. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { measureIn } from '../../measure/basis.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import { type Care, care } from '../law/care.ts';
import { cautions } from '../law/cautions.ts';
import type { Caution } from '../law/caution.ts';
import { type FibreLabel, fibreLabel } from '../law/label.ts';
import { type CoatMass, coatMass } from './mass.ts';
import type { SlotItems } from '../need.ts';
import { requirement } from '../requirement.ts';
import { type Warmth, warmth } from './warmth.ts';

export interface PackedVolume {
  readonly minCm3: number;
  readonly maxCm3: number;
  readonly basis: Basis;
}

/** One coat of a size. What the maker measured stands in the place of the estimate, which stays beside it. */
export interface FinishedCoat {
  readonly size: string;
  readonly coatCount: number;
  /** Slot by slot, as estimated. */
  readonly mass: CoatMass;
  /** As measured, else the sum of the slots that are known: then the coat weighs at least this. */
  readonly massG: number;
  readonly isMassMeasured: boolean;
  readonly label: FibreLabel;
  /** Null without padding, or where a loft is not written down. */
  readonly warmth: Warmth | null;
  readonly measuredClo: number | null;
  /** Null while a part of the mass is not known. */
  readonly packed: PackedVolume | null;
  readonly measuredPackedCm3: number | null;
}

/** The finished coats of a plan, one entry for each size, with what holds for them all. */
export interface Finished {
  readonly coats: readonly FinishedCoat[];
  readonly care: Care;
  readonly cautions: readonly Caution[];
}

/** Mass for each volume of a coat stuffed into a sack, g/cm3: hard at most, by hand at least. Common practice, no source. */
const packedGPerCm3 = { min: 0.08, max: 0.16 } as const;

/** Every size that is made, the one at hand first; care and cautions of the materials that they share. */
export function finished(plan: CoatPlan, items: SlotItems): Finished {
  return {
    coats: plansBySize(plan).map((each) => finishedCoat(each, items)),
    care: care(plan, items),
    cautions: cautions(plan, items),
  };
}

/** One coat of the size at hand; other sizes of the plan are left out. */
export function finishedCoat(plan: CoatPlan, items: SlotItems): FinishedCoat {
  const { sizes: _, ...own } = plan;
  const mass = coatMass(own, items, requirement(own, items));
  const measured = plan.measured ?? { massG: null, packedCm3: null, clo: null };
  const massG = measured.massG ?? mass.knownG;
  return {
    size: plan.size,
    coatCount: plan.coatCount,
    mass,
    massG,
    isMassMeasured: measured.massG !== null,
    label: fibreLabel(plan, items, new Map(mass.lines.map((line) => [line.slotId, line.massG]))),
    warmth: warmth(plan, items),
    measuredClo: measured.clo,
    packed: mass.isComplete || measured.massG !== null ? packedVolume(massG) : null,
    measuredPackedCm3: measured.packedCm3,
  };
}

/** Room that a coat of a mass takes in a sack. massG: 0 or more, else it throws. */
export function packedVolume(massG: number): PackedVolume {
  if (!(massG >= 0)) throw new RangeError(`a coat of ${massG} g`);
  const room = (gPerCm3: number) => measureIn('volume', 1000 / gPerCm3);
  return {
    minCm3: massG / packedGPerCm3.max,
    maxCm3: massG / packedGPerCm3.min,
    basis: {
      kind: 'rule of thumb',
      how: say('finished-coat.each-of-coat-takes-pressed-hard', {
        measureIn: measureIn('mass', 1000),
        room: room(packedGPerCm3.max),
        room2: room(packedGPerCm3.min),
      }),
      source: say('common.common-practice-no-source'),
    },
  };
}
