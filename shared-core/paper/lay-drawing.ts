/** One page's stretch of a lay, to scale: cloth, selvages, flaws, pieces with grain and fold, and rulers at its edges. */
import {
  clip,
  closePath,
  endPath,
  fillAndStroke,
  lineTo,
  moveTo,
  type PDFOperator,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  setDashPattern,
  setFillingColor,
  setLineWidth,
  setStrokingColor,
  stroke,
} from '@cantoo/pdf-lib';
import type { MeasureSystem } from '../measure/quantity.ts';
import {
  type CuttingPart,
  rulerMarks,
  type SheetPiece,
  type SheetRect,
  wholeWidthMm,
  type Stretch,
} from './cutting-sheet.ts';
import { labelPlace } from './label-place.ts';
import { hair, ink, type PdfSheet, ptPerMm, soft, writeAt } from './pdf-sheet.ts';
import type { SheetPoint } from './tiles.ts';

/** Room for the rulers above and below the cloth, and for the one at its left, points. */
export const rulerPt = { across: 22, left: 26 } as const;

const clothColor = rgb(0.94, 0.95, 0.945);
const selvageColor = rgb(0.85, 0.875, 0.865);
const flawColor = rgb(0.66, 0.2, 0.16);
const white = rgb(1, 1, 1);

export interface LayStretch {
  readonly part: CuttingPart;
  readonly system: MeasureSystem;
  readonly stretch: Stretch;
  /** One to so many. */
  readonly scale: number;
  /** Left edge of the cloth, and the outer edge of its lower selvage, points. */
  readonly origin: SheetPoint;
}

type Place = (point: SheetPoint) => SheetPoint;

/** Height of the cloth on paper, selvages and all. */
export function clothHeightPt(part: CuttingPart, scale: number): number {
  return (wholeWidthMm(part) / scale) * ptPerMm;
}

export function drawLay(sheet: PdfSheet, drawn: LayStretch): void {
  const { part, stretch, scale, origin } = drawn;
  const lowSelvageMm = part.isFolded ? 0 : part.selvageMm;
  const unit = ptPerMm / scale;
  const place: Place = ({ x, y }) => ({
    x: hundredths(origin.x + (x - stretch.fromMm) * unit),
    y: hundredths(origin.y + (y + lowSelvageMm) * unit),
  });
  const pieces = part.pieces.filter(({ ring }) => {
    const xs = ring.map(({ x }) => x);
    return Math.max(...xs) > stretch.fromMm && Math.min(...xs) < stretch.toMm;
  });
  const width = (stretch.toMm - stretch.fromMm) * unit;
  const height = clothHeightPt(part, scale);
  const { page } = sheet;
  const box = { x: origin.x, y: origin.y, width, height };
  page.drawRectangle({ ...box, color: clothColor });
  for (const selvage of selvages(part)) {
    const low = place({ x: 0, y: selvage.y }).y;
    page.drawRectangle({ ...box, y: low, height: selvage.widthMm * unit, color: selvageColor });
  }
  page.pushOperators(
    pushGraphicsState(),
    rectangle(box.x, box.y, box.width, box.height),
    clip(),
    endPath(),
    ...pieces.flatMap((piece) => pieceOperators(piece, place)),
    ...part.flaws.flatMap((flaw) => flawOperators(flaw, place)),
    popGraphicsState(),
  );
  page.drawRectangle({ ...box, borderColor: soft, borderWidth: 0.6 });
  const isInside = ({ x }: SheetPoint) => x > box.x + 4 && x < box.x + box.width - 4;
  for (const piece of pieces) nameOf(sheet, piece, place, isInside);
  for (const flaw of part.flaws) {
    const at = place({ x: flaw.x, y: flaw.y + flaw.widthY });
    if (!isInside(at)) continue;
    const written = { size: 5.5, face: sheet.typeface.regular, color: flawColor };
    writeAt(sheet, 'flaw', { x: at.x, y: at.y + 2 }, written);
  }
  rulers(sheet, drawn, place, height);
}

function selvages({ widthMm, selvageMm, isFolded }: CuttingPart) {
  if (selvageMm <= 0) return [];
  const high = { y: widthMm, widthMm: selvageMm };
  return isFolded ? [high] : [high, { y: -selvageMm, widthMm: selvageMm }];
}

/** Finer than any printer, and short to write. */
function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}

/** Corners that no eye tells from the one before are left out. */
function path(points: readonly SheetPoint[], place: Place): PDFOperator[] {
  const kept: SheetPoint[] = [];
  for (const point of points.map(place)) {
    const last = kept.at(-1);
    if (!last || Math.hypot(point.x - last.x, point.y - last.y) > 0.2) kept.push(point);
  }
  return kept.map(({ x, y }, index) => (index === 0 ? moveTo(x, y) : lineTo(x, y)));
}

function pieceOperators({ ring, keptRing, fold }: SheetPiece, place: Place): PDFOperator[] {
  return [
    setFillingColor(white),
    setStrokingColor(ink),
    setLineWidth(0.7),
    setDashPattern([], 0),
    ...path(ring, place),
    closePath(),
    fillAndStroke(),
    setLineWidth(0.4),
    ...(keptRing ? [setDashPattern([2.2, 1.6], 0), ...path(keptRing, place), closePath(), stroke()] : []),
    ...(fold ? [setDashPattern([6, 1.6, 1, 1.6], 0), ...path(fold, place), stroke()] : []),
    setDashPattern([], 0),
    ...cornerOperators(ring, place),
  ];
}

/** The corner that the table's distances go to: two short lines at the piece's box. */
function cornerOperators(ring: readonly SheetPoint[], place: Place): PDFOperator[] {
  const corner = place({
    x: Math.min(...ring.map(({ x }) => x)),
    y: Math.min(...ring.map(({ y }) => y)),
  });
  const legPt = 5;
  return [
    setStrokingColor(flawColor),
    setLineWidth(0.8),
    moveTo(corner.x + legPt, corner.y),
    lineTo(corner.x, corner.y),
    lineTo(corner.x, corner.y + legPt),
    stroke(),
  ];
}

/** A box with strokes across it. */
function flawOperators({ x, y, widthX, widthY }: SheetRect, place: Place): PDFOperator[] {
  const low = place({ x, y });
  const high = place({ x: x + widthX, y: y + widthY });
  const size = { width: Math.max(3, high.x - low.x), height: Math.max(3, high.y - low.y) };
  const strokes: PDFOperator[] = [];
  for (let at = 3; at < size.width + size.height; at += 3) {
    const from = { x: low.x + Math.max(0, at - size.height), y: low.y + Math.min(at, size.height) };
    const to = { x: low.x + Math.min(at, size.width), y: low.y + Math.max(0, at - size.width) };
    strokes.push(moveTo(from.x, from.y), lineTo(to.x, to.y), stroke());
  }
  return [
    setStrokingColor(flawColor),
    setLineWidth(0.5),
    rectangle(low.x, low.y, size.width, size.height),
    stroke(),
    ...strokes,
  ];
}

/** The number, the name where it has room, and the arrow of the grain below them. */
function nameOf(
  sheet: PdfSheet,
  piece: SheetPiece,
  place: Place,
  isInside: (at: SheetPoint) => boolean,
): void {
  const { typeface } = sheet;
  const onPage = (piece.keptRing ?? piece.ring).map(place);
  const at = labelPlace(onPage);
  if (!isInside(at)) return;
  const number = String(piece.number);
  const name = typeface.letters(piece.name);
  const wide = (size: number) =>
    typeface.bold.widthPt(`${number} `, size) + typeface.regular.widthPt(name, size);
  const size = [8, 7, 6, 5].find((candidate) => wide(candidate) < at.width - 8);
  const tall = Math.max(...onPage.map(({ y }) => y)) - Math.min(...onPage.map(({ y }) => y));
  const bold = { size: size ?? 6, face: typeface.bold };
  const numberPt = typeface.bold.widthPt(size ? `${number} ` : number, bold.size);
  const textPt = size ? wide(size) : numberPt;
  const left = at.x - textPt / 2;
  // A fold may run below the words.
  const ground = { x: left - 2, y: at.y - 2, width: textPt + 4, height: bold.size + 1 };
  if (piece.fold) sheet.page.drawRectangle({ ...ground, color: white });
  writeAt(sheet, number, { x: left, y: at.y }, bold);
  if (size) writeAt(sheet, name, { x: left + numberPt, y: at.y }, { size, face: typeface.regular });
  const isAlong = piece.grainDeg % 180 === 0;
  const reach = Math.min(24, (isAlong ? at.width : tall) * 0.3);
  if (reach < 3) return;
  const middle = isAlong ? { x: at.x, y: at.y - (piece.fold ? 8 : 6) } : { x: left - 5, y: at.y + 2 };
  sheet.page.pushOperators(...arrow(middle, piece.grainDeg, reach));
}

function arrow(middle: SheetPoint, degrees: number, reach: number): PDFOperator[] {
  const turn = (degrees * Math.PI) / 180;
  const at = (along: number, aside: number) => ({
    x: middle.x + along * Math.cos(turn) - aside * Math.sin(turn),
    y: middle.y + along * Math.sin(turn) + aside * Math.cos(turn),
  });
  const [tail, tip] = [at(-reach, 0), at(reach, 0)];
  const [left, right] = [at(reach - 3, 1.6), at(reach - 3, -1.6)];
  return [
    pushGraphicsState(),
    setStrokingColor(soft),
    setLineWidth(0.6),
    moveTo(tail.x, tail.y),
    lineTo(tip.x, tip.y),
    moveTo(left.x, left.y),
    lineTo(tip.x, tip.y),
    lineTo(right.x, right.y),
    stroke(),
    popGraphicsState(),
  ];
}

/** Along both edges from the start, and at the left from the lower edge. */
function rulers(
  sheet: PdfSheet,
  { part, system, stretch, scale, origin }: LayStretch,
  place: Place,
  height: number,
): void {
  const top = origin.y + height;
  const small = { size: 5.5, face: sheet.typeface.regular, color: soft };
  const strong = { size: 6.5, face: sheet.typeface.bold, color: ink };
  /** Cloth from one number to the next, so that the largest have room. */
  const fewest = (maxMm: number) => {
    const widest = strong.face.widthPt(String(Math.round(maxMm / 10)), strong.size);
    return ((widest + 3) * scale) / ptPerMm;
  };
  const line = (start: SheetPoint, end: SheetPoint, isWhole: boolean) =>
    sheet.page.drawLine({ start, end, thickness: isWhole ? 0.9 : 0.5, color: isWhole ? ink : soft });
  const along = rulerMarks(stretch, system, fewest(stretch.toMm));
  for (const { atMm, label, isWhole, hasLabel } of along) {
    const { x } = place({ x: atMm, y: 0 });
    const written = isWhole ? strong : small;
    const tick = isWhole ? 8 : 5;
    const half = written.face.widthPt(label, written.size) / 2;
    line({ x, y: top }, { x, y: top + tick }, isWhole);
    line({ x, y: origin.y }, { x, y: origin.y - tick }, isWhole);
    if (!hasLabel) continue;
    writeAt(sheet, label, { x: x - half, y: top + 10 }, written);
    writeAt(sheet, label, { x: x - half, y: origin.y - 14 }, written);
  }
  const wholeMm = wholeWidthMm(part);
  const lowMm = part.isFolded ? 0 : part.selvageMm;
  const across = rulerMarks({ fromMm: 0, toMm: wholeMm }, system, fewest(wholeMm / 100));
  for (const { atMm, label, isWhole, hasLabel } of across) {
    const { y } = place({ x: 0, y: atMm - lowMm });
    const written = isWhole ? strong : small;
    const tick = isWhole ? 8 : 5;
    line({ x: origin.x, y }, { x: origin.x - tick, y }, isWhole);
    if (!hasLabel) continue;
    const wide = written.face.widthPt(label, written.size);
    writeAt(sheet, label, { x: origin.x - tick - 2 - wide, y: y - 2 }, written);
  }
  const used = place({ x: part.usedMm, y: 0 }).x;
  if (part.usedMm > stretch.toMm + 1e-6) return;
  sheet.page.drawLine({
    start: { x: used, y: origin.y },
    end: { x: used, y: top },
    thickness: 1,
    color: flawColor,
  });
  sheet.page.drawLine({
    start: { x: used, y: top },
    end: { x: used, y: top + 8 },
    thickness: 0.3,
    color: hair,
  });
}
