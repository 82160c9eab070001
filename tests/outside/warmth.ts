/** Warmth arithmetic against tables and makers' sheet figures. */
import {
  cloM2KPerW,
  cloOfThickness,
  cloPerCm,
  conductivityWPerMK,
  togM2KPerW,
} from '../../shared-core/requirement/warmth.ts';
import { fromUnit, inUnit } from '../../shared-core/measure/units.ts';
import { packedVolume } from '../../shared-core/requirement/finished-coat.ts';
import type { OutsideCheck } from './outside.ts';

const engineering = 'engineering tables; sizes.com 0.88';
const garments = 'engineeringtoolbox.com, after ISO 9920 and ASHRAE 55';
const hammock = "hammock makers' forum, sheets with clo and thickness";
const within = (value: number, low: number, high: number) =>
  value >= low && value <= high ? 'within' : `outside ${low} to ${high}`;
const inThick = (thicknessIn: number) => cloOfThickness(thicknessIn * 25.4);

const rows: readonly OutsideCheck[] = [
  {
    name: '1 tog typed, in clo',
    source: 'engineering tables: 0.645 clo',
    expected: 0.645,
    got: fromUnit('tog', 1),
    tolerance: 0.0005,
  },
  {
    name: '1 clo, in m2 K/W',
    source: 'engineering tables: 0.155',
    expected: 0.155,
    got: inUnit('m2KPerW', 1),
    tolerance: 0.0005,
  },
  {
    name: '1 clo in F ft2 h/Btu',
    source: engineering,
    expected: 0.88,
    got: inUnit('m2KPerW', 1) * 5.678263,
    tolerance: 0.0005,
  },
  {
    name: '1 tog in clo',
    source: 'definition of the tog; published 0.645',
    expected: 0.645,
    got: togM2KPerW / cloM2KPerW,
    tolerance: 0.0005,
  },
  {
    name: 'most clo for each inch',
    source: 'military clothing research, from memory',
    expected: 4,
    got: inThick(1).mostClo,
    tolerance: 1e-9,
  },
  {
    name: 'most clo for each cm',
    source: 'derived from 4 clo/in',
    expected: 1.57,
    got: cloPerCm.most,
    tolerance: 0.005,
  },
  {
    name: 'conductivity that 4 clo/in stands for, W/mK',
    source: 'derived from 4 clo/in',
    expected: 0.041,
    got: conductivityWPerMK(cloPerCm.most),
    tolerance: 0.00005,
  },
  {
    name: 'conductivity of 1.61 clo/cm, W/mK',
    source: 'derived from k = 0.040',
    expected: 0.04,
    got: conductivityWPerMK(1.61),
    tolerance: 0.0001,
  },
  { name: 'least clo of 2 in', source: hammock, expected: 3.4, got: inThick(2).leastClo, tolerance: 1e-9 },
  {
    name: 'a sheet of 1.2 in and 4.1 clo',
    source: hammock,
    expected: 'within',
    got: within(4.1, inThick(1.2).leastClo, inThick(1.2).mostClo),
    tolerance: 0,
  },
  {
    name: 'coat of 0.60 clo in m2K/W',
    source: garments,
    expected: 0.093,
    got: 0.6 * cloM2KPerW,
    tolerance: 0.0005,
  },
  {
    name: 'down jacket of 0.55 clo in m2K/W',
    source: garments,
    expected: 0.085,
    got: 0.55 * cloM2KPerW,
    tolerance: 0.0005,
  },
  {
    name: 'parka of 0.70 clo in m2K/W',
    source: garments,
    expected: 0.109,
    got: 0.7 * cloM2KPerW,
    tolerance: 0.0006,
  },
  {
    name: 'a coat of 800 g packs into 5 to 10 l',
    source: 'common practice, no source',
    expected: '5 to 10',
    got: `${packedVolume(800).leastCm3 / 1000} to ${packedVolume(800).mostCm3 / 1000}`,
    tolerance: 0,
  },
];

export default rows;
