/**
 * What a number in this tool can be a number of. One unit each inside; text only at the edge
 * (read.ts, show.ts). The unit inside:
 * length mm, area mm2, volume cm3, mass g, arealMass g/m2, fillPower cm3/g, threadSize tex,
 * threadLength m, ratio 1 (0.15 is 15 %), count 1 (whole), money minor units (whole),
 * needleSize NM (100 x blade diameter in mm), duration minutes, warmth clo.
 */
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
  length: { name: 'a length', examples: '4 1/2 in, 11.5 cm or 2 1/8 yd', min: 0, max: 1e6 },
  area: { name: 'an area', examples: '1.5 m2, 900 cm2 or 2 1/4 sq yd', min: 0, max: 1e10 },
  volume: { name: 'a volume', examples: '850 cm3, 12 L or 52 in3', min: 0, max: 1e8 },
  mass: { name: 'a mass', examples: '350 g, 1.2 kg or 12 1/2 oz', min: 0, max: 1e6 },
  arealMass: { name: 'a cloth weight', examples: '54 g/m2, 60 gsm or 1.6 oz/yd2', min: 0, max: 5000 },
  fillPower: { name: 'a fill power', examples: '650, 650 in3/oz or 375 cm3/g', min: 1, max: 900 },
  threadSize: {
    name: 'a thread size',
    examples: 'tex 40, Tkt 75, 30 wt, Nm 80/2 or 270 den',
    min: 0.1,
    max: 3000,
  },
  threadLength: { name: 'a length of thread', examples: '1000 m or 500 yd', min: 0, max: 1e7 },
  ratio: { name: 'a share', examples: '15 % or 2.5 x', min: 0, max: 100 },
  count: { name: 'a number of things', examples: '12 or 2 dozen', min: 0, max: 1e6 },
  money: { name: 'an amount of money', examples: '12.50 or 1,250.00', min: 0, max: 1e11 },
  needleSize: { name: 'a needle size', examples: '80/12, NM 80 or US 12', min: 40, max: 250 },
  duration: { name: 'a time', examples: '45 min, 1.5 h or 1:30', min: 0, max: 525_600 },
  warmth: { name: 'a warmth', examples: '1.2 clo or 2.1 tog', min: 0, max: 100 },
};
