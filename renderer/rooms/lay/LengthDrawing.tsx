/** One length with what a lay puts on it, true to scale: the tape along it, selvages, flaws, pieces and the last cut. */
import { say } from '../../../shared-core/wording/say.ts';
import {
  type CSSProperties,
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useId,
  useMemo,
  useState,
} from 'react';
import { ringBox, ringTurned, turnCosSin } from '../../../shared-core/geometry/ring.ts';
import type { LayJob, LayResult, Placement } from '../../../shared-core/lay/job.ts';
import { ringPath } from '../../../shared-core/lay/lay-svg.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../../client/workshop.ts';
import { clothLengthUnit } from '../../parts/figures/Amount.tsx';
import style from './LengthDrawing.module.css';
import { hueOf } from './piece-hue.ts';
import { Tape, tapePx } from './Tape.tsx';

export interface LengthDrawingProps {
  readonly job: LayJob;
  readonly result: LayResult;
  readonly lengthIndex: number;
  readonly pxPerMm: number;
  readonly selvageMm: number;
  /** Name of a piece by the id of its shape. */
  readonly pieceNames: ReadonlyMap<string, string>;
  readonly label: string;
}

const usedRoomPx = 70;
/** An endless length is drawn this far beyond the last cut. */
const beyondMm = 150;

export function LengthDrawing(props: LengthDrawingProps) {
  const { job, result, lengthIndex, pxPerMm, selvageMm, pieceNames, label } = props;
  const system = useSystem();
  const hatchId = useId();
  const [hovered, setHovered] = useState<number | null>(null);
  const length = job.lengths[lengthIndex];
  const pieces = useMemo(
    () => drawnPieces(job, result, lengthIndex, pieceNames),
    [job, result, lengthIndex, pieceNames],
  );
  if (!length) return null;
  const usedMm = result.usedLengthMm[lengthIndex] ?? 0;
  const drawnMm = length.lengthMm ?? usedMm + beyondMm;
  const selvagePx = selvageMm > 0 ? Math.max(3, selvageMm * pxPerMm) : 0;
  const size = { x: drawnMm * pxPerMm, y: length.widthMm * pxPerMm };
  const bottomPx = tapePx + selvagePx + size.y;
  const total = { x: size.x + usedRoomPx, y: bottomPx + selvagePx + 1 };
  const follow = (event: PointerEvent<SVGSVGElement>) => {
    const index = (event.target as SVGElement).dataset.piece;
    setHovered(index === undefined ? null : Number(index));
  };
  // One stop for the tab key; the arrows go from piece to piece.
  const step = (event: KeyboardEvent<SVGSVGElement>) => {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (event.key === 'Escape') setHovered(null);
    if (by === undefined || pieces.length === 0) return;
    event.preventDefault();
    const next = hovered === null ? 0 : (hovered + by + pieces.length) % pieces.length;
    setHovered(next);
    event.currentTarget
      .querySelector(`[data-piece="${next}"]`)
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  const pointed = hovered === null ? undefined : pieces[hovered];
  const toSheet = `translate(0 ${bottomPx}) scale(${pxPerMm} ${-pxPerMm})`;
  return (
    <>
      <svg
        className={style.drawing}
        width={total.x}
        height={total.y}
        viewBox={`0 0 ${total.x} ${total.y}`}
        role="img"
        aria-label={label}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its pieces are walked through with the arrow keys.
        tabIndex={0}
        onKeyDown={step}
        onBlur={() => setHovered(null)}
        onPointerMove={follow}
        onPointerLeave={() => setHovered(null)}
      >
        <defs>
          <pattern
            id={hatchId}
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path className={style.hatch} d="M0 0v6" />
          </pattern>
        </defs>
        <Tape lengthMm={drawnMm} pxPerMm={pxPerMm} />
        <rect className={style.cloth} y={tapePx} width={size.x} height={size.y + 2 * selvagePx} />
        <rect className={style.selvage} y={tapePx} width={size.x} height={selvagePx} />
        <rect className={style.selvage} y={bottomPx} width={size.x} height={selvagePx} />
        <path
          className={style.cut}
          d={`M.5 ${tapePx}V${total.y}${length.lengthMm === null ? '' : `M${size.x - 0.5} ${tapePx}V${total.y}`}`}
        />
        {length.flaws.map((flaw) => (
          <rect
            key={`${flaw.x} ${flaw.y}`}
            className={style.flaw}
            x={flaw.x * pxPerMm}
            y={bottomPx - (flaw.y + flaw.widthY) * pxPerMm}
            width={Math.max(4, flaw.widthX * pxPerMm)}
            height={Math.max(4, flaw.widthY * pxPerMm)}
            fill={`url(#${hatchId})`}
          />
        ))}
        <g transform={toSheet}>
          <Pieces pieces={pieces} />
        </g>
        <Names pieces={pieces} pxPerMm={pxPerMm} bottomPx={bottomPx} />
        {usedMm > 0 && (
          <>
            <path className={style.used} d={`M${usedMm * pxPerMm} ${tapePx - 12}V${total.y}`} />
            <text className={style.usedFigure} x={usedMm * pxPerMm + 5} y={tapePx + 14}>
              {showQuantity('length', usedMm, { system, unit: clothLengthUnit, digits: 2 })}
            </text>
          </>
        )}
        {pointed && <Pointed piece={pointed} pxPerMm={pxPerMm} bottomPx={bottomPx} roomPx={total.x} />}
      </svg>
      <span className="only-read-aloud" aria-live="polite">
        {pointed && pieceWords(pointed)}
      </span>
    </>
  );
}

interface DrawnPiece {
  /** Unique on the length; a better lay moves the piece of the same key. */
  readonly key: string;
  readonly name: string;
  readonly hue: number;
  readonly path: string;
  readonly placement: Placement;
  /** Box on the cloth, mm. */
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

function drawnPieces(
  job: LayJob,
  result: LayResult,
  lengthIndex: number,
  pieceNames: ReadonlyMap<string, string>,
): DrawnPiece[] {
  // Copies of a shape that lie the same way share one outline.
  const turned = new Map<string, { path: string; box: ReturnType<typeof ringBox> }>();
  const copies = new Map<string, number>();
  return result.placements
    .filter((placement) => placement.length === lengthIndex)
    .map((placement) => {
      const shape = job.shapes[placement.shape]!;
      const copyOf = `${placement.shape} ${placement.mirrored}`;
      const copy = (copies.get(copyOf) ?? 0) + 1;
      copies.set(copyOf, copy);
      const key = `${placement.shape} ${placement.turnDeg} ${placement.mirrored} ${placement.onFold}`;
      let outline = turned.get(key);
      if (!outline) {
        const own = placement.onFold && shape.foldRing ? shape.foldRing : shape.ring;
        const ring = ringTurned(own, placement.turnDeg, placement.mirrored);
        outline = { path: ringPath(ring), box: ringBox(ring) };
        turned.set(key, outline);
      }
      const { path, box } = outline;
      return {
        key: `${copyOf} ${copy}`,
        name: pieceNames.get(shape.id) ?? shape.id,
        hue: hueOf(shape.id),
        path,
        placement,
        minX: box.minX + placement.x,
        maxX: box.maxX + placement.x,
        minY: box.minY + placement.y,
        maxY: box.maxY + placement.y,
      };
    });
}

const Pieces = memo(function Pieces({ pieces }: { pieces: readonly DrawnPiece[] }) {
  return pieces.map((piece, index) => (
    <path
      key={piece.key}
      className={style.piece}
      style={{ '--hue': piece.hue } as CSSProperties}
      data-piece={index}
      d={piece.path}
      transform={`translate(${piece.placement.x} ${piece.placement.y})`}
    />
  ));
});

const letterPx = 6;

const Names = memo(function Names({
  pieces,
  pxPerMm,
  bottomPx,
}: {
  pieces: readonly DrawnPiece[];
  pxPerMm: number;
  bottomPx: number;
}) {
  return pieces.map((piece) => {
    const fits = {
      x: (piece.maxX - piece.minX) * pxPerMm * 0.86 > piece.name.length * letterPx,
      y: (piece.maxY - piece.minY) * pxPerMm > 15,
    };
    if (!fits.x || !fits.y) return null;
    return (
      <text
        key={piece.key}
        className={style.name}
        x={((piece.minX + piece.maxX) / 2) * pxPerMm}
        y={bottomPx - ((piece.minY + piece.maxY) / 2) * pxPerMm}
      >
        {piece.name}
      </text>
    );
  });
});

/** "Front, turned 180°, mirrored". */
function pieceWords({ name, placement: { turnDeg, mirrored } }: DrawnPiece): string {
  return [
    name,
    turnDeg === 0 ? say('length-drawing.as-drawn') : say('length-drawing.turned', { turnDeg }),
    ...(mirrored ? ['mirrored'] : []),
  ].join(', ');
}

/** The piece under the pointer: its grain as an arrow, and its name and turn in a tip. */
function Pointed({
  piece,
  pxPerMm,
  bottomPx,
  roomPx,
}: {
  piece: DrawnPiece;
  pxPerMm: number;
  bottomPx: number;
  roomPx: number;
}) {
  const { turnDeg } = piece.placement;
  const [cos, sin] = turnCosSin(turnDeg);
  const at = {
    x: ((piece.minX + piece.maxX) / 2) * pxPerMm,
    y: bottomPx - ((piece.minY + piece.maxY) / 2) * pxPerMm,
  };
  const extent = Math.abs(cos) > 0.5 ? piece.maxX - piece.minX : piece.maxY - piece.minY;
  const half = Math.max(8, Math.min(60, extent * pxPerMm * 0.35));
  const words = pieceWords(piece);
  const tipWidth = words.length * 6.4 + 20;
  const tipX = Math.max(0, Math.min(at.x - tipWidth / 2, roomPx - tipWidth));
  const tipY = Math.max(tapePx, bottomPx - piece.maxY * pxPerMm - 28);
  return (
    <g className={style.tip}>
      <path
        className={style.grain}
        transform={`translate(${at.x} ${at.y}) rotate(${(-Math.atan2(sin, cos) * 180) / Math.PI})`}
        d={`M${-half} 9H${half}M${half - 6} 4L${half} 9L${half - 6} 14`}
      />
      <rect className={style.tipGround} x={tipX} y={tipY} width={tipWidth} height={24} rx={6} />
      <text className={style.tipText} x={tipX + 10} y={tipY + 16}>
        {words}
      </text>
    </g>
  );
}
