/** Who sells to the workshop: what each asks for a delivery, and how long it takes. */
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
import table from '../../parts/tables/table.module.css';
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
      Add a supplier
    </Button>
  );
  return (
    <div className={style.room}>
      <RoomHead
        title="Suppliers"
        lead="What each asks for a delivery decides where a basket is cheapest."
        actions={
          <>
            {rows?.some(({ offerCount }) => offerCount > 0) && (
              <Button onClick={() => void saveList()}>Save the offers as CSV</Button>
            )}
            <Button onClick={() => setIsBringing(true)}>Bring in a price list</Button>
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
        <EmptyState title="No supplier yet" action={add}>
          A supplier is here once it has an offer, or once you write down what it asks for a delivery.
        </EmptyState>
      )}
      {rows && rows.length > 0 && (
        <table className={table.table}>
          <thead>
            <tr>
              <th scope="col">Supplier</th>
              <th scope="col" className={table.amount}>
                Offers
              </th>
              <th scope="col" className={table.amount}>
                Delivery
              </th>
              <th scope="col" className={table.amount}>
                Free from
              </th>
              <th scope="col" className={table.amount}>
                Days
              </th>
              <th scope="col">
                <span className="only-read-aloud">Change</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.name} row={row} onEdit={() => setEdited(row)} />
            ))}
          </tbody>
        </table>
      )}
      {isBringing && <PriceListSheet onClose={() => setIsBringing(false)} onBrought={setSaid} />}
      {edited !== null && (
        <SupplierForm supplier={edited === 'new' ? null : edited} onClose={() => setEdited(null)} />
      )}
    </div>
  );
}

function Row({ row: { name, facts, offerCount }, onEdit }: { row: SupplierRow; onEdit: () => void }) {
  return (
    <tr>
      <td className={style.name}>{name}</td>
      <td className={`${table.amount} number`}>{offerCount}</td>
      {facts === null ? (
        <td className={`${table.amount} quiet`} colSpan={3}>
          Not noted, so counted as nothing
        </td>
      ) : (
        <>
          <td className={table.amount}>
            <Money amountMinor={facts.deliveryMinor} />
          </td>
          <td className={table.amount}>
            {facts.freeFromMinor === null ? (
              <span className="quiet">never</span>
            ) : (
              <Money amountMinor={facts.freeFromMinor} />
            )}
          </td>
          <td className={`${table.amount} number`}>
            {facts.leadDays ?? <span className="quiet">not known</span>}
          </td>
        </>
      )}
      <td className={table.amount}>
        <Button look="quiet" onClick={onEdit} aria-label={`Edit ${name}`}>
          Edit
        </Button>
      </td>
    </tr>
  );
}
