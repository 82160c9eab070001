/**
 * Reads a PDF back by another library than the one that wrote it: what stands on each page and where, in points, and
 * the lines that are drawn on it, in mm.
 */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PdfText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  /** By the widths that the embedded typeface gives its letters. */
  readonly width: number;
}

export interface PdfPath {
  /** Corners in mm from the lower left of the page. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly isDashed: boolean;
}

export interface PdfSheet {
  readonly width: number;
  readonly height: number;
  /** One for each text that was written, in the order of writing. */
  readonly texts: readonly PdfText[];
  readonly paths: readonly PdfPath[];
}

export const mmPerPt = 25.4 / 72;

export async function pdfSheets(bytes: Uint8Array): Promise<readonly PdfSheet[]> {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const sheets: PdfSheet[] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const [, , width, height] = page.view as [number, number, number, number];
    const list = await page.getOperatorList();
    sheets.push({ width, height, ...drawnOn(list.fnArray, list.argsArray) });
  }
  return sheets;
}

type Matrix = readonly [number, number, number, number, number, number];

function drawnOn(
  operators: readonly number[],
  allArgs: readonly unknown[],
): Pick<PdfSheet, 'texts' | 'paths'> {
  const texts: PdfText[] = [];
  const paths: PdfPath[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  let isDashed = false;
  let size = 0;
  let at = { x: 0, y: 0 };
  operators.forEach((operator, index) => {
    const args = allArgs[index] as readonly unknown[];
    if (operator === OPS.save) kept.push(matrix);
    else if (operator === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = multiplied(matrix, args as unknown as Matrix);
    else if (operator === OPS.setDash) isDashed = (args[0] as readonly number[]).length > 0;
    else if (operator === OPS.setFont) size = args[1] as number;
    else if (operator === OPS.setTextMatrix) {
      const [, , , , x = 0, y = 0] = [...(args[0] as Iterable<number>)];
      at = placed(matrix, x, y);
    } else if (operator === OPS.showText) {
      const glyphs = (args[0] as readonly unknown[]).filter(
        (each): each is { unicode: string; width: number } => typeof each === 'object' && each !== null,
      );
      texts.push({
        text: glyphs.map(({ unicode }) => unicode).join(''),
        ...at,
        size,
        width: (glyphs.reduce((sum, { width }) => sum + width, 0) * size) / 1000,
      });
    } else if (operator === OPS.constructPath) {
      const flat = [...((args[1] as readonly (Float32Array | null)[])[0] ?? [])];
      paths.push({ points: cornersOf(flat, matrix), isDashed });
    }
  });
  return { texts, paths };
}

/** Paths as the reader gives them: a flat list of 0 x y (move), 1 x y (line) and 4 (close). */
function cornersOf(flat: readonly number[], matrix: Matrix): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  for (let k = 0; k < flat.length; ) {
    if (flat[k] === 4) {
      if (points[0]) points.push(points[0]);
      k += 1;
      continue;
    }
    const { x, y } = placed(matrix, flat[k + 1]!, flat[k + 2]!);
    points.push({ x: x * mmPerPt, y: y * mmPerPt });
    k += 3;
  }
  return points;
}

function placed([a, b, c, d, e, f]: Matrix, x: number, y: number): { x: number; y: number } {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

function multiplied([a, b, c, d, e, f]: Matrix, [a2, b2, c2, d2, e2, f2]: Matrix): Matrix {
  return [
    a * a2 + c * b2,
    b * a2 + d * b2,
    a * c2 + c * d2,
    b * c2 + d * d2,
    a * e2 + c * f2 + e,
    b * e2 + d * f2 + f,
  ];
}
