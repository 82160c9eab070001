/** Shrinkage and care: what to wash before cutting, and where the materials of one coat ask for different things. */
import type { Basis } from '../measure/basis.ts';
import { percent } from '../measure/percent.ts';
import type { CoatPlan, Slot } from '../plan/coat-plan.ts';
import type { Item } from '../stash/stash.ts';
import { readFibre } from './fibre.ts';
import type { Fibre } from './fibre-names.ts';
import type { SlotItems } from './need.ts';

export interface Prewash {
  readonly slotId: string;
  readonly slotName: string;
  readonly alongRatio: number;
  readonly acrossRatio: number;
}

export type CareConflictKind = 'mixed shrinkage' | 'hottest wash' | 'wash and dry clean' | 'iron heat';

export interface CareConflict {
  readonly kind: CareConflictKind;
  readonly slotIds: readonly string[];
  readonly says: string;
  readonly mend: string;
  readonly basis: Basis;
}

export interface Care {
  /** Slots whose material shrinks in the first wash: washed before cutting, or cut larger as planned. */
  readonly prewash: readonly Prewash[];
  readonly conflicts: readonly CareConflict[];
  /** What the whole coat bears: the gentlest of its materials; null while none is known. */
  readonly gentlest: CareWord | null;
  /** Slots of cloth, batting and fill with a material whose care is not written down. */
  readonly unknownSlotIds: readonly string[];
}

/** Words of the stash's care field, gentlest first. */
export const careWords = ['dry clean', 'hand wash', 'wash at 30', 'wash at 40', 'wash at 60'] as const;
export type CareWord = (typeof careWords)[number];

/** Two materials sewn together that differ by more than this pucker after the wash: common practice, no source. */
export const mixedShrinkageRatio = 0.02;

/** Highest sole of the iron that a fibre bears, Celsius. Source: care-symbol page (one dot 110, two 150, three 200). */
export const ironC: Readonly<Partial<Record<Fibre, number>>> = {
  nylon: 110,
  acrylic: 110,
  modacrylic: 110,
  acetate: 110,
  polypropylene: 110,
  spandex: 110,
  polyester: 150,
  wool: 150,
  silk: 150,
  rayon: 150,
  cotton: 200,
  linen: 200,
  hemp: 200,
};

/**
 * Length to have before the first wash so that needMm is left after it: need / (1 - shrinkage).
 * shrinkageRatio: 0 to below 1, else it throws.
 */
export function beforeWashMm(needMm: number, shrinkageRatio: number): number {
  if (!(shrinkageRatio >= 0 && shrinkageRatio < 1)) throw new RangeError(`a shrinkage of ${shrinkageRatio}`);
  return needMm / (1 - shrinkageRatio);
}

/** Care of the coat from the facts of its materials. */
export function care(plan: CoatPlan, items: SlotItems): Care {
  const textiles = plan.slots.flatMap((slot) => {
    const item = items.get(slot.id);
    return item && (item.kind === 'cloth' || item.kind === 'batting' || item.kind === 'fill')
      ? [{ slot, item }]
      : [];
  });
  const known = textiles.flatMap(({ slot, item }) =>
    item.facts.care === null ? [] : [{ slot, care: item.facts.care }],
  );
  const gentlest = careWords.find((word) => known.some((one) => one.care === word)) ?? null;
  return {
    prewash: textiles.flatMap(({ slot, item }) => {
      const shrinkage = shrinkageOf(item);
      return shrinkage && (shrinkage.alongRatio > 0 || shrinkage.acrossRatio > 0)
        ? [{ slotId: slot.id, slotName: slot.name, ...shrinkage }]
        : [];
    }),
    conflicts: [...mixedShrinkage(textiles), ...differentWashes(known, gentlest), ...ironHeat(textiles)],
    gentlest,
    unknownSlotIds: textiles.filter(({ item }) => item.facts.care === null).map(({ slot }) => slot.id),
  };
}

interface Textile {
  readonly slot: Slot;
  readonly item: Item;
}

/** Null where nothing is written down: not known is not 0. */
function shrinkageOf(item: Item): { alongRatio: number; acrossRatio: number } | null {
  if (item.kind !== 'cloth' && item.kind !== 'batting') return null;
  const { shrinkageAlongRatio, shrinkageAcrossRatio } = item.facts;
  if (shrinkageAlongRatio === null && shrinkageAcrossRatio === null) return null;
  return { alongRatio: shrinkageAlongRatio ?? 0, acrossRatio: shrinkageAcrossRatio ?? 0 };
}

/** The slot that shrinks most against the one that shrinks least, when they differ by too much. */
function mixedShrinkage(textiles: readonly Textile[]): CareConflict[] {
  const known = textiles.flatMap(({ slot, item }) => {
    const shrinkage = shrinkageOf(item);
    return shrinkage ? [{ slot, ratio: Math.max(shrinkage.alongRatio, shrinkage.acrossRatio) }] : [];
  });
  if (known.length < 2) return [];
  const most = known.reduce((a, b) => (b.ratio > a.ratio ? b : a));
  const least = known.reduce((a, b) => (b.ratio < a.ratio ? b : a));
  if (most.ratio - least.ratio <= mixedShrinkageRatio) return [];
  return [
    {
      kind: 'mixed shrinkage',
      slotIds: [most.slot.id, least.slot.id],
      says: `${most.slot.name} shrinks ${percent(most.ratio)} and ${least.slot.name} ${percent(least.ratio)}: sewn together they pucker or hang down in the first wash.`,
      mend: `Wash ${most.slot.name} before cutting, as hot as the coat will ever be washed.`,
      basis: {
        kind: 'rule of thumb',
        how: 'materials that differ by more than 2 % in the first wash',
        source: 'common practice, no source',
      },
    },
  ];
}

function differentWashes(
  known: readonly { readonly slot: Slot; readonly care: CareWord }[],
  gentlest: CareWord | null,
): CareConflict[] {
  if (gentlest === null) return [];
  const gentle = known.filter((one) => one.care === gentlest);
  const others = known.filter((one) => one.care !== gentlest);
  if (others.length === 0) return [];
  const slotIds = [...gentle, ...others].map((one) => one.slot.id);
  const gentleNames = gentle.map((one) => one.slot.name).join(', ');
  const otherNames = others.map((one) => `${one.slot.name} (${one.care})`).join(', ');
  const basis: Basis = {
    kind: 'computed',
    how: 'the gentlest care of the materials, as they are sewn into one',
    source:
      'care labels: 16 CFR 423, a reasonable basis for the instructions; the rules where it is sold decide',
  };
  if (gentlest === 'dry clean') {
    return [
      {
        kind: 'wash and dry clean',
        slotIds,
        says: `${gentleNames} is for dry cleaning only, but the coat also has ${otherNames}.`,
        mend: 'Label the whole coat for dry cleaning, or choose another material.',
        basis,
      },
    ];
  }
  return [
    {
      kind: 'hottest wash',
      slotIds,
      says: `${gentleNames} bears no more than ${gentlest}, less than ${otherNames}.`,
      mend: `Label the whole coat: ${gentlest}.`,
      basis,
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
      says: `Pressed hot: ${highNames}. One dot (110 °C, 230 °F) at most: ${lowNames}.`,
      mend: `Press ${highNames} before the two are sewn together, and the coat at one dot or not at all.`,
      basis: {
        kind: 'rule of thumb',
        how: 'iron by fibre: one dot 110 °C (230 °F), two 150 °C (300 °F), three 200 °C (390 °F)',
        source: 'care-symbol page',
      },
    },
  ];
}

/** The least heat that a material's fibres bear, Celsius; null where they are not known. Shared with the cautions. */
export function ironLimitC(item: Item): number | null {
  if (item.kind !== 'cloth' && item.kind !== 'batting') return null;
  const read = readFibre(item.facts.fibre ?? '', item.name);
  if (!read.ok) return null;
  const limits = read.value.flatMap(({ fibre }) => ironC[fibre] ?? []);
  return limits.length > 0 ? Math.min(...limits) : null;
}
