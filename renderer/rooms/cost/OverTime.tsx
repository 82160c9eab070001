/** What the material of a slot has cost over time: each purchase of its item by the unit, drawn and in a table. */
import { grouped } from '../../../shared-core/wording/number-signs.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { CallOutput } from '../../../shared-core/contract/contract.ts';
import { lotPrices, pricedUnit } from '../../../shared-core/cost/unit-price.ts';
import { shareWords } from '../../../shared-core/cost/price-words.ts';
import { useRead } from '../../client/queries/reads.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { DatedLine } from '../../parts/drawing/DatedLine.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './OverTime.module.css';

export function OverTime() {
  const { input } = useCoat('input');
  const filled = input?.plan.slots.filter((slot) => slot.itemId !== null) ?? [];
  const [slotId, setSlotId] = useState(filled[0]?.id ?? '');
  const itemId = filled.find((slot) => slot.id === slotId)?.itemId ?? null;
  const read = useRead('readItem', itemId === null ? null : { itemId });
  if (filled.length === 0) return <p className="quiet">{say('over-time.no-slot-of-the-plan-is')}</p>;
  return (
    <>
      <div className={style.choice}>
        <ChoiceField
          label={say('common.slot')}
          value={slotId}
          options={filled.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={setSlotId}
        />
      </div>
      <ReadProblems read={read} />
      {read.data && <Purchases read={read.data} />}
    </>
  );
}

function Purchases({ read }: { read: CallOutput<'readItem'> }) {
  const system = useSystem();
  const { item, lots } = read.shelf;
  const unit = pricedUnit(item.kind, system);
  const prices = lotPrices(lots, unit);
  if (prices.length === 0) {
    return (
      <p className="quiet">{say('over-time.was-never-received-so-there-is', { itemName: item.name })}</p>
    );
  }
  const title = say('over-time.price-of-1', {
    itemName: sentenceCase(item.name),
    unitName: unit.name,
  }).replace(`1 ${grouped('1000')}`, grouped('1000'));
  return (
    <>
      <figure className={style.figure}>
        <figcaption>{title}</figcaption>
        <DatedLine
          label={say('over-time.by-the-day-it-was-received', { title })}
          points={prices.map(({ lot, unitMinor }) => ({ day: lot.receivedOn, amountMinor: unitMinor }))}
        />
      </figure>
      <DataTable
        rows={prices}
        keyOf={({ lot }) => lot.id}
        columns={[
          { head: say('common.received'), isNumber: true, cell: ({ lot }) => dayWords(lot.receivedOn) },
          {
            head: say('common.supplier'),
            cell: ({ lot }) => (
              <>
                {lot.supplier}
                {lot.dyeLot && (
                  <span className="quiet small">{` ${say('over-time.dye-lot', { dyeLot: lot.dyeLot })}`}</span>
                )}
              </>
            ),
          },
          {
            head: say('common.amount'),
            align: 'end',
            isNumber: true,
            cell: ({ lot }) => amountText(item.kind, lot.receivedMilli / 1000, system),
          },
          {
            head: say('over-time.paid'),
            align: 'end',
            cell: ({ lot }) => <Money amountMinor={lot.priceMinor} />,
          },
          {
            head: say('over-time.for', { unitName: unit.name }),
            align: 'end',
            cell: ({ unitMinor }) => <Money amountMinor={unitMinor} />,
          },
          {
            head: say('common.change'),
            align: 'end',
            isNumber: true,
            cell: ({ changeRatio }) =>
              changeRatio !== null && `${changeRatio > 0 ? '+' : ''}${shareWords(changeRatio)}`,
          },
        ]}
      />
    </>
  );
}
