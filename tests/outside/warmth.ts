/** Warmth arithmetic against tables and makers' sheet figures. */
import {
  cloM2KPerW,
  cloOfThickness,
  conductivityWPerMK,
  togM2KPerW,
} from '../../shared-core/requirement/finished/warmth.ts';
import { fromUnit, inUnit } from '../../shared-core/measure/units.ts';
import type { OutsideCheck } from './outside.ts';

const engineering = 'engineering tables; sizes.com 0.88';
const hammock = "hammock makers' forum, sheets with clo and thickness";
const nonwovens =
  'Bangera, Chavan, Patel and Patil, Evaluation of Heat Resistance Characteristics of Fibrous Material, Mechanics of Advanced Composite Structures';
/** The figure of our range for a thickness that lies nearest to a published one. */
function nearestClo(publishedClo: number, thicknessIn: number): number {
  const { minClo, maxClo } = cloOfThickness(thicknessIn * 25.4);
  return Math.min(Math.max(publishedClo, minClo), maxClo);
}

const rows: readonly OutsideCheck[] = [
  {
    class: 'B',
    name: '1 tog typed, in clo',
    source: 'engineering tables: 0.645 clo',
    expected: 0.645,
    got: fromUnit('tog', 1),
    tolerance: 0.0005,
  },
  {
    class: 'B',
    name: '1 clo, in m2 K/W',
    source: 'engineering tables: 0.155',
    expected: 0.155,
    got: inUnit('m2KPerW', 1),
    tolerance: 0.0005,
  },
  {
    class: 'B',
    name: '1 clo in F ft2 h/Btu',
    source: engineering,
    expected: 0.88,
    got: inUnit('m2KPerW', 1) * 5.678263,
    tolerance: 0.0005,
  },
  {
    class: 'B',
    name: '1 tog in clo',
    source: 'definition of the tog; published 0.645',
    expected: 0.645,
    got: togM2KPerW / cloM2KPerW,
    tolerance: 0.0005,
  },
  {
    class: 'B',
    name: 'conductivity of 1.61 clo/cm, W/mK',
    source: 'derived from k = 0.040',
    expected: 0.04,
    got: conductivityWPerMK(1.61),
    tolerance: 0.0001,
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'm2 K/W of coarse polyester nonwoven, 300 g/m2 and 15 mm thick, nearest of our range',
    source: nonwovens,
    expected: 0.305,
    got: nearestClo(0.305 / 0.155, 15 / 25.4) * 0.155,
    tolerance: 0.003,
    toleranceReason: 'a guarded plate is good to 1 %',
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'clo of a sheet 1.2 in thick, nearest of our range',
    source: hammock,
    expected: 4.1,
    got: nearestClo(4.1, 1.2),
    tolerance: 0,
  },
];

export default rows;
