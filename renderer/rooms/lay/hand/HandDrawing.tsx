/**
 * The cutting table: lengths one below the other, pieces that can be taken by pointer, finger or keys. While a piece is
 * in the hand only it is drawn anew.
 */
import { type CSSProperties, memo, type PointerEvent, type RefObject, useId, useMemo } from 'react';
import type { HandLay } from '../../../../shared-core/lay/by-hand.ts';
import type { Outlines } from '../../../../shared-core/lay/standing.ts';
import { ringAreaMm2, turnCosSin } from '../../../../shared-core/geometry/ring.ts';
import type { LayJob, LayResult, Placement } from '../../../../shared-core/lay/job.ts';
import { ringPath } from '../../../../shared-core/lay/lay-svg.ts';
import drawn from '../LengthDrawing.module.css';
import { hueOf } from '../piece-hue.ts';
import style from './HandDrawing.module.css';
import type { HandView } from './hand-view.ts';
import type { TablePlace } from './table-places.ts';

export interface HandDrawingProps {
  readonly sheet: RefObject<SVGSVGElement | null>;
  readonly job: LayJob;
  readonly outlines: Outlines;
  readonly lay: HandLay;
  readonly places: readonly TablePlace[];
  readonly usedLengthMm: LayResult['usedLengthMm'];
  readonly view: HandView;
  readonly selvageMm: number;
  readonly isOneWay: boolean;
  readonly pieceNames: ReadonlyMap<string, string>;
  readonly selected: number | null;
  readonly partner: number | null;
  /** Pieces that may not be cut where they lie. */
  readonly clashing: ReadonlySet<number>;
  /** Another lay of the same job, shown beneath as outlines; null for none. */
  readonly beneath: LayResult | null;
  readonly label: string;
  readonly onPieceDown: (index: number, event: PointerEvent) => void;
  readonly onTableDown: (event: PointerEvent) => void;
  readonly onMove: (event: PointerEvent) => void;
  readonly onUp: (event: PointerEvent) => void;
  readonly onKeyDown: (event: React.KeyboardEvent) => void;
}

export function HandDrawing(props: HandDrawingProps) {
  const { job, outlines, lay, places, view, selvageMm, pieceNames, selected, partner, clashing } = props;
  const hatchId = useId();
  const topOf = useMemo(
    () => new Map(places.map(({ length, topMm, widthMm }) => [length, topMm + widthMm])),
    [places],
  );
  const indexOf = (event: PointerEvent): number | null => {
    const name = (event.target as Element).closest<SVGElement>('[data-hand-piece]')?.dataset.handPiece;
    return name === undefined ? null : Number(name);
  };
  const down = (event: PointerEvent<SVGSVGElement>) => {
    const index = indexOf(event);
    if (index === null) props.onTableDown(event);
    else props.onPieceDown(index, event);
  };
  return (
    <svg
      ref={props.sheet}
      className={style.table}
      role="application"
      aria-label={props.label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: pieces are chosen and moved with the keys.
      tabIndex={0}
      onPointerDown={down}
      onPointerMove={props.onMove}
      onPointerUp={props.onUp}
      onPointerCancel={props.onUp}
      onKeyDown={props.onKeyDown}
    >
      <defs>
        <pattern
          id={hatchId}
          width="24"
          height="24"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className={style.hatch} d="M0 0v24" />
        </pattern>
      </defs>
      <g transform={`translate(${view.x} ${view.y}) scale(${view.scale})`}>
        {places.map((place) => (
          <Cloth
            key={place.length}
            job={job}
            place={place}
            selvageMm={selvageMm}
            isOneWay={props.isOneWay}
            hatchId={hatchId}
            usedMm={props.usedLengthMm[place.length] ?? 0}
          />
        ))}
        {props.beneath && <Beneath outlines={outlines} result={props.beneath} topOf={topOf} />}
        {lay.placements.map((placement, index) => (
          <Piece
            // biome-ignore lint/suspicious/noArrayIndexKey: a piece keeps its index from step to step.
            key={index}
            index={index}
            placement={placement}
            bottomMm={topOf.get(placement.length) ?? 0}
            outlines={outlines}
            name={pieceNames.get(job.shapes[placement.shape]!.id) ?? job.shapes[placement.shape]!.id}
            hue={hueOf(job.shapes[placement.shape]!.id)}
            isSelected={index === selected}
            isPartner={index === partner}
            isPinned={lay.pinned.has(index)}
            isClashing={clashing.has(index)}
          />
        ))}
      </g>
    </svg>
  );
}

interface ClothProps {
  readonly job: LayJob;
  readonly place: TablePlace;
  readonly selvageMm: number;
  readonly isOneWay: boolean;
  readonly hatchId: string;
  readonly usedMm: number;
}

/** One length: selvages, ends, flaws, the lines of its pattern repeat, the way of its nap, and where it is cut. */
const Cloth = memo(function Cloth({ job, place, selvageMm, isOneWay, hatchId, usedMm }: ClothProps) {
  const { topMm, widthMm, drawnMm, length } = place;
  const { flaws, lengthMm } = job.lengths[length]!;
  const { alongMm = 0, acrossMm = 0 } = job.repeat ?? {};
  const bottomMm = topMm + widthMm;
  const lines = [
    ...linesEvery(alongMm, drawnMm).map((x) => `M${x} ${topMm}V${bottomMm}`),
    ...linesEvery(acrossMm, widthMm).map((y) => `M0 ${bottomMm - y}H${drawnMm}`),
  ];
  return (
    <g>
      <rect className={drawn.cloth} y={topMm} width={drawnMm} height={widthMm} />
      {selvageMm > 0 && (
        <>
          <rect className={drawn.selvage} y={topMm - selvageMm} width={drawnMm} height={selvageMm} />
          <rect className={drawn.selvage} y={bottomMm} width={drawnMm} height={selvageMm} />
        </>
      )}
      {lines.length > 0 && <path className={style.repeat} d={lines.join('')} />}
      <path
        className={style.end}
        d={`M0 ${topMm - selvageMm}V${bottomMm + selvageMm}${lengthMm === null ? '' : `M${drawnMm} ${topMm - selvageMm}V${bottomMm + selvageMm}`}`}
      />
      {job.spread === 'folded' && <path className={style.fold} d={`M0 ${bottomMm}H${drawnMm}`} />}
      {isOneWay && (
        <path
          className={style.nap}
          d={`M${drawnMm - 420} ${topMm + 46}H${drawnMm - 60}M${drawnMm - 100} ${topMm + 22}L${drawnMm - 60} ${topMm + 46}L${drawnMm - 100} ${topMm + 70}`}
        />
      )}
      {flaws.map((flaw) => (
        <rect
          key={`${flaw.x} ${flaw.y}`}
          className={drawn.flaw}
          x={flaw.x}
          y={bottomMm - flaw.y - flaw.widthY}
          width={flaw.widthX}
          height={flaw.widthY}
          fill={`url(#${hatchId})`}
        />
      ))}
      {usedMm > 0 && (
        <path className={style.cut} d={`M${usedMm} ${topMm - selvageMm - 30}V${bottomMm + selvageMm + 30}`} />
      )}
    </g>
  );
});

function linesEvery(stepMm: number, toMm: number): number[] {
  return stepMm <= 0 ? [] : Array.from({ length: Math.floor(toMm / stepMm) }, (_, k) => (k + 1) * stepMm);
}

const Beneath = memo(function Beneath({
  outlines,
  result,
  topOf,
}: {
  outlines: Outlines;
  result: LayResult;
  topOf: ReadonlyMap<number, number>;
}) {
  return result.placements.map((placement) => (
    <path
      key={`${placement.length} ${placement.shape} ${placement.x} ${placement.y}`}
      className={style.beneath}
      d={ringPath(outlines.of(placement).ring)}
      transform={`matrix(1 0 0 -1 ${placement.x} ${(topOf.get(placement.length) ?? 0) - placement.y})`}
    />
  ));
});

interface PieceProps {
  readonly index: number;
  readonly placement: Placement;
  /** Where the length's y begins, mm from the top of the table. */
  readonly bottomMm: number;
  readonly outlines: Outlines;
  readonly name: string;
  readonly hue: number;
  readonly isSelected: boolean;
  readonly isPartner: boolean;
  readonly isPinned: boolean;
  readonly isClashing: boolean;
}

const Piece = memo(function Piece(props: PieceProps) {
  const { index, placement, bottomMm, outlines, name, isPinned } = props;
  const { ring, box } = outlines.of(placement);
  const middle = { x: (box.minX + box.maxX) / 2, y: -(box.minY + box.maxY) / 2 };
  const extent = { x: box.maxX - box.minX, y: box.maxY - box.minY };
  const letterMm = Math.min(30, (1.55 * extent.x) / Math.max(3, name.length), extent.y * 0.4);
  return (
    <g
      data-hand-piece={index}
      data-selected={props.isSelected || undefined}
      data-partner={props.isPartner || undefined}
      data-pinned={isPinned || undefined}
      data-clashing={props.isClashing || undefined}
      className={style.piece}
      style={{ '--hue': props.hue } as CSSProperties}
      transform={`translate(${placement.x} ${bottomMm - placement.y})`}
    >
      <path className={style.outline} d={ringPath(ring)} transform="scale(1 -1)" />
      <Grain placement={placement} middle={middle} extent={extent} areaMm2={ringAreaMm2(ring)} />
      {letterMm >= 7 && (
        <text className={style.name} x={middle.x} y={middle.y - letterMm * 0.7} fontSize={letterMm}>
          {name}
        </text>
      )}
      {isPinned && (
        <circle
          className={style.pin}
          cx={middle.x}
          cy={middle.y + Math.min(40, extent.y * 0.28)}
          r={Math.min(12, extent.y * 0.12)}
        />
      )}
    </g>
  );
});

/** The grain as an arrow: with the turn it tells which end is up. */
function Grain({
  placement,
  middle,
  extent,
  areaMm2,
}: {
  placement: Placement;
  middle: { x: number; y: number };
  extent: { x: number; y: number };
  areaMm2: number;
}) {
  if (areaMm2 < 6000) return null;
  const [cos, sin] = turnCosSin(placement.turnDeg);
  const half = 0.22 * (Math.abs(cos) > 0.5 ? extent.x : extent.y);
  const head = Math.min(16, half * 0.4);
  return (
    <path
      className={style.grain}
      transform={`translate(${middle.x} ${middle.y}) rotate(${(-Math.atan2(sin, cos) * 180) / Math.PI})`}
      d={`M${-half} 0H${half}M${half - head} ${-head * 0.7}L${half} 0L${half - head} ${head * 0.7}`}
    />
  );
}
