/** A table as PDF: text that can be selected and searched, numbers to the right, the head again on each page. */
import { PDFDocument, type PDFFont, type PDFPage, StandardFonts, rgb } from '@cantoo/pdf-lib';
import {
  asCell,
  columnsOn,
  noTick,
  type PaperColumn,
  type PaperRow,
  type PaperTable,
} from './paper-table.ts';
import { plainLetters } from './plain-letters.ts';
import { brokenLines, type ColumnWish, columnWidths, leastWidthPt, onOneLine } from './table-columns.ts';

export interface TablePdf {
  readonly bytes: Uint8Array;
  /** Letters that the PDF's typeface does not have: they stand in a plainer spelling or as ?. */
  readonly changedLetters: readonly string[];
}

export interface PdfOptions {
  readonly format: 'A4' | 'letter';
  /** "14 Oct 2026": stands at the foot of each page; '' for none. */
  readonly day: string;
}

const formats = { A4: [595.28, 841.89], letter: [612, 792] } as const;
const marginPt = 48;
const gapPt = 14;
const bodyPt = 9.5;
const notePt = 7.5;
/** A head of numbers that is longer goes over several lines. */
const headPt = 80;
const ink = rgb(0.09, 0.15, 0.16);
const soft = rgb(0.32, 0.39, 0.41);
const hair = rgb(0.78, 0.82, 0.8);

export async function tablePdf(table: PaperTable, { format, day }: PdfOptions): Promise<TablePdf> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const plain = await pdf.embedFont(StandardFonts.Helvetica);
  const bold = await pdf.embedFont(StandardFonts.HelveticaBold);
  const known = new Set(plain.getCharacterSet());
  const changed = new Set<string>();
  const letters = (text: string): string => {
    const written = plainLetters(text, (codePoint) => known.has(codePoint));
    for (const letter of written.changed) changed.add(letter);
    return written.text;
  };
  pdf.setTitle(letters(table.title));
  const sheet = firstSheet({ pdf, plain, bold, letters, table, format });
  writeTable(sheet);
  if (changed.size > 0) {
    writeNote(
      sheet,
      'This file’s typeface lacks some letters: they stand in a plainer spelling or as ?. Print and CSV have them as typed.',
    );
  }
  writeFeet(sheet, day);
  return { bytes: await pdf.save(), changedLetters: [...changed] };
}

interface Tools {
  readonly pdf: PDFDocument;
  readonly plain: PDFFont;
  readonly bold: PDFFont;
  readonly letters: (text: string) => string;
  readonly table: PaperTable;
  readonly format: PdfOptions['format'];
}

interface Written {
  readonly size: number;
  readonly font: PDFFont;
  readonly color?: typeof ink;
}

/** The page that is written now, from the top down; a new one begins where it is full. */
interface Sheet extends Tools {
  readonly columns: readonly { readonly column: PaperColumn; readonly index: number }[];
  readonly widths: readonly number[];
  /** Below 1 where even a sheet on its side is too narrow for the numbers. */
  readonly scale: number;
  readonly size: readonly [number, number];
  page: PDFPage;
  y: number;
}

function firstSheet(tools: Tools): Sheet {
  const columns = columnsOn(tools.table, 'paper');
  const [width, height] = formats[tools.format];
  const wishes = columns.map(({ column, index }) => wishOf(tools, column, index));
  const gaps = gapPt * (columns.length - 1);
  const upright = columnWidths(wishes, width - 2 * marginPt - gaps);
  const onSide = upright ? null : columnWidths(wishes, height - 2 * marginPt - gaps);
  const size = upright ? ([width, height] as const) : ([height, width] as const);
  const least = wishes.map(leastWidthPt);
  const narrowestPt = least.reduce((sum, widthPt) => sum + widthPt, gaps);
  return {
    ...tools,
    columns,
    widths: upright ?? onSide ?? least,
    scale: upright || onSide ? 1 : (size[0] - 2 * marginPt) / narrowestPt,
    size,
    page: tools.pdf.addPage([...size]),
    y: size[1] - marginPt,
  };
}

function writeTable(sheet: Sheet): void {
  const { table, plain, bold } = sheet;
  writeParagraph(sheet, table.title, { size: 18, font: bold }, 0);
  if (table.lead !== '') writeParagraph(sheet, table.lead, { size: 10, font: plain, color: soft }, 4);
  for (const section of table.sections) {
    const firstRow = section.rows[0] ?? section.total;
    const needed = 44 + (section.title === '' ? 0 : 30) + (firstRow ? rowHeight(sheet, firstRow) : 0);
    if (sheet.y - needed < marginPt) turnPage(sheet);
    sheet.y -= 12;
    if (section.title !== '') writeParagraph(sheet, section.title, { size: 12, font: bold }, 6);
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

function writeNote(sheet: Sheet, note: string): void {
  writeParagraph(sheet, note, { size: 8.5, font: sheet.plain, color: soft }, 4);
}

function writeFeet(sheet: Sheet, day: string): void {
  const { pdf, plain, letters, table } = sheet;
  const pages = pdf.getPages();
  const [width] = sheet.size;
  pages.forEach((page, index) => {
    const count = `Page ${index + 1} of ${pages.length}`;
    const measure = (text: string) => plain.widthOfTextAtSize(text, 8);
    const left = onOneLine(
      letters(day === '' ? table.title : `${table.title}, ${day}`),
      width - 2 * marginPt - measure(count) - gapPt,
      measure,
    );
    const at = { y: marginPt - 20, size: 8, font: plain, color: soft };
    page.drawText(left, { ...at, x: marginPt });
    page.drawText(count, { ...at, x: width - marginPt - measure(count) });
  });
}

function wishOf(tools: Tools, column: PaperColumn, index: number): ColumnWish {
  const { table, plain, bold, letters } = tools;
  if (column.kind === 'tick') return { wholePt: 12, leastPt: 12, isUnbroken: true, isFixed: true };
  const rows = table.sections.flatMap((section) => section.rows);
  const totals = [
    ...table.sections.flatMap(({ total }) => (total ? [total] : [])),
    ...(table.total ? [table.total] : []),
  ];
  const wide = (text: string, font: PDFFont, size: number) => font.widthOfTextAtSize(letters(text), size);
  const head = letters(column.head)
    .split(' ')
    .map((word) => wide(word, bold, 8));
  const texts = rows.map((row) => wide(asCell(row[index]).text, plain, bodyPt));
  const sums = totals.map((row) => wide(asCell(row[index]).text, bold, bodyPt));
  const notes = rows.map((row) => Math.min(160, wide(asCell(row[index]).note ?? '', plain, notePt)));
  const wholePt = Math.max(...head, ...texts, ...sums, ...notes) + 0.5;
  if (column.kind === 'number') {
    const wholeHead = Math.min(headPt, wide(column.head, bold, 8));
    return { wholePt: Math.max(wholePt, wholeHead), leastPt: wholePt, isUnbroken: true };
  }
  const words = rows.flatMap((row) => asCell(row[index]).text.split(/\s+/));
  const leastPt = Math.max(...head, ...words.map((word) => wide(word, plain, bodyPt))) + 0.5;
  return { wholePt, leastPt, isUnbroken: false };
}

function writeHead(sheet: Sheet): void {
  const { bold } = sheet;
  const written = { size: 8 * sheet.scale, font: bold, color: soft };
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

function writeRow(sheet: Sheet, row: PaperRow, isTotal: boolean): void {
  const height = rowHeight(sheet, row);
  if (sheet.y - height < marginPt) {
    turnPage(sheet);
    writeHead(sheet);
  }
  const { plain, bold } = sheet;
  const top = sheet.y - 5;
  const body = { size: bodyPt * sheet.scale, font: isTotal ? bold : plain };
  const small = { size: notePt * sheet.scale, font: plain, color: soft };
  const lowest = sheet.y - height + 4;
  sheet.columns.forEach(({ column, index }, place) => {
    const cell = asCell(row[index]);
    if (column.kind === 'tick') {
      if (!isTotal && cell.text !== noTick) writeTick(sheet, place, top, cell.text !== '');
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

/** At most what a page holds: what is longer is cut off below. */
function rowHeight(sheet: Sheet, row: PaperRow): number {
  const { plain } = sheet;
  const heights = sheet.columns.map(({ column, index }, place) => {
    if (column.kind === 'tick') return 0;
    const { text, note } = asCell(row[index]);
    const body = { size: bodyPt * sheet.scale, font: plain };
    const small = { size: notePt * sheet.scale, font: plain };
    const noteCount = note ? cellLines(sheet, note, place, small).length : 0;
    return (cellLines(sheet, text, place, body).length * 12 + noteCount * 9.5) * sheet.scale;
  });
  return Math.min(Math.max(12 * sheet.scale, ...heights) + 9, sheet.size[1] - 2 * marginPt - 60);
}

function cellLines(sheet: Sheet, text: string, place: number, { size, font }: Written): readonly string[] {
  const width = (sheet.widths[place] ?? 0) * sheet.scale;
  return brokenLines(sheet.letters(text), width + 0.01, (part) => font.widthOfTextAtSize(part, size));
}

function writeCell(
  sheet: Sheet,
  text: string,
  place: number,
  y: number,
  { size, font, color = ink }: Written,
): void {
  const width = (sheet.widths[place] ?? 0) * sheet.scale;
  const isRight = sheet.columns[place]?.column.kind === 'number';
  const x = leftOf(sheet, place) + (isRight ? width - font.widthOfTextAtSize(text, size) : 0);
  if (text !== '') sheet.page.drawText(text, { x, y, size, font, color });
}

function leftOf(sheet: Sheet, place: number): number {
  return (
    marginPt + sheet.widths.slice(0, place).reduce((sum, width) => sum + (width + gapPt) * sheet.scale, 0)
  );
}

function writeTick(sheet: Sheet, place: number, top: number, isTicked: boolean): void {
  const side = 9;
  const x = leftOf(sheet, place);
  const y = top - side - 1;
  sheet.page.drawRectangle({ x, y, width: side, height: side, borderColor: soft, borderWidth: 0.8 });
  if (!isTicked) return;
  const stroke = { thickness: 1.2, color: ink };
  sheet.page.drawLine({ start: { x: x + 2, y: y + 4.5 }, end: { x: x + 4, y: y + 2 }, ...stroke });
  sheet.page.drawLine({ start: { x: x + 4, y: y + 2 }, end: { x: x + 7.5, y: y + 7.5 }, ...stroke });
}

function writeParagraph(sheet: Sheet, text: string, written: Written, before: number): void {
  const { size, font, color = ink } = written;
  const measure = (part: string) => font.widthOfTextAtSize(part, size);
  const lines = brokenLines(sheet.letters(text), sheet.size[0] - 2 * marginPt, measure);
  sheet.y -= before;
  for (const line of lines) {
    if (sheet.y - size * 1.35 < marginPt) turnPage(sheet);
    sheet.y -= size * 1.35;
    if (line !== '') sheet.page.drawText(line, { x: marginPt, y: sheet.y + size * 0.25, size, font, color });
  }
}

function ruleOff(sheet: Sheet, color: typeof ink, thickness: number): void {
  const end = { x: sheet.size[0] - marginPt, y: sheet.y };
  sheet.page.drawLine({ start: { x: marginPt, y: sheet.y }, end, thickness, color });
}

function turnPage(sheet: Sheet): void {
  sheet.page = sheet.pdf.addPage([...sheet.size]);
  sheet.y = sheet.size[1] - marginPt;
}
