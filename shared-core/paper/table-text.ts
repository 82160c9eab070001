/** A table as plain text with columns that line up, for the clipboard and the headless command. */
import {
  asCell,
  columnsOn,
  noTick,
  type PaperColumn,
  type PaperRow,
  type PaperTable,
} from './paper-table.ts';

/** A longer text runs on without moving the columns behind it. */
const widestLetters = 48;

export function tableText(table: PaperTable): string {
  const columns = columnsOn(table, 'paper');
  const rows = table.sections.flatMap(({ rows, total }) => [...rows, ...(total ? [total] : [])]);
  const all = [...rows, ...(table.total ? [table.total] : [])];
  const widths = columns.map(({ column, index }) =>
    Math.min(
      widestLetters,
      Math.max(
        letters(column.kind === 'tick' ? '' : column.head),
        ...all.map((row) => letters(cellText(column, row, index))),
      ),
    ),
  );
  const line = (words: readonly string[]): string =>
    columns
      .map(({ column }, place) => padded(words[place] ?? '', widths[place] ?? 0, column.kind === 'number'))
      .join('  ')
      .trimEnd();
  const rowLines = (row: PaperRow): string[] => {
    const notes = columns.flatMap(({ index }) => {
      const { note } = asCell(row[index]);
      return note ? [`      ${oneLine(note)}`] : [];
    });
    return [line(columns.map(({ column, index }) => cellText(column, row, index))), ...notes];
  };
  const totalLine = (row: PaperRow): string =>
    line(columns.map(({ column, index }) => (column.kind === 'tick' ? '' : cellText(column, row, index))));
  const blocks = table.sections.map(({ title, rows, total }) =>
    [
      ...(title === '' ? [] : [oneLine(title)]),
      line(columns.map(({ column }) => (column.kind === 'tick' ? '' : column.head))),
      ...rows.flatMap(rowLines),
      ...(total ? [totalLine(total)] : []),
    ].join('\n'),
  );
  return [
    [oneLine(table.title), ...(table.lead === '' ? [] : [oneLine(table.lead)])].join('\n'),
    ...blocks,
    ...(table.total ? [totalLine(table.total)] : []),
    ...(table.notes.length > 0 ? [table.notes.map(oneLine).join('\n')] : []),
  ].join('\n\n');
}

function cellText(column: PaperColumn, row: PaperRow, index: number): string {
  const { text } = asCell(row[index]);
  if (column.kind === 'tick') return text === noTick() ? '' : text === '' ? '[ ]' : '[x]';
  return oneLine(text);
}

function oneLine(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}

/** Letters as they are seen: an accent of its own takes no place. */
function letters(text: string): number {
  return [...text.normalize('NFC').replace(/\p{M}/gu, '')].length;
}

function padded(text: string, width: number, isRight: boolean): string {
  const gap = ' '.repeat(Math.max(0, width - letters(text)));
  return isRight ? gap + text : text + gap;
}
