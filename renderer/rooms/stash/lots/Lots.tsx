/** What was bought of an item, purchase by purchase, and what is left of each. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { dayWords } from '../../../../shared-core/measure/calendar-date.ts';
import { shareMinor } from '../../../../shared-core/measure/money/money.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import {
  fromMilli,
  type ItemOnShelf,
  type LotOnShelf,
  lotWorth,
} from '../../../../shared-core/stash/stash.ts';
import { Amount } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { Money } from '../../../parts/figures/Figure.tsx';
import { LengthStrips, type StripScale } from './LengthStrips.tsx';
import style from './Lots.module.css';

export function Lots({ shelf }: { shelf: ItemOnShelf }) {
  const [showsUsed, setShowsUsed] = useState(false);
  const left = shelf.lots.filter((lot) => lot.onHand > 0 || lot.reserved > 0);
  const used = shelf.lots.filter((lot) => !left.includes(lot));
  const lengths = shelf.lots.flatMap((lot) => lot.lengths);
  const scale: StripScale = {
    longestMm: Math.max(1, ...lengths.map((length) => length.onHandMm)),
    widestMm: Math.max(1, ...lengths.map((length) => length.widthMm)),
  };
  return (
    <div className={style.lots}>
      {left.length === 0 && <p className="quiet">{say('lots.nothing-of-it-lies-on-the')}</p>}
      <ul className={style.lots}>
        {[...left, ...(showsUsed ? used : [])].map((lot) => (
          <li key={lot.id}>
            <OneLot lot={lot} shelf={shelf} scale={scale} />
          </li>
        ))}
      </ul>
      {used.length > 0 && (
        <Button look="quiet" className={style.more ?? ''} onClick={() => setShowsUsed(!showsUsed)}>
          {showsUsed
            ? say('lots.hide-used-up-lots')
            : say('lots.show-used-up-lots', { usedCount: used.length })}
        </Button>
      )}
    </div>
  );
}

function OneLot({ lot, shelf, scale }: { lot: LotOnShelf; shelf: ItemOnShelf; scale: StripScale }) {
  const { kind } = shelf.item;
  const received = fromMilli(lot.receivedMilli);
  const lengths = lot.lengths.filter((length) => length.onHandMm > 0);
  return (
    <article className={style.lot} aria-label={say('lots.lot-of', { receivedOn: dayWords(lot.receivedOn) })}>
      <header className={style.head}>
        <div>
          <p className={style.title}>
            {dayWords(lot.receivedOn)}
            {lot.dyeLot !== '' && (
              <span className={style.dye}>{say('lots.dye-lot', { dyeLot: lot.dyeLot })}</span>
            )}
          </p>
          <p className="quiet small">{lot.supplier || say('lots.supplier-not-noted')}</p>
        </div>
        <div className={style.figures}>
          <p className={style.title}>
            {lot.onHand > 0 ? (
              <Amount kind={kind} amount={lot.onHand} />
            ) : (
              <span className="quiet">{say('lots.used-up')}</span>
            )}
          </p>
          <p className="quiet small">
            {say('common.of')} <Amount kind={kind} amount={received} />
            {say('lots.paid')} <Money amountMinor={lot.priceMinor} />
            {lot.onHand > 0 && lot.onHand < received && (
              <>
                , <Money amountMinor={shareMinor(lot.priceMinor, lotWorth(lot), received)} />{' '}
                {say('lots.left')}
              </>
            )}
          </p>
        </div>
      </header>
      {kindRecords[kind].hasLengths && lengths.length > 0 && (
        <LengthStrips item={shelf.item} lengths={lengths} scale={scale} />
      )}
    </article>
  );
}
