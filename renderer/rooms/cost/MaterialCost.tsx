/** What the batch costs in material: by slot, from which lots, and what of it falls between the pieces. */
import { say } from '../../../shared-core/wording/say.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { CostLine, CostPart } from '../../../shared-core/cost/cost.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { Amount, amountText } from '../../parts/figures/Amount.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './CostRoom.module.css';
import { Trimmings } from './Trimmings.tsx';

export function MaterialCost() {
  const { input, estimate } = useCoat('input', 'estimate');
  if (!input || !estimate) return null;
  const { cost } = estimate;
  return (
    <>
      {cost.isIncomplete && <p className={style.note}>{say('material-cost.not-the-whole-cost-yet-some')}</p>}
      <p className="quiet">{say('material-cost.lots-at-what-was-paid-oldest')}</p>
      <DataTable
        rows={cost.lines}
        keyOf={({ slotId }) => slotId}
        columns={[
          {
            head: say('common.slot'),
            cell: ({ slotId }) => {
              const slot = slotById(input.plan, slotId);
              return (
                <div className={style.from}>
                  <strong>{sentenceCase(slot.name)}</strong>
                  <span className="quiet small">
                    {itemById(input, slot.itemId)?.name ?? say('common.nothing-chosen')}
                  </span>
                </div>
              );
            },
          },
          {
            head: say('common.amount'),
            align: 'end',
            cell: ({ slotId, parts }) =>
              parts.length > 0 && (
                <Amount
                  kind={slotById(input.plan, slotId).kind}
                  amount={parts.reduce((sum, part) => sum + part.amount, 0)}
                />
              ),
          },
          {
            head: say('common.from'),
            cell: (line) => <From line={line} plan={input.plan} />,
          },
          {
            head: say('common.of-it-waste'),
            align: 'end',
            cell: ({ wasteMinor }) => wasteMinor > 0 && <Money amountMinor={wasteMinor} />,
          },
          {
            head: say('common.cost'),
            align: 'end',
            cell: ({ isIncomplete, costMinor }) =>
              isIncomplete && costMinor === 0 ? '–' : <Money amountMinor={costMinor} />,
          },
          {
            head: say('material-cost.share'),
            headClass: style.share,
            cellClass: style.share,
            cell: ({ costMinor }) => <Share of={cost.batchMinor > 0 ? costMinor / cost.batchMinor : 0} />,
          },
        ]}
        foot={[
          {
            label: say('common.the-batch'),
            cells: [
              <Money key="waste" amountMinor={cost.lines.reduce((sum, line) => sum + line.wasteMinor, 0)} />,
              <Money key="cost" amountMinor={cost.batchMinor} />,
              null,
            ],
          },
        ]}
      />
      <Trimmings />
    </>
  );
}

/** The lots that a line is taken from, what is bought, and where its price is still missing. */
function From({ line, plan }: { line: CostLine; plan: CoatPlan }) {
  return (
    <div className={`${style.from} small`}>
      {line.parts.map((part) => (
        <PartWords
          key={`${part.lotId ?? say('common.to-buy')} ${part.isCut ?? ''}`}
          part={part}
          kind={slotById(plan, line.slotId).kind}
          isOnly={line.parts.length === 1}
        />
      ))}
      {line.isIncomplete && (
        <span>
          {say('material-cost.no-price-yet')}{' '}
          <a href={routeHash({ kind: 'coat', planId: plan.id, step: 'to-buy' })}>
            {say('material-cost.see-what-to-do')}
          </a>
        </span>
      )}
    </div>
  );
}

function Share({ of }: { of: number }) {
  return (
    <div className={style.shareRow}>
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect className={style.ground} width="100" height="8" rx="4" />
        <rect className={style.bar} width={of * 100} height="8" rx="4" />
      </svg>
      <span className="number quiet small">{shareWords(of)}</span>
    </div>
  );
}

/** "39 %"; what costs something never shows as nothing. */
function shareWords(share: number): string {
  return share > 0 && share < 0.01 ? '< 1 %' : `${Math.round(share * 100)} %`;
}

function PartWords({ part, kind, isOnly }: { part: CostPart; kind: ItemKind; isOnly: boolean }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const amount = isOnly ? '' : `: ${amountText(kind, part.amount, system)}`;
  if (part.lotId === null) return <span className="number">{say('material-cost.to-buy', { amount })}</span>;
  const lot = input?.shelf
    .flatMap((onShelf) => onShelf.lots)
    .find((candidate) => candidate.id === part.lotId);
  return (
    <span className="number">
      {part.isCut && `${say('material-cost.cut-already')} `}
      {lot
        ? say('material-cost.lot-of', {
            ifCut: part.isCut ? 'yes' : 'no',
            receivedOn: dayWords(lot.receivedOn),
          })
        : say('material-cost.from-a-lot-that-is-used')}
      {lot?.dyeLot && say('material-cost.dye-lot', { dyeLot: lot.dyeLot })}
      {amount}
    </span>
  );
}
