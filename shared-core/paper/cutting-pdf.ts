/** A cutting sheet as PDF: each length with its lay to scale, then the table of what lies where. */
import { PDFDocument } from '@cantoo/pdf-lib';
import {
  type CuttingPart,
  type CuttingSheet,
  drawingScale,
  lowerEdge,
  overlapMm,
  wholeWidthMm,
  type Stretch,
  stretchesOf,
} from './cutting-sheet.ts';
import { clothHeightPt, drawLay, rulerPt } from './lay-drawing.ts';
import {
  finishSheets,
  firstSheet,
  marginPt,
  paperPt,
  type PdfOptions,
  type PdfSheet,
  ptPerMm,
  soft,
  turnPage,
  writeParagraph,
} from './pdf-sheet.ts';
import { writeTable } from './table-pdf.ts';
import { embedTypeface, type TypefaceFiles, type WrittenPdf } from './typeface.ts';

/** What the head of a page takes above the drawing at most. */
const headPt = 90;
/** Between the head and the numbers of the upper ruler; inside of `headPt`. */
const headAirPt = 8;
/** The words below the drawing. */
const legendPt = 16;

/** cutting: with one part at least. */
export async function cuttingPdf(
  cutting: CuttingSheet,
  { format, day }: PdfOptions,
  files: TypefaceFiles,
): Promise<WrittenPdf> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const typeface = await embedTypeface(pdf, files);
  pdf.setTitle(typeface.letters(cutting.title));
  const [height, width] = paperPt[format];
  const sheet = firstSheet(pdf, typeface, [width, height]);
  cutting.parts.forEach((part, index) => {
    if (index > 0) turnPage(sheet);
    writePart(sheet, cutting, part);
  });
  finishSheets(sheet, cutting.title, day);
  return { bytes: await pdf.save(), missingLetters: [...typeface.missing] };
}

function writePart(sheet: PdfSheet, { system, title }: CuttingSheet, part: CuttingPart): void {
  const [width, height] = sheet.size;
  const roomPt = {
    width: width - 2 * marginPt - rulerPt.left,
    height: height - 2 * marginPt - headPt - 2 * rulerPt.across - legendPt,
  };
  const scale = drawingScale(
    { widthMm: wholeWidthMm(part), lengthMm: part.usedMm },
    { widthMm: roomPt.width / ptPerMm, heightMm: roomPt.height / ptPerMm },
  );
  const stretches = stretchesOf(part.usedMm, (roomPt.width / ptPerMm) * scale);
  stretches.forEach((stretch, index) => {
    if (index > 0) turnPage(sheet);
    writeHead(sheet, title, part, pageWords(stretches, index));
    const top = sheet.y - rulerPt.across - headAirPt;
    const origin = { x: marginPt + rulerPt.left, y: top - clothHeightPt(part, scale) };
    drawLay(sheet, { part, system, stretch, scale, origin });
    sheet.y = origin.y - rulerPt.across;
    const unit = system === 'metric' ? 'cm' : 'inches';
    writeParagraph(
      sheet,
      `1 : ${scale}. Numbers at the edges in ${unit}, from the start and from the lower ${lowerEdge(part)}. Arrows show the grain.`,
      { size: 7.5, face: sheet.typeface.regular, color: soft },
      2,
    );
  });
  for (const table of part.tables) writeTable(sheet, table);
}

function writeHead(sheet: PdfSheet, title: string, part: CuttingPart, pages: string): void {
  const { regular, bold } = sheet.typeface;
  writeParagraph(sheet, title, { size: 9, face: regular, color: soft }, 0);
  writeParagraph(sheet, part.title, { size: 18, face: bold }, 0);
  writeParagraph(sheet, part.facts, { size: 10, face: regular, color: soft }, 2);
  if (pages !== '') writeParagraph(sheet, pages, { size: 8.5, face: bold }, 1);
}

/** "Part 2 of 3 of this length. Its first 10 cm are the last of the page before." */
function pageWords(stretches: readonly Stretch[], index: number): string {
  if (stretches.length === 1) return '';
  const overlap = `${overlapMm / 10} cm (4 in)`;
  return [
    `Stretch ${index + 1} of ${stretches.length} of this length.`,
    index > 0 ? `Its first ${overlap} are also on the page before.` : '',
    index < stretches.length - 1 ? `Its last ${overlap} are also on the next page.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}
