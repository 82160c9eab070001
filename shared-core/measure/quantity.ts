/**
 * What a number in this tool can be a number of. One unit each inside; text only at the edge
 * (read.ts, show.ts). The unit inside:
 * length mm, area mm2, volume cm3, mass g, arealMass g/m2, fillPower cm3/g, threadSize tex,
 * threadLength m, ratio 1 (0.15 is 15 %), count 1 (whole), money minor units (whole),
 * needleSize NM (100 x blade diameter in mm), duration minutes, warmth clo.
 */
import { say } from '../wording/say.ts';
export type QuantityKind =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'arealMass'
  | 'fillPower'
  | 'threadSize'
  | 'threadLength'
  | 'ratio'
  | 'count'
  | 'money'
  | 'needleSize'
  | 'duration'
  | 'warmth';

export type MeasureSystem = 'metric' | 'imperial';

/** How a kind is spoken of, and what it can be at most or least in a workshop. */
export interface QuantityFacts {
  /** With its article: "a length". */
  readonly name: string;
  /** Texts that can be read, for the sentence that says how to mend. */
  readonly examples: string;
  /** Least value inside, where none is given. */
  readonly min: number;
  /** Largest value inside, where none is given: beyond it a slip of the hand is likelier than the thing. */
  readonly max: number;
}

export const quantityFacts: Readonly<Record<QuantityKind, QuantityFacts>> = {
  length: {
    get name() {
      return say('quantity.a-length');
    },
    get examples() {
      return say('quantity.4-1-2-in-11-5');
    },
    min: 0,
    max: 1e6,
  },
  area: {
    get name() {
      return say('quantity.an-area');
    },
    get examples() {
      return say('quantity.1-5-m2-900-cm2-or');
    },
    min: 0,
    max: 1e10,
  },
  volume: {
    get name() {
      return say('quantity.a-volume');
    },
    get examples() {
      return say('quantity.850-cm3-12-l-or-52');
    },
    min: 0,
    max: 1e8,
  },
  mass: {
    get name() {
      return say('quantity.a-mass');
    },
    get examples() {
      return say('quantity.350-g-1-2-kg-or');
    },
    min: 0,
    max: 1e6,
  },
  arealMass: {
    get name() {
      return say('quantity.a-cloth-weight');
    },
    get examples() {
      return say('quantity.54-g-m2-60-gsm-or');
    },
    min: 0,
    max: 5000,
  },
  fillPower: {
    get name() {
      return say('quantity.a-fill-power');
    },
    get examples() {
      return say('quantity.650-650-in3-oz-or-375');
    },
    min: 1,
    max: 900,
  },
  threadSize: {
    get name() {
      return say('quantity.a-thread-size');
    },
    get examples() {
      return say('quantity.tex-40-tkt-75-30-wt');
    },
    min: 0.1,
    max: 3000,
  },
  threadLength: {
    get name() {
      return say('quantity.a-length-of-thread');
    },
    get examples() {
      return say('quantity.1000-m-or-500-yd');
    },
    min: 0,
    max: 1e7,
  },
  ratio: {
    get name() {
      return say('quantity.a-share');
    },
    get examples() {
      return say('quantity.15-or-2-5-x');
    },
    min: 0,
    max: 100,
  },
  count: {
    get name() {
      return say('quantity.a-number-of-things');
    },
    get examples() {
      return say('quantity.12-or-2-dozen');
    },
    min: 0,
    max: 1e6,
  },
  money: {
    get name() {
      return say('quantity.an-amount-of-money');
    },
    get examples() {
      return say('quantity.12-50-or-1-250-00');
    },
    min: 0,
    max: 1e11,
  },
  needleSize: {
    get name() {
      return say('quantity.a-needle-size');
    },
    get examples() {
      return say('quantity.80-12-nm-80-or-us');
    },
    min: 40,
    max: 250,
  },
  duration: {
    get name() {
      return say('quantity.a-time');
    },
    get examples() {
      return say('quantity.45-min-1-5-h-or');
    },
    min: 0,
    max: 525_600,
  },
  warmth: {
    get name() {
      return say('quantity.a-warmth');
    },
    get examples() {
      return say('quantity.1-2-clo-or-2-1');
    },
    min: 0,
    max: 100,
  },
};
