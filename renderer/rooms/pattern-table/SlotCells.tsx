/** One material's part of the table. A cell that is pressed says below how it was got. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { FilledCell, Nap } from '../../../shared-core/flow/requirements-table/requirements-table.ts';
import {
  cellWords,
  soldWords,
  widthWords,
} from '../../../shared-core/flow/requirements-table/table-words.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import table from '../../parts/tables/table.module.css';
import style from './PatternTableRoom.module.css';

export interface SlotCellsProps {
  readonly slot: Slot;
  readonly cells: readonly FilledCell[];
  readonly systems: readonly [MeasureSystem, ...MeasureSystem[]];
}

const napOrder: readonly Nap[] = ['without nap', 'with nap'];

export function SlotCells({ slot, cells, systems }: SlotCellsProps) {
  const [pressed, setPressed] = useState<string | null>(null);
  const sizes = [...new Set(cells.map(({ size }) => size))];
  const widths = [...new Set(cells.map(({ widthMm }) => widthMm))];
  // Batting has no nap: its two columns would say the same twice.
  const hasNaps = slot.kind === 'cloth';
  const naps = hasNaps ? napOrder.filter((nap) => cells.some((cell) => cell.nap === nap)) : [cells[0]?.nap];
  const shown = cells.find((cell) => keyOf(cell) === pressed);
  const heading = `table-${slot.id}`;
  if (cells.length === 0) return null;
  return (
    <section aria-labelledby={heading} className={style.slot}>
      <h2 id={heading}>{sentenceCase(slot.name)}</h2>
      <div className={style.scroll}>
        <table className={table.table}>
          <thead>
            <tr>
              <th scope="col" rowSpan={hasNaps ? 2 : 1}>
                {say('common.size')}
              </th>
              {widths.map((widthMm) => (
                <th key={widthMm} scope="colgroup" colSpan={naps.length} className={style.width}>
                  {systems.map((system) => widthWords(widthMm, system)).join(' / ')}
                </th>
              ))}
            </tr>
            {hasNaps && (
              <tr>
                {widths.flatMap((widthMm) =>
                  naps.map((nap) => (
                    <th key={`${widthMm} ${nap}`} scope="col" className={table.amount}>
                      {codeWords(nap ?? '')}
                    </th>
                  )),
                )}
              </tr>
            )}
          </thead>
          <tbody>
            {sizes.map((size) => (
              <tr key={size}>
                <th scope="row">{size || say('slot-cells.no-size-named')}</th>
                {widths.flatMap((widthMm) =>
                  naps.map((nap) => {
                    const cell = cells.find(
                      (each) => each.size === size && each.widthMm === widthMm && each.nap === nap,
                    );
                    return (
                      <td key={`${widthMm} ${nap}`} className={table.amount}>
                        {cell && (
                          <Cell
                            cell={cell}
                            systems={systems}
                            isPressed={keyOf(cell) === pressed}
                            onPress={() => setPressed((now) => (now === keyOf(cell) ? null : keyOf(cell)))}
                          />
                        )}
                      </td>
                    );
                  }),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {shown && (
        <p role="status" className={style.how}>
          <strong>
            {say('slot-cells.size', {
              shownCount: shown.size || say('slot-cells.not-named'),
              widthWords: widthWords(shown.widthMm, systems[0]),
              kind: slot.kind === 'cloth' ? ` ${codeWords(shown.nap)}` : '',
            })}
          </strong>{' '}
          {cellWords(shown, systems[0])}
        </p>
      )}
    </section>
  );
}

interface CellProps {
  readonly cell: FilledCell;
  readonly systems: SlotCellsProps['systems'];
  readonly isPressed: boolean;
  readonly onPress: () => void;
}

function Cell({ cell, systems, isPressed, onPress }: CellProps) {
  const [first, second] = systems;
  return (
    <button
      type="button"
      className={`${style.cell} number eased`}
      aria-pressed={isPressed}
      title={say('slot-cells.how-it-was-got')}
      onClick={onPress}
    >
      {cell.result ? (
        <>
          {soldWords(cell, first)}
          {second && <span className={style.second}>{soldWords(cell, second)}</span>}
        </>
      ) : (
        <span className={style.empty}>{emptyWords(cell)}</span>
      )}
    </button>
  );
}

function emptyWords(cell: FilledCell): string {
  if (cell.job.shapes.length === 0) return 'none';
  return cell.problems.length > 0 ? say('slot-cells.too-narrow') : say('slot-cells.not-found-yet');
}

function keyOf({ size, widthMm, nap }: FilledCell): string {
  return `${size} ${widthMm} ${nap}`;
}
