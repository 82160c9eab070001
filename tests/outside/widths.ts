/** The classic table of lengths at other widths: that it was copied right, by properties and cells. */
import {
  sameAreaLengthMm,
  tableLengthMm,
  widthTableEighths,
  widthTableExtraYd,
  widthTableWidthsIn,
} from '../../shared-core/requirement/width-table.ts';
import type { OutsideCheck } from './outside.ts';

const table = 'conversion table printed at sewwithsarah.com';
const properties = `${table}; property worked apart from this project`;
const yd = 914.4;
const mm = 25.4;
const lengthYd = (lengthInYd: number, fromIn: number, toIn: number) =>
  (tableLengthMm(lengthInYd * yd, fromIn * mm, toIn * mm) ?? Number.NaN) / yd;
const cell = (length: number, fromIn: number, toIn: number, expected: number): OutsideCheck => ({
  name: `${length} yd of ${fromIn} in as ${toIn} in`,
  source: table,
  expected,
  got: lengthYd(length, fromIn, toIn),
  tolerance: 1e-9,
});

const areas = widthTableEighths.flatMap((row) =>
  row.map((eighths, column) => (eighths * widthTableWidthsIn[column]!) / (row[0]! * widthTableWidthsIn[0])),
);
const factors = widthTableEighths.map((row) => row[6]! / row[3]!);
const mean = factors.reduce((sum, factor) => sum + factor, 0) / factors.length;

const rows: readonly OutsideCheck[] = [
  cell(1.75, 36, 45, 1.375),
  cell(2.5, 36, 60, 1.625),
  cell(2.875, 36, 54, 1.875),
  cell(3.375, 36, 41, 2.875),
  cell(3.75, 36, 50, 2.625),
  cell(4.25, 36, 66, 2.25),
  cell(4.5, 36, 39, 3.75),
  cell(5, 36, 45, 3.875),
  cell(5, 36, 66, 2.75),
  cell(2.5, 45, 60, 1.875),
  cell(3.125, 45, 60, 2.375),
  {
    name: 'cells of the table',
    source: table,
    expected: 96,
    got: widthTableEighths.flat().length,
    tolerance: 0,
  },
  {
    name: 'least area of a cell over that of its row’s first',
    source: properties,
    expected: 0.892,
    got: Math.min(...areas),
    tolerance: 0.0005,
  },
  {
    name: 'largest area of a cell over that of its row’s first',
    source: properties,
    expected: 1.1,
    got: Math.max(...areas),
    tolerance: 0.0005,
  },
  {
    name: 'least factor from 45 to 60 in',
    source: properties,
    expected: 0.727,
    got: Math.min(...factors),
    tolerance: 0.0005,
  },
  {
    name: 'largest factor from 45 to 60 in',
    source: properties,
    expected: 0.786,
    got: Math.max(...factors),
    tolerance: 0.0005,
  },
  { name: 'mean factor from 45 to 60 in', source: properties, expected: 0.76, got: mean, tolerance: 0.0005 },
  {
    name: 'the area rule from 45 to 60 in',
    source: 'derived: 45 / 60',
    expected: 0.75,
    got: sameAreaLengthMm(1, 45, 60),
    tolerance: 1e-12,
  },
  {
    name: 'added for one-way cloth, yd',
    source: table,
    expected: 0.25,
    got: widthTableExtraYd,
    tolerance: 0,
  },
  {
    name: 'a loose jacket of 2 1/2 yd at 45 in, at 60 in',
    source: 'envelope of a published jacket pattern, which differs from the table by 1/8 yd',
    expected: 1.75,
    got: lengthYd(2.5, 45, 60),
    tolerance: 0.25,
  },
  {
    name: 'the same of 3 1/8 yd',
    source: 'envelope of a published jacket pattern, which differs from the table by 1/4 yd',
    expected: 2.125,
    got: lengthYd(3.125, 45, 60),
    tolerance: 0.25,
  },
];

export default rows;
