/** Every place on the cutting table in words and numbers: the drawing's twin for whoever reads or listens. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { placedBox } from '../../../../shared-core/lay/standing.ts';
import type { LayJob } from '../../../../shared-core/lay/job.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { useSystem } from '../../../client/workshop.ts';
import { DataTable } from '../../../parts/tables/DataTable.tsx';
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
      <summary>{say('placement-table.all-places-in-a-table')}</summary>
      <DataTable
        rows={rows}
        keyOf={({ index }) => index}
        rowProps={({ index }) => ({ 'aria-current': index === selected || undefined })}
        columns={[
          {
            head: say('common.piece'),
            cell: ({ placement, index }) => (
              <button type="button" className={style.name} onClick={() => table.choose(index)}>
                {pieceNames.get(job.shapes[placement.shape]!.id) ?? job.shapes[placement.shape]!.id}
              </button>
            ),
          },
          { head: say('common.length'), cell: ({ placement }) => lengthNames[placement.length] },
          {
            head: say('common.from-the-start'),
            align: 'end',
            isNumber: true,
            cell: ({ box }) => show(box.minX),
          },
          {
            head: say('placement-table.from-the-lower-edge'),
            align: 'end',
            isNumber: true,
            cell: ({ box }) => show(box.minY),
          },
          {
            head: say('placement-table.turn'),
            cell: ({ placement }) =>
              `${placement.turnDeg}°${placement.mirrored ? say('common.mirrored') : ''}`,
          },
          {
            head: say('placement-table.state'),
            cell: ({ index }) =>
              [
                lay.pinned.has(index) ? 'pinned' : '',
                clashing.has(index) ? say('placement-table.in-the-way') : '',
              ]
                .filter(Boolean)
                .join(', '),
          },
        ]}
      />
    </details>
  );
}
