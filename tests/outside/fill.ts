/** Loose fill and chambers against makers' worked examples and plain geometry. */
import { slotById } from '../../shared-core/plan/model/coat-plan.ts';
import type { FillAim } from '../../shared-core/plan/model/coat-plan.ts';
import { defaultDownGPerM2 } from '../../shared-core/requirement/fill/usual-fill.ts';
import { averageLoftMm, fillMassG, lensAreaMm2 } from '../../shared-core/quilting/chambers.ts';
import { fillingList } from '../../shared-core/requirement/fill/fill.ts';
import { item, measured, piece, rectangle } from '../fixtures/small-workshop.ts';
import { filled, stuffedCoat } from '../core/requirement/small-coat.ts';
import { drafted, stuffed } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

const mm = 25.4;
const cm3PerIn3 = 16.387064;
const gPerOz = 28.349523125;
const cm3PerG = (in3PerOz: number) => (in3PerOz * cm3PerIn3) / gPerOz;
const blog = "maker's blog on a down quilt, 2020";
const circles = 'geometry of two circular arcs, worked apart from this project';

const ounces = (volumeIn3: number, in3PerOz: number, factor: number) =>
  fillMassG(volumeIn3 * cm3PerIn3, cm3PerG(in3PerOz), factor) / gPerOz;

/** spacing and rise in inches, area in in2, average loft in inches. */
const lenses: readonly (readonly [number, number, number, number])[] = [
  [4, 0.5, 2.7, 0.675],
  [3, 0.5, 2.044, 0.681],
  [4, 0.375, 2.014, 0.504],
  [2, 0.25, 0.675, 0.337],
];

/** Three chambers of 4 x 20 in, 1 in thick at the peak. */
const threeChambers = stuffedCoat({
  pieces: [
    piece('panel', rectangle(12 * mm, 20 * mm), {
      quilted: 'across',
      cutFrom: [
        { slotId: 'shell', plyCount: 2 },
        { slotId: 'fill', plyCount: 1 },
      ],
    }),
  ],
  seams: [],
  quilting: {
    spacingMm: 4 * mm,
    stitch: '301',
    stitchLengthMm: 3,
    threadSlotId: 'thread',
    ...measured(0.5 * mm, 0),
  },
});
const list = fillingList(
  { ...threeChambers, overfillFactor: 1.2 },
  slotById(threeChambers, 'fill'),
  filled({ fill: item('fill', 'down', { fillPowerCm3PerG: cm3PerG(800) }) }),
);
const middle = list.chambers[1]!;

/** A drafted jacket, all that has batting stuffed with down of a fill power in its place, sewn through every 3 in. */
function downJacketG(choices: Parameters<typeof drafted>[1], in3PerOz: number, aim: FillAim): number {
  const body = { kind: 'women', bustMm: 880, waistMm: 720, heightMm: 1680 } as const;
  const { plan } = drafted(body, { easeMm: 200, ...choices });
  const coat = stuffed(plan);
  const slot = coat.slots.find(({ kind }) => kind === 'fill')!;
  const down = item('fill', 'down', { fillPowerCm3PerG: cm3PerG(in3PerOz) });
  return fillingList({ ...coat, fillAim: aim }, slot, filled({ [slot.id]: down })).filledG;
}

const thighLength = { coatLengthMm: 820, hood: 'two panels', hasCollar: false } as const;
const defaultG = (['min', 'max'] as const).map((end) =>
  downJacketG(thighLength, 700, { kind: 'weight', gPerM2: defaultDownGPerM2[end] }),
);

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    isMainJob: true,
    name: 'g of down in a thigh-length hooded jacket, sewn through, nearest of our usual range',
    source: 'functionalclothinglab.com, Down jacket 1: about 14 oz for two of them',
    expected: (14 * gPerOz) / 2,
    got: Math.min(Math.max((14 * gPerOz) / 2, defaultG[0]!), defaultG[1]!),
    tolerance: 20,
    toleranceReason: 'a size more or less is 5 % of girth and of length, 10 % of area',
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'oz of 550 down in an old sewn-through jacket, 1 1/2 in thick where its channels stand highest',
    source: 'backpacking.net forum, 2009: at least 4, maybe 5 oz',
    expected: { min: 4, max: 5 },
    got: downJacketG({ coatLengthMm: 680 }, 550, { kind: 'loft', loftMm: 1.5 * mm }) / gPerOz,
    tolerance: 0.5,
    toleranceReason: 'a size more or less is 5 % of girth and of length, 10 % of area',
  },
  {
    class: 'A',
    toleranceReason: 'half of the last printed place',
    name: 'oz of 700 down in 90 x 90 x 2.5 in',
    source: blog,
    expected: 28.9,
    got: ounces(90 * 90 * 2.5, 700, 1),
    tolerance: 0.05,
  },
  {
    class: 'A',
    toleranceReason: 'half of the last printed place',
    name: 'the same with 30 % over, oz',
    source: blog,
    expected: 37.6,
    got: ounces(90 * 90 * 2.5, 700, 1.3),
    tolerance: 0.05,
  },
  {
    class: 'A',
    toleranceReason: 'half of the last printed place',
    name: 'the same with 30 % over, lb',
    source: blog,
    expected: 2.35,
    got: ounces(90 * 90 * 2.5, 700, 1.3) / 16,
    tolerance: 0.005,
  },
  {
    class: 'B',
    name: 'oz of fill of 300 in3/oz in 600 in3',
    source: 'derived from the definition of fill power',
    expected: 2,
    got: ounces(600, 300, 1),
    tolerance: 1e-9,
  },
  ...lenses.flatMap(([s, h, areaIn2, loftIn]): OutsideCheck[] => [
    {
      class: 'B',
      name: `section of a chamber ${s} in wide that rises ${h} in, in2`,
      source: circles,
      expected: areaIn2,
      got: lensAreaMm2(s * mm, h * mm) / mm ** 2,
      tolerance: 0.0005,
    },
    {
      class: 'B',
      name: `its average loft, ${s} and ${h} in`,
      source: circles,
      expected: loftIn,
      got: averageLoftMm(s * mm, h * mm) / mm,
      tolerance: 0.0006,
    },
  ]),
  {
    class: 'B',
    name: 'an ellipse overstates the section of 4 and 0.5 in by, %',
    source: circles,
    expected: 16,
    got: ((Math.PI * 4 * 0.5) / 2 / lensAreaMm2(4, 0.5) - 1) * 100,
    tolerance: 0.5,
  },
  {
    class: 'B',
    name: 'a box overstates it by, %',
    source: circles,
    expected: 48,
    got: ((4 * 1) / lensAreaMm2(4, 0.5) - 1) * 100,
    tolerance: 0.5,
  },
  {
    class: 'B',
    name: 'chambers of a panel 12 in long, lines 4 in apart',
    source: circles,
    expected: 3,
    got: list.chambers.length,
    tolerance: 0,
  },
  {
    class: 'B',
    name: 'volume of the middle one, 20 in long, in3',
    source: circles,
    expected: 54,
    got: middle.volumeCm3 / cm3PerIn3,
    tolerance: 0.05,
  },
  {
    class: 'B',
    name: 'its grams of 800 down, 20 % over',
    source: circles,
    expected: 2.3,
    got: middle.massG,
    tolerance: 0.005,
  },
  {
    class: 'B',
    name: 'its ounces',
    source: circles,
    expected: 0.081,
    got: middle.massG / gPerOz,
    tolerance: 0.00005,
  },
];

export default rows;
