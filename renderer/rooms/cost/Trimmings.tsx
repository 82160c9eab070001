/** What is trimmed off quilted pieces, slot by slot: in the cost of the batch, and in none of its coats. */
import { say } from '../../../shared-core/wording/say.ts';
import { sumOfTrimmings } from '../../../shared-core/cost/cost.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
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
    <DataTable
      className={style.trimmings}
      label={say('trimmings.trimmed-off-after-quilting')}
      rows={rows}
      keyOf={({ slotId }) => slotId}
      columns={[
        {
          head: say('trimmings.of-it-trimmed-off-after-quilting'),
          cell: ({ slotId }) => sentenceCase(slotById(input.plan, slotId).name),
        },
        {
          head: say('common.amount'),
          align: 'end',
          isNumber: true,
          cell: ({ trimmings }) => trimmingsWords(trimmings, system),
        },
        {
          head: say('common.cost'),
          align: 'end',
          cell: ({ trimmings }) => <Money amountMinor={trimmings.costMinor} />,
        },
      ]}
      foot={[
        {
          label: say('trimmings.all-trimmings'),
          cells: [trimmingsWords(all, system), <Money key="cost" amountMinor={all.costMinor} />],
        },
      ]}
    />
  );
}
