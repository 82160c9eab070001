/** The chosen piece: where it lies, what is in its way, and what can be done with it. */
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
  { label: 'Slide towards the start', sign: '←', x: -1, y: 0 },
  { label: 'Slide towards the end', sign: '→', x: 1, y: 0 },
  { label: 'Slide up', sign: '↑', x: 0, y: 1 },
  { label: 'Slide down', sign: '↓', x: 0, y: -1 },
] as const;

export function HandPiece({ table, name, box, mayTurn, clearanceMm }: HandPieceProps) {
  const system = useSystem();
  const { selected, own, lay, partner } = table;
  if (selected === null || !own || !box || name === null) {
    return (
      <p className={style.hint}>
        Drag a piece, or choose one with Page Down and move it with the arrows (Shift: 10 mm; Alt: until it
        meets the next). R turns it, P pins it, X trades it for another. The wheel zooms, and Shift with it
        moves along.
      </p>
    );
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
          label="From the start"
          quantity="length"
          value={box.minX}
          onSet={(x) => moveTo(x, box.minY)}
        />
        <SettledField
          label="From the lower edge"
          quantity="length"
          value={box.minY}
          onSet={(y) => moveTo(box.minX, y)}
        />
      </div>
      <div className={style.group}>
        <Button disabled={!mayTurn || isPinned} onClick={() => table.turn(selected)}>
          Turn
        </Button>
        <Button aria-pressed={isPinned} onClick={() => table.pin(selected)}>
          {isPinned ? 'Unpin' : 'Pin'}
        </Button>
        <Button
          aria-pressed={partner !== null}
          disabled={isPinned}
          onClick={() => table.startExchange(partner === null ? selected : null)}
        >
          {partner === null ? 'Trade places' : 'Choose the other piece'}
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
  if (own.isOutside) return 'lies beyond the cloth';
  if (own.lyingOn.length > 0)
    return `lies on ${own.lyingOn.length === 1 ? 'another piece' : `${own.lyingOn.length} other pieces`}`;
  if (own.isOnFlaw) return 'lies on a flaw';
  if (own.isOffRepeat) return 'does not meet the pattern repeat';
  if (own.tooNear.length > 0) return `is nearer than ${show(clearanceMm)} to its neighbour`;
  return own.nearestMm === null ? 'nothing near' : `${show(own.nearestMm)} to its neighbour`;
}
