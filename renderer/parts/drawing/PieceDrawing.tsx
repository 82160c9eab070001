/** A piece as drafted: cut line, seam line inside it, fold, grain arrow and notches. Drawn with the neck end up. */
import { say } from '../../../shared-core/wording/say.ts';
import { memo, useMemo } from 'react';
import { ringBox, ringFromPoints } from '../../../shared-core/geometry/ring.ts';
import { ringPath } from '../../../shared-core/lay/lay-svg.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { StraightLine } from '../../../shared-core/plan/geometry/outline-cut.ts';
import {
  cutRing,
  edgeIndexOf,
  edgePoints,
  seamRing,
} from '../../../shared-core/plan/geometry/outline-ring.ts';
import style from './PieceDrawing.module.css';

export interface PieceDrawingProps {
  readonly piece: Piece;
  /** Drawn mm for each pixel, so that pieces beside each other compare; absent: fitted to its frame. */
  readonly mmPerPixel?: number;
  /** Where the piece is to be changed, drawn over it. */
  readonly line?: StraightLine | null;
}

export const PieceDrawing = memo(function PieceDrawing({ piece, mmPerPixel, line }: PieceDrawingProps) {
  const drawing = useMemo(() => drawnPiece(piece), [piece]);
  const { cutPath, seamPath, foldPath, notchPath, box } = drawing;
  // The piece's x runs from hem to neck; turned a quarter so that the neck is up, as it is worn.
  const widthMm = box.maxY - box.minY;
  const heightMm = box.maxX - box.minX;
  const middleY = (box.minY + box.maxY) / 2;
  const arrow = Math.min(heightMm * 0.5, 360) / 2;
  const middleX = (box.minX + box.maxX) / 2;
  const size = mmPerPixel ? { width: widthMm / mmPerPixel, height: heightMm / mmPerPixel } : {};
  return (
    <svg
      className={style.drawing}
      viewBox={`${-widthMm / 2 - 6} ${-heightMm / 2 - 6} ${widthMm + 12} ${heightMm + 12}`}
      {...size}
      role="img"
      aria-label={say('piece-drawing.drawn-to-scale', { pieceName: piece.name })}
    >
      <g transform={`rotate(-90) scale(1 -1) translate(${-middleX} ${-middleY})`}>
        <path className={style.cut} d={cutPath} />
        <path className={style.seam} d={seamPath} />
        {foldPath && <path className={style.fold} d={foldPath} />}
        <path className={style.notch} d={notchPath} />
        <path
          className={style.grain}
          d={`M${middleX - arrow} ${middleY}H${middleX + arrow}m-14 -8 14 8-14 8M${middleX - arrow + 14} ${middleY - 8}l-14 8 14 8`}
        />
        {line && (
          <path
            className={style.line}
            d={
              line.direction === 'across'
                ? `M${line.atMm} ${box.minY}V${box.maxY}`
                : `M${box.minX} ${line.atMm}H${box.maxX}`
            }
          />
        )}
      </g>
    </svg>
  );
});

function drawnPiece(piece: Piece) {
  // The half is shown as drafted: the fold edge has no allowance there.
  const half = {
    ...piece.outline,
    edges: piece.outline.edges.map((edge) =>
      edge.name === piece.foldEdge ? { ...edge, allowanceMm: 0 } : edge,
    ),
  };
  const cut = cutRing(half, null, 1);
  const fold = piece.foldEdge ? edgePoints(piece.outline, edgeIndexOf(piece.outline, piece.foldEdge)) : null;
  return {
    cutPath: ringPath(cut),
    seamPath: ringPath(seamRing(piece.outline, 1)),
    foldPath: fold ? ringPath(ringFromPoints(fold)).replace('Z', '') : null,
    notchPath: piece.notches.map((notch) => notchMark(piece, notch.edge, notch.atMm)).join(''),
    box: ringBox(cut),
  };
}

/** A short line across the seam line where the notch is; nothing for one that lies off its edge. */
function notchMark(piece: Piece, edge: string, atMm: number): string {
  const points = edgePoints(piece.outline, edgeIndexOf(piece.outline, edge), 1);
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const step = Math.hypot(b.x - a.x, b.y - a.y);
    if (along + step >= atMm && step > 0) {
      const share = (atMm - along) / step;
      const x = a.x + (b.x - a.x) * share;
      const y = a.y + (b.y - a.y) * share;
      const outX = ((b.y - a.y) / step) * 14;
      const outY = ((a.x - b.x) / step) * 14;
      return `M${x} ${y}l${outX} ${outY}`;
    }
    along += step;
  }
  return '';
}
