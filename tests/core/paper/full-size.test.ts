import { describe, expect, test } from 'vitest';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { patternDrawing } from '../../../shared-core/flow/output/pattern-sheets.ts';
import { chainLengthMm } from '../../../shared-core/geometry/curve.ts';
import { testSquareMm, tiledPdf } from '../../../shared-core/paper/tiled-pdf.ts';
import {
  paperSizes,
  type SheetDrawing,
  type TileFormat,
  tileMarginMm,
  tilingOf,
} from '../../../shared-core/paper/tiles.ts';
import { edgeLengthMm } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { mmPerPt, pdfSheets } from './pdf-text.ts';
import { typefaceFiles } from './typeface.ts';

const plan = demoWorkshop().plans[0]!;

/** The plan on sheets of a format, written and read once. */
const written = new Map<TileFormat, ReturnType<typeof read>>();
function readPlan(format: TileFormat) {
  const known = written.get(format) ?? read(drawingFor(format), format, '29 Nov 2026');
  written.set(format, known);
  return known;
}

async function read(drawing: SheetDrawing, format: TileFormat, day = '') {
  const { bytes, sheetCount } = await tiledPdf(drawing, { format, day }, typefaceFiles);
  const sheets = await pdfSheets(bytes);
  return {
    sheetCount,
    pages: sheets.map(({ width, height, texts, paths }) => ({
      widthMm: width * mmPerPt,
      heightMm: height * mmPerPt,
      text: texts.map(({ text }) => text).join(' '),
      paths,
    })),
  };
}

function drawingFor(format: TileFormat) {
  return patternDrawing(plan, { rowWidthMm: 6 * (paperSizes[format].widthMm - 2 * tileMarginMm) });
}

describe('pieces at full size on paper', () => {
  test.each(['A4', 'letter', 'A0'] as const)(
    'come on sheets of %s, with a map before them',
    async (format) => {
      const { pages, sheetCount } = await readPlan(format);
      expect(pages).toHaveLength(sheetCount + 1);
      for (const page of pages) {
        expect(page.widthMm).toBeCloseTo(paperSizes[format].widthMm, 2);
        expect(page.heightMm).toBeCloseTo(paperSizes[format].heightMm, 2);
      }
      expect(pages[0]!.text).toContain('Print at 100 %');
      expect(pages[0]!.text).toContain('A1');
      expect(pages[1]!.text).toContain(`1 of ${sheetCount}`);
    },
  );

  test('have a square on the first page that measures what it says', async () => {
    const [first] = (await readPlan('A4')).pages;
    const square = first!.paths.find(({ points }) => {
      const xs = points.map(({ x }) => x);
      return points.length >= 4 && Math.abs(Math.max(...xs) - Math.min(...xs) - testSquareMm) < 0.01;
    })!;
    const ys = square.points.map(({ y }) => y);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(testSquareMm, 2);
  });

  test('have sewing lines as long as the drafted edges, to a tenth of a millimetre', async () => {
    const { pages } = await readPlan('A0');
    const sewn = pages.slice(1).flatMap(({ paths }) => paths.filter(({ isDashed }) => isDashed));
    const lengths = sewn.map(({ points }) => chainLengthMm(points));
    for (const piece of plan.pieces) {
      const around = piece.outline.edges.reduce(
        (sum, { name }) => sum + edgeLengthMm(piece.outline, name),
        0,
      );
      const nearest = Math.min(...lengths.map((length) => Math.abs(length - around)));
      // Single precision of the reader, and chords of the curves.
      expect(nearest, piece.name).toBeLessThan(0.3);
    }
  });

  test('leave out sheets with nothing on them, and miss nothing that is drawn', () => {
    const drawing = drawingFor('A4');
    const tiling = tilingOf(drawing, 'A4');
    expect(tiling.tiles.length).toBeLessThan(tiling.rowCount * tiling.columnCount);
    const tileOf = (x: number, y: number) =>
      tiling.tiles.find(
        ({ fromX, fromY }) =>
          x >= fromX - 1e-6 &&
          x <= fromX + tiling.tileWidthMm + 1e-6 &&
          y >= fromY - 1e-6 &&
          y <= fromY + tiling.tileHeightMm + 1e-6,
      );
    for (const { points } of drawing.lines) for (const { x, y } of points) expect(tileOf(x, y)).toBeDefined();
  });

  test('lie side by side without overlapping', () => {
    const drawing = drawingFor('A4');
    const boxes = drawing.lines
      .filter(({ kind }) => kind === 'cut')
      .map(({ points }) => ({
        left: Math.min(...points.map(({ x }) => x)),
        right: Math.max(...points.map(({ x }) => x)),
        low: Math.min(...points.map(({ y }) => y)),
        high: Math.max(...points.map(({ y }) => y)),
      }));
    expect(boxes).toHaveLength(plan.pieces.length);
    for (const [index, one] of boxes.entries()) {
      expect(one.low).toBeGreaterThanOrEqual(-1e-6);
      for (const other of boxes.slice(index + 1)) {
        const apart =
          one.right <= other.left ||
          other.right <= one.left ||
          one.high <= other.low ||
          other.high <= one.low;
        expect(apart).toBe(true);
      }
    }
  });
});
