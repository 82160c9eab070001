/**
 * Pieces that are known to fill a rectangle without loss, laid on a strip as wide as it: they are to take its length
 * and no more. What fits is published; where each piece goes the lay has to find.
 */
import type { Ring } from '../../shared-core/geometry/ring.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import type { OutsideCheck } from './outside.ts';

interface Known {
  readonly name: string;
  readonly source: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly rings: readonly Ring[];
  readonly turnsDeg: readonly number[];
  readonly iterations: number;
}

function square(side: number): Ring {
  return Float64Array.of(0, 0, side, 0, side, side, 0, side);
}

/** The twelve shapes of five squares, by the corners of their outlines. */
const pentominoes: readonly Ring[] = [
  [1, 0, 2, 0, 2, 2, 3, 2, 3, 3, 1, 3, 1, 2, 0, 2, 0, 1, 1, 1],
  [0, 0, 5, 0, 5, 1, 0, 1],
  [0, 0, 4, 0, 4, 1, 1, 1, 1, 2, 0, 2],
  [0, 0, 3, 0, 3, 1, 4, 1, 4, 2, 2, 2, 2, 1, 0, 1],
  [0, 0, 3, 0, 3, 1, 2, 1, 2, 2, 0, 2],
  [1, 0, 2, 0, 2, 2, 3, 2, 3, 3, 0, 3, 0, 2, 1, 2],
  [0, 0, 3, 0, 3, 2, 2, 2, 2, 1, 1, 1, 1, 2, 0, 2],
  [0, 0, 3, 0, 3, 1, 1, 1, 1, 3, 0, 3],
  [0, 0, 1, 0, 1, 1, 2, 1, 2, 2, 3, 2, 3, 3, 1, 3, 1, 2, 0, 2],
  [1, 0, 2, 0, 2, 1, 3, 1, 3, 2, 2, 2, 2, 3, 1, 3, 1, 2, 0, 2, 0, 1, 1, 1],
  [0, 0, 4, 0, 4, 1, 2, 1, 2, 2, 1, 2, 1, 1, 0, 1],
  [0, 0, 2, 0, 2, 2, 3, 2, 3, 3, 1, 3, 1, 1, 0, 1],
].map((corners) => Float64Array.from(corners));

const haselgrove =
  'C. B. and J. Haselgrove, A computer program for pentominoes, Eureka 23 (1960), from memory';
const fourWays = [0, 90, 180, 270];

const known: readonly Known[] = [
  {
    name: 'nine unlike squares in a rectangle of 32 by 33',
    source: 'Z. Moroń, O rozkładach prostokątów na kwadraty (1925), sides from memory',
    widthMm: 32,
    lengthMm: 33,
    rings: [1, 4, 7, 8, 9, 10, 14, 15, 18].map(square),
    turnsDeg: [0],
    iterations: 20_000,
  },
  {
    name: '21 unlike squares in a square of 112',
    source:
      'A. J. W. Duijvestijn, Simple perfect squared square of lowest order, J. Comb. Theory B 25 (1978); sides from memory',
    widthMm: 112,
    lengthMm: 112,
    rings: [2, 4, 6, 7, 8, 9, 11, 15, 16, 17, 18, 19, 24, 25, 27, 29, 33, 35, 37, 42, 50].map(square),
    turnsDeg: [0],
    iterations: 200_000,
  },
  ...[
    [6, 10],
    [5, 12],
    [4, 15],
  ].map(
    ([widthMm, lengthMm]): Known => ({
      name: `the twelve pentominoes, none turned over, in ${widthMm} by ${lengthMm}`,
      source: haselgrove,
      widthMm: widthMm!,
      lengthMm: lengthMm!,
      rings: pentominoes,
      turnsDeg: fourWays,
      iterations: 400_000,
    }),
  ),
];

const checks = known.map(({ name, source, widthMm, lengthMm, rings, turnsDeg, iterations }): OutsideCheck => {
  const result = lay(
    {
      shapes: rings.map((ring, at) => ({ id: `${at + 1}`, ring, count: 1, mirroredCount: 0, turnsDeg })),
      lengths: [{ id: 'strip', widthMm, lengthMm: null, flaws: [] }],
      clearanceMm: 0,
      spread: 'open',
      repeat: null,
      seed: 1,
    },
    { seconds: null, iterations },
    { clock: () => 0 },
  );
  return {
    class: 'A',
    name: `${name}, length that they take`,
    source,
    expected: lengthMm,
    got: result.usedLengthMm[0]!,
    tolerance: lengthMm * 1e-5,
    toleranceReason: 'the hair by which the check of a lay lets pieces lie in each other',
  };
});

export default checks;
