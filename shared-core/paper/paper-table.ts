/**
 * A table as it leaves the window: on paper, as PDF, as CSV, as text on the clipboard. One table is written in all
 * four ways (paper/table-pdf.ts, table-csv.ts, table-text.ts, and the window's own print), so they say the same.
 */
import { say } from '../wording/say.ts';
import type { MeasureSystem } from '../measure/quantity.ts';

export interface PaperColumn {
  readonly head: string;
  /** Numbers stand to the right with their unit; a tick is a box to be ticked on paper. */
  readonly kind: 'text' | 'number' | 'tick';
  /** What the column is called in a file for spreadsheets: "price (EUR)". Absent: its head. */
  readonly fileHead?: string;
  /** Where the column stands; absent: everywhere. */
  readonly only?: 'paper' | 'file';
}

/** What stands in one cell; a plain text is one without a note. Of a tick: '' is open, `noTick` has no box, any other is ticked. */
export interface PaperCell {
  readonly text: string;
  /** Smaller, below it; not in a file. */
  readonly note?: string;
  /** What a spreadsheet takes in its place: "49.45" for "49.45 EUR". */
  readonly fileText?: string;
}

/** In a column of ticks: a row that is not to be ticked. */
export const noTick = () => say('paper-table.no-tick');

/** One cell for each column, in their order. */
export type PaperRow = readonly (string | PaperCell)[];

export interface PaperSection {
  /** '' where the table has one section alone. */
  readonly title: string;
  readonly rows: readonly PaperRow[];
  readonly total?: PaperRow;
}

export interface PaperTable {
  readonly title: string;
  /** One sentence under the title, or ''. */
  readonly lead: string;
  /** What the sections are, as a file's first column: "supplier"; '' where the table has one section alone. */
  readonly sectionHead: string;
  readonly columns: readonly PaperColumn[];
  readonly sections: readonly PaperSection[];
  /** Stands at the end, over all sections; not in a file, whose rows must add up. */
  readonly total?: PaperRow;
  /** Sentences below the table; not in a file. */
  readonly notes: readonly string[];
  /** On paper its rows stand close, as in a long list that is looked things up in. */
  readonly isDense?: boolean;
}

/** Sheet of paper by the maker's system. */
export function sheetFormat(system: MeasureSystem): 'A4' | 'letter' {
  return system === 'metric' ? 'A4' : 'letter';
}

export function asCell(cell: string | PaperCell | undefined): PaperCell {
  return typeof cell === 'object' ? cell : { text: cell ?? '' };
}

/** The columns that stand in one place, each with its index in a row. */
export function columnsOn(
  table: PaperTable,
  place: 'paper' | 'file',
): readonly { readonly column: PaperColumn; readonly index: number }[] {
  return table.columns
    .map((column, index) => ({ column, index }))
    .filter(({ column }) => column.only === undefined || column.only === place);
}
