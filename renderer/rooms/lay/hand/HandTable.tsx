/** A lay by hand, beside the one that was found: the cutting table, the piece in the hand, both lengths, all places as a table. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react';
import { placedBox } from '../../../../shared-core/lay/standing.ts';
import { checkLay } from '../../../../shared-core/lay/check/check.ts';
import type { SlotLay } from '../../../../shared-core/lay/plan-lay.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { useCoat } from '../../../client/coat/coat-context.ts';
import { jobHash, keepLay } from '../../../client/workers/kept-lays.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { jobKey } from '../best-lay.ts';
import { keepHistory } from './hand-history.ts';
import { type HandKey, handKey } from './hand-keys.ts';
import { panned, useHandView, zoomedAt } from './hand-view.ts';
import { HandDrawing } from './HandDrawing.tsx';
import style from './HandTable.module.css';
import { HandWords } from './HandWords.tsx';
import { HandPiece } from './HandPiece.tsx';
import { PlacementTable } from './PlacementTable.tsx';
import { lengthAt, tablePlaces, tableSize } from './table-places.ts';
import { useHandTable } from './useHandTable.ts';

export interface HandTableProps {
  readonly slotLay: SlotLay;
  readonly name: string;
  readonly selvageMm: number;
  readonly isOneWay: boolean;
  readonly pieceNames: ReadonlyMap<string, string>;
  /** What each length of the job is called. */
  readonly lengthNames: readonly string[];
  readonly onClose: () => void;
}

/** A piece or the table under one finger or the pointer. */
type Grip =
  | { readonly kind: 'table'; readonly id: number; readonly x: number; readonly y: number }
  | {
      readonly kind: 'piece';
      readonly id: number;
      readonly index: number;
      readonly x: number;
      readonly y: number;
      /** Of the shape's origin on the table, mm, when it was taken. */
      readonly atX: number;
      readonly atY: number;
    };

export function HandTable(props: HandTableProps) {
  const { name, selvageMm, isOneWay, pieceNames, lengthNames, onClose } = props;
  const { reload } = useCoat('reload');
  const { workshop } = useWorkshop();
  // The lay that was found stays as it was when the hands began, whatever is found meanwhile.
  const [slotLay] = useState(props.slotLay);
  const { job, result } = slotLay;
  const key = jobKey(job);
  const table = useHandTable(slotLay, key);
  const { lay, laid, outlines, selected, partner, clashing } = table;
  const sheet = useRef<SVGSVGElement>(null);
  const places = useMemo(() => tablePlaces(job, laid.usedLengthMm), [job, laid.usedLengthMm]);
  const { view, setView, fit, reveal, fingerDown, fingerMoved, fingerUp } = useHandView(
    sheet,
    tableSize(places),
  );
  const [grip, setGrip] = useState<Grip | null>(null);
  const [isBeneath, setIsBeneath] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isSaving, setIsSaving] = useState(false);

  const tablePoint = (event: PointerEvent) => {
    const box = sheet.current!.getBoundingClientRect();
    return {
      x: (event.clientX - box.left - view.x) / view.scale,
      y: (event.clientY - box.top - view.y) / view.scale,
    };
  };
  const bottomOf = (length: number) => places[length]!.topMm + places[length]!.widthMm;
  const take = (event: PointerEvent): boolean => {
    sheet.current?.setPointerCapture(event.pointerId);
    return fingerDown(event.pointerId, event.clientX, event.clientY) === 1;
  };
  const pieceDown = (index: number, event: PointerEvent) => {
    if (event.button !== 0 || !take(event)) return setGrip(null);
    const isTrade = partner !== null && partner !== index;
    table.choose(index);
    if (isTrade || lay.pinned.has(index)) return;
    const placement = lay.placements[index]!;
    const at = tablePoint(event);
    setGrip({
      kind: 'piece',
      id: event.pointerId,
      index,
      x: at.x,
      y: at.y,
      atX: placement.x,
      atY: bottomOf(placement.length) - placement.y,
    });
  };
  const tableDown = (event: PointerEvent) => {
    if (!take(event)) return setGrip(null);
    table.choose(null);
    setGrip({ kind: 'table', id: event.pointerId, x: event.clientX, y: event.clientY });
  };
  const move = (event: PointerEvent) => {
    if (fingerMoved(event.pointerId, event.clientX, event.clientY)) return;
    if (!grip || grip.id !== event.pointerId) return;
    if (grip.kind === 'table') {
      setView((now) => panned(now, event.clientX - grip.x, event.clientY - grip.y));
      setGrip({ ...grip, x: event.clientX, y: event.clientY });
      return;
    }
    const at = tablePoint(event);
    const { length } = lengthAt(places, at.y);
    table.lift(grip.index, {
      length,
      x: grip.atX + at.x - grip.x,
      y: bottomOf(length) - (grip.atY + at.y - grip.y),
    });
  };
  const up = (event: PointerEvent) => {
    fingerUp(event.pointerId);
    if (grip?.kind === 'piece') table.layDown();
    setGrip(null);
  };
  const zoom = (ratio: number) => {
    const box = sheet.current?.getBoundingClientRect();
    if (box) setView((now) => zoomedAt(now, ratio, box.width / 2, box.height / 2));
  };

  const walk = (by: number) => {
    const count = lay.placements.length;
    if (count === 0) return;
    const next = selected === null ? 0 : (selected + by + count) % count;
    table.choose(next);
    const placement = lay.placements[next]!;
    const box = placedBox(outlines, placement);
    const height = box.maxY - box.minY;
    reveal({
      x: box.minX,
      y: bottomOf(placement.length) - box.minY - height,
      width: box.maxX - box.minX,
      height,
    });
  };
  const arrow = (x: number, y: number, event: KeyboardEvent) => {
    if (selected === null) setView((now) => panned(now, -60 * x, 60 * y));
    else if (event.altKey) table.slide(selected, { x, y });
    else table.moveBy(selected, x * (event.shiftKey ? 10 : 1), y * (event.shiftKey ? 10 : 1));
  };
  const act = (key: HandKey, event: KeyboardEvent) => {
    switch (key.does) {
      case 'arrow':
        arrow(key.x, key.y, event);
        break;
      case 'walk':
        walk(key.by);
        break;
      case 'zoom':
        zoom(key.ratio);
        break;
      case 'fit':
        fit();
        break;
      case 'undo':
        table.undo();
        break;
      case 'redo':
        table.redo();
        break;
      case 'let go':
        if (partner === null) table.choose(null);
        else table.startExchange(null);
        break;
      case 'trade':
        table.startExchange(selected);
        break;
      case 'turn':
        if (selected !== null) table.turn(selected);
        break;
      case 'pin':
        if (selected !== null) table.pin(selected);
        break;
      default:
        key satisfies never;
    }
  };
  const keyed = (event: KeyboardEvent) => {
    const key = handKey(event);
    if (!key) return;
    event.preventDefault();
    act(key, event);
  };

  const save = async () => {
    setIsSaving(true);
    const faults = checkLay(job, laid).map(({ where, what }) => ({
      where,
      what,
      fix: say('hand-table.move-it-on-the-table-then'),
    }));
    setProblems(faults);
    if (faults.length === 0) {
      await keepLay(workshop, await jobHash(job), laid);
      keepHistory(key, null);
      onClose();
      // Figures that follow from the lay are worked out anew while the maker goes on.
      void reload();
      return;
    }
    setIsSaving(false);
  };
  return (
    <section className={style.room} aria-label={say('hand-table.cutting-table-of-the', { name })}>
      <div className={style.bar}>
        <div className={style.group}>
          <Button onClick={table.undo} disabled={!table.canUndo}>
            {say('common.undo')}
          </Button>
          <Button onClick={table.redo} disabled={!table.canRedo}>
            {say('hand-table.redo')}
          </Button>
          <Button look="quiet" onClick={table.startOver}>
            {say('hand-table.start-over')}
          </Button>
        </div>
        <div className={style.group}>
          <Button aria-label={say('hand-table.smaller')} onClick={() => zoom(0.8)}>
            −
          </Button>
          <Button aria-label={say('hand-table.larger')} onClick={() => zoom(1.25)}>
            +
          </Button>
          <Button onClick={fit}>{say('hand-table.whole-table')}</Button>
        </div>
        <div className={style.group}>
          {table.isFinishing ? (
            <Button onClick={table.stopFinishing}>{say('hand-table.stop-laying')}</Button>
          ) : (
            <Button onClick={() => void table.finish()}>
              {lay.pinned.size === 0
                ? say('hand-table.lay-all-anew')
                : say('hand-table.lay-the-rest-around-pinned', { pinnedCount: lay.pinned.size })}
            </Button>
          )}
          <Button look="quiet" onClick={onClose}>
            {say('hand-table.leave-the-table')}
          </Button>
          <Button
            look="main"
            disabled={isSaving || table.isFinishing || clashing.size > 0}
            onClick={() => void save()}
          >
            {say('hand-table.use-this-lay')}
          </Button>
        </div>
      </div>
      <HandWords table={table} found={slotLay} isBeneath={isBeneath} onBeneath={setIsBeneath} />
      <Problems problems={problems} />
      <HandDrawing
        sheet={sheet}
        job={job}
        outlines={outlines}
        lay={lay}
        places={places}
        usedLengthMm={laid.usedLengthMm}
        view={view}
        selvageMm={selvageMm}
        isOneWay={isOneWay}
        pieceNames={pieceNames}
        selected={selected}
        partner={partner}
        clashing={clashing}
        beneath={isBeneath ? result : null}
        label={say('hand-table.cutting-table-of-the-page-down', { name })}
        onPieceDown={pieceDown}
        onTableDown={tableDown}
        onMove={move}
        onUp={up}
        onKeyDown={keyed}
      />
      <HandPiece
        table={table}
        name={
          selected === null
            ? null
            : (pieceNames.get(job.shapes[lay.placements[selected]!.shape]!.id) ??
              job.shapes[lay.placements[selected]!.shape]!.id)
        }
        box={selected === null ? null : placedBox(outlines, lay.placements[selected]!)}
        mayTurn={selected !== null && job.shapes[lay.placements[selected]!.shape]!.turnsDeg.length > 1}
        clearanceMm={job.clearanceMm}
      />
      <PlacementTable table={table} job={job} pieceNames={pieceNames} lengthNames={lengthNames} />
    </section>
  );
}
