/** The pieces of a coat drawn at true size for paper: cutting and sewing lines, folds, grain, notches and quilting lines. */
import { say } from '../../wording/say.ts';
import { notchOnCutLine, drawnCutLine, onEdge } from '../../exchange/pattern/drawn-lines.ts';
import { type Point, ringBox, ringPoints } from '../../geometry/ring.ts';
import type { SheetDrawing, SheetLine, SheetText } from '../../paper/tiles.ts';
import { type CoatPlan, type Piece, slotById } from '../../plan/model/coat-plan.ts';
import { edgeIndexOf, edgePoints, seamRing } from '../../plan/geometry/outline-ring.ts';
import { type QuiltedPiece, quiltingMap } from '../../quilting/map.ts';

export interface PatternSheetsOptions {
  /** Pieces are set side by side up to this width, mm; one that is wider has a row to itself. */
  readonly rowWidthMm: number;
}

const gapMm = 8;
const notchInMm = 5;
/** Chords stay this near to the drafted curve. */
const toleranceMm = 0.05;

interface Drawn {
  readonly lines: readonly SheetLine[];
  readonly texts: readonly SheetText[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** All pieces of the size at hand, the tallest first, in rows from the top down. */
export function patternDrawing(plan: CoatPlan, { rowWidthMm }: PatternSheetsOptions): SheetDrawing {
  const quilted = new Map(quiltingMap(plan).map((piece) => [piece.pieceId, piece]));
  const drawn = plan.pieces
    .map((piece) => drawnPiece(plan, piece, quilted.get(piece.id)))
    .sort((a, b) => b.heightMm - a.heightMm);
  const places: { readonly piece: Drawn; readonly x: number; readonly down: number }[] = [];
  let down = 0;
  let x = 0;
  let rowHeight = 0;
  for (const piece of drawn) {
    if (x > 0 && x + piece.widthMm > rowWidthMm) {
      down += rowHeight + gapMm;
      x = 0;
      rowHeight = 0;
    }
    places.push({ piece, x, down });
    x += piece.widthMm + gapMm;
    rowHeight = Math.max(rowHeight, piece.heightMm);
  }
  const heightMm = down + rowHeight;
  const widthMm = Math.max(0, ...places.map((place) => place.x + place.piece.widthMm));
  return {
    title: [plan.name, plan.size === '' ? '' : say('pattern-sheets.size', { planCount: plan.size })]
      .filter(Boolean)
      .join(', '),
    widthMm,
    heightMm,
    lines: places.flatMap(({ piece, x: atX, down: atDown }) => {
      const low = heightMm - atDown - piece.heightMm;
      return piece.lines.map((line) => ({
        ...line,
        points: line.points.map((point) => ({ x: point.x + atX, y: point.y + low })),
      }));
    }),
    texts: places.flatMap(({ piece, x: atX, down: atDown }) =>
      piece.texts.map((text) => ({
        ...text,
        x: text.x + atX,
        y: text.y + heightMm - atDown - piece.heightMm,
      })),
    ),
  };
}

/** One piece with its lower left corner at 0, 0: hem below, as it lies before the maker. */
function drawnPiece(plan: CoatPlan, piece: Piece, quilted: QuiltedPiece | undefined): Drawn {
  const cut = drawnCutLine(piece);
  const box = ringBox(cut);
  // The grain runs up the page, y of the piece to the left.
  const place = ({ x, y }: Point) => ({ x: box.maxY - y, y: x - box.minX });
  const line = (kind: SheetLine['kind'], points: readonly Point[], isClosed = false): SheetLine => ({
    kind,
    points: points.map(place),
    isClosed,
  });
  const seam = seamRing(piece.outline, toleranceMm);
  const seamBox = ringBox(seam);
  const middle = { x: (seamBox.minX + seamBox.maxX) / 2, y: (seamBox.minY + seamBox.maxY) / 2 };
  const reach = (seamBox.maxX - seamBox.minX) * 0.3;
  const head = Math.min(8, reach * 0.3);
  const top = { x: middle.x + reach, y: middle.y };
  const words = wordsOf(plan, piece);
  const sizeMm = Math.min(
    6,
    (box.maxY - box.minY) / Math.max(8, ...words.map(({ length }) => length)) / 0.55,
  );
  const at = place({ x: middle.x, y: middle.y });
  return {
    widthMm: box.maxY - box.minY,
    heightMm: box.maxX - box.minX,
    lines: [
      line('cut', ringPoints(cut), true),
      line('sew', ringPoints(seam), true),
      ...(piece.foldEdge === null
        ? []
        : [line('fold', edgePoints(piece.outline, edgeIndexOf(piece.outline, piece.foldEdge)))]),
      line('grain', [{ x: middle.x - reach, y: middle.y }, top]),
      line('grain', [
        { x: top.x - head, y: top.y - head * 0.6 },
        top,
        { x: top.x - head, y: top.y + head * 0.6 },
      ]),
      ...piece.notches.map((notch) => {
        const on = notchOnCutLine(piece, notch);
        const { out } = onEdge(piece, notch);
        return line('notch', [on, { x: on.x - out.x * notchInMm, y: on.y - out.y * notchInMm }]);
      }),
      ...quiltingLines(piece, quilted).map((points) => line('quilting', points)),
    ],
    texts: words.map((text, index) => ({
      x: at.x - (text.length * sizeMm * 0.5) / 2 + 4,
      y: at.y - (index + 1) * sizeMm * 1.4,
      sizeMm,
      text,
    })),
  };
}

function wordsOf(plan: CoatPlan, piece: Piece): string[] {
  const cut =
    piece.foldEdge !== null
      ? say('pattern-sheets.on-the-fold')
      : piece.isMirrored
        ? say('pattern-sheets.half-of-them-mirrored')
        : '';
  return [
    piece.name,
    [say('pattern-sheets.cut', { cutCount: piece.cutCount }), cut].filter(Boolean).join(', '),
    piece.cutFrom.map(({ slotId }) => slotById(plan, slotId).name).join(', '),
  ].filter(Boolean);
}

/** Each line from side to side of the piece's box; only what lies inside the sewing line is drawn. */
function quiltingLines(piece: Piece, quilted: QuiltedPiece | undefined): Point[][] {
  if (!quilted) return [];
  const ring = seamRing(piece.outline, toleranceMm);
  const isAcross = quilted.direction === 'across';
  return quilted.lines.flatMap(({ atMm }) => {
    const hits: number[] = [];
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
      const [from, to, a, b] = isAcross ? [x0, x1, y0, y1] : [y0, y1, x0, x1];
      if (from > atMm !== to > atMm) hits.push(a + ((atMm - from) / (to - from)) * (b - a));
    }
    hits.sort((a, b) => a - b);
    const parts: Point[][] = [];
    for (let k = 0; k + 1 < hits.length; k += 2) {
      const at = (value: number): Point => (isAcross ? { x: atMm, y: value } : { x: value, y: atMm });
      parts.push([at(hits[k]!), at(hits[k + 1]!)]);
    }
    return parts;
  });
}
