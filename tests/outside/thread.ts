/** Thread consumption against worked examples of thread makers and textile sites. */
import { slotById } from '../../shared-core/plan/model/coat-plan.ts';
import type { StitchType } from '../../shared-core/plan/model/outline.ts';
import { threadMassG } from '../../shared-core/requirement/finished/mass.ts';
import { threadNeed } from '../../shared-core/requirement/thread/thread.ts';
import { threadRatioByGeometry } from '../../shared-core/requirement/thread/thread-ratios.ts';
import { item, piece } from '../fixtures/small-workshop.ts';
import {
  filled,
  nothingChosen,
  panel,
  quiltedCoat,
  sideSeam,
  smallCoat,
} from '../core/requirement/small-coat.ts';
import type { OutsideCheck, OutsideClass } from './outside.ts';

const calculations = 'textilecalculations.com';
const bulletin = 'American & Efird bulletin "Estimating thread consumption", archived 2008';

/** Ratio by geometry from the units of the sources: inches and stitches to the inch. */
function ratio(stitch: StitchType, thicknessIn: number, stitchesPerIn: number, biteIn = 0): number {
  return threadRatioByGeometry(stitch, thicknessIn * 25.4, 25.4 / stitchesPerIn, biteIn * 25.4) ?? Number.NaN;
}

function byFormula(
  source: string,
  stitch: StitchType,
  list: readonly (readonly [thicknessIn: number, stitchesPerIn: number, expected: number])[],
  rowClass: OutsideClass = 'A',
): OutsideCheck[] {
  return list.map(([thicknessIn, stitchesPerIn, expected]) => ({
    class: rowClass,
    toleranceReason: 'rounding of floating point',
    name: `thread for each inch of ${stitch}, ${thicknessIn} in thick, ${stitchesPerIn} stitches`,
    source,
    expected,
    got: ratio(stitch, thicknessIn, stitchesPerIn),
    tolerance: 1e-9,
  }));
}

/** A coat with one seam of a length, joining two pieces. */
function oneSeam(seamMm: number, stitch: StitchType) {
  const side = (id: string) => piece(id, panel(seamMm, 100, 'edge', { side: 'side seam' }));
  return smallCoat({
    pieces: [side('left'), side('right')],
    seams: [{ ...sideSeam, stitch }],
  });
}

function seamM(seamMm: number, stitch: StitchType): number {
  const coat = oneSeam(seamMm, stitch);
  return threadNeed(coat, slotById(coat, 'thread'), nothingChosen).amount;
}

const paddedCoat = quiltedCoat({ seams: [{ ...sideSeam, stitchLengthMm: 25.4 / 8 }] });
/** Batting that is a quarter inch under the needle on both sides of a seam together, under cloth of no thickness. */
const quarterInch = filled({
  shell: item('cloth', 'film', { thicknessMm: 0 }),
  batting: item('batting', 'fleece', { arealMassGPerM2: ((0.25 * 25.4) / 2) * 175 }),
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
  ...byFormula(
    'derived from the path of a lockstitch, 2 + 2TS',
    '301',
    [
      [0.125, 8, 4],
      [0.25, 8, 6],
    ],
    'B',
  ),
  {
    class: 'A',
    toleranceReason: 'rounding of floating point',
    name: 'thread for each inch of 504, 0.05 in thick, bite 0.25 in, 10 stitches',
    source: calculations,
    expected: 15,
    got: ratio('504', 0.05, 10, 0.25),
    tolerance: 1e-9,
  },
  {
    class: 'A',
    toleranceReason: 'rounding of floating point',
    name: '20 yd of that 504 seam, m of thread',
    source: calculations,
    expected: 274.32,
    got: ratio('504', 0.05, 10, 0.25) * 20 * 0.9144,
    tolerance: 1e-6,
  },
  {
    class: 'A',
    toleranceReason: 'the source rounds the seam of 42 in to 1.17 yd, up by 0.3 %',
    name: 'yd of thread in a 42 in seam of 401, 0.075 in thick, 8 stitches',
    source: `${calculations}, printed 6.08 from a rounded seam of 1.17 yd`,
    expected: 6.08,
    got: (42 / 36) * ratio('401', 0.075, 8),
    tolerance: 0.02,
  },
  {
    class: 'A',
    toleranceReason: 'the source rounds the seam of 42 in to 1.17 yd, up by 0.3 %, and its result to 0.01',
    name: 'the same with 15 % wastage',
    source: `${calculations}, printed 7.00 from a rounded seam of 1.17 yd`,
    expected: 7,
    got: (42 / 36) * ratio('401', 0.075, 8) * 1.15,
    tolerance: 0.03,
  },
  {
    class: 'A',
    name: 'cm of thread in a chainstitch seam of 100 cm',
    source: 'apparelscience.com, measuring actual thread consumption: 540 by unravelling 15 cm',
    expected: 540,
    got: seamM(1000, '401') * 100,
    tolerance: 3.3,
    toleranceReason: 'both threads of the 15 cm were read to half a centimetre: 0.25 cm each, in 15',
    explanation:
      'The table of the thread maker has 5.5 cm for each cm of 401, this one sample 5.4: a seam in that cloth is under 2 % dearer by the table.',
  },
  {
    class: 'A',
    name: 'yd of thread in a chainstitch seam of 42 in',
    source: `${bulletin}: 6.63 by unravelling 3 in, from a rounded seam of 1.17 yd`,
    expected: 6.63,
    got: seamM(42 * 25.4, '401') / 0.9144,
    tolerance: 0.39,
    toleranceReason:
      'both threads of the 3 in were read to whole inches: half an inch each, in 3, times 42 in',
  },
  {
    class: 'B',
    name: 'thread for each inch of a padded side seam, a quarter inch thick, 8 stitches',
    source: 'derived from the path of a lockstitch, 2 + 2TS',
    expected: 6,
    got: paddedSideM / 1.4,
    tolerance: 1e-9,
  },
  {
    class: 'B',
    name: 'g of 1,000 m of 300 denier',
    source: "definition of the denier; needle maker's thread sizing guide",
    expected: 33.3,
    got: threadMassG(1000, 300 / 9),
    tolerance: 0.05,
  },
];

export default rows;
