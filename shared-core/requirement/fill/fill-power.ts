/** How much room a gram of loose fill takes, and how much more of it goes into a chamber than the chamber holds. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { Item } from '../../stash/stash.ts';
import { fibres } from '../law/fibre-names.ts';
import { mainFibre } from '../law/fibre.ts';

/** 20 to 30 % more than the chamber holds is usual. Source: maker's blog on a down quilt, 2020; outdoor-gear makers' forum. */
export const defaultOverfillFactor = 1.2;

/** A laboratory's fill power is good to this share either way. Source: IDFL laboratory, fill power tolerance and variance. */
export const testToleranceRatio = 0.05;

/** Stand in while no fill power is written down, cm3/g. */
const defaultFillPower = {
  /** 600 in3/oz, an ordinary down: common practice, no source. */
  down: 346.8,
  /** 300 in3/oz. Source: Wikipedia, Fill power: about 300 for feathers. */
  feathers: 173.4,
  /** 450 in3/oz: common practice, no source. */
  polyester: 260,
} as const;

export interface FillPower {
  /** What it is taken for by its fibre, or by its name where none is written down. */
  readonly kind: keyof typeof defaultFillPower;
  readonly cm3PerG: number;
  /** Null where the item has its own. */
  readonly basis: Basis | null;
}

/** Fill power of what fills a slot: its own, else what is usual for its fibre, by its name where none is written down. */
export function fillPowerOf(item: Item | undefined): FillPower {
  const kind = fillKind(item);
  const known = item?.kind === 'fill' ? item.facts.fillPowerCm3PerG : null;
  if (known !== null && known !== undefined) return { kind, cm3PerG: known, basis: null };
  const cm3PerG = defaultFillPower[kind];
  const of = {
    down: say('fill-power.an-ordinary-down'),
    feathers: 'feathers',
    polyester: say('fill-power.clusters-of-polyester'),
  }[kind];
  return {
    kind,
    cm3PerG,
    basis: {
      kind: 'rule of thumb',
      how: say('fill-power.no-fill-power-is-written-down', {
        measureIn: measureIn('fillPower', cm3PerG),
        of,
      }),
      source:
        kind === 'feathers'
          ? say('fill-power.wikipedia-fill-power')
          : say('common.common-practice-no-source'),
    },
  };
}

function fillKind(item: Item | undefined): keyof typeof defaultFillPower {
  const fibre = item?.kind === 'fill' ? mainFibre(item.facts.fibre) : null;
  if (fibre !== null) {
    if (/feather/.test(fibre)) return 'feathers';
    return fibres[fibre].isPlumage ? 'down' : 'polyester';
  }
  const name = item?.name ?? '';
  if (speaksOf('feathers', name) && !speaksOf('down', name)) return 'feathers';
  return speaksOf('polyester', name) ? 'polyester' : 'down';
}

export function overfillOf(plan: CoatPlan): number {
  return plan.overfillFactor ?? defaultOverfillFactor;
}
