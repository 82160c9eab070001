/** Take-up of quilting against a table worked from a circle apart from this project. */
import { arcRatio, lossRatio, takeUpRatio } from '../../shared-core/quilting/take-up.ts';
import type { OutsideCheck } from './outside.ts';

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
