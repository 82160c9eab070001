/** Offers that purchases suggest: taken with one click, or left. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { dayWords } from '../../../../shared-core/measure/calendar-date.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { type LearnedOffer, learnedOffers } from '../../../../shared-core/stash/learned-offer.ts';
import type { Offer } from '../../../../shared-core/stash/offer.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useSystem } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { Money } from '../../../parts/figures/Figure.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { sellingWords } from '../../../parts/figures/selling-words.ts';
import style from './Offers.module.css';

export interface LearnedOffersProps {
  readonly shelf: ItemOnShelf;
  readonly offers: readonly Offer[];
}

export function LearnedOffers({ shelf, offers }: LearnedOffersProps) {
  const { make: saveOffer } = useChange('saveOffer');
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const learned = learnedOffers(shelf, offers);
  if (learned.length === 0) return null;

  const take = async ({ supplier, unit, priceMinor, pricedOn, replaces }: LearnedOffer) => {
    const answer = await saveOffer({
      offerId: replaces?.id ?? null,
      itemId: shelf.item.id,
      supplier,
      unit,
      priceMinor,
      pricedOn,
      // Breaks that were noted for the old price would not be true of the new one.
      ...(replaces?.leastCount !== undefined && { leastCount: replaces.leastCount }),
    });
    setProblems(answer.ok ? [] : answer.problems);
  };

  return (
    <section className={style.learned} aria-label={say('learned-offers.learned-from-what-was-received')}>
      <p className="quiet small">{say('learned-offers.learned-from-what-was-received-2')}</p>
      <Problems problems={problems} />
      <ul>
        {learned.map((each) => (
          <li key={each.lotId} className={style.suggestion}>
            <span>
              {each.supplier}, {dayWords(each.pricedOn)}: {sellingWords(each.unit, system)}{' '}
              {say('learned-offers.for')} <Money amountMinor={each.priceMinor} />
              {each.replaces && (
                <span className="quiet">
                  {' '}
                  {say('learned-offers.instead-of')} <Money amountMinor={each.replaces.priceMinor} />
                </span>
              )}
            </span>
            <Button
              look="quiet"
              onClick={() => void take(each)}
              aria-label={say('learned-offers.note-the-offer-of', {
                ifReplaces: each.replaces ? 'yes' : 'no',
                supplier: each.supplier,
              })}
            >
              {each.replaces
                ? say('learned-offers.bring-the-offer-up-to-date')
                : say('learned-offers.note-as-an-offer')}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
