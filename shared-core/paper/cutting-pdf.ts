/** A cutting sheet as PDF: each length with its lay to scale, then the table of what lies where. */
import { codeWords } from '../wording/code-words.ts';
import { say } from '../wording/say.ts';
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
    const unit = codeWords(system === 'metric' ? 'cm' : 'inches');
    writeParagraph(
      sheet,
      say('cutting-pdf.1-numbers-at-the-edges-in', { scale, unit, lowerEdge: codeWords(lowerEdge(part)) }),
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
  const overlap = say('cutting-pdf.cm-4-in', { overlapMm: overlapMm / 10 });
  return [
    say('cutting-pdf.stretch-of-of-this-length', { index: index + 1, stretchesCount: stretches.length }),
    index > 0 ? say('cutting-pdf.its-first-are-also-on-the', { overlap }) : '',
    index < stretches.length - 1 ? say('cutting-pdf.its-last-are-also-on-the', { overlap }) : '',
  ]
    .filter(Boolean)
    .join(' ');
}
