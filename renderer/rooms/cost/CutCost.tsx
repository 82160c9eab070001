/** Estimated against actual: what the flow said before the first cutting, and what the ledger says was used. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { cutAgainst, estimatedOfCut, type SlotAgainst } from '../../../shared-core/cost/cut-against.ts';
import type { CutSheet } from '../../../shared-core/cost/cut-sheet.ts';
import { dayWords, localDate } from '../../../shared-core/measure/calendar-date.ts';
import { roundMinor } from '../../../shared-core/measure/money/money.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Amount, amountText } from '../../parts/figures/Amount.tsx';
import { DatedLine } from '../../parts/drawing/DatedLine.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { type Column, DataTable } from '../../parts/tables/DataTable.tsx';
import { useCutSheet } from './cut-sheet-session.ts';
import style from './CutCost.module.css';

export function CutCost() {
  const { input } = useCoat('input');
  const system = useSystem();
  const { read, before, problems } = useCutSheet();
  if (!input) return null;
  if (!read.data) return <ReadProblems read={read} />;
  const { sheet } = read.data;
  if (sheet.cuttings.length === 0) {
    return <p className="quiet">{say('cut-cost.nothing-was-cut-for-this-coat')}</p>;
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
        {say('cut-cost.estimated-the-road-gone-again-for')}
        {openCount > 0 && ` ${say('cut-cost.sums-are-over-the-slots-that')}`}
      </p>
      <DataTable
        rows={rows}
        keyOf={({ slotId }) => slotId}
        columns={againstColumns(system)}
        foot={[
          {
            label: say('cut-cost.all-that-was-cut'),
            cells: [
              estimatedMinor !== null && <Money key="estimated" amountMinor={estimatedMinor} />,
              <Money key="cut" amountMinor={sheet.batchMinor} />,
              estimatedMinor !== null && (
                <Money key="difference" amountMinor={sheet.batchMinor - estimatedMinor} withSign />
              ),
              <Money key="waste" amountMinor={sheet.wasteMinor} />,
              null,
            ],
          },
        ]}
      />
      <Cuttings sheet={sheet} />
    </>
  );
}

function Sums({ sheet, estimatedMinor }: { sheet: CutSheet; estimatedMinor: number | null }) {
  const cutMinor = sheet.perCoatMinor[0];
  return (
    <dl className={style.sums}>
      <div>
        <dt className="quiet">{say('cut-cost.coats-cut')}</dt>
        <dd className="number">{sheet.coatCount}</dd>
      </div>
      {cutMinor !== undefined && (
        <div>
          <dt className="quiet">{say('cut-cost.a-coat-as-cut-so-far')}</dt>
          <dd>
            <Money amountMinor={cutMinor} />
          </dd>
        </div>
      )}
      {estimatedMinor !== null && sheet.coatCount > 0 && (
        <div>
          <dt className="quiet">{say('cut-cost.a-coat-estimated-for-the-same')}</dt>
          <dd>
            <Money amountMinor={roundMinor(estimatedMinor / sheet.coatCount)} />
          </dd>
        </div>
      )}
    </dl>
  );
}

function againstColumns(system: MeasureSystem): readonly Column<SlotAgainst>[] {
  const below = `${style.below} quiet small`;
  return [
    {
      head: say('common.slot'),
      cell: ({ slotName, itemNames }) => (
        <>
          <strong>{sentenceCase(slotName)}</strong>
          <span className={below}>{listed(itemNames)}</span>
        </>
      ),
    },
    {
      head: say('cut-cost.estimated'),
      align: 'end',
      cell: ({ kind, estimatedMinor, estimatedAmount }) => (
        <>
          {estimatedMinor !== null && <Money amountMinor={estimatedMinor} />}
          {estimatedAmount !== null && (
            <span className={below}>
              <Amount kind={kind} amount={estimatedAmount} />
            </span>
          )}
        </>
      ),
    },
    {
      head: say('common.cut'),
      align: 'end',
      cell: ({ kind, cut, usedAmount }) =>
        cut ? (
          <>
            <Money amountMinor={cut.costMinor} />
            <span className={below}>
              <Amount kind={kind} amount={usedAmount} />
            </span>
          </>
        ) : (
          <span className="quiet">{say('cut-cost.not-yet')}</span>
        ),
    },
    {
      head: say('cut-cost.difference'),
      align: 'end',
      cell: ({ cut, estimatedMinor }) =>
        cut && estimatedMinor !== null && <Money amountMinor={cut.costMinor - estimatedMinor} withSign />,
    },
    {
      head: say('common.of-it-waste'),
      align: 'end',
      cell: ({ cut }) => (
        <>
          {cut && cut.wasteMinor > 0 && <Money amountMinor={cut.wasteMinor} />}
          {cut?.trimmings && (
            <span className={below}>
              <Money amountMinor={cut.trimmings.costMinor} /> {say('cut-cost.trimmed-off')}{' '}
              {trimmingsWords(cut.trimmings, system)}
            </span>
          )}
        </>
      ),
    },
    {
      head: say('common.from'),
      cellClass: 'small',
      cell: ({ kind, cut }) =>
        cut?.lots.map(({ lot, usedMilli }) => (
          <span key={lot.id} className={style.below}>
            {say('cut-cost.lot-of', {
              receivedOn: dayWords(lot.receivedOn),
              dyeLot: lot.dyeLot && say('cut-cost.dye-lot', { dyeLot: lot.dyeLot }),
              amountText: amountText(kind, usedMilli / 1000, system),
            })}
          </span>
        )),
    },
  ];
}

/** Each cutting with its cost; a coat's cost by the day where coats were counted. */
function Cuttings({ sheet }: { sheet: CutSheet }) {
  const counted = sheet.cuttings.filter(({ coatCount }) => coatCount > 0);
  const perCoat = counted.map(({ at, coatCount, costMinor }) => ({
    day: localDate(new Date(at)),
    amountMinor: roundMinor(costMinor / coatCount),
  }));
  return (
    <section className={style.cuttings} aria-label={say('cut-cost.cuttings-of-this-coat')}>
      <h2>{say('cut-cost.cutting-by-cutting')}</h2>
      {perCoat.length > 1 && (
        <figure className={style.figure}>
          <figcaption>{say('cut-cost.material-of-one-coat-by-the')}</figcaption>
          <DatedLine label={say('cut-cost.material-of-one-coat-by-the-2')} points={perCoat} />
        </figure>
      )}
      <DataTable
        rows={sheet.cuttings}
        keyOf={({ cuttingId }) => cuttingId}
        columns={[
          { head: say('cut-cost.day'), isNumber: true, cell: ({ at }) => dayWords(at) },
          {
            head: say('common.coats'),
            align: 'end',
            isNumber: true,
            cell: ({ coatCount }) => (coatCount === 0 ? say('cut-cost.no-new-one') : coatCount),
          },
          {
            head: say('common.material'),
            align: 'end',
            cell: ({ costMinor }) => <Money amountMinor={costMinor} />,
          },
          {
            head: say('cut-cost.a-coat'),
            align: 'end',
            cell: ({ coatCount, costMinor }) =>
              coatCount > 0 && <Money amountMinor={roundMinor(costMinor / coatCount)} />,
          },
        ]}
      />
    </section>
  );
}
