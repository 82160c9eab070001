/** Thread consumption against worked examples of thread makers and textile sites. */
import { slotById } from '../../shared-core/plan/coat-plan.ts';
import type { StitchType } from '../../shared-core/plan/outline.ts';
import { threadMassG } from '../../shared-core/requirement/mass.ts';
import { threadNeed } from '../../shared-core/requirement/thread.ts';
import { threadUse } from '../../shared-core/requirement/thread-use.ts';
import {
  spoolCount,
  stitchThreads,
  threadRatioByGeometry,
  threadSplit,
} from '../../shared-core/requirement/thread-ratios.ts';
import { item, piece } from '../fixtures/small-workshop.ts';
import {
  filled,
  nothingChosen,
  panel,
  quiltedCoat,
  sideSeam,
  smallCoat,
} from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

const calculations = 'textilecalculations.com';
const bulletin = 'American & Efird bulletin "Estimating thread consumption", archived 2008';
const repetition = "a repetition of a thread maker's guide";
const guide = 'Coats guide to stitch types of ISO 4915, from memory';

/** Ratio by geometry from the units of the sources: inches and stitches to the inch. */
function ratio(stitch: StitchType, thicknessIn: number, stitchesPerIn: number, biteIn = 0): number {
  return threadRatioByGeometry(stitch, thicknessIn * 25.4, 25.4 / stitchesPerIn, biteIn * 25.4) ?? Number.NaN;
}

function byFormula(
  source: string,
  stitch: StitchType,
  list: readonly (readonly [thicknessIn: number, stitchesPerIn: number, expected: number])[],
): OutsideCheck[] {
  return list.map(([thicknessIn, stitchesPerIn, expected]) => ({
    name: `thread for each inch of ${stitch}, ${thicknessIn} in thick, ${stitchesPerIn} stitches`,
    source,
    expected,
    got: ratio(stitch, thicknessIn, stitchesPerIn),
    tolerance: 1e-9,
  }));
}

/** A coat with one seam of a length, joining two pieces. */
function oneSeam(seamMm: number, stitch: StitchType, wastageRatio: number) {
  const side = (id: string) => piece(id, panel(seamMm, 100, 'edge', { side: 'side seam' }));
  return smallCoat({
    pieces: [side('left'), side('right')],
    seams: [{ ...sideSeam, stitch }],
    threadWastageRatio: wastageRatio,
  });
}

function seamM(seamMm: number, stitch: StitchType, wastageRatio = 0): number {
  const coat = oneSeam(seamMm, stitch, wastageRatio);
  return threadNeed(coat, slotById(coat, 'thread'), nothingChosen).amount;
}

const table: readonly (readonly [StitchType, number, number])[] = [
  ['301', 2.5, 50],
  ['401', 5.5, 25],
  ['304', 7, 50],
  ['503', 12, 55],
  ['504', 14, 20],
  ['516', 20, 20],
  ['605', 28, 30],
];

const paddedCoat = quiltedCoat({
  quilting: { spacingMm: 100, stitch: '301', stitchLengthMm: 25.4 / 8, threadSlotId: 'thread', riseMm: null },
});
/** Batting that is a quarter inch under the needle on both sides of a seam together, under cloth of no thickness. */
const quarterInch = filled({
  shell: item('cloth', 'film', { thicknessMm: 0 }),
  batting: item('batting', 'fleece', { loftMm: (0.25 * 25.4) / 2 / 0.2 }),
});
const paddedSideM =
  threadNeed(paddedCoat, slotById(paddedCoat, 'thread'), quarterInch).parts.find(({ what }) =>
    what.startsWith('Side'),
  )?.amount ?? Number.NaN;

const rows: readonly OutsideCheck[] = [
  ...byFormula(calculations, '301', [[0.01, 10, 2.2]]),
  ...byFormula(bulletin, '401', [
    [0.055, 8, 4.88],
    [0.06, 8, 4.96],
    [0.065, 8, 5.04],
    [0.07, 8, 5.12],
    [0.075, 8, 5.2],
  ]),
  ...byFormula('derived from the path of a lockstitch, 2 + 2TS', '301', [
    [0.125, 8, 4],
    [0.25, 8, 6],
  ]),
  {
    name: 'thread for each inch of 504, 0.05 in thick, bite 0.25 in, 10 stitches',
    source: calculations,
    expected: 15,
    got: ratio('504', 0.05, 10, 0.25),
    tolerance: 1e-9,
  },
  {
    name: '20 yd of that 504 seam, m of thread',
    source: calculations,
    expected: 274.32,
    got: ratio('504', 0.05, 10, 0.25) * 20 * 0.9144,
    tolerance: 1e-6,
  },
  {
    name: 'yd of thread in a 42 in seam of 401, 0.075 in thick, 8 stitches',
    source: `${calculations}, printed 6.08 from a rounded seam of 1.17 yd`,
    expected: 6.08,
    got: (42 / 36) * ratio('401', 0.075, 8),
    tolerance: 0.02,
  },
  {
    name: 'the same with 15 % wastage',
    source: `${calculations}, printed 7.00 from a rounded seam of 1.17 yd`,
    expected: 7,
    got: (42 / 36) * ratio('401', 0.075, 8) * 1.15,
    tolerance: 0.03,
  },
  ...table.map(
    ([stitch, expected]): OutsideCheck => ({
      name: `m of thread for each m of ${stitch}`,
      source: guide,
      expected,
      got: seamM(1000, stitch),
      tolerance: 1e-9,
    }),
  ),
  ...table.map(
    ([stitch, , expected]): OutsideCheck => ({
      name: `share of thread through the needles of ${stitch}, %`,
      source: guide,
      expected,
      got: threadSplit(stitch, 100).needleM,
      tolerance: 1e-9,
    }),
  ),
  {
    name: 'cm of thread in 220 cm of lockstitch',
    source: repetition,
    expected: 550,
    got: seamM(2200, '301') * 100,
    tolerance: 1e-6,
  },
  {
    name: 'of that through the needle, cm',
    source: repetition,
    expected: 275,
    got:
      threadUse(oneSeam(2200, '301', 0), { ...slotById(oneSeam(2200, '301', 0), 'thread') }, nothingChosen)
        .needleM * 100,
    tolerance: 1e-6,
  },
  {
    name: 'cm of thread in 220 cm of chainstitch',
    source: repetition,
    expected: 1210,
    got: seamM(2200, '401') * 100,
    tolerance: 1e-6,
  },
  {
    name: 'of that in the looper, cm',
    source: `${repetition}, its split printed under another stitch`,
    expected: 907.5,
    got:
      threadUse(oneSeam(2200, '401', 0), { ...slotById(oneSeam(2200, '401', 0), 'thread') }, nothingChosen)
        .underM * 100,
    tolerance: 1e-6,
  },
  {
    name: 'cm of thread in 100 cm of chainstitch with 15 % wastage',
    source: 'apparelscience.com, printed 621 from an unravelled sample; its ratio is 5.4, ours 5.5',
    expected: 621,
    got: seamM(1000, '401', 0.15) * 100,
    tolerance: 0.1 * 100 * 1.15 + 1,
  },
  {
    name: 'thread for each inch of a padded side seam, a quarter inch thick, 8 stitches',
    source: 'derived from the path of a lockstitch, 2 + 2TS',
    expected: 6,
    got: paddedSideM / 1.4,
    tolerance: 1e-9,
  },
  {
    name: '504 of the table is dearer than 503 and cheaper than 516, as no shifted copy has it',
    source: guide,
    expected: 'yes',
    got:
      stitchThreads['503'].ratio < stitchThreads['504'].ratio &&
      stitchThreads['504'].ratio < stitchThreads['516'].ratio
        ? 'yes'
        : 'no',
    tolerance: 0,
  },
  {
    name: 'spools of 250 m for 621 m',
    source: 'common practice, no source',
    expected: 3,
    got: spoolCount(621, 250),
    tolerance: 0,
  },
  {
    name: 'g of 1,000 m of 300 denier',
    source: "definition of the denier; needle maker's thread sizing guide",
    expected: 33.3,
    got: threadMassG(1000, 300 / 9),
    tolerance: 0.05,
  },
];

export default rows;
