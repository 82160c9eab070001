/** Writes a plan's pieces as one SVG in mm at true size, neck up; `data-` attributes let it be read back (svg.ts). */
import { type Point, ringBox, ringPoints } from '../../geometry/ring.ts';
import { xmlText } from '../../measure/text/xml-text.ts';
import { type CoatPlan, type Piece, slotById } from '../../plan/model/coat-plan.ts';
import { edgeIndexOf, edgePoints, seamRing } from '../../plan/geometry/outline-ring.ts';
import { drawnCutLine, onEdge } from '../pattern/drawn-lines.ts';
import { oneLine } from '../../measure/text/plain-signs.ts';
import { lineAttribute, pieceAttribute } from './svg-walk.ts';

const gapMm = 20;
const notchMm = 6;

export function write(plan: CoatPlan): string {
  const drawn = plan.pieces.map((piece) => ({ piece, box: ringBox(drawnCutLine(piece)) }));
  const height = Math.max(0, ...drawn.map(({ box }) => box.maxX - box.minX)) + 2 * gapMm;
  let acrossMm = gapMm;
  const groups = drawn.map(({ piece, box }) => {
    // The piece's x runs up the page and its y to the left, as it lies before the maker.
    const place = ({ x, y }: Point): string => `${mm(acrossMm + box.maxY - y)} ${mm(gapMm + box.maxX - x)}`;
    const group = pieceGroup(plan, piece, place);
    acrossMm += box.maxY - box.minY + gapMm;
    return group;
  });
  const attributes = [
    'xmlns="http://www.w3.org/2000/svg"',
    `width="${mm(acrossMm)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(acrossMm)} ${mm(height)}"`,
    `data-style="${escaped(plan.name)}" data-size="${escaped(plan.size)}"`,
    'fill="none" stroke="#000" stroke-width="0.4" font-family="sans-serif" font-size="8"',
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg ${attributes.join(' ')}>\n${groups.join('\n')}\n</svg>\n`;
}

function pieceGroup(plan: CoatPlan, piece: Piece, place: (point: Point) => string): string {
  const line = (role: string, points: readonly Point[], isClosed: boolean, look = '') =>
    `  <path ${lineAttribute}="${role}"${look} d="M${points.map(place).join('L')}${isClosed ? 'Z' : ''}"/>`;
  const seam = ringPoints(seamRing(piece.outline, 0.02));
  const box = ringBox(seamRing(piece.outline));
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const reach = (box.maxX - box.minX) * 0.3;
  const fold = piece.foldEdge;
  const quantity = piece.isMirrored ? `${piece.cutCount / 2},${piece.cutCount / 2}` : String(piece.cutCount);
  const words = [
    piece.name,
    plan.size,
    fold !== null
      ? `cut ${piece.cutCount} on the fold`
      : piece.isMirrored
        ? `cut ${piece.cutCount}, mirrored`
        : `cut ${piece.cutCount}`,
  ].filter((each) => each !== '');
  const foldEnds = fold === null ? [] : edgePoints(piece.outline, edgeIndexOf(piece.outline, fold));
  return [
    `<g ${pieceAttribute}="${escaped(piece.name)}" data-size="${escaped(plan.size)}" data-quantity="${quantity}" ` +
      `data-material="${escaped(piece.cutFrom.map(({ slotId }) => slotById(plan, slotId).name).join('; '))}">`,
    `  <title>${escaped(piece.name)}</title>`,
    line('cut', ringPoints(drawnCutLine(piece)), true),
    line('seam', seam, true, ' stroke-dasharray="4 3"'),
    line(
      'edges',
      piece.outline.edges.map((_, index) => edgePoints(piece.outline, index)[0]!),
      false,
      ' stroke="none"',
    ),
    ...(fold === null
      ? []
      : [line('fold', [foldEnds[0]!, foldEnds.at(-1)!], false, ' stroke-dasharray="9 3 2 3"')]),
    ...piece.notches.map((notch) => {
      const { at, out } = onEdge(piece, notch);
      return line('notch', [at, { x: at.x + out.x * notchMm, y: at.y + out.y * notchMm }], false);
    }),
    line(
      'grain',
      [
        { x: middle.x - reach, y: middle.y },
        { x: middle.x + reach, y: middle.y },
      ],
      false,
    ),
    `  <text transform="translate(${place(middle)})" dx="6" fill="#000" stroke="none">${escaped(words.join(', '))}</text>`,
    '</g>',
  ].join('\n');
}

function mm(value: number): string {
  return String(Number(value.toFixed(4)));
}

function escaped(text: string): string {
  return xmlText(oneLine(text));
}
