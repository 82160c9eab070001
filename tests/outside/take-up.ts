/** Take-up of quilting beside quilts and swatches that were measured, and beside a table worked from a circle. */
import { ringBox } from '../../shared-core/geometry/ring.ts';
import { arcRatio, lossRatio, takeUpRatio } from '../../shared-core/quilting/take-up.ts';
import { shapesNeed } from '../../shared-core/requirement/cut/cut-shapes.ts';
import { filled, quiltedCoat } from '../core/requirement/small-coat.ts';
import { item, piece, rectangle } from '../fixtures/small-workshop.ts';
import type { OutsideCheck } from './outside.ts';

const mmPerIn = 25.4;

/** What a square of batting under cloth is cut to, in, so that it is so long (over its lines) and wide when quilted. */
function cutIn(
  lengthIn: number,
  widthIn: number,
  gridIn: number,
  shrinkageRatio = 0,
): readonly [number, number] {
  const shrinks = { shrinkageAlongRatio: shrinkageRatio, shrinkageAcrossRatio: shrinkageRatio };
  const square = piece('square', rectangle(lengthIn * mmPerIn, widthIn * mmPerIn), {
    quilted: 'across',
    cutFrom: [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 1 },
    ],
  });
  const coat = quiltedCoat({
    pieces: [square],
    seams: [],
    quilting: { ...quiltedCoat().quilting!, spacingMm: gridIn * mmPerIn },
  });
  const items = filled({
    shell: item('cloth', 'cotton', { arealMassGPerM2: 140, ...shrinks }),
    // Needled cotton of 4 oz is about 0.1 in thick.
    batting: item('batting', 'needled cotton', { loftMm: 0.1 * mmPerIn }),
  });
  // Pieced and quilted unwashed, and washed when it was finished.
  const [shape] = shapesNeed(coat, { ...coat.slots[0]!, isCutUnwashed: true }, items).shapes;
  const box = ringBox(shape!.ring);
  return [(box.maxX - box.minX) / mmPerIn, (box.maxY - box.minY) / mmPerIn];
}

const samplePage = 'anythingbutboring.com, samples of quilting grids, 2020';
const craftPage =
  'alongcamequilting.com, quilting shrinkage: quilts measured before quilting and after binding, unwashed';
const tape = 'measured to 1/8 in';
const ownSpread =
  'the quilts of this one page differ among themselves by 1.4 % of their size (2.2 to 3.6 %): half of that, since no one figure is nearer to all';

/** Sizes in inches: the grid, then before and after, the longer side first. */
const swatches = [
  [4, [20, 9], [19.875, 9]],
  [2, [20, 9], [19.75, 8.875]],
  [1.5, [20, 9], [19.5, 8.75]],
] as const;
const quilts = [
  [
    [105, 83],
    [102, 80],
  ],
  [
    [68, 57],
    [66.5, 55.5],
  ],
  [
    [84.625, 66.75],
    [82.75, 64.75],
  ],
  [
    [69, 69],
    [67.25, 67.25],
  ],
  // The fifth of the journal, left out by the page that copies the other four.
  [
    [62, 57],
    [61.25, 56],
  ],
] as const;

/** Of cotton that was not washed before, with cotton batting: pieced, then quilted, washed and dried. */
const washed = [
  [
    [45.5, 36.5],
    [43, 33.5],
  ],
  [
    [49.5, 49.5],
    [45.5, 45.5],
  ],
] as const;
const washPage = 'kathleenmcmusing.com, quilts and shrinking, 2019';
/** Cotton batting shrinks by 3 to 5 % (a quilting board), and what is quilted to it with it. */
const washRatio = 0.04;
const washReason =
  'cotton batting shrinks by 3 to 5 %, taken as 4: one per cent; and what single quilts of one page differ by, 0.7';

const wideGrid =
  'a grid this wide in thin batting draws in less than the 2.5 % that is reckoned with, which is that of whole quilts: too much is cut, and a swatch says how much less would do';
const littleTaken =
  'this quilt lost 1.2 and 1.8 %, the least of the five; 2.5 % is reckoned with, which cuts it half an inch to an inch too large';
const unwashed =
  'eight per cent were lost in all: quilting cotton that was never washed shrinks by more than its batting where the lines are wide; the cloth’s own shrinkage, typed from a washed scrap, would say so';
const explanations: Readonly<Record<string, string>> = {
  'swatch, grid of 4 in, length': wideGrid,
  'swatch, grid of 4 in, width': wideGrid,
  'swatch, grid of 2 in, length': wideGrid,
  'quilt of 62 x 57 in, length': littleTaken,
  'quilt of 62 x 57 in, width': littleTaken,
  'quilt of 45.5 x 36.5 in, quilted, washed and dried, width': unwashed,
  'quilt of 49.5 x 49.5 in, quilted, washed and dried, length': unwashed,
  'quilt of 49.5 x 49.5 in, quilted, washed and dried, width': unwashed,
  'quilt of 105 x 83 in, width':
    'this width lost 3.6 %, the most of all that are printed; the estimate says 1 to 5 % and a swatch decides',
};

function measuredRow(row: Omit<OutsideCheck, 'class' | 'isMainJob'>): OutsideCheck {
  const explanation = explanations[row.name];
  return { class: 'A', isMainJob: true, ...row, ...(explanation !== undefined && { explanation }) };
}

const circle = 'geometry of a circular arc, table worked apart from this project';

/** Extra to cut, %, by spacing and rise in inches; printed to 0.01. */
const risesIn = [1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2];
const table: readonly (readonly [number, readonly number[]])[] = [
  [1, [1.04, 4.12, 9.13, 15.91, 34.06, 57.08]],
  [1.5, [0.46, 1.84, 4.12, 7.25, 15.91, 27.4]],
  [2, [0.26, 1.04, 2.33, 4.12, 9.13, 15.91]],
  [3, [0.12, 0.46, 1.04, 1.84, 4.12, 7.25]],
  [4, [0.07, 0.26, 0.58, 1.04, 2.33, 4.12]],
  [6, [0.03, 0.12, 0.26, 0.46, 1.04, 1.84]],
];

const rows: readonly OutsideCheck[] = [
  ...swatches.flatMap(([gridIn, before, after]) =>
    (['length', 'width'] as const).map((side, index) =>
      measuredRow({
        name: `swatch, grid of ${gridIn} in, ${side}`,
        source: samplePage,
        expected: before[index]!,
        got: cutIn(after[0], after[1], gridIn)[index]!,
        tolerance: 0.125,
        toleranceReason: tape,
      }),
    ),
  ),
  ...quilts.flatMap(([before, after]) =>
    (['length', 'width'] as const).map((side, index) =>
      measuredRow({
        name: `quilt of ${before[0]} x ${before[1]} in, ${side}`,
        source: craftPage,
        expected: before[index]!,
        got: cutIn(after[0], after[1], 2)[index]!,
        tolerance: 0.007 * before[index]!,
        toleranceReason: ownSpread,
      }),
    ),
  ),
  ...washed.flatMap(([before, after]) =>
    (['length', 'width'] as const).map((side, index) =>
      measuredRow({
        name: `quilt of ${before[0]} x ${before[1]} in, quilted, washed and dried, ${side}`,
        source: washPage,
        expected: before[index]!,
        got: cutIn(after[0], after[1], 2, washRatio)[index]!,
        tolerance: 0.017 * before[index]!,
        toleranceReason: washReason,
      }),
    ),
  ),
  ...table.flatMap(([spacingIn, extras]) =>
    extras.map(
      (expected, index): OutsideCheck => ({
        class: 'B',
        name: `extra to cut, lines ${spacingIn} in apart, rise ${risesIn[index]} in, %`,
        source: circle,
        expected,
        got: takeUpRatio(spacingIn * 25.4, risesIn[index]! * 25.4) * 100,
        tolerance: 0.0051,
      }),
    ),
  ),
  {
    class: 'B',
    name: 'length of the arc over 4 in that rises 1/4 in, in',
    source: circle,
    expected: 4.04154,
    got: 4 * (1 + takeUpRatio(4, 0.25)),
    tolerance: 0.000005,
  },
  {
    class: 'B',
    name: 'the same by the short form s + 8 h2 / 3 s, in',
    source: circle,
    expected: 4.04167,
    got: 4 * (1 + takeUpRatio(4, 0.25)),
    tolerance: 0.0002,
  },
  {
    class: 'B',
    name: 'extra of a half circle',
    source: 'half of pi, less 1',
    expected: Math.PI / 2 - 1,
    got: arcRatio(1, 0.5),
    tolerance: 1e-12,
  },
  {
    class: 'B',
    name: 'loss of the cut length at 4.12 % extra, %',
    source: 'derived: 1 - 1 / 1.0412',
    expected: 3.957,
    got: lossRatio(0.0412) * 100,
    tolerance: 0.0005,
  },
];

export default rows;
