/** Continuous bias binding from a square, beside makers' charts. */
import { biasSquareMm } from '../../shared-core/plan/edits/bands.ts';
import type { OutsideCheck } from './outside.ts';

const mmPerIn = 25.4;

/** Binding wanted, its width as cut, and the square that is printed for it, in. */
const printed: readonly (readonly [number, number, number, string])[] = [
  [250, 2, 23, 'mydecozo.co.uk, soft furnishing: making continuous piping strips'],
  [55, 2.5, 12, 'mixedupcreativeacademy.com, continuous binding strips'],
  [450, 2.25, 32, 'a quilters’ chart of continuous bias binding (450 in of 2 1/4 in)'],
  [100, 3.5, 19, 'quiltersquestiontime.com, how to calculate fabric for bias binding'],
];

const rows: readonly OutsideCheck[] = printed.map(([lengthIn, widthIn, squareIn, source]) => ({
  class: 'A',
  isMainJob: true,
  name: `square for ${lengthIn} in of bias binding cut ${widthIn} in wide, in`,
  source,
  expected: squareIn,
  got: biasSquareMm(lengthIn * mmPerIn, widthIn * mmPerIn) / mmPerIn,
  tolerance: { below: 0.5, above: 1 },
  toleranceReason: 'the charts round to the inch, and some leave out the two seams, half an inch',
}));

export default rows;
