/** Drafted blocks beside published drafts: directions, tables and the rules that makers go by. */
import { wholeBody } from '../../shared-core/draft/body.ts';
import { blockOf } from '../../shared-core/draft/block.ts';
import { bodyFromRow, bodyTables } from '../../shared-core/draft/body-tables.ts';
import { usualDraft } from '../../shared-core/draft/draft-input.ts';
import { girthTakenMm, sizesToGoUp } from '../../shared-core/requirement/padding.ts';
import { sizeTables } from '../../shared-core/requirement/size-tables.ts';
import type { OutsideCheck } from './outside.ts';

const mm = 25.4;
const misses = sizeTables.find((table) => table.id === 'misses 2011')!;
const missesRow = (size: string) => misses.rows.find((row) => row.size === size)!;

const women38 = wholeBody(bodyFromRow('women', { size: '38', bustMm: 880, waistMm: 700, hipMm: 940 }, 1680));
const menExample = {
  ...bodyFromRow('men', { size: '48', bustMm: 960, waistMm: 880, hipMm: 1000 }, 1760),
};
const men48 = wholeBody(menExample);
/** The worked example has 11 cm of ease on the half. */
const jacket48 = blockOf(
  { ...usualDraft('plan', 'Jacket', '48', menExample), easeMm: 220, coatLengthMm: 780 },
  0,
);

const sizesUp = (thicknessIn: number) => {
  const found = sizesToGoUp(misses, '8', girthTakenMm(thicknessIn * mm));
  return found.ok ? found.value.sizeCount : Number.NaN;
};
const direct = 'direct draft of M. Müller & Sohn, size 38, from memory';
const proportionate =
  'proportionate draft for height 176 and chest 96, printed by a tailors’ forum on plus.google.com';
const childRows = bodyTables.find((table) => table.kind === 'children')!.rows;

const rows: readonly OutsideCheck[] = [
  {
    name: 'scye depth of bust 88, cm',
    source: direct,
    expected: 19.3,
    got: women38.scyeDepthMm / 10,
    tolerance: 0.05,
  },
  {
    name: 'half back of bust 88, cm',
    source: direct,
    expected: 16.5,
    got: women38.backWidthMm / 10,
    tolerance: 0.05,
  },
  {
    name: 'width of the arm of bust 88, cm',
    source: direct,
    expected: 9.5,
    got: women38.armWidthMm / 10,
    tolerance: 0.05,
  },
  {
    name: 'half chest of bust 88, cm',
    source: direct,
    expected: 18,
    got: women38.chestWidthMm / 10,
    tolerance: 0.05,
  },
  {
    name: 'back, arm and chest of bust 88 together, cm: half of the bust',
    source: 'helikastyle-empire.com, bodice without darts',
    expected: 44,
    got: (women38.backWidthMm + women38.armWidthMm + women38.chestWidthMm) / 10,
    tolerance: 1e-9,
  },
  {
    name: 'back length of a man of 176, cm',
    source: proportionate,
    expected: 45,
    got: men48.backLengthMm / 10,
    tolerance: 1e-9,
  },
  {
    name: 'scye depth of chest 96, cm',
    source: proportionate,
    expected: 23.5,
    got: men48.scyeDepthMm / 10,
    tolerance: 0.3,
  },
  {
    name: 'half back of chest 96 with the ease of a jacket, cm: 1/5 of 96 and 2 (printed as 21.5)',
    source: proportionate,
    expected: 21.2,
    got: (men48.backWidthMm + 15) / 10,
    tolerance: 0.05,
  },
  {
    name: 'arm of chest 96 with the ease of a jacket, cm',
    source: proportionate,
    expected: 18,
    got: (2 * (jacket48.backQuarterMm - (men48.backWidthMm + 15))) / 10,
    tolerance: 0.05,
  },
  {
    name: 'half of a jacket for chest 96 at the chest line, cm: half the chest and 11',
    source: proportionate,
    expected: 59,
    got: (jacket48.backQuarterMm + jacket48.frontQuarterMm) / 10,
    tolerance: 1e-6,
  },
  ...childRows.slice(1).map(
    (row, index): OutsideCheck => ({
      name: `step of a child’s height up to size ${row.size}, mm`,
      source: 'EN 13402-3: heights in steps of 6 cm',
      expected: 60,
      got: row.heightMm! - childRows[index]!.heightMm!,
      tolerance: 0,
    }),
  ),
  {
    name: 'bust from size 8 to 10 to 12, in',
    source: misses.source,
    expected: 2.5,
    got: (missesRow('12').bustMm - missesRow('8').bustMm) / mm,
    tolerance: 1e-9,
  },
  {
    name: 'girth that 1/4 in of batting takes, in, beside the makers’ rule of two sizes or more',
    source: 'circumference of a circle, 2 pi t',
    expected: 1.571,
    got: girthTakenMm(mm / 4) / mm,
    tolerance: 0.0005,
  },
  {
    name: 'girth that 1/2 in of batting takes, in, beside the makers’ rule of two sizes or more',
    source: 'circumference of a circle, 2 pi t',
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: as finely as it is published
    expected: 3.142,
    got: girthTakenMm(mm / 2) / mm,
    tolerance: 0.0005,
  },
  {
    name: 'sizes up that 1/4 in takes on size 8: at least two by the makers’ rule',
    source: 'common practice, no source',
    expected: 2,
    got: sizesUp(1 / 4),
    tolerance: 0,
  },
  {
    name: 'sizes up that 1/2 in takes on size 8: maybe three by the makers’ rule',
    source: 'common practice, no source',
    expected: 3,
    got: sizesUp(1 / 2),
    tolerance: 0,
  },
  {
    name: 'seam allowance that a draft begins with, in',
    source: 'common practice, no source',
    expected: 5 / 8,
    got: usualDraft('plan', 'Jacket', '48', menExample).allowanceMm / mm,
    tolerance: 1e-9,
  },
];

export default rows;
