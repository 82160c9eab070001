/**
 * Body sizes beside the tables for women (requirement/finished/size-tables.ts), in mm, sizes rising. Null: the table does not
 * say, and the proportion of the draft stands in (draft/body.ts).
 */
import { say } from '../wording/say.ts';
import type { Body, BodyKind } from './body.ts';

export interface BodyRow {
  readonly size: string;
  readonly bustMm: number;
  readonly waistMm: number;
  readonly hipMm: number | null;
  /** Absent: the table is for every height. */
  readonly heightMm?: number;
}

export interface BodyTable {
  readonly kind: BodyKind;
  readonly label: string;
  readonly source: string;
  readonly rows: readonly BodyRow[];
}

function rowsInCm(
  rows: readonly (readonly [size: string, bust: number, waist: number, height?: number])[],
): BodyRow[] {
  return rows.map(([size, bust, waist, height]) => ({
    size,
    bustMm: bust * 10,
    waistMm: waist * 10,
    hipMm: null,
    ...(height === undefined ? {} : { heightMm: height * 10 }),
  }));
}

export const bodyTables: readonly BodyTable[] = [
  {
    kind: 'men',
    label: 'Men, EN 13402-3, by chest',
    source: say('body-tables.en-13402-3-from-memory'),
    rows: rowsInCm([
      ['84', 84, 72],
      ['88', 88, 76],
      ['92', 92, 80],
      ['96', 96, 84],
      ['100', 100, 88],
      ['104', 104, 92],
      ['108', 108, 96],
      ['112', 112, 100],
      ['118', 118, 106],
      ['124', 124, 112],
      ['130', 130, 118],
    ]),
  },
  {
    kind: 'children',
    label: 'Children, by height in steps of 6 cm',
    source: say('body-tables.heights-en-13402-3-girths-from'),
    rows: rowsInCm([
      ['92', 54, 52, 92],
      ['98', 55, 53, 98],
      ['104', 57, 54, 104],
      ['110', 59, 56, 110],
      ['116', 61, 57, 116],
      ['122', 63, 58, 122],
      ['128', 66, 60, 128],
      ['134', 69, 62, 134],
      ['140', 72, 64, 140],
      ['146', 75, 66, 146],
      ['152', 78, 68, 152],
    ]),
  },
];

/** Height that girths of adults are drafted for until the maker types one: common practice, no source. */
export const defaultHeightMm: Readonly<Record<BodyKind, number>> = { women: 1680, men: 1780, children: 1160 };

/** A body of a table's size, the rest by proportion; heightMm stands in where the row has none. */
export function bodyFromRow(kind: BodyKind, row: BodyRow, heightMm: number): Body {
  return {
    kind,
    bustMm: row.bustMm,
    waistMm: row.waistMm,
    hipMm: row.hipMm,
    heightMm: row.heightMm ?? heightMm,
    backLengthMm: null,
    shoulderMm: null,
    armMm: null,
    upperArmMm: null,
    wristMm: null,
    neckMm: null,
  };
}
