/** The chosen piece: where it lies, what is in its way, and what can be done with it. */
import { say } from '../../../../shared-core/wording/say.ts';
import type { Box } from '../../../../shared-core/geometry/ring.ts';
import type { Standing } from '../../../../shared-core/lay/standing.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { useSystem } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { SettledField } from '../../../parts/forms/SettledField.tsx';
import style from './HandTable.module.css';
import type { HandTable } from './useHandTable.ts';

export interface HandPieceProps {
  readonly table: HandTable;
  readonly name: string | null;
  readonly box: Box | null;
  readonly mayTurn: boolean;
  readonly clearanceMm: number;
}

const ways = [
  { label: say('hand-piece.slide-towards-the-start'), sign: '←', x: -1, y: 0 },
  { label: say('hand-piece.slide-towards-the-end'), sign: '→', x: 1, y: 0 },
  { label: say('hand-piece.slide-up'), sign: '↑', x: 0, y: 1 },
  { label: say('hand-piece.slide-down'), sign: '↓', x: 0, y: -1 },
] as const;

export function HandPiece({ table, name, box, mayTurn, clearanceMm }: HandPieceProps) {
  const system = useSystem();
  const { selected, own, lay, partner } = table;
  if (selected === null || !own || !box || name === null) {
    return <p className={style.hint}>{say('hand-piece.drag-a-piece-or-choose-one')}</p>;
  }
  const placement = lay.placements[selected]!;
  const isPinned = lay.pinned.has(selected);
  const moveTo = (x: number, y: number) =>
    table.moveTo(selected, {
      length: placement.length,
      x: placement.x + x - box.minX,
      y: placement.y + y - box.minY,
    });
  return (
    <div className={style.piece} data-testid="hand-piece">
      <div className={style.pieceHead}>
        <strong>{name}</strong>
        <span className="number" aria-live="polite">
          {standingWords(own, clearanceMm, system)}
        </span>
      </div>
      <div className={style.places}>
        <SettledField
          label={say('common.from-the-start')}
          quantity="length"
          value={box.minX}
          onSet={(x) => moveTo(x, box.minY)}
        />
        <SettledField
          label={say('hand-piece.from-the-lower-edge')}
          quantity="length"
          value={box.minY}
          onSet={(y) => moveTo(box.minX, y)}
        />
      </div>
      <div className={style.group}>
        <Button disabled={!mayTurn || isPinned} onClick={() => table.turn(selected)}>
          {say('hand-piece.turn')}
        </Button>
        <Button aria-pressed={isPinned} onClick={() => table.pin(selected)}>
          {isPinned ? say('hand-piece.unpin') : say('hand-piece.pin')}
        </Button>
        <Button
          aria-pressed={partner !== null}
          disabled={isPinned}
          onClick={() => table.startExchange(partner === null ? selected : null)}
        >
          {partner === null ? say('hand-piece.trade-places') : say('hand-piece.choose-the-other-piece')}
        </Button>
        {ways.map(({ label, sign, x, y }) => (
          <Button
            key={sign}
            aria-label={label}
            title={label}
            disabled={isPinned}
            onClick={() => table.slide(selected, { x, y })}
          >
            {sign}
          </Button>
        ))}
      </div>
    </div>
  );
}

function standingWords(own: Standing, clearanceMm: number, system: MeasureSystem): string {
  const show = (mm: number) => showQuantity('length', mm, { system, unit: { metric: 'mm', imperial: 'in' } });
  if (own.isOutside) return say('hand-piece.lies-beyond-the-cloth');
  if (own.lyingOn.length > 0)
    return say('hand-piece.lies-on-other-pieces', { lyingOnCount: own.lyingOn.length });
  if (own.isOnFlaw) return say('hand-piece.lies-on-a-flaw');
  if (own.isOffRepeat) return say('hand-piece.does-not-meet-the-pattern-repeat');
  if (own.tooNear.length > 0)
    return say('hand-piece.is-nearer-than-to-its-neighbour', { show: show(clearanceMm) });
  return own.nearestMm === null
    ? say('hand-piece.nothing-near')
    : say('hand-piece.to-its-neighbour', { show: show(own.nearestMm) });
}
