/** A table as CSV: one row a line, plain numbers, and no text that a spreadsheet would run as a formula. */
import Papa from 'papaparse';
import { textCell } from '../measure/text/cell-text.ts';
import { asCell, columnsOn, noTick, type PaperTable } from './paper-table.ts';

/** The section's title is the first column where there are sections. Sums and notes are left out: the rows are the data. */
export function tableCsv(table: PaperTable): string {
  const columns = columnsOn(table, 'file');
  const isInSections = table.sectionHead !== '';
  const fields = [
    ...(isInSections ? [table.sectionHead] : []),
    ...columns.map(({ column }) => column.fileHead ?? column.head),
  ];
  const data = table.sections.flatMap((section) =>
    section.rows.map((row) => [
      ...(isInSections ? [textCell(section.title)] : []),
      ...columns.map(({ column, index }) => {
        const { text, fileText } = asCell(row[index]);
        if (column.kind === 'tick') return text === noTick() ? '' : text === '' ? 'no' : 'yes';
        const said = fileText ?? text;
        // A number below 0 begins like a formula and is none.
        return column.kind === 'number' && /^-\d+(\.\d+)?$/.test(said) ? Number(said) : textCell(said);
      }),
    ]),
  );
  return Papa.unparse({ fields: fields.map(textCell), data });
}
