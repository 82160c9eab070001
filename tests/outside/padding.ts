/** Girth, sizes and ease against size tables, drafts and makers' rules. */
import {
  easeLeft,
  effectiveThicknessMm,
  girthTakenMm,
  sizesToGoUp,
  wornLoftRatio,
} from '../../shared-core/requirement/padding.ts';
import { sizeTables } from '../../shared-core/requirement/size-tables.ts';
import type { OutsideCheck } from './outside.ts';

const mm = 25.4;
const circle = 'circumference of a circle, 2 pi t';
const misses = sizeTables.find((table) => table.id === 'misses 2011')!;
const older = sizeTables.find((table) => table.id === 'misses 1995')!;
const women = sizeTables.find((table) => table.id === 'women 13402')!;
const row = (table: typeof misses, size: string) => table.rows.find((candidate) => candidate.size === size)!;
const sizesUp = (size: string, plies: number, loftIn: number) => {
  const found = sizesToGoUp(
    misses,
    size,
    girthTakenMm(effectiveThicknessMm(plies, loftIn * mm, wornLoftRatio)),
  );
  return found.ok ? found.value.sizeCount : Number.NaN;
};
const words = (easeIn: number) =>
  easeLeft([{ place: 'bust', bodyMm: 900, garmentMm: 900 + easeIn * mm, thicknessMm: 0 }])[0]!.words;

const girths: readonly (readonly [number, number])[] = [
  [1 / 8, 0.785],
  [1 / 4, 1.571],
  [3 / 4, 4.712],
  [1, 6.283],
];
const bustStepsIn = [5 / 8, 5 / 4, 9 / 8, 9 / 8, 1, 1, 3 / 2, 13 / 8, 7 / 4, 15 / 8, 2];

const rows: readonly OutsideCheck[] = [
  ...girths.map(
    ([thicknessIn, expected]): OutsideCheck => ({
      name: `girth that ${thicknessIn} in of padding takes, in`,
      source: circle,
      expected,
      got: girthTakenMm(thicknessIn * mm) / mm,
      tolerance: 0.0005,
    }),
  ),
  {
    name: 'girth that 1/2 in takes, mm',
    source: circle,
    expected: 79.8,
    got: girthTakenMm(12.7),
    tolerance: 0.05,
  },
  { name: 'girth that 5 mm take, mm', source: circle, expected: 31.4, got: girthTakenMm(5), tolerance: 0.05 },
  {
    name: 'girth that 10 mm take, mm',
    source: circle,
    expected: 62.8,
    got: girthTakenMm(10),
    tolerance: 0.05,
  },
  ...bustStepsIn.map(
    (expected, index): OutsideCheck => ({
      name: `bust step from size ${misses.rows[index]!.size} to ${misses.rows[index + 1]!.size}, in`,
      source: misses.source,
      expected,
      got: (misses.rows[index + 1]!.bustMm - misses.rows[index]!.bustMm) / mm,
      tolerance: 1e-9,
    }),
  ),
  {
    name: 'bust of size 8 in 2011, in',
    source: misses.source,
    expected: 36.25,
    got: row(misses, '8').bustMm / mm,
    tolerance: 1e-9,
  },
  {
    name: 'bust of size 8 in 1995, in',
    source: older.source,
    expected: 35,
    got: row(older, '8').bustMm / mm,
    tolerance: 1e-9,
  },
  {
    name: 'hip of size 14 in 1995, in',
    source: older.source,
    expected: 41.5,
    got: row(older, '14').hipMm! / mm,
    tolerance: 1e-9,
  },
  {
    name: 'waist of bust 100, cm',
    source: women.source,
    expected: 84,
    got: row(women, '100').waistMm / 10,
    tolerance: 1e-9,
  },
  {
    name: 'hip of bust 110, cm',
    source: women.source,
    expected: 117,
    got: row(women, '110').hipMm! / 10,
    tolerance: 1e-9,
  },
  {
    name: 'sizes up for one layer of 1/2 in batting on size 8, at least two by the makers’ rule',
    source: 'common practice, no source',
    expected: 2,
    got: sizesUp('8', 1, 1 / 2),
    tolerance: 0,
  },
  {
    name: 'sizes up for two layers of it, maybe three by the makers’ rule',
    source: 'common practice, no source',
    expected: 3,
    got: sizesUp('8', 2, 1 / 2),
    tolerance: 0,
  },
  {
    name: '1 3/4 in at the bust',
    source: 'costume text of Central Washington University, ch. 16: bodice 1 1/2 to 2',
    expected: 'as close as a fitted bodice',
    got: words(1.75),
    tolerance: 0,
  },
  {
    name: '3 in at the bust',
    source: 'dresspatternmaking.com: jacket 2 to 4',
    expected: 'as close as a jacket',
    got: words(3),
    tolerance: 0,
  },
  {
    name: '6 in at the bust',
    source: 'pattern ease chart, coat 5 1/4 to 6 3/4, from memory',
    expected: 'a fitted coat',
    got: words(6),
    tolerance: 0,
  },
  {
    name: '7 1/2 in at the bust',
    source: 'pattern ease chart, coat 6 7/8 to 8, from memory',
    expected: 'a semi-fitted coat',
    got: words(7.5),
    tolerance: 0,
  },
  {
    name: '10 in at the bust',
    source: 'pattern ease chart, coat 8 1/8 to 12, from memory',
    expected: 'a loose coat',
    got: words(10),
    tolerance: 0,
  },
];

export default rows;
