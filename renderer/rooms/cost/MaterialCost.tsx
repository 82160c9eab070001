/** What the batch costs in material: by slot, from which lots, and what of it falls between the pieces. */
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
import table from '../../parts/tables/table.module.css';
import style from './CostRoom.module.css';
import { Trimmings } from './Trimmings.tsx';

export function MaterialCost() {
  const { estimate } = useCoat('estimate');
  if (!estimate) return null;
  const { cost } = estimate;
  return (
    <>
      {cost.isIncomplete && (
        <p className={style.note}>
          Not the whole cost yet: some slots have nothing chosen, or no offer for what is missing. They are
          marked below.
        </p>
      )}
      <p className="quiet">Lots at what was paid, oldest first, and what is missing at its offer.</p>
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">Slot</th>
            <th scope="col" className={table.amount}>
              Amount
            </th>
            <th scope="col">From</th>
            <th scope="col" className={table.amount}>
              Of it waste
            </th>
            <th scope="col" className={table.amount}>
              Cost
            </th>
            <th scope="col" className={style.share}>
              Share
            </th>
          </tr>
        </thead>
        <tbody>
          {cost.lines.map((line) => (
            <Row key={line.slotId} line={line} batchMinor={cost.batchMinor} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td colSpan={3}>The batch</td>
            <td className={table.amount}>
              <Money amountMinor={cost.lines.reduce((sum, line) => sum + line.wasteMinor, 0)} />
            </td>
            <td className={table.amount}>
              <Money amountMinor={cost.batchMinor} />
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
      <Trimmings />
    </>
  );
}

function Row({ line, batchMinor }: { line: CostLine; batchMinor: number }) {
  const { input } = useCoat('input');
  if (!input) return null;
  const slot = slotById(input.plan, line.slotId);
  const item = itemById(input, slot.itemId);
  const share = batchMinor > 0 ? line.costMinor / batchMinor : 0;
  return (
    <tr>
      <td>
        <div className={style.from}>
          <strong>{sentenceCase(slot.name)}</strong>
          <span className="quiet small">{item?.name ?? 'nothing chosen'}</span>
        </div>
      </td>
      <td className={table.amount}>
        {line.parts.length > 0 && (
          <Amount kind={slot.kind} amount={line.parts.reduce((sum, part) => sum + part.amount, 0)} />
        )}
      </td>
      <td>
        <div className={`${style.from} small`}>
          {line.parts.map((part) => (
            <PartWords
              key={`${part.lotId ?? 'to buy'} ${part.isCut ?? ''}`}
              part={part}
              kind={slot.kind}
              isOnly={line.parts.length === 1}
            />
          ))}
          {line.isIncomplete && (
            <span>
              No price yet.{' '}
              <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'to-buy' })}>See what to do</a>
            </span>
          )}
        </div>
      </td>
      <td className={table.amount}>{line.wasteMinor > 0 && <Money amountMinor={line.wasteMinor} />}</td>
      <td className={table.amount}>
        {line.isIncomplete && line.costMinor === 0 ? '–' : <Money amountMinor={line.costMinor} />}
      </td>
      <td className={style.share}>
        <div className={style.shareRow}>
          <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
            <rect className={style.ground} width="100" height="8" rx="4" />
            <rect className={style.bar} width={share * 100} height="8" rx="4" />
          </svg>
          <span className="number quiet small">{shareWords(share)}</span>
        </div>
      </td>
    </tr>
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
  if (part.lotId === null) return <span className="number">To buy{amount}</span>;
  const lot = input?.shelf
    .flatMap((onShelf) => onShelf.lots)
    .find((candidate) => candidate.id === part.lotId);
  return (
    <span className="number">
      {part.isCut && 'Cut already, '}
      {lot ? `${part.isCut ? 'lot' : 'Lot'} of ${dayWords(lot.receivedOn)}` : 'from a lot that is used up'}
      {lot?.dyeLot && `, dye lot ${lot.dyeLot}`}
      {amount}
    </span>
  );
}
