/** Shrinkage and care: what to wash before cutting, and where the materials of one coat ask for different things. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { percent } from '../../measure/percent.ts';
import type { CoatPlan, Slot } from '../../plan/model/coat-plan.ts';
import { shrinkageOf } from '../../stash/shrinkage.ts';
import type { Item } from '../../stash/stash.ts';
import { type CareLabel, careLabel } from './care-label.ts';
import { type CareLimit, careLimits, careSteps, partNames } from './care-limits.ts';
import { isPlumage } from './fibre-names.ts';
import { type FirstWash, firstWash } from '../cut/first-wash.ts';
import { ironLimitC } from './iron.ts';
import type { SlotItems } from '../need.ts';

export interface Prewash extends FirstWash {
  readonly slotId: string;
  readonly slotName: string;
}

export type CareConflictKind = 'mixed shrinkage' | 'no cleaning' | 'drying of down' | 'iron heat';

export interface CareConflict {
  readonly kind: CareConflictKind;
  readonly slotIds: readonly string[];
  readonly says: string;
  readonly fix: string;
  readonly basis: Basis;
}

export interface Care {
  /** Slots whose material shrinks in the first wash: washed before cutting, or cut larger as planned. */
  readonly prewash: readonly Prewash[];
  readonly conflicts: readonly CareConflict[];
  /** What the whole coat bears, process by process. */
  readonly limits: readonly CareLimit[];
  readonly label: CareLabel;
}

/** Two materials sewn together that differ by more than this pucker after the wash: common practice, no source. */
export const mixedShrinkageRatio = 0.02;

/** Care of the coat from the facts of its materials. */
export function care(plan: CoatPlan, items: SlotItems): Care {
  const textiles = plan.slots.flatMap((slot) => {
    const item = items.get(slot.id);
    return item && (item.kind === 'cloth' || item.kind === 'batting' || item.kind === 'fill')
      ? [{ slot, item }]
      : [];
  });
  const limits = careLimits(plan, items);
  return {
    prewash: textiles.flatMap(({ slot, item }) => {
      const wash = firstWash(slot, item);
      return wash ? [{ slotId: slot.id, slotName: slot.name, ...wash }] : [];
    }),
    conflicts: [
      ...mixedShrinkage(textiles),
      ...noCleaning(plan, limits),
      ...dryingOfDown(plan, textiles, limits),
      ...ironHeat(textiles),
    ],
    limits,
    label: careLabel(limits, textiles.some(hasPlumage)),
  };
}

interface Textile {
  readonly slot: Slot;
  readonly item: Item;
}

/** The slot that shrinks most against the one that shrinks least, when they differ by too much. */
function mixedShrinkage(textiles: readonly Textile[]): CareConflict[] {
  const known = textiles.flatMap(({ slot, item }) => {
    const shrinkage = shrinkageOf(item);
    return shrinkage ? [{ slot, ratio: Math.max(shrinkage.alongRatio, shrinkage.acrossRatio) }] : [];
  });
  if (known.length < 2) return [];
  const max = known.reduce((a, b) => (b.ratio > a.ratio ? b : a));
  const min = known.reduce((a, b) => (b.ratio < a.ratio ? b : a));
  if (max.ratio - min.ratio <= mixedShrinkageRatio) return [];
  return [
    {
      kind: 'mixed shrinkage',
      slotIds: [max.slot.id, min.slot.id],
      says: say('care.shrinks-and-sewn-together-they-pucker', {
        slotName: max.slot.name,
        percent: percent(max.ratio),
        slotName2: min.slot.name,
        percent2: percent(min.ratio),
      }),
      fix: say('care.wash-before-cutting-as-hot-as', { slotName: max.slot.name }),
      basis: {
        kind: 'rule of thumb',
        how: say('care.materials-that-differ-by-more-than'),
        source: say('common.common-practice-no-source'),
      },
    },
  ];
}

const byPart: Basis = {
  kind: 'computed',
  get how() {
    return say('care.each-process-by-the-part-of');
  },
  get source() {
    return say('care.care-labels-16-cfr-423-a');
  },
};

function limitOf(limits: readonly CareLimit[], process: CareLimit['process']): CareLimit {
  return limits.find((limit) => limit.process === process)!;
}

/** One part must not be washed and another not be dry cleaned: no usual way is left. */
function noCleaning(plan: CoatPlan, limits: readonly CareLimit[]): CareConflict[] {
  const wash = limitOf(limits, 'careWash');
  const professional = limitOf(limits, 'careProfessional');
  if (wash.limit !== 'do not wash' || professional.limit !== 'do not dry clean') return [];
  return [
    {
      kind: 'no cleaning',
      slotIds: [...wash.slotIds, ...professional.slotIds],
      says: say('care.not-to-be-washed-not-to', {
        partNames: partNames(plan, wash.slotIds),
        partNames2: partNames(plan, professional.slotIds),
      }),
      fix: say('care.choose-another-material-for-one-of'),
      basis: byPart,
    },
  ];
}

function hasPlumage({ item }: Textile): boolean {
  return item.kind === 'fill' && isPlumage(`${item.name}, ${item.facts.fibre ?? ''}`);
}

/** Wet down clumps and goes musty unless it is tumbled dry. */
function dryingOfDown(
  plan: CoatPlan,
  textiles: readonly Textile[],
  limits: readonly CareLimit[],
): CareConflict[] {
  const dry = limitOf(limits, 'careDry');
  const wash = limitOf(limits, 'careWash');
  const steps = careSteps('careDry');
  const down = textiles.filter(hasPlumage).map(({ slot }) => slot.id);
  const isTumbled = dry.limit === null || steps.indexOf(dry.limit) >= steps.indexOf('tumble dry low');
  if (down.length === 0 || isTumbled || wash.limit === 'do not wash') return [];
  return [
    {
      kind: 'drying of down',
      slotIds: [...down, ...dry.slotIds],
      says: say('care.after-a-wash-must-be-tumbled', {
        partNames: partNames(plan, down),
        partNames2: partNames(plan, dry.slotIds),
        limit: dry.limit,
      }),
      fix: say('care.choose-another-material-for-it-or'),
      basis: {
        kind: 'rule of thumb',
        how: say('care.wet-down-clumps-until-it-is'),
        source: say('common.common-practice-no-source'),
      },
    },
  ];
}

/** The fibre that bears the least heat against one that wants far more. */
function ironHeat(textiles: readonly Textile[]): CareConflict[] {
  const heats = textiles.flatMap(({ slot, item }) => {
    const atMostC = ironLimitC(item);
    return atMostC === null ? [] : [{ slot, atMostC }];
  });
  if (heats.length < 2) return [];
  const low = heats.filter((one) => one.atMostC <= 110);
  const high = heats.filter((one) => one.atMostC >= 200);
  if (low.length === 0 || high.length === 0) return [];
  const lowNames = low.map((one) => one.slot.name).join(', ');
  const highNames = high.map((one) => one.slot.name).join(', ');
  return [
    {
      kind: 'iron heat',
      slotIds: [...low, ...high].map((one) => one.slot.id),
      says: say('care.pressed-hot-one-dot-110-c', { highNames, lowNames }),
      fix: say('care.press-before-the-two-are-sewn', { highNames }),
      basis: {
        kind: 'rule of thumb',
        how: say('care.iron-by-fibre-one-dot-110'),
        source: say('care.care-symbol-page'),
      },
    },
  ];
}
