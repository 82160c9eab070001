/**
 * Published tables of body measures, girths in mm, sizes rising. A size number means nothing without its table:
 * what is stored and compared are measures.
 */
import { say } from '../../wording/say.ts';
export interface SizeRow {
  readonly size: string;
  readonly bustMm: number;
  readonly waistMm: number;
  /** Null where what was read of the table does not give it. */
  readonly hipMm: number | null;
}

export interface SizeTable {
  readonly id: 'misses 2011' | 'misses 1995' | 'women 13402';
  readonly label: string;
  readonly source: string;
  readonly rows: readonly SizeRow[];
}

const mmPerIn = 25.4;

function rowsFrom(
  unitMm: number,
  sizes: readonly string[],
  bust: readonly number[],
  waist: readonly number[],
  hip: readonly number[] | null,
): readonly SizeRow[] {
  return sizes.map((size, i) => ({
    size,
    bustMm: bust[i]! * unitMm,
    waistMm: waist[i]! * unitMm,
    hipMm: hip === null ? null : hip[i]! * unitMm,
  }));
}

export const sizeTables: readonly SizeTable[] = [
  {
    id: 'misses 2011',
    get label() {
      return say('size-tables.misses-astm-d5585-11e1-straight-waist');
    },
    get source() {
      return say('size-tables.astm-d5585-11e1-publisher-s-page');
    },
    rows: rowsFrom(
      mmPerIn,
      ['00', '0', '2', '4', '6', '8', '10', '12', '14', '16', '18', '20'],
      [31.125, 31.75, 33, 34.125, 35.25, 36.25, 37.25, 38.75, 40.375, 42.125, 44, 46],
      [25.375, 26.125, 26.875, 27.625, 28.5, 29.5, 30.5, 32.25, 34, 36, 38.25, 40.5],
      null,
    ),
  },
  {
    id: 'misses 1995',
    get label() {
      return say('size-tables.misses-astm-d5585-95');
    },
    get source() {
      return say('size-tables.astm-d5585-95-from-memory');
    },
    rows: rowsFrom(
      mmPerIn,
      ['2', '4', '6', '8', '10', '12', '14', '16', '18', '20'],
      [32, 33, 34, 35, 36, 37.5, 39, 40.5, 42.5, 44.5],
      [24, 25, 26, 27, 28, 29.5, 31, 32.5, 34.5, 36.5],
      [34.5, 35.5, 36.5, 37.5, 38.5, 40, 41.5, 43, 45, 47],
    ),
  },
  {
    id: 'women 13402',
    get label() {
      return say('size-tables.women-en-13402-3-by-bust');
    },
    get source() {
      return say('size-tables.en-13402-3-from-memory');
    },
    rows: rowsFrom(
      10,
      ['76', '80', '84', '88', '92', '96', '100', '104', '110', '116', '122', '128'],
      [76, 80, 84, 88, 92, 96, 100, 104, 110, 116, 122, 128],
      [60, 64, 68, 72, 76, 80, 84, 88, 94, 100, 106, 112],
      [84, 88, 92, 96, 100, 104, 108, 112, 117, 122, 127, 132],
    ),
  },
];
