/** What is trimmed off quilted pieces, slot by slot: in the cost of the batch, and in none of its coats. */
import { sumOfTrimmings } from '../../../shared-core/cost/cost.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import table from '../../parts/tables/table.module.css';
import style from './CostRoom.module.css';

/** Nothing where nothing is trimmed. */
export function Trimmings() {
  const { input, estimate } = useCoat('input', 'estimate');
  const system = useSystem();
  const rows = (estimate?.cost.lines ?? []).flatMap(({ slotId, trimmings }) =>
    trimmings ? [{ slotId, trimmings }] : [],
  );
  if (!input || rows.length === 0) return null;
  const all = sumOfTrimmings(rows.map(({ trimmings }) => trimmings));
  return (
    <table className={`${table.table} ${style.trimmings}`} aria-label="Trimmed off after quilting">
      <thead>
        <tr>
          <th scope="col">Of it trimmed off after quilting</th>
          <th scope="col" className={table.amount}>
            Amount
          </th>
          <th scope="col" className={table.amount}>
            Cost
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ slotId, trimmings }) => (
          <tr key={slotId}>
            <td>{sentenceCase(slotById(input.plan, slotId).name)}</td>
            <td className={`${table.amount} number`}>{trimmingsWords(trimmings, system)}</td>
            <td className={table.amount}>
              <Money amountMinor={trimmings.costMinor} />
            </td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td>All trimmings</td>
          <td className={`${table.amount} number`}>{trimmingsWords(all, system)}</td>
          <td className={table.amount}>
            <Money amountMinor={all.costMinor} />
          </td>
        </tr>
      </tfoot>
    </table>
  );
}
