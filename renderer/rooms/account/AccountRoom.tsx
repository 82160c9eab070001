/** Where the money of the stash went: received, cut into coats, written off, on hand; it adds up to the last minor unit. */
import { accountTable } from '../../../shared-core/cost/account-table.ts';
import { type Account, imbalanceMinor } from '../../../shared-core/cost/valuation.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { useRead } from '../../client/queries/reads.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { BarPicture } from '../../parts/drawing/BarPicture.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { type Column, DataTable } from '../../parts/tables/DataTable.tsx';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import style from './AccountRoom.module.css';

export function AccountRoom() {
  const { facts } = useWorkshop();
  const read = useRead('readAccount', {});
  const account = read.data;
  if (!account) return <ReadProblems read={read} />;
  const { items, total, coats, byAge } = account;
  if (items.length === 0) {
    return (
      <EmptyState
        title="Nothing was received yet"
        action={<a href={routeHash({ kind: 'stash', itemId: null })}>Go to the stash</a>}
      >
        Once a purchase is received, this account says what became of its money: cut into coats, written off,
        or still on the shelf.
      </EmptyState>
    );
  }
  return (
    <div className={style.room}>
      <RoomHead
        title="Account"
        lead="What became of the money that was paid for the stash, by what each lot cost."
        actions={<TableActions table={accountTable(account, facts.settings)} name="Account of the stash" />}
      />
      <ReadProblems read={read} />
      <Sum total={total} />
      <DataTable
        rows={items}
        keyOf={({ itemId }) => itemId}
        columns={[
          {
            head: 'Item',
            cell: ({ itemId, itemName, kind }) => (
              <>
                <a href={routeHash({ kind: 'stash', itemId })}>{itemName}</a>{' '}
                <span className="quiet small">{kindRecords[kind].label.toLowerCase()}</span>
              </>
            ),
          },
          ...heads.map(
            ({ head, of }): Column<(typeof items)[number]> => ({
              head,
              align: 'end',
              cell: (each) => <Figure amountMinor={of(each.account)} />,
            }),
          ),
        ]}
        foot={[
          {
            label: 'In all',
            cells: heads.map(({ head, of }) => <Figure key={head} amountMinor={of(total)} />),
          },
        ]}
      />
      {byAge.parts.length > 0 && (
        <section aria-labelledby="by-age" className={style.ages}>
          <h2 id="by-age">On hand by age</h2>
          <p className="quiet">What lies on the shelf is worth, by how long ago it was bought.</p>
          <BarPicture
            bars={byAge}
            label="What is on hand is worth, by the age of its lots and by kind. The table below has the same figures."
            head="Kind"
            hasSum
          />
        </section>
      )}
      {coats.length > 0 && (
        <section aria-labelledby="by-coat" className={style.coats}>
          <h2 id="by-coat">Cut into coats</h2>
          <DataTable
            hasHead={false}
            rows={coats}
            keyOf={({ planId }) => planId ?? ''}
            columns={[
              {
                head: 'Coat',
                cell: ({ planId, planName }) =>
                  planId === null ? (
                    planName
                  ) : (
                    <a href={routeHash({ kind: 'coat', planId, step: 'cost' })}>{planName}</a>
                  ),
              },
              {
                head: 'Material',
                align: 'end',
                cell: ({ consumedMinor }) => <Money amountMinor={consumedMinor} />,
              },
            ]}
          />
        </section>
      )}
      <p className="quiet small">
        What is left of a lot is worth its price by the share that is left, rounded once; a cut is worth what
        its lot was worth before less what it is worth after. So the roundings of a lot cancel out.
      </p>
    </div>
  );
}

const heads: readonly { readonly head: string; readonly of: (account: Account) => number }[] = [
  { head: 'Received', of: (account) => account.receivedMinor },
  { head: 'Counted over or under', of: (account) => account.correctedMinor },
  { head: 'Cut into coats', of: (account) => account.consumedMinor },
  { head: 'Written off', of: (account) => account.writtenOffMinor },
  { head: 'On hand', of: (account) => account.onHandMinor },
];

function Figure({ amountMinor }: { amountMinor: number }) {
  return amountMinor === 0 ? <span className="quiet">–</span> : <Money amountMinor={amountMinor} />;
}

/** The sum as a sentence of figures: what came in on the left, what became of it on the right. */
function Sum({ total }: { total: Account }) {
  const isEven = imbalanceMinor(total) === 0;
  return (
    <p className={style.sum} role="status">
      <Part name="received" amountMinor={total.receivedMinor} />
      {total.correctedMinor !== 0 && (
        <>
          <span>{total.correctedMinor > 0 ? '+' : '−'}</span>
          <Part
            name={total.correctedMinor > 0 ? 'found by counting' : 'lost by counting'}
            amountMinor={Math.abs(total.correctedMinor)}
          />
        </>
      )}
      <span>{isEven ? '=' : '≠'}</span>
      <Part name="cut into coats" amountMinor={total.consumedMinor} />
      <span>+</span>
      <Part name="written off" amountMinor={total.writtenOffMinor} />
      <span>+</span>
      <Part name="on hand" amountMinor={total.onHandMinor} />
    </p>
  );
}

function Part({ name, amountMinor }: { name: string; amountMinor: number }) {
  return (
    <span className={style.part}>
      <span className={style.amount}>
        <Money amountMinor={amountMinor} />
      </span>
      <span className="quiet small">{name}</span>
    </span>
  );
}
