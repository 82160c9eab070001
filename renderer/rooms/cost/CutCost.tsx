/** Estimated against actual: what the flow said before the first cutting, and what the ledger says was used. */
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { cutAgainst, estimatedOfCut, type SlotAgainst } from '../../../shared-core/cost/cut-against.ts';
import type { CutSheet } from '../../../shared-core/cost/cut-sheet.ts';
import { dayWords, localDate } from '../../../shared-core/measure/calendar-date.ts';
import { roundMinor } from '../../../shared-core/measure/money/money.ts';
import { listed } from '../../../shared-core/plan/edits/edited.ts';
import { trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Amount, amountText } from '../../parts/figures/Amount.tsx';
import { DatedLine } from '../../parts/drawing/DatedLine.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import table from '../../parts/tables/table.module.css';
import { useCutSheet } from './cut-sheet-session.ts';
import style from './CutCost.module.css';

export function CutCost() {
  const { input } = useCoat('input');
  const { read, before, problems } = useCutSheet();
  if (!input) return null;
  if (!read.data) return <ReadProblems read={read} />;
  const { sheet } = read.data;
  if (sheet.cuttings.length === 0) {
    return (
      <p className="quiet">
        Nothing was cut for this coat yet. Once a cutting is recorded, the estimate from before it stands here
        beside what was really used.
      </p>
    );
  }
  const rows = cutAgainst(input.plan.slots, sheet, before?.cost ?? null);
  const estimatedMinor = estimatedOfCut(rows);
  const openCount = rows.filter(({ cut }) => cut === null).length;
  return (
    <>
      <ReadProblems read={read} />
      <Problems problems={problems} />
      <Sums sheet={sheet} estimatedMinor={estimatedMinor} />
      <p className="quiet">
        Estimated: the road gone again for the coats that were cut, on the shelf as it lay before the first
        cutting, at the offers of today. Cut: what the ledger says each lot lost, at what was paid.
        {openCount > 0 && ' Sums are over the slots that were cut; the others are not cut yet.'}
      </p>
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">Slot</th>
            <th scope="col" className={table.amount}>
              Estimated
            </th>
            <th scope="col" className={table.amount}>
              Cut
            </th>
            <th scope="col" className={table.amount}>
              Difference
            </th>
            <th scope="col" className={table.amount}>
              Of it waste
            </th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.slotId} row={row} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td>All that was cut</td>
            <td className={table.amount}>
              {estimatedMinor !== null && <Money amountMinor={estimatedMinor} />}
            </td>
            <td className={table.amount}>
              <Money amountMinor={sheet.batchMinor} />
            </td>
            <td className={table.amount}>
              {estimatedMinor !== null && <Money amountMinor={sheet.batchMinor - estimatedMinor} withSign />}
            </td>
            <td className={table.amount}>
              <Money amountMinor={sheet.wasteMinor} />
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
      <Cuttings sheet={sheet} />
    </>
  );
}

function Sums({ sheet, estimatedMinor }: { sheet: CutSheet; estimatedMinor: number | null }) {
  const cutMinor = sheet.perCoatMinor[0];
  return (
    <dl className={style.sums}>
      <div>
        <dt className="quiet">Coats cut</dt>
        <dd className="number">{sheet.coatCount}</dd>
      </div>
      {cutMinor !== undefined && (
        <div>
          <dt className="quiet">A coat, as cut so far</dt>
          <dd>
            <Money amountMinor={cutMinor} />
          </dd>
        </div>
      )}
      {estimatedMinor !== null && sheet.coatCount > 0 && (
        <div>
          <dt className="quiet">A coat, estimated for the same slots</dt>
          <dd>
            <Money amountMinor={roundMinor(estimatedMinor / sheet.coatCount)} />
          </dd>
        </div>
      )}
    </dl>
  );
}

function Row({ row }: { row: SlotAgainst }) {
  const system = useSystem();
  const { cut, estimatedMinor, estimatedAmount } = row;
  return (
    <tr>
      <td>
        <strong>{sentenceCase(row.slotName)}</strong>
        <span className={`${style.below} quiet small`}>{listed(row.itemNames)}</span>
      </td>
      <td className={table.amount}>
        {estimatedMinor !== null && <Money amountMinor={estimatedMinor} />}
        {estimatedAmount !== null && (
          <span className={`${style.below} quiet small`}>
            <Amount kind={row.kind} amount={estimatedAmount} />
          </span>
        )}
      </td>
      <td className={table.amount}>
        {cut ? <Money amountMinor={cut.costMinor} /> : <span className="quiet">not yet</span>}
        {cut && (
          <span className={`${style.below} quiet small`}>
            <Amount kind={row.kind} amount={row.usedAmount} />
          </span>
        )}
      </td>
      <td className={table.amount}>
        {cut && estimatedMinor !== null && <Money amountMinor={cut.costMinor - estimatedMinor} withSign />}
      </td>
      <td className={table.amount}>
        {cut && cut.wasteMinor > 0 && <Money amountMinor={cut.wasteMinor} />}
        {cut?.trimmings && (
          <span className={`${style.below} quiet small`}>
            <Money amountMinor={cut.trimmings.costMinor} /> trimmed off:{' '}
            {trimmingsWords(cut.trimmings, system)}
          </span>
        )}
      </td>
      <td className="small">
        {cut?.lots.map(({ lot, usedMilli }) => (
          <span key={lot.id} className={style.below}>
            Lot of {dayWords(lot.receivedOn)}
            {lot.dyeLot && `, dye lot ${lot.dyeLot}`}: {amountText(row.kind, usedMilli / 1000, system)}
          </span>
        ))}
      </td>
    </tr>
  );
}

/** Each cutting with its cost; a coat's cost by the day where coats were counted. */
function Cuttings({ sheet }: { sheet: CutSheet }) {
  const counted = sheet.cuttings.filter(({ coatCount }) => coatCount > 0);
  const perCoat = counted.map(({ at, coatCount, costMinor }) => ({
    day: localDate(new Date(at)),
    amountMinor: roundMinor(costMinor / coatCount),
  }));
  return (
    <section className={style.cuttings} aria-label="Cuttings of this coat">
      <h2>Cutting by cutting</h2>
      {perCoat.length > 1 && (
        <figure className={style.figure}>
          <figcaption>Material of one coat, by the day it was cut</figcaption>
          <DatedLine
            label="Material of one coat, by the day it was cut. The table below has the same figures."
            points={perCoat}
          />
        </figure>
      )}
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col" className={table.amount}>
              Coats
            </th>
            <th scope="col" className={table.amount}>
              Material
            </th>
            <th scope="col" className={table.amount}>
              A coat
            </th>
          </tr>
        </thead>
        <tbody>
          {sheet.cuttings.map(({ cuttingId, at, coatCount, costMinor }) => (
            <tr key={cuttingId}>
              <td className="number">{dayWords(at)}</td>
              <td className={`${table.amount} number`}>{coatCount === 0 ? 'no new one' : coatCount}</td>
              <td className={table.amount}>
                <Money amountMinor={costMinor} />
              </td>
              <td className={table.amount}>
                {coatCount > 0 && <Money amountMinor={roundMinor(costMinor / coatCount)} />}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
