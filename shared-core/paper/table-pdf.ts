/** A table as PDF: text that can be selected and searched, numbers to the right, the head again on each page. */
import { PDFDocument } from '@cantoo/pdf-lib';
import {
  asCell,
  columnsOn,
  noTick,
  type PaperColumn,
  type PaperRow,
  type PaperTable,
} from './paper-table.ts';
import {
  finishSheets,
  firstSheet,
  gapPt,
  hair,
  ink,
  marginPt,
  paperPt,
  type PdfOptions,
  type PdfSheet,
  ruleOff,
  soft,
  turnPage,
  writeAt,
  writeNote,
  writeParagraph,
  type Written,
} from './pdf-sheet.ts';
import { brokenLines, type ColumnWish, columnWidths, minWidthPt } from './table-columns.ts';
import { embedTypeface, type Face, type Typeface, type TypefaceFiles, type WrittenPdf } from './typeface.ts';

/** Air above and below a row, and of that above. */
const airPt = { usual: { all: 9, above: 5 }, dense: { all: 4, above: 2.5 } } as const;
const bodyPt = 9;
const notePt = 7.5;
/** A head of numbers that is longer goes over several lines. */
const headPt = 80;

/** A document of one table. It lies on its side where its columns ask for it. */
export async function tablePdf(
  table: PaperTable,
  { format, day }: PdfOptions,
  files: TypefaceFiles,
): Promise<WrittenPdf> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const typeface = await embedTypeface(pdf, files);
  pdf.setTitle(typeface.letters(table.title));
  const [width, height] = paperPt[format];
  const isUpright = columnsFor(typeface, table, width).scale === 1;
  const sheet = firstSheet(pdf, typeface, isUpright ? [width, height] : [height, width]);
  writeParagraph(sheet, table.title, { size: 18, face: typeface.bold }, 0);
  writeTable(sheet, table);
  finishSheets(sheet, table.title, day);
  return { bytes: await pdf.save(), missingLetters: [...typeface.missing] };
}

/** A table without its title, from where the sheet stands. */
export function writeTable(onto: PdfSheet, table: PaperTable): void {
  // The sheet itself goes on, so that what is written after the table stands below it.
  const sheet: TableSheet = Object.assign(onto, {
    table,
    ...columnsFor(onto.typeface, table, onto.size[0]),
  });
  if (table.lead !== '')
    writeParagraph(sheet, table.lead, { size: 10, face: sheet.typeface.regular, color: soft }, 4);
  for (const section of table.sections) {
    const firstRow = section.rows[0] ?? section.total;
    const needed = 44 + (section.title === '' ? 0 : 30) + (firstRow ? rowHeight(sheet, firstRow) : 0);
    if (sheet.y - needed < marginPt) turnPage(sheet);
    sheet.y -= 12;
    if (section.title !== '')
      writeParagraph(sheet, section.title, { size: 12, face: sheet.typeface.bold }, 6);
    writeHead(sheet);
    for (const row of section.rows) writeRow(sheet, row, false);
    if (section.total) writeRow(sheet, section.total, true);
  }
  if (table.total) {
    sheet.y -= 6;
    ruleOff(sheet, ink, 1);
    writeRow(sheet, table.total, true);
  }
  sheet.y -= 6;
  for (const note of table.notes) writeNote(sheet, note);
}

interface Columns {
  readonly columns: readonly { readonly column: PaperColumn; readonly index: number }[];
  readonly widths: readonly number[];
  /** Below 1 where the sheet is too narrow for the numbers. */
  readonly scale: number;
}

interface TableSheet extends PdfSheet, Columns {
  readonly table: PaperTable;
}

function columnsFor(typeface: Typeface, table: PaperTable, sheetPt: number): Columns {
  const columns = columnsOn(table, 'paper');
  const wishes = columns.map(({ column, index }) => wishOf(typeface, table, column, index));
  const gaps = gapPt * (columns.length - 1);
  const room = sheetPt - 2 * marginPt;
  const widths = columnWidths(wishes, room - gaps);
  if (widths) return { columns, widths, scale: 1 };
  const min = wishes.map(minWidthPt);
  return { columns, widths: min, scale: room / min.reduce((sum, widthPt) => sum + widthPt, gaps) };
}

function wishOf(
  { regular, bold, letters }: Typeface,
  table: PaperTable,
  column: PaperColumn,
  index: number,
): ColumnWish {
  if (column.kind === 'tick') return { wholePt: 12, minPt: 12, isUnbroken: true, isFixed: true };
  const rows = table.sections.flatMap((section) => section.rows);
  const totals = [
    ...table.sections.flatMap(({ total }) => (total ? [total] : [])),
    ...(table.total ? [table.total] : []),
  ];
  const wide = (text: string, face: Face, size: number) => face.widthPt(letters(text), size);
  const head = letters(column.head)
    .split(' ')
    .map((word) => wide(word, bold, 8));
  const texts = rows.map((row) => wide(asCell(row[index]).text, regular, bodyPt));
  const sums = totals.map((row) => wide(asCell(row[index]).text, bold, bodyPt));
  const notes = rows.map((row) => Math.min(160, wide(asCell(row[index]).note ?? '', regular, notePt)));
  const wholePt = Math.max(...head, ...texts, ...sums, ...notes) + 0.5;
  if (column.kind === 'number') {
    const wholeHead = Math.min(headPt, wide(column.head, bold, 8));
    return { wholePt: Math.max(wholePt, wholeHead), minPt: wholePt, isUnbroken: true };
  }
  const words = rows.flatMap((row) => asCell(row[index]).text.split(/\s+/));
  const minPt = Math.max(...head, ...words.map((word) => wide(word, regular, bodyPt))) + 0.5;
  return { wholePt, minPt, isUnbroken: false };
}

function writeHead(sheet: TableSheet): void {
  const written = { size: 8 * sheet.scale, face: sheet.typeface.bold, color: soft };
  const cells = sheet.columns.map(({ column }, place) =>
    column.kind === 'tick' ? [] : cellLines(sheet, column.head, place, written),
  );
  const lineCount = Math.max(1, ...cells.map((lines) => lines.length));
  const top = sheet.y;
  cells.forEach((lines, place) => {
    // Heads stand on their line, whatever their number of lines.
    const skipped = lineCount - lines.length;
    lines.forEach((line, index) => {
      writeCell(sheet, line, place, top - (index + skipped + 1) * 10 * sheet.scale, written);
    });
  });
  sheet.y = top - lineCount * 10 * sheet.scale - 5;
  ruleOff(sheet, soft, 0.8);
}

function writeRow(sheet: TableSheet, row: PaperRow, isTotal: boolean): void {
  const height = rowHeight(sheet, row);
  if (sheet.y - height < marginPt) {
    turnPage(sheet);
    writeHead(sheet);
  }
  const { regular, bold } = sheet.typeface;
  const top = sheet.y - airOf(sheet).above;
  const body = { size: bodyPt * sheet.scale, face: isTotal ? bold : regular };
  const small = { size: notePt * sheet.scale, face: regular, color: soft };
  const lowest = sheet.y - height + airOf(sheet).all - airOf(sheet).above;
  sheet.columns.forEach(({ column, index }, place) => {
    const cell = asCell(row[index]);
    if (column.kind === 'tick') {
      if (!isTotal && cell.text !== noTick()) writeTick(sheet, place, top, cell.text !== '');
      return;
    }
    let y = top;
    for (const line of cellLines(sheet, cell.text, place, body)) {
      y -= 12 * sheet.scale;
      if (y >= lowest) writeCell(sheet, line, place, y + 2, body);
    }
    for (const line of cell.note ? cellLines(sheet, cell.note, place, small) : []) {
      y -= 9.5 * sheet.scale;
      if (y >= lowest) writeCell(sheet, line, place, y + 2, small);
    }
  });
  sheet.y -= height;
  if (!isTotal) ruleOff(sheet, hair, 0.5);
}

function airOf({ table }: TableSheet) {
  return table.isDense ? airPt.dense : airPt.usual;
}

/** At most what a page holds: what is longer is cut off below. */
function rowHeight(sheet: TableSheet, row: PaperRow): number {
  const { regular } = sheet.typeface;
  const heights = sheet.columns.map(({ column, index }, place) => {
    if (column.kind === 'tick') return 0;
    const { text, note } = asCell(row[index]);
    const body = { size: bodyPt * sheet.scale, face: regular };
    const small = { size: notePt * sheet.scale, face: regular };
    const noteCount = note ? cellLines(sheet, note, place, small).length : 0;
    return (cellLines(sheet, text, place, body).length * 12 + noteCount * 9.5) * sheet.scale;
  });
  return Math.min(
    Math.max(12 * sheet.scale, ...heights) + airOf(sheet).all,
    sheet.size[1] - 2 * marginPt - 60,
  );
}

function cellLines(
  sheet: TableSheet,
  text: string,
  place: number,
  { size, face }: Written,
): readonly string[] {
  const width = (sheet.widths[place] ?? 0) * sheet.scale;
  return brokenLines(sheet.typeface.letters(text), width + 0.01, (part) => face.widthPt(part, size));
}

function writeCell(sheet: TableSheet, text: string, place: number, y: number, written: Written): void {
  const width = (sheet.widths[place] ?? 0) * sheet.scale;
  const isRight = sheet.columns[place]?.column.kind === 'number';
  const x = leftOf(sheet, place) + (isRight ? width - written.face.widthPt(text, written.size) : 0);
  writeAt(sheet, text, { x, y }, written);
}

function leftOf(sheet: TableSheet, place: number): number {
  return (
    marginPt + sheet.widths.slice(0, place).reduce((sum, width) => sum + (width + gapPt) * sheet.scale, 0)
  );
}

function writeTick(sheet: TableSheet, place: number, top: number, isTicked: boolean): void {
  const side = 9;
  const x = leftOf(sheet, place);
  const y = top - side - 1;
  sheet.page.drawRectangle({ x, y, width: side, height: side, borderColor: soft, borderWidth: 0.8 });
  if (!isTicked) return;
  const stroke = { thickness: 1.2, color: ink };
  sheet.page.drawLine({ start: { x: x + 2, y: y + 4.5 }, end: { x: x + 4, y: y + 2 }, ...stroke });
  sheet.page.drawLine({ start: { x: x + 4, y: y + 2 }, end: { x: x + 7.5, y: y + 7.5 }, ...stroke });
}
