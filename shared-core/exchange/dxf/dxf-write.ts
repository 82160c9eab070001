/**
 * Writes a plan's pieces by the open DXF standard: a block for each piece with boundary, sewing line, turn points,
 * notches, mirror and grain line, and its texts. Only the sections that the standard uses are written, without handles
 * or tables, so that readers of any release take them.
 * The standard has no place for names of edges, seams, plies or which way the nap runs: those stay in the plan.
 */
import { type Point, ringPoints } from '../../geometry/ring.ts';
import { type CoatPlan, type Piece, slotById } from '../../plan/model/coat-plan.ts';
import { edgeIndexOf, edgePoints, seamRing } from '../../plan/geometry/outline-ring.ts';
import { ringBox } from '../../geometry/ring.ts';
import { drawnCutLine, notchOnCutLine } from '../pattern/drawn-lines.ts';
import { layers } from './dxf-layers.ts';
import { oneLine } from '../../measure/text/plain-signs.ts';

export interface WriteChoices {
  readonly unit: 'mm' | 'in';
}

/** Curves are written as points; their chords lie this near, mm. */
export const writtenToleranceMm = 0.02;
const gapMm = 40;

export function write(plan: CoatPlan, choices: WriteChoices): string {
  const perMm = choices.unit === 'in' ? 1 / 25.4 : 1;
  const out: string[] = [];
  const pair = (code: number, value: string | number) => out.push(String(code), String(value));
  const number = (mm: number) => (mm * perMm).toFixed(choices.unit === 'in' ? 6 : 4);
  const place = ({ x, y }: Point) => {
    pair(10, number(x));
    pair(20, number(y));
  };
  const line = (layer: number, [from, to]: readonly [Point, Point]) => {
    pair(0, 'LINE');
    pair(8, layer);
    place(from);
    pair(11, number(to.x));
    pair(21, number(to.y));
  };
  const polyline = (layer: number, points: readonly Point[]) => {
    pair(0, 'POLYLINE');
    pair(8, layer);
    pair(66, 1);
    pair(70, 1);
    for (const point of points) {
      pair(0, 'VERTEX');
      pair(8, layer);
      place(point);
    }
    pair(0, 'SEQEND');
    pair(8, layer);
  };
  const points = (layer: number, at: readonly Point[]) => {
    for (const point of at) {
      pair(0, 'POINT');
      pair(8, layer);
      place(point);
    }
  };
  const text = (layer: number, at: Point, key: string, value: string) => {
    pair(0, 'TEXT');
    pair(8, layer);
    place(at);
    pair(40, number(8));
    pair(1, escaped(`${key}: ${value}`));
  };
  const names = blockNames(plan);
  pair(0, 'SECTION');
  pair(2, 'BLOCKS');
  plan.pieces.forEach((piece, index) => {
    pair(0, 'BLOCK');
    pair(8, layers.boundary);
    pair(2, names[index]!);
    pair(70, 64);
    place({ x: 0, y: 0 });
    const { minX, minY, maxX, maxY } = ringBox(seamRing(piece.outline));
    const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
    const texts = [
      ['Piece Name', piece.name],
      ['Size', plan.size],
      ['Quantity', piece.isMirrored ? `${piece.cutCount / 2},${piece.cutCount / 2}` : String(piece.cutCount)],
      ['Material', piece.cutFrom.map(({ slotId }) => slotById(plan, slotId).name).join('; ')],
    ] as const;
    texts.forEach(([key, value], row) => {
      text(layers.boundary, { x: middle.x, y: middle.y - row * 12 }, key, value);
    });
    polyline(layers.boundary, ringPoints(drawnCutLine(piece)));
    polyline(layers.sewLine, ringPoints(seamRing(piece.outline, writtenToleranceMm)));
    points(layers.turnPoints, edgeStarts(piece));
    points(
      layers.notch,
      piece.notches.map((notch) => notchOnCutLine(piece, notch)),
    );
    const fold = piece.foldEdge;
    if (fold !== null) {
      const ends = edgePoints(piece.outline, edgeIndexOf(piece.outline, fold));
      line(layers.mirrorLine, [ends[0]!, ends.at(-1)!]);
    }
    const reach = (maxX - minX) * 0.3;
    line(layers.grainLine, [
      { x: middle.x - reach, y: middle.y },
      { x: middle.x + reach, y: middle.y },
    ]);
    pair(0, 'ENDBLK');
    pair(8, layers.boundary);
  });
  pair(0, 'ENDSEC');
  pair(0, 'SECTION');
  pair(2, 'ENTITIES');
  const style = [
    ['Style Name', plan.name],
    ['Sample Size', plan.size],
    ['Units', choices.unit === 'in' ? 'ENGLISH' : 'METRIC'],
  ] as const;
  style.forEach(([key, value], row) => {
    text(layers.boundary, { x: 0, y: -20 - row * 12 }, key, value);
  });
  let acrossMm = 0;
  plan.pieces.forEach((piece, index) => {
    const box = ringBox(drawnCutLine(piece));
    pair(0, 'INSERT');
    pair(8, layers.boundary);
    pair(2, names[index]!);
    place({ x: 0, y: acrossMm - box.minY });
    acrossMm += box.maxY - box.minY + gapMm;
  });
  pair(0, 'ENDSEC');
  pair(0, 'EOF');
  return `${out.join('\r\n')}\r\n`;
}

function edgeStarts(piece: Piece): Point[] {
  return piece.outline.edges.map((_, index) => edgePoints(piece.outline, index)[0]!);
}

/** Names of blocks hold letters, numbers, - and _ alone, 31 at most, and none twice. */
function blockNames(plan: CoatPlan): string[] {
  const taken = new Set<string>();
  return plan.pieces.map((piece, index) => {
    const words = `${piece.name}-${plan.size}`.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
    const stem =
      words
        .replace(/^-+|-+$/g, '')
        .slice(0, 24)
        .toUpperCase() || 'PIECE';
    const name = taken.has(stem) ? `${stem}_${index + 1}` : stem;
    taken.add(name);
    return name;
  });
}

/** One line of ASCII: other letters as \U+00E9. Backslashes stand for themselves. */
function escaped(text: string): string {
  return oneLine(text).replace(
    /[^\x20-\x7e]/g,
    (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
  );
}
