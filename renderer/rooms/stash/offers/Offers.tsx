/** What suppliers ask for an item. */
import { useState } from 'react';
import { dayWords } from '../../../../shared-core/measure/calendar-date.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { isOldPrice, type Offer, oldPriceDays } from '../../../../shared-core/stash/offer.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useSystem } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { Money } from '../../../parts/figures/Figure.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { sellingWords, unitCountWords } from '../../../parts/figures/selling-words.ts';
import { DataTable } from '../../../parts/tables/DataTable.tsx';
import style from './Offers.module.css';

export interface OffersProps {
  readonly offers: readonly Offer[];
  readonly onEdit: (offer: Offer | null) => void;
}

export function Offers({ offers, onEdit }: OffersProps) {
  const { make: removeOffer } = useChange('removeOffer');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [removing, setRemoving] = useState<string | null>(null);

  const remove = async (offer: Offer) => {
    const answer = await removeOffer({ offerId: offer.id });
    setRemoving(null);
    setProblems(answer.ok ? [] : answer.problems);
  };

  return (
    <div className={style.offers}>
      <Problems problems={problems} />
      {offers.length === 0 && (
        <p className="quiet">
          No supplier's price is noted. With one, a coat can say what to buy and for how much.
        </p>
      )}
      {offers.length > 0 && (
        <DataTable
          rows={offers}
          keyOf={({ id }) => id}
          columns={[
            {
              head: 'Supplier',
              cell: (offer) => (
                <>
                  {offer.supplier}
                  <span className={style.day}>
                    {dayWords(offer.pricedOn)}
                    {isOldPrice(offer, todayIso()) && `, over ${oldPriceDays} days old: ask again`}
                  </span>
                </>
              ),
            },
            { head: 'Sold as', cell: (offer) => <SoldAs offer={offer} /> },
            { head: 'Price', align: 'end', cell: ({ priceMinor }) => <Money amountMinor={priceMinor} /> },
            {
              head: 'Change',
              isHeadHidden: true,
              cellClass: style.actions,
              cell: (offer) =>
                removing === offer.id ? (
                  <>
                    <Button
                      look="quiet"
                      onClick={() => void remove(offer)}
                      aria-label={`Yes, remove the offer of ${offer.supplier}`}
                    >
                      Yes, remove
                    </Button>
                    <Button look="quiet" onClick={() => setRemoving(null)}>
                      Keep
                    </Button>
                  </>
                ) : (
                  <>
                    <Button
                      look="quiet"
                      onClick={() => onEdit(offer)}
                      aria-label={`Edit the offer of ${offer.supplier}`}
                    >
                      Edit
                    </Button>
                    <Button
                      look="quiet"
                      onClick={() => setRemoving(offer.id)}
                      aria-label={`Remove the offer of ${offer.supplier}`}
                    >
                      Remove
                    </Button>
                  </>
                ),
            },
          ]}
        />
      )}
    </div>
  );
}

/** The unit it is sold in, how few are sold at once, and lower prices for many. */
function SoldAs({ offer: { unit, leastCount = 1, breaks = [] } }: { offer: Offer }) {
  const system = useSystem();
  return (
    <>
      {sellingWords(unit, system)}
      {leastCount > 1 && <span className={style.day}>at least {leastCount}</span>}
      {breaks.map(({ fromCount, priceMinor }) => (
        <span key={fromCount} className={style.day}>
          <Money amountMinor={priceMinor} /> from {unitCountWords(unit, fromCount, system)}
        </span>
      ))}
    </>
  );
}
