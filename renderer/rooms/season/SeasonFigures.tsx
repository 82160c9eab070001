/** What the season costs and lacks in all: the sums, and one shopping list by supplier for every plan. */
import { say } from '../../../shared-core/wording/say.ts';
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import { gapWords, seasonCostMinor, seasonTable } from '../../../shared-core/flow/season/season-report.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { unitsWords } from '../../../shared-core/to-buy/shopping-list.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import { DataTable, type FootRow } from '../../parts/tables/DataTable.tsx';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import type { SeasonFigures as Figures } from './season-run.ts';
import style from './SeasonRoom.module.css';

export function SeasonFigures({ input, figures }: { input: SeasonInput; figures: Figures }) {
  const { settings } = useWorkshop().facts;
  const { plans, bought } = figures;
  const { basket, unbuyable } = bought;
  const count = plans.reduce((sum, { plan }) => sum + coatTotal(plan), 0);
  const itemName = (itemId: string) =>
    input.shelf.find(({ item }) => item.id === itemId)?.item.name ?? say('season-figures.an-item');
  const isNothing = basket.buys.length + unbuyable.length === 0;
  return (
    <>
      <dl className={style.sums}>
        <div>
          <dt className="quiet">{say('common.coats')}</dt>
          <dd className="number">{count}</dd>
        </div>
        <div>
          <dt className="quiet">{say('season-figures.material-of-the-season')}</dt>
          <dd>
            <Money amountMinor={seasonCostMinor(plans)} />
          </dd>
        </div>
        <div>
          <dt className="quiet">{say('season-figures.to-buy-deliveries-with-it')}</dt>
          <dd>
            <Money amountMinor={basket.totalMinor} />
          </dd>
        </div>
      </dl>
      <section aria-labelledby="season-list" className={style.list}>
        <div className={style.listHead}>
          <h2 id="season-list">{say('season-figures.one-list-for-the-season')}</h2>
          {!isNothing && (
            <TableActions
              makeTable={() => seasonTable({ plans, bought, shelf: input.shelf }, settings)}
              name={say('season-figures.to-buy-for-the-season')}
            />
          )}
        </div>
        {isNothing ? (
          <p className="quiet">{say('season-figures.nothing-is-to-be-bought-the')}</p>
        ) : (
          <DataTable
            rows={basket.buys}
            keyOf={({ offer }) => offer.id}
            columns={[
              {
                head: say('common.item'),
                cell: ({ itemId }) => <a href={routeHash({ kind: 'stash', itemId })}>{itemName(itemId)}</a>,
              },
              {
                head: say('common.buy'),
                isNumber: true,
                cell: ({ offer, unitCount }) => unitsWords(offer.unit, unitCount, settings.system),
              },
              { head: say('common.from'), cell: ({ offer }) => offer.supplier },
              { head: say('common.for'), cellClass: 'small', cell: ({ gaps }) => gapWords(gaps, plans) },
              {
                head: say('common.price'),
                align: 'end',
                cell: ({ priceMinor }) => <Money amountMinor={priceMinor} />,
              },
            ]}
            foot={[
              ...(basket.deliveryMinor > 0 ? [sumRow(say('common.deliveries'), basket.deliveryMinor)] : []),
              sumRow(say('common.in-all'), basket.totalMinor),
            ]}
          />
        )}
        {unbuyable.map((gap) => (
          <p key={gap.id} className={style.open}>
            {say('season-figures.no-offer-closes-the-gap-of')} {itemName(gap.itemId)} (
            {gapWords([gap], plans)}).{' '}
            <a href={routeHash({ kind: 'stash', itemId: gap.itemId })}>{say('common.add-an-offer')}</a>
          </p>
        ))}
      </section>
    </>
  );
}

function sumRow(label: string, amountMinor: number): FootRow {
  return { label, cells: [<Money key={label} amountMinor={amountMinor} />] };
}
