/** Every place on the cutting table in words and numbers: the drawing's twin for whoever reads or listens. */
import { useMemo } from 'react';
import { placedBox } from '../../../../shared-core/lay/standing.ts';
import type { LayJob } from '../../../../shared-core/lay/job.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { useSystem } from '../../../client/workshop.ts';
import tables from '../../../parts/tables/table.module.css';
import style from './HandTable.module.css';
import type { HandTable } from './useHandTable.ts';

export interface PlacementTableProps {
  readonly table: HandTable;
  readonly job: LayJob;
  readonly pieceNames: ReadonlyMap<string, string>;
  readonly lengthNames: readonly string[];
}

export function PlacementTable({ table, job, pieceNames, lengthNames }: PlacementTableProps) {
  const system = useSystem();
  const { lay, outlines, selected, clashing } = table;
  const rows = useMemo(
    () =>
      lay.placements
        .map((placement, index) => ({ placement, index, box: placedBox(outlines, placement) }))
        .sort((a, b) => a.placement.length - b.placement.length || a.box.minX - b.box.minX),
    [lay.placements, outlines],
  );
  const show = (mm: number) =>
    showQuantity('length', mm, { system, unit: { metric: 'cm', imperial: 'in' }, digits: 1 });
  return (
    <details className={style.all}>
      <summary>All places in a table</summary>
      <table className={tables.table}>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Length</th>
            <th scope="col" className={tables.amount}>
              From the start
            </th>
            <th scope="col" className={tables.amount}>
              From the lower edge
            </th>
            <th scope="col">Turn</th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ placement, index, box }) => (
            <tr key={index} aria-current={index === selected || undefined}>
              <td>
                <button type="button" className={style.name} onClick={() => table.choose(index)}>
                  {pieceNames.get(job.shapes[placement.shape]!.id) ?? job.shapes[placement.shape]!.id}
                </button>
              </td>
              <td>{lengthNames[placement.length]}</td>
              <td className={`${tables.amount} number`}>{show(box.minX)}</td>
              <td className={`${tables.amount} number`}>{show(box.minY)}</td>
              <td>
                {placement.turnDeg}°{placement.mirrored ? ', mirrored' : ''}
              </td>
              <td>
                {[lay.pinned.has(index) ? 'pinned' : '', clashing.has(index) ? 'in the way' : '']
                  .filter(Boolean)
                  .join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
