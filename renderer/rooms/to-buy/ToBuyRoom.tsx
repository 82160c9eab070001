/** The shopping list: by supplier, in units as they are sold, with what no offer closes said below. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import type { Estimate } from '../../../shared-core/flow/estimate.ts';
import { listSentence, slotsBought, slotsStillFall } from '../../../shared-core/flow/falls-of-estimate.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { bySupplier, unitsWords, usedForWords } from '../../../shared-core/to-buy/shopping-list.ts';
import { shoppingTable } from '../../../shared-core/to-buy/shopping-table.ts';
import { unitPriceMinor } from '../../../shared-core/stash/offer.ts';
import { deliveryWords } from '../../../shared-core/to-buy/basket-words.ts';
import type { ToBuy, ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { isLookingForLays } from '../../client/coat/coat-store.ts';
import { itemById, slotNames } from '../../client/wording/coat-words.ts';
import { routeHash, slotInAddress } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { RoomAwaited } from '../../parts/layout/EstimateAwaited.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { sellingWords } from '../../parts/figures/selling-words.ts';
import { StillFallsNote } from '../../parts/notes/StillFallsNote.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import { BasketChoice } from './BasketChoice.tsx';
import { BasketReasons } from './BasketReasons.tsx';
import { ShoppingList } from './ShoppingList.tsx';
import { useShoppingTrip } from './shopping-trip.ts';
import style from './ToBuyRoom.module.css';
import { type ListPurpose, ViewChoice } from './ViewChoice.tsx';

export function ToBuyRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  if (!input) return null;
  if (!estimate)
    return (
      <RoomAwaited title={say('common.to-buy-2')} lead={say('to-buy-room.working-out-what-is-missing')} />
    );
  return <ListToBuy input={input} estimate={estimate} />;
}

function ListToBuy({ input, estimate }: { input: FlowInput; estimate: Estimate }) {
  const { settings } = useWorkshop().facts;
  const { phase } = useCoat('phase');
  const [chosen, setChosen] = useState(0);
  const [purpose, setPurpose] = useState<ListPurpose>('choose');
  const trip = useShoppingTrip(input.plan.id);
  const shown = Math.min(chosen, estimate.toBuy.fewer.length);
  const toBuy: ToBuy = { ...estimate.toBuy, ...estimate.toBuy.fewer[shown - 1] };
  const isNothing = toBuy.lines.length === 0 && toBuy.unbuyable.length === 0;
  const falls = slotsStillFall(estimate, slotsBought(estimate), isLookingForLays(phase));
  return (
    <>
      <RoomHead
        title={say('common.to-buy-2')}
        lead={
          isNothing
            ? say('to-buy-room.nothing-the-stash-covers-the-plan')
            : say('to-buy-room.what-coats-still-need-in-units', { coatTotal: coatTotal(input.plan) })
        }
        actions={
          toBuy.lines.length > 0 && (
            <TableActions
              makeTable={() => shoppingTable(input, toBuy, settings, trip)}
              name={say('to-buy-room.to-buy', { planName: input.plan.name })}
            />
          )
        }
      />
      {isNothing && (
        <EmptyState
          title={say('to-buy-room.nothing-is-missing')}
          action={
            <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'cover' })}>
              {say('to-buy-room.see-what-is-used')}
            </a>
          }
        >
          {say('to-buy-room.every-slot-is-covered-by-what')}
        </EmptyState>
      )}
      {falls && <StillFallsNote falls={falls} sentence={listSentence(falls)} />}
      <BasketChoice toBuy={estimate.toBuy} chosen={shown} onChange={setChosen} />
      {toBuy.lines.length > 0 && <ViewChoice value={purpose} onChange={setPurpose} />}
      {purpose === 'shop' && toBuy.lines.length > 0 ? (
        <ShoppingList toBuy={toBuy} lists={offersOfBaskets(estimate.toBuy)} trip={trip} />
      ) : (
        <>
          {bySupplier(toBuy).map((group) => (
            <section key={group.supplier} className={style.supplier} aria-label={group.supplier}>
              <div className={style.supplierHead}>
                <h2>{group.supplier}</h2>
                <DeliveryNote toBuy={toBuy} supplier={group.supplier} />
                <Money amountMinor={group.totalMinor} />
              </div>
              <LinesOfSupplier lines={group.lines} input={input} />
            </section>
          ))}
          {toBuy.lines.length > 0 && <Sum toBuy={toBuy} />}
          <BasketReasons toBuy={estimate.toBuy} shown={toBuy} />
        </>
      )}
      <Gaps toBuy={toBuy} />
    </>
  );
}

/** Offers of each basket that the room can show. */
function offersOfBaskets(toBuy: ToBuy): readonly (readonly string[])[] {
  return [toBuy, ...toBuy.fewer].map(({ lines }) => lines.map(({ offer }) => offer.id));
}

/** What the supplier asks to bring it, in words; the sum stands below. */
function DeliveryNote({ toBuy, supplier }: { toBuy: ToBuy; supplier: string }) {
  const { input } = useCoat('input');
  const { system, currency } = useWorkshop().facts.settings;
  const delivery = toBuy.deliveries.find((candidate) => candidate.supplier === supplier);
  if (!input || !delivery) return null;
  return (
    <span className="quiet small">{deliveryWords(delivery, { shelf: input.shelf, system, currency })}</span>
  );
}

/** Goods and deliveries apart where anything is delivered for money. */
function Sum({ toBuy }: { toBuy: ToBuy }) {
  return (
    <div className={style.sum}>
      {toBuy.deliveryMinor > 0 && (
        <>
          <p className={style.part}>
            <span>{say('to-buy-room.goods')}</span>
            <Money amountMinor={toBuy.totalMinor} />
          </p>
          <p className={style.part}>
            <span>{say('common.deliveries')}</span>
            <Money amountMinor={toBuy.deliveryMinor} />
          </p>
        </>
      )}
      <p className={style.total}>
        <span>{say('common.in-all')}</span>
        <Money amountMinor={toBuy.payMinor} />
      </p>
    </div>
  );
}

function LinesOfSupplier({ lines, input }: { lines: readonly ToBuyLine[]; input: FlowInput }) {
  const { system, currency } = useWorkshop().facts.settings;
  const slotCameFor = slotInAddress();
  const rows = lines.flatMap((line) => {
    const item = itemById(input, line.itemId);
    return item ? [{ line, item }] : [];
  });
  return (
    <DataTable
      className={style.fixed}
      rows={rows}
      keyOf={({ line }) => line.offer.id}
      rowProps={({ line }) => ({
        className: style.line,
        'data-came-for': slotCameFor !== null && line.slotIds.includes(slotCameFor),
      })}
      columns={[
        {
          head: say('common.item'),
          cell: ({ item }) => (
            <div className={style.what}>
              <a href={routeHash({ kind: 'stash', itemId: item.id })}>{item.name}</a>
              <span className="quiet small">{item.colour}</span>
            </div>
          ),
        },
        {
          head: say('common.buy'),
          cell: ({ line, item }) => {
            const left = line.boughtAmount - line.usedAmount;
            return (
              <div className={`${style.what} number`} style={{ whiteSpace: 'normal' }}>
                <span>{unitsWords(line.offer.unit, line.unitCount, system)}</span>
                <span className="quiet small">
                  {priceWords(line, system, currency)}
                  {say('to-buy-room.priced')} {dayWords(line.offer.pricedOn)}
                  {left > 1e-6 &&
                    say('to-buy-room.will-be-left', { amountText: amountText(item.kind, left, system) })}
                </span>
                {line.alternatives.map((dearer) => (
                  <span key={dearer.offer.id} className="quiet small">
                    {say('to-buy-room.or-from', {
                      unitsWords: unitsWords(dearer.offer.unit, dearer.unitCount, system),
                      supplier: dearer.offer.supplier,
                      dearerWords: dearerWords(dearer.priceMinor - line.priceMinor, { system, currency }),
                    })}
                  </span>
                ))}
              </div>
            );
          },
        },
        { head: say('common.for'), cell: ({ line }) => sentenceCase(usedForWords(input, line.slotIds)) },
        {
          head: say('common.price'),
          align: 'end',
          cell: ({ line }) => <Money amountMinor={line.priceMinor} />,
        },
      ]}
    />
  );
}

/** "70 x 10 cm, 147 cm wide at 1.15 EUR" for what is sold by steps; "3.10 EUR each" for what is sold whole. */
function priceWords({ offer, unitCount }: ToBuyLine, system: MeasureSystem, currency: string): string {
  const price = showQuantity('money', unitPriceMinor(offer, unitCount), { system, currency });
  const isSteps = offer.unit.kind === 'by length' || offer.unit.kind === 'by mass';
  return isSteps
    ? say('to-buy-room.at', { unitCount, sellingWords: sellingWords(offer.unit, system), price })
    : say('to-buy-room.each', { price });
}

function dearerWords(byMinor: number, settings: { system: MeasureSystem; currency: string }): string {
  if (byMinor === 0) return say('to-buy-room.at-the-same-price');
  // The goods alone may be cheaper there; with its delivery the whole basket is not.
  const by = showQuantity('money', Math.abs(byMinor), settings);
  return byMinor > 0
    ? say('to-buy-room.dearer-by', { by })
    : say('to-buy-room.cheaper-by-without-its-delivery', { by });
}

/** What the list cannot close, and what the maker can do about it. */
function Gaps({ toBuy }: { toBuy: ToBuy }) {
  const { input } = useCoat('input');
  if (!input || toBuy.unbuyable.length === 0) return null;
  return (
    <section className={style.gaps} aria-label={say('to-buy-room.not-on-the-list-yet')}>
      <h3>{say('to-buy-room.not-on-the-list-yet')}</h3>
      <ul>
        {toBuy.unbuyable.map((gap) => (
          <li key={gap.slotIds.join()}>
            {gap.why === 'no item chosen' ? (
              <>
                <span>
                  {say('to-buy-room.nothing-is-chosen-for', { slotNames: slotNames(input, gap.slotIds) })}
                </span>
                <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>
                  {say('to-buy-room.choose-in-the-plan')}
                </a>
              </>
            ) : (
              <>
                <span>
                  {say('to-buy-room.no-offer-closes-the-gap-of')} {itemById(input, gap.itemId)?.name} (
                  {slotNames(input, gap.slotIds)}).
                </span>
                <a href={routeHash({ kind: 'stash', itemId: gap.itemId })}>{say('common.add-an-offer')}</a>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
