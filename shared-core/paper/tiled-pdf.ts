/**
 * A drawing at true size as PDF: a first page with a square to measure and a map of the sheets, then the sheets, each
 * with its frame, its name in the map and marks where it meets its neighbours.
 */
import { say } from '../wording/say.ts';
import {
  clip,
  endPath,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  setDashPattern,
  setLineWidth,
  stroke,
} from '@cantoo/pdf-lib';
import { ink, ptPerMm, soft } from './pdf-sheet.ts';
import { lineLooks, pathOf } from './tile-lines.ts';
import {
  paperSizes,
  type SheetDrawing,
  type Tile,
  type TileFormat,
  type Tiling,
  tileMarginMm,
  tilingOf,
} from './tiles.ts';
import { embedTypeface, type Typeface, type TypefaceFiles, type WrittenPdf } from './typeface.ts';

export interface TiledPdf extends WrittenPdf {
  readonly sheetCount: number;
}

/** The square that tells whether a print is at true size. */
export const testSquareMm = 100;
const hairMm = 0.15;
const markMm = 4;

/** day: "14 Oct 2026"; '' for none. */
export async function tiledPdf(
  drawing: SheetDrawing,
  { format, day }: { readonly format: TileFormat; readonly day: string },
  files: TypefaceFiles,
): Promise<TiledPdf> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const typeface = await embedTypeface(pdf, files);
  pdf.setTitle(typeface.letters(drawing.title));
  const tiling = tilingOf(drawing, format);
  const tools: Tools = { pdf, typeface, drawing, tiling, format };
  writeMapPage(tools, day);
  for (const tile of tiling.tiles) writeTile(tools, tile);
  return {
    bytes: await pdf.save(),
    sheetCount: tiling.tiles.length,
    missingLetters: [...typeface.missing],
  };
}

interface Tools {
  readonly pdf: PDFDocument;
  readonly typeface: Typeface;
  readonly drawing: SheetDrawing;
  readonly tiling: Tiling;
  readonly format: TileFormat;
}

function addPage({ pdf, format }: Tools): PDFPage {
  const { widthMm, heightMm } = paperSizes[format];
  return pdf.addPage([widthMm * ptPerMm, heightMm * ptPerMm]);
}

function write(
  { typeface: { regular, letters } }: Tools,
  page: PDFPage,
  text: string,
  x: number,
  y: number,
  sizeMm: number,
): void {
  page.drawText(letters(text), {
    x: x * ptPerMm,
    y: y * ptPerMm,
    size: sizeMm * ptPerMm,
    font: regular.font,
    color: ink,
  });
}

/** "B3": columns by letter, rows by number, as on a map. */
function tileName({ row, column }: Pick<Tile, 'row' | 'column'>): string {
  const letter = (at: number): string =>
    at <= 26 ? String.fromCharCode(64 + at) : letter(Math.floor((at - 1) / 26)) + letter(((at - 1) % 26) + 1);
  return `${letter(column)}${row}`;
}

function writeMapPage(tools: Tools, day: string): void {
  const { drawing, tiling, format } = tools;
  const page = addPage(tools);
  const { widthMm, heightMm } = paperSizes[format];
  const left = tileMarginMm + 4;
  let top = heightMm - tileMarginMm - 8;
  write(tools, page, drawing.title, left, top, 6);
  const notes = [
    say('tiled-pdf.sheets-of', {
      tilesCount: tiling.tiles.length,
      format: format === 'letter' ? say('common.letter') : format,
      day: day === '' ? '' : `, ${day}`,
    }),
    say('tiled-pdf.print-at-100-without-fitting-to'),
    say('tiled-pdf.cut-each-sheet-along-its-frame'),
  ];
  for (const note of notes) {
    top -= 7;
    write(tools, page, note, left, top, 3.4);
  }
  top -= testSquareMm + 8;
  page.pushOperators(
    pushGraphicsState(),
    setLineWidth(0.3 * ptPerMm),
    rectangle(left * ptPerMm, top * ptPerMm, testSquareMm * ptPerMm, testSquareMm * ptPerMm),
    stroke(),
    popGraphicsState(),
  );
  write(
    tools,
    page,
    say('tiled-pdf.mm-each-way-3-94-in', { testSquareMm }),
    left + 4,
    top + testSquareMm / 2,
    4,
  );
  // Beside the square or below it, wherever the map comes out larger.
  const low = tileMarginMm + 4;
  const besideX = left + testSquareMm + 10;
  const places = [
    { x: left, y: low, width: widthMm - 2 * left, height: top - low - 8 },
    { x: besideX, y: low, width: widthMm - left - besideX, height: top + testSquareMm - low },
  ];
  const [best] = places.sort((one, other) => mapScale(tiling, other) - mapScale(tiling, one));
  writeMap(tools, page, best!);
}

interface MapPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function mapScale(tiling: Tiling, { width, height }: MapPlace): number {
  const full = {
    width: tiling.columnCount * tiling.tileWidthMm,
    height: tiling.rowCount * tiling.tileHeightMm,
  };
  return Math.min(width / full.width, height / full.height, 0.5);
}

/** The drawing small, under the grid of its sheets. */
function writeMap(tools: Tools, page: PDFPage, at: MapPlace): void {
  const { drawing, tiling } = tools;
  const { x } = at;
  const scale = mapScale(tiling, at);
  const top = at.y + at.height;
  const place = ({ x: atX, y: atY }: { x: number; y: number }) => ({
    x: (x + atX * scale) * ptPerMm,
    y: (top - (drawing.heightMm - atY) * scale) * ptPerMm,
  });
  const outlines = drawing.lines.filter(({ kind }) => kind === 'cut' || kind === 'fold');
  page.pushOperators(
    pushGraphicsState(),
    setLineWidth(0.2 * ptPerMm),
    ...outlines.flatMap((line) => pathOf(line, place)),
    popGraphicsState(),
  );
  for (const tile of tiling.tiles) {
    const corner = { x: x + tile.fromX * scale, y: top - tile.row * tiling.tileHeightMm * scale };
    page.drawRectangle({
      x: corner.x * ptPerMm,
      y: corner.y * ptPerMm,
      width: tiling.tileWidthMm * scale * ptPerMm,
      height: tiling.tileHeightMm * scale * ptPerMm,
      borderWidth: hairMm * ptPerMm,
      borderColor: soft,
    });
    const sizeMm = Math.max(1.6, Math.min(4, tiling.tileWidthMm * scale * 0.3));
    write(tools, page, tileName(tile), corner.x + 1, corner.y + 1, sizeMm);
  }
}

function writeTile(tools: Tools, tile: Tile): void {
  const { drawing, tiling } = tools;
  const page = addPage(tools);
  const { tileWidthMm: width, tileHeightMm: height } = tiling;
  const place = ({ x, y }: { x: number; y: number }) => ({
    x: (tileMarginMm + x - tile.fromX) * ptPerMm,
    y: (tileMarginMm + y - tile.fromY) * ptPerMm,
  });
  page.pushOperators(
    pushGraphicsState(),
    rectangle(tileMarginMm * ptPerMm, tileMarginMm * ptPerMm, width * ptPerMm, height * ptPerMm),
    clip(),
    endPath(),
  );
  for (const line of tile.lines) {
    const { widthMm, dash } = lineLooks[line.kind];
    page.pushOperators(
      setLineWidth(widthMm * ptPerMm),
      setDashPattern(
        dash.map((mm) => mm * ptPerMm),
        0,
      ),
      ...pathOf(line, place),
    );
  }
  for (const { x, y, sizeMm, text } of drawing.texts) {
    const at = { x: tileMarginMm + x - tile.fromX, y: tileMarginMm + y - tile.fromY };
    // A word is at most some hand's breadths long.
    if (at.y < 0 || at.y > height + 2 * tileMarginMm || at.x > width + 2 * tileMarginMm || at.x < -width)
      continue;
    write(tools, page, text, at.x, at.y, sizeMm);
  }
  page.pushOperators(popGraphicsState());
  writeFrame(tools, page, tile);
}

/** The frame, its name, and at the middle of each side half a diamond that its neighbour completes. */
function writeFrame(tools: Tools, page: PDFPage, tile: Tile): void {
  const { tileWidthMm: width, tileHeightMm: height } = tools.tiling;
  const [left, low] = [tileMarginMm, tileMarginMm];
  const [right, high] = [left + width, low + height];
  const [middleX, middleY] = [(left + right) / 2, (low + high) / 2];
  const at = ([x, y]: readonly [number, number]) => ({ x: x * ptPerMm, y: y * ptPerMm });
  const marks = [
    [
      [left, middleY - markMm],
      [left + markMm, middleY],
      [left, middleY + markMm],
    ],
    [
      [right, middleY - markMm],
      [right - markMm, middleY],
      [right, middleY + markMm],
    ],
    [
      [middleX - markMm, low],
      [middleX, low + markMm],
      [middleX + markMm, low],
    ],
    [
      [middleX - markMm, high],
      [middleX, high - markMm],
      [middleX + markMm, high],
    ],
  ] as const;
  page.pushOperators(
    pushGraphicsState(),
    setLineWidth(hairMm * ptPerMm),
    rectangle(left * ptPerMm, low * ptPerMm, width * ptPerMm, height * ptPerMm),
    stroke(),
    ...marks.flatMap(([a, b, c]) => [
      moveTo(at(a).x, at(a).y),
      lineTo(at(b).x, at(b).y),
      lineTo(at(c).x, at(c).y),
      stroke(),
    ]),
    popGraphicsState(),
  );
  const name = say('tiled-pdf.of', {
    tileName: tileName(tile),
    number: tile.number,
    tilesCount: tools.tiling.tiles.length,
    drawingTitle: tools.drawing.title,
  });
  write(tools, page, name, left + 2, low + 2, 3);
}
