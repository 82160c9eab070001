/** The page of a PDF that is written now, from the top down; a new one begins where it is full. Sizes in points. */
import { say } from '../wording/say.ts';
import { type PDFDocument, type PDFPage, rgb } from '@cantoo/pdf-lib';
import { brokenLines, onOneLine } from './table-columns.ts';
import type { Face, Typeface } from './typeface.ts';

export type PaperFormat = 'A4' | 'letter';

export interface PdfOptions {
  readonly format: PaperFormat;
  /** "14 Oct 2026": stands at the foot of each page; '' for none. */
  readonly day: string;
}

/** Width and height upright (ISO 216; Letter is 8 1/2 x 11 in). */
export const paperPt: Readonly<Record<PaperFormat, readonly [number, number]>> = {
  A4: [595.28, 841.89],
  letter: [612, 792],
};

export const ptPerMm = 72 / 25.4;
export const marginPt = 48;
/** Room between two columns, and between the two ends of a foot. */
export const gapPt = 14;

export const ink = rgb(0.09, 0.15, 0.16);
export const soft = rgb(0.32, 0.39, 0.41);
export const hair = rgb(0.78, 0.82, 0.8);

export interface PdfSheet {
  readonly pdf: PDFDocument;
  readonly typeface: Typeface;
  readonly size: readonly [number, number];
  page: PDFPage;
  /** Where the next thing is written; falls. */
  y: number;
}

export interface Written {
  readonly size: number;
  readonly face: Face;
  readonly color?: typeof ink;
}

export function firstSheet(pdf: PDFDocument, typeface: Typeface, size: readonly [number, number]): PdfSheet {
  return { pdf, typeface, size, page: pdf.addPage([...size]), y: size[1] - marginPt };
}

export function turnPage(sheet: PdfSheet): void {
  sheet.page = sheet.pdf.addPage([...sheet.size]);
  sheet.y = sheet.size[1] - marginPt;
}

/** text: as `letters` of the typeface gave it. */
export function writeAt(
  { page }: PdfSheet,
  text: string,
  { x, y }: { readonly x: number; readonly y: number },
  { size, face, color = ink }: Written,
): void {
  if (text !== '') page.drawText(text, { x, y, size, font: face.font, color });
}

/** A text of any length over the whole width; before: room above it. */
export function writeParagraph(sheet: PdfSheet, text: string, written: Written, before: number): void {
  const { size, face } = written;
  const lines = brokenLines(sheet.typeface.letters(text), sheet.size[0] - 2 * marginPt, (part) =>
    face.widthPt(part, size),
  );
  sheet.y -= before;
  for (const line of lines) {
    if (sheet.y - size * 1.35 < marginPt) turnPage(sheet);
    sheet.y -= size * 1.35;
    writeAt(sheet, line, { x: marginPt, y: sheet.y + size * 0.25 }, written);
  }
}

export function writeNote(sheet: PdfSheet, note: string): void {
  writeParagraph(sheet, note, { size: 8.5, face: sheet.typeface.regular, color: soft }, 4);
}

/** A line over the whole width. */
export function ruleOff(sheet: PdfSheet, color: typeof ink, thickness: number): void {
  const end = { x: sheet.size[0] - marginPt, y: sheet.y };
  sheet.page.drawLine({ start: { x: marginPt, y: sheet.y }, end, thickness, color });
}

/** Where letters are missing, the last page says so; the foot of each says what it belongs to. */
export function finishSheets(sheet: PdfSheet, title: string, day: string): void {
  const { pdf, typeface } = sheet;
  const said = typeface.letters(day === '' ? title : `${title}, ${day}`);
  if (typeface.missing.size > 0) writeNote(sheet, say('pdf-sheet.this-file-s-typeface-lacks-some'));
  const measure = (text: string) => typeface.regular.widthPt(text, 8);
  const pages = pdf.getPages();
  pages.forEach((page, index) => {
    const { width } = page.getSize();
    const count = say('pdf-sheet.page-of', { index: index + 1, pagesCount: pages.length });
    const left = onOneLine(said, width - 2 * marginPt - measure(count) - gapPt, measure);
    const at = { y: marginPt - 20, size: 8, font: typeface.regular.font, color: soft };
    page.drawText(left, { ...at, x: marginPt });
    page.drawText(count, { ...at, x: width - marginPt - measure(count) });
  });
}
