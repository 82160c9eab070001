/** How many needles the hours of sewing wear out. */
import { needleCount, needleLifeHours } from '../../shared-core/requirement/needles.ts';
import type { OutsideCheck } from './outside.ts';

const rows: readonly OutsideCheck[] = [
  {
    class: 'B',
    name: 'needles for a coat of 11 h',
    source: 'derived from 8 h of life',
    expected: 2,
    got: needleCount(11, needleLifeHours.least),
    tolerance: 0,
  },
  {
    class: 'B',
    name: 'needles for ten such coats',
    source: 'derived from 8 h of life',
    expected: 14,
    got: needleCount(110, needleLifeHours.least),
    tolerance: 0,
  },
];

export default rows;
