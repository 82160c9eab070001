/** Girth that padding takes, by the circumference of a circle. */
import { girthTakenMm } from '../../shared-core/requirement/finished/padding.ts';
import type { OutsideCheck } from './outside.ts';

const mm = 25.4;
const circle = 'circumference of a circle, 2 pi t';

/** Thickness in inches, girth in inches to three places. */
const girthsIn: readonly (readonly [number, number])[] = [
  [1 / 8, 0.785],
  [1 / 4, 1.571],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: as finely as it is published
  [1 / 2, 3.142],
  [3 / 4, 4.712],
  [1, 6.283],
];
/** Thickness and girth in mm. */
const girthsMm: readonly (readonly [number, number])[] = [
  [5, 31.4],
  [10, 62.8],
  [12.7, 79.8],
];

const rows: readonly OutsideCheck[] = [
  ...girthsIn.map(
    ([thicknessIn, expected]): OutsideCheck => ({
      class: 'B',
      name: `girth that ${thicknessIn} in of padding takes, in`,
      source: circle,
      expected,
      got: girthTakenMm(thicknessIn * mm) / mm,
      tolerance: 0.0005,
    }),
  ),
  ...girthsMm.map(
    ([thicknessMm, expected]): OutsideCheck => ({
      class: 'B',
      name: `girth that ${thicknessMm} mm of padding take, mm`,
      source: circle,
      expected,
      got: girthTakenMm(thicknessMm),
      tolerance: 0.05,
    }),
  ),
];

export default rows;
