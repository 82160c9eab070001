/** Shelf labels as PDF: words at the left, a square code at the right, and marks to cut along. */
import { say } from '../wording/say.ts';
import {
  fill,
  PDFDocument,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  setFillingColor,
} from '@cantoo/pdf-lib';
import qrcode from 'qrcode-generator';
import { hair, ink, paperPt, type PaperFormat, ptPerMm, soft } from './pdf-sheet.ts';
import { type LabelGrid, labelGrids, labelSpot, type ShelfLabel } from './shelf-labels.ts';
import { brokenLines, onOneLine } from './table-columns.ts';
import { embedTypeface, type Typeface, type TypefaceFiles, type WrittenPdf } from './typeface.ts';

const paddingMm = 3;
const codeMm = 18;
/** White around the code: four of its modules, as ISO/IEC 18004 asks. */
const quietMm = 2.4;
const cutMarkMm = 2;

export interface LabelOptions {
  readonly format: PaperFormat;
  /** Labels of the first sheet that are used already. */
  readonly usedCount: number;
}

/** labels: one at least. */
export async function labelsPdf(
  labels: readonly ShelfLabel[],
  { format, usedCount }: LabelOptions,
  files: TypefaceFiles,
): Promise<WrittenPdf> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const typeface = await embedTypeface(pdf, files);
  pdf.setTitle(say('common.shelf-labels'));
  const grid = labelGrids[format];
  const pages: PDFPage[] = [];
  labels.forEach((label, index) => {
    const { sheet, leftMm, topMm } = labelSpot(grid, usedCount + index);
    const page = pages[sheet] ?? pdf.addPage([...paperPt[format]]);
    pages[sheet] = page;
    const corner = { left: leftMm * ptPerMm, top: paperPt[format][1] - topMm * ptPerMm };
    writeLabel(page, typeface, grid, label, corner);
  });
  return { bytes: await pdf.save(), missingLetters: [...typeface.missing] };
}

interface Corner {
  readonly left: number;
  readonly top: number;
}

function writeLabel(
  page: PDFPage,
  { regular, bold, letters }: Typeface,
  grid: LabelGrid,
  label: ShelfLabel,
  { left, top }: Corner,
): void {
  const padding = paddingMm * ptPerMm;
  const room = (grid.labelWidthMm - 2 * paddingMm - codeMm - quietMm) * ptPerMm;
  let y = top - padding;
  const write = (text: string, size: number, face: Typeface['bold'], color: typeof ink) => {
    y -= size * 1.28;
    page.drawText(text, { x: left + padding, y: y + size * 0.28, size, font: face.font, color });
  };
  const measured = (face: Typeface['bold'], size: number) => (part: string) => face.widthPt(part, size);
  const [first = '', ...more] = brokenLines(letters(label.name), room, measured(bold, 9));
  write(first, 9, bold, ink);
  if (more.length > 0) write(onOneLine(more.join(' '), room, measured(bold, 9)), 9, bold, ink);
  if (label.colour !== '') {
    write(onOneLine(letters(label.colour), room, measured(regular, 8)), 8, regular, soft);
  }
  y -= 2.5;
  for (const line of label.lines) {
    write(onOneLine(letters(line), room, measured(regular, 7)), 7, regular, ink);
  }
  drawCode(page, label.code, {
    left: left + (grid.labelWidthMm - paddingMm - codeMm) * ptPerMm,
    top: top - ((grid.labelHeightMm - codeMm) / 2) * ptPerMm,
  });
  cutMarks(page, grid, { left, top });
}

/** The text as a square code (QR, ISO/IEC 18004), as bytes, mending itself where up to 15 % of it is spoiled. */
function drawCode(page: PDFPage, text: string, { left, top }: Corner): void {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  const side = (codeMm * ptPerMm) / count;
  const bars = Array.from({ length: count }, (_, row) => row).flatMap((row) => {
    const runs: { from: number; to: number }[] = [];
    for (let column = 0; column < count; column++) {
      if (!code.isDark(row, column)) continue;
      const last = runs.at(-1);
      if (last && last.to === column) last.to = column + 1;
      else runs.push({ from: column, to: column + 1 });
    }
    return runs.map(({ from, to }) =>
      rectangle(left + from * side, top - (row + 1) * side, (to - from) * side, side),
    );
  });
  // One shape, so that no hair of white shows between its modules.
  page.pushOperators(pushGraphicsState(), setFillingColor(ink), ...bars, fill(), popGraphicsState());
}

/** At the corners alone: a frame that is cut beside shows. */
function cutMarks(page: PDFPage, grid: LabelGrid, { left, top }: Corner): void {
  const [right, low] = [left + grid.labelWidthMm * ptPerMm, top - grid.labelHeightMm * ptPerMm];
  const leg = cutMarkMm * ptPerMm;
  const corners = [
    [left, top, 1, -1],
    [right, top, -1, -1],
    [left, low, 1, 1],
    [right, low, -1, 1],
  ] as const;
  for (const [x, y, inX, inY] of corners) {
    const line = { start: { x, y }, thickness: 0.4, color: hair };
    page.drawLine({ ...line, end: { x: x + inX * leg, y } });
    page.drawLine({ ...line, end: { x, y: y + inY * leg } });
  }
}
