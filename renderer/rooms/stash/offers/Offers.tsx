/** What suppliers ask for an item. */
import { say } from '../../../../shared-core/wording/say.ts';
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
      {offers.length === 0 && <p className="quiet">{say('offers.no-supplier-s-price-is-noted')}</p>}
      {offers.length > 0 && (
        <DataTable
          rows={offers}
          keyOf={({ id }) => id}
          columns={[
            {
              head: say('common.supplier'),
              cell: (offer) => (
                <>
                  {offer.supplier}
                  <span className={style.day}>
                    {dayWords(offer.pricedOn)}
                    {isOldPrice(offer, todayIso()) && say('offers.over-days-old-ask-again', { oldPriceDays })}
                  </span>
                </>
              ),
            },
            { head: say('offers.sold-as'), cell: (offer) => <SoldAs offer={offer} /> },
            {
              head: say('common.price'),
              align: 'end',
              cell: ({ priceMinor }) => <Money amountMinor={priceMinor} />,
            },
            {
              head: say('common.change'),
              isHeadHidden: true,
              cellClass: style.actions,
              cell: (offer) =>
                removing === offer.id ? (
                  <>
                    <Button
                      look="quiet"
                      onClick={() => void remove(offer)}
                      aria-label={say('offers.yes-remove-the-offer-of', { supplier: offer.supplier })}
                    >
                      {say('offers.yes-remove')}
                    </Button>
                    <Button look="quiet" onClick={() => setRemoving(null)}>
                      {say('offers.keep')}
                    </Button>
                  </>
                ) : (
                  <>
                    <Button
                      look="quiet"
                      onClick={() => onEdit(offer)}
                      aria-label={say('offers.edit-the-offer-of', { supplier: offer.supplier })}
                    >
                      {say('common.edit')}
                    </Button>
                    <Button
                      look="quiet"
                      onClick={() => setRemoving(offer.id)}
                      aria-label={say('offers.remove-the-offer-of', { supplier: offer.supplier })}
                    >
                      {say('offers.remove')}
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
      {leastCount > 1 && <span className={style.day}>{say('offers.at-least-2', { leastCount })}</span>}
      {breaks.map(({ fromCount, priceMinor }) => (
        <span key={fromCount} className={style.day}>
          <Money amountMinor={priceMinor} /> {say('offers.from')} {unitCountWords(unit, fromCount, system)}
        </span>
      ))}
    </>
  );
}
