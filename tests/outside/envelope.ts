/** Drafted loose jackets laid one way beside what a pattern's envelope asks for, size by size at two widths. */
import { type Measured, cutFrom, drafted, laidMm, mmPerIn, mmPerYd, oneWay, unpadded } from './drafted.ts';
import type { OutsideCheck, Sides } from './outside.ts';

const envelope = 'McCall’s, envelope of pattern M7817 as its shop prints it';
const bodies = 'bodies of misses’ sizes by Folkwear, pattern 212; of women’s sizes from memory';

/**
 * An amount to buy is meant to be enough: no lay may be longer. It is got on folded cloth and rounded up, and two
 * garments of the same girth and length are not the same garment, so it may be shorter, but not by more than a fifth.
 */
export function toBuy(published: number): Sides {
  return { below: 0.2 * published, above: 0 };
}
export const toBuyReason =
  'what is to be bought must be enough, so no lay is longer; it is got on folded cloth, rounded up to an eighth of a yard, and for another cut, which was thought to be a fifth at most';

interface Size {
  readonly size: string;
  /** Of the body; in. */
  readonly bust: number;
  readonly waist: number;
  readonly hip: number;
  readonly backLength: number;
  /** Of the garment: round the bust, nape to hem; in. */
  readonly finishedBust: number;
  readonly length: number;
  /** Asked for at 45 and at 60 in, yd. */
  readonly at45: number;
  readonly at60: number;
}

/** The short jacket, view A. */
const short: readonly Size[] = [
  {
    size: '12',
    bust: 34,
    waist: 26.5,
    hip: 36,
    backLength: 16.25,
    finishedBust: 40.25,
    length: 25.25,
    at45: 2.5,
    at60: 1.75,
  },
  {
    size: '16',
    bust: 38,
    waist: 30,
    hip: 40,
    backLength: 16.75,
    finishedBust: 44.25,
    length: 25.75,
    at45: 2.625,
    at60: 2.125,
  },
  {
    size: '20W',
    bust: 42,
    waist: 35,
    hip: 44,
    backLength: 17.125,
    finishedBust: 48,
    length: 27.25,
    at45: 3.375,
    at60: 2.25,
  },
  {
    size: '24W',
    bust: 46,
    waist: 39,
    hip: 48,
    backLength: 17.375,
    finishedBust: 52,
    length: 27.75,
    at45: 3.375,
    at60: 2.625,
  },
];
/** The longer one, view D. */
const long: readonly Size[] = [
  {
    size: '14',
    bust: 36,
    waist: 28,
    hip: 38,
    backLength: 16.5,
    finishedBust: 42.25,
    length: 32.5,
    at45: 3.25,
    at60: 2.5,
  },
];

function shellYd(size: Size): (widthIn: number) => number {
  const body: Measured = {
    kind: 'women',
    bustMm: size.bust * mmPerIn,
    waistMm: size.waist * mmPerIn,
    hipMm: size.hip * mmPerIn,
    heightMm: 1680,
    more: { backLengthMm: size.backLength * mmPerIn },
  };
  const { plan } = drafted(body, {
    coatLengthMm: size.length * mmPerIn,
    easeMm: (size.finishedBust - size.bust) * mmPerIn,
    sleeve: 'one part',
    ...unpadded,
  });
  const shell = oneWay(cutFrom(plan, ['shell']));
  return (widthIn) => laidMm(shell, widthIn * mmPerIn) / mmPerYd;
}

/** Laid at 45 and at 60 in. */
const laidOf = (size: Size) => {
  const yd = shellYd(size);
  return { size, at45: yd(45), at60: yd(60) };
};
const shorts = short.map(laidOf);
const longs = long.map(laidOf);

type Laid = ReturnType<typeof laidOf>;

const wider =
  'Another cut: with three quarters of its cloth in pieces the published jacket has a fifth (size 12) to two fifths (to the thigh) more in them than a draft of the same bust, hip and back, so its sleeves and fronts are wider. The lay itself uses 71 to 79 % of the cloth.';

function amounts(what: string, { size, at45, at60 }: Laid, explained: readonly number[]): OutsideCheck[] {
  return [
    { widthIn: 45, expected: size.at45, got: at45 },
    { widthIn: 60, expected: size.at60, got: at60 },
  ].map(({ widthIn, expected, got }) => ({
    class: 'A',
    isMainJob: true,
    name: `${what}, size ${size.size}, cloth of ${widthIn} in, yd`,
    source: `${envelope}; ${bodies}`,
    expected,
    got,
    tolerance: toBuy(expected),
    toleranceReason: toBuyReason,
    ...(explained.includes(widthIn) ? { explanation: wider } : {}),
  }));
}

/** What all sizes and views of the envelope ask for at 60 in over what they ask for at 45: 36 pairs. */
const factors = { min: 0.667, mean: 0.757, max: 0.88 };

function factorRow({ size, at45, at60 }: Laid): OutsideCheck {
  return {
    class: 'A',
    isMainJob: true,
    name: `loose jacket, size ${size.size}, at 60 in for each yard at 45`,
    source: `${envelope}: from ${factors.min} to ${factors.max} over its sizes and views`,
    expected: { min: factors.min, max: factors.max },
    got: at60 / at45,
    tolerance: 0,
  };
}

function growthRow(widthIn: number, expected: number, got: number, explanation?: string): OutsideCheck {
  return {
    class: 'A',
    isMainJob: true,
    name: `loose jacket, size 24W for each yard of size 12, cloth of ${widthIn} in`,
    source: envelope,
    expected,
    got,
    tolerance: 0.09,
    toleranceReason: 'both amounts are rounded up to an eighth of a yard: 0.09 of their quotient at most',
    ...(explanation === undefined ? {} : { explanation }),
  };
}

const [min, , , max] = shorts as [Laid, Laid, Laid, Laid];
const all = [...shorts, ...longs];

const rows: readonly OutsideCheck[] = [
  ...amounts('loose jacket', shorts[0]!, [45]),
  ...amounts('loose jacket', shorts[1]!, [45, 60]),
  ...amounts('loose jacket to the thigh', longs[0]!, [45, 60]),
  ...all.map(factorRow),
  {
    class: 'A',
    isMainJob: true,
    name: 'loose jackets at 60 in for each yard at 45, mean of five sizes',
    source: `${envelope}: ${factors.mean} as the mean of 36 pairs`,
    expected: factors.mean,
    got: all.reduce((sum, { at45, at60 }) => sum + at60 / at45, 0) / all.length,
    tolerance: 0.06,
    toleranceReason:
      'twice the error of a mean of five: the published pairs scatter by 0.066 round their mean',
  },
  growthRow(45, 3.375 / 2.5, max.at45 / min.at45),
  growthRow(
    60,
    2.625 / 1.75,
    max.at60 / min.at60,
    'Folded cloth goes in jumps: from size 14 to 16 alone the envelope leaps from 1 3/4 to 2 1/8 yd, where two pieces no longer lie beside each other in half the width. Laid open, lengths grow with the area.',
  ),
];

export default rows;
