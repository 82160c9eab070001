import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { patternDrawing } from '../../../shared-core/flow-pattern-sheets.ts';
import { chainLengthMm } from '../../../shared-core/geometry/curve.ts';
import { testSquareMm, tiledPdf } from '../../../shared-core/paper/tiled-pdf.ts';
import { paperSizes, type TileFormat, tileMarginMm, tilingOf } from '../../../shared-core/paper/tiles.ts';
import { edgeLengthMm } from '../../../shared-core/plan/outline-ring.ts';

/** The PDF is read by another library than the one that wrote it. */
const mmPerPt = 25.4 / 72;
const plan = demoWorkshop().plans[0]!;

interface Path {
  /** Corners in mm from the lower left of the page. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly isDashed: boolean;
}

async function read(bytes: Uint8Array) {
  const pdf = await getDocument({ data: bytes.slice(), useSystemFonts: true, verbosity: 0 }).promise;
  const pages = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const [, , width, height] = page.view as [number, number, number, number];
    const { fnArray, argsArray } = await page.getOperatorList();
    const text = (await page.getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({
      widthMm: width * mmPerPt,
      heightMm: height * mmPerPt,
      text,
      paths: pathsOf(fnArray, argsArray),
    });
  }
  return pages;
}

/** Paths as the reader gives them: a flat list of 0 x y (move), 1 x y (line) and 4 (close). */
function pathsOf(fnArray: readonly number[], argsArray: readonly unknown[]): Path[] {
  let isDashed = false;
  return fnArray.flatMap((operator, index): Path[] => {
    const args = argsArray[index] as readonly unknown[];
    if (operator === OPS.setDash) isDashed = (args[0] as readonly number[]).length > 0;
    if (operator !== OPS.constructPath) return [];
    const flat = [...((args[1] as readonly (Float32Array | null)[])[0] ?? [])];
    const points: { x: number; y: number }[] = [];
    for (let k = 0; k < flat.length; ) {
      if (flat[k] === 4) {
        if (points[0]) points.push(points[0]);
        k += 1;
        continue;
      }
      points.push({ x: flat[k + 1]! * mmPerPt, y: flat[k + 2]! * mmPerPt });
      k += 3;
    }
    return [{ points, isDashed }];
  });
}

function drawingFor(format: TileFormat) {
  return patternDrawing(plan, { rowWidthMm: 6 * (paperSizes[format].widthMm - 2 * tileMarginMm) });
}

describe('pieces at full size on paper', () => {
  test.each(['A4', 'letter', 'A0'] as const)(
    'come on sheets of %s, with a map before them',
    async (format) => {
      const drawing = drawingFor(format);
      const { bytes, sheetCount } = await tiledPdf(drawing, { format, day: '29 Nov 2026' });
      const pages = await read(bytes);
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
    const [first] = await read((await tiledPdf(drawingFor('A4'), { format: 'A4', day: '' })).bytes);
    const square = first!.paths.find(({ points }) => {
      const xs = points.map(({ x }) => x);
      return points.length >= 4 && Math.abs(Math.max(...xs) - Math.min(...xs) - testSquareMm) < 0.01;
    })!;
    const ys = square.points.map(({ y }) => y);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(testSquareMm, 2);
  });

  test('have sewing lines as long as the drafted edges, to a tenth of a millimetre', async () => {
    const pages = await read((await tiledPdf(drawingFor('A0'), { format: 'A0', day: '' })).bytes);
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
