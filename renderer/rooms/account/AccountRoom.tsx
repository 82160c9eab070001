/** Where the money of the stash went: received, cut into coats, written off, on hand; it adds up to the last minor unit. */
import { say } from '../../../shared-core/wording/say.ts';
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
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
        title={say('account-room.nothing-was-received-yet')}
        action={
          <a href={routeHash({ kind: 'stash', itemId: null })}>{say('account-room.go-to-the-stash')}</a>
        }
      >
        {say('account-room.once-a-purchase-is-received-this')}
      </EmptyState>
    );
  }
  return (
    <div className={style.room}>
      <RoomHead
        title={say('common.account')}
        lead={say('account-room.what-became-of-the-money-that')}
        actions={
          <TableActions
            makeTable={() => accountTable(account, facts.settings)}
            name={say('account-room.account-of-the-stash')}
          />
        }
      />
      <ReadProblems read={read} />
      <Sum total={total} />
      <DataTable
        rows={items}
        keyOf={({ itemId }) => itemId}
        columns={[
          {
            head: say('common.item'),
            cell: ({ itemId, itemName, kind }) => (
              <>
                <a href={routeHash({ kind: 'stash', itemId })}>{itemName}</a>{' '}
                <span className="quiet small">{nounInSentence(kindRecords[kind].label)}</span>
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
            label: say('common.in-all'),
            cells: heads.map(({ head, of }) => <Figure key={head} amountMinor={of(total)} />),
          },
        ]}
      />
      {byAge.parts.length > 0 && (
        <section aria-labelledby="by-age" className={style.ages}>
          <h2 id="by-age">{say('account-room.on-hand-by-age')}</h2>
          <p className="quiet">{say('account-room.what-lies-on-the-shelf-is')}</p>
          <BarPicture
            bars={byAge}
            label={say('account-room.what-is-on-hand-is-worth')}
            head={say('account-room.kind')}
            hasSum
          />
        </section>
      )}
      {coats.length > 0 && (
        <section aria-labelledby="by-coat" className={style.coats}>
          <h2 id="by-coat">{say('account-room.cut-into-coats')}</h2>
          <DataTable
            hasHead={false}
            rows={coats}
            keyOf={({ planId }) => planId ?? ''}
            columns={[
              {
                head: say('common.coat'),
                cell: ({ planId, planName }) =>
                  planId === null ? (
                    planName
                  ) : (
                    <a href={routeHash({ kind: 'coat', planId, step: 'cost' })}>{planName}</a>
                  ),
              },
              {
                head: say('common.material'),
                align: 'end',
                cell: ({ consumedMinor }) => <Money amountMinor={consumedMinor} />,
              },
            ]}
          />
        </section>
      )}
      <p className="quiet small">{say('account-room.what-is-left-of-a-lot')}</p>
    </div>
  );
}

const heads: readonly { readonly head: string; readonly of: (account: Account) => number }[] = [
  { head: say('common.received'), of: (account) => account.receivedMinor },
  { head: say('account-room.counted-over-or-under'), of: (account) => account.correctedMinor },
  { head: say('account-room.cut-into-coats'), of: (account) => account.consumedMinor },
  { head: say('account-room.written-off'), of: (account) => account.writtenOffMinor },
  { head: say('common.on-hand'), of: (account) => account.onHandMinor },
];

function Figure({ amountMinor }: { amountMinor: number }) {
  return amountMinor === 0 ? <span className="quiet">–</span> : <Money amountMinor={amountMinor} />;
}

/** The sum as a sentence of figures: what came in on the left, what became of it on the right. */
function Sum({ total }: { total: Account }) {
  const isEven = imbalanceMinor(total) === 0;
  return (
    <p className={style.sum} role="status">
      <Part name={say('account-room.received')} amountMinor={total.receivedMinor} />
      {total.correctedMinor !== 0 && (
        <>
          <span>{total.correctedMinor > 0 ? '+' : '−'}</span>
          <Part
            name={
              total.correctedMinor > 0
                ? say('account-room.found-by-counting')
                : say('account-room.lost-by-counting')
            }
            amountMinor={Math.abs(total.correctedMinor)}
          />
        </>
      )}
      <span>{isEven ? '=' : '≠'}</span>
      <Part name={say('account-room.cut-into-coats-2')} amountMinor={total.consumedMinor} />
      <span>+</span>
      <Part name={say('account-room.written-off-2')} amountMinor={total.writtenOffMinor} />
      <span>+</span>
      <Part name={say('account-room.on-hand')} amountMinor={total.onHandMinor} />
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
