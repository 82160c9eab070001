/** Who sells to the workshop: what each asks for a delivery, and how long it takes. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { SupplierRow } from '../../../shared-core/contract/offer-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { ask, useRead } from '../../client/queries/reads.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { saveFile } from '../../parts/tables/save-file.ts';
import { type Column, DataTable } from '../../parts/tables/DataTable.tsx';
import { PriceListSheet } from './PriceListSheet.tsx';
import { SupplierForm } from './SupplierForm.tsx';
import style from './SuppliersRoom.module.css';

export function SuppliersRoom() {
  const { workshop } = useWorkshop();
  const read = useRead('listSuppliers', {});
  const rows = read.data?.rows;
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isBringing, setIsBringing] = useState(false);
  const [said, setSaid] = useState('');
  const [edited, setEdited] = useState<SupplierRow | 'new' | null>(null);

  const saveList = async () => {
    const answer = await ask(workshop, 'priceList', {});
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) saveFile('offers.csv', 'text/csv', answer.value.text);
  };
  const add = (
    <Button look="main" onClick={() => setEdited('new')}>
      {say('suppliers-room.add-a-supplier')}
    </Button>
  );
  return (
    <div className={style.room}>
      <RoomHead
        title={say('common.suppliers')}
        lead={say('suppliers-room.what-each-asks-for-a-delivery')}
        actions={
          <>
            {rows?.some(({ offerCount }) => offerCount > 0) && (
              <Button onClick={() => void saveList()}>{say('suppliers-room.save-the-offers-as-csv')}</Button>
            )}
            <Button onClick={() => setIsBringing(true)}>{say('suppliers-room.bring-in-a-price-list')}</Button>
            {rows && rows.length > 0 && add}
          </>
        }
      />
      <ReadProblems read={read} />
      <Problems problems={problems} />
      {said !== '' && (
        <p role="status" className="quiet">
          {said}
        </p>
      )}
      {rows?.length === 0 && (
        <EmptyState title={say('suppliers-room.no-supplier-yet')} action={add}>
          {say('suppliers-room.a-supplier-is-here-once-it')}
        </EmptyState>
      )}
      {rows && rows.length > 0 && (
        <DataTable rows={rows} keyOf={({ name }) => name} columns={columns(setEdited)} />
      )}
      {isBringing && <PriceListSheet onClose={() => setIsBringing(false)} onBrought={setSaid} />}
      {edited !== null && (
        <SupplierForm supplier={edited === 'new' ? null : edited} onClose={() => setEdited(null)} />
      )}
    </div>
  );
}

function columns(onEdit: (row: SupplierRow) => void): readonly Column<SupplierRow>[] {
  return [
    { head: say('common.supplier'), cellClass: style.name, cell: ({ name }) => name },
    {
      head: say('suppliers-room.offers'),
      align: 'end',
      isNumber: true,
      cell: ({ offerCount }) => offerCount,
    },
    {
      head: say('common.delivery'),
      align: 'end',
      // What nobody noted is said once, over all that would be noted.
      span: ({ facts }) => (facts === null ? 3 : 1),
      cellClass: ({ facts }) => (facts === null ? 'quiet' : undefined),
      cell: ({ facts }) =>
        facts === null ? (
          say('suppliers-room.not-noted-so-counted-as-nothing')
        ) : (
          <Money amountMinor={facts.deliveryMinor} />
        ),
    },
    {
      head: say('suppliers-room.free-from'),
      align: 'end',
      cell: ({ facts }) =>
        facts?.freeFromMinor == null ? (
          <span className="quiet">{say('suppliers-room.never')}</span>
        ) : (
          <Money amountMinor={facts.freeFromMinor} />
        ),
    },
    {
      head: say('suppliers-room.days'),
      align: 'end',
      isNumber: true,
      cell: ({ facts }) => facts?.leadDays ?? <span className="quiet">{say('common.not-known')}</span>,
    },
    {
      head: say('common.change'),
      isHeadHidden: true,
      align: 'end',
      cell: (row) => (
        <Button
          look="quiet"
          onClick={() => onEdit(row)}
          aria-label={say('suppliers-room.edit-2', { rowName: row.name })}
        >
          {say('common.edit')}
        </Button>
      ),
    },
  ];
}
