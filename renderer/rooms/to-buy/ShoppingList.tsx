/** The list as it is walked in a shop: by supplier or by aisle, ticked off, and all that is ticked received in one step. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { OfferId } from '../../../shared-core/stash/stash.ts';
import { phonePage } from '../../../shared-core/to-buy/phone/phone-page.ts';
import type { Arrangement } from '../../../shared-core/to-buy/shopping-list.ts';
import { shoppingGroups, unitsWords, usedForWords } from '../../../shared-core/to-buy/shopping-list.ts';
import type { ToBuy, ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { fileName, saveFile } from '../../parts/tables/save-file.ts';
import { todayIso } from '../../parts/figures/calendar.ts';
import { ReceiveBought } from './ReceiveBought.tsx';
import style from './ShoppingList.module.css';
import type { ShoppingTrip } from './shopping-trip.ts';
import { TicksFromPhone } from './TicksFromPhone.tsx';

const arrangements: readonly { readonly value: Arrangement; readonly label: string }[] = [
  { value: 'supplier', label: say('shopping-list.by-supplier') },
  { value: 'aisle', label: say('shopping-list.by-aisle') },
];

export interface ShoppingListProps {
  /** The basket that is shown. */
  readonly toBuy: ToBuy;
  /** Offers of every basket that can be chosen: a phone may have been given another. */
  readonly lists: readonly (readonly OfferId[])[];
  readonly trip: ShoppingTrip;
}

export function ShoppingList({ toBuy, lists, trip }: ShoppingListProps) {
  const { input } = useCoat('input');
  const { settings } = useWorkshop().facts;
  const [isSaved, setIsSaved] = useState(false);
  const [isTaking, setIsTaking] = useState(false);
  const [isReceiving, setIsReceiving] = useState(false);
  const [said, setSaid] = useState('');
  if (!input) return null;
  const bought = toBuy.lines.filter((line) => trip.ticked.has(line.offer.id));
  const boughtMinor = bought.reduce((sum, line) => sum + line.priceMinor, 0);
  const received = (lotCount: number) =>
    setSaid(say('shopping-list.purchases-are-on-the-shelf', { lotCount }));
  const savePage = () => {
    const page = phonePage(input, toBuy, settings, trip, todayIso());
    saveFile(fileName(say('shopping-list.to-buy', { planName: input.plan.name }), 'html'), 'text/html', page);
    setIsSaved(true);
  };
  return (
    <section className={style.list} aria-label={say('shopping-list.shopping-list')}>
      <div className={style.bar}>
        <fieldset className={style.arrange}>
          <legend className="only-read-aloud">{say('shopping-list.order-of-the-list')}</legend>
          {arrangements.map(({ value, label }) => (
            <button
              key={value}
              type="button"
              aria-pressed={trip.arrangement === value}
              onClick={() => trip.arrange(value)}
            >
              {label}
            </button>
          ))}
        </fieldset>
        <span className={style.count} role="status">
          {(bought.length === 0 && said) ||
            say('shopping-list.of-ticked', { boughtCount: bought.length, linesCount: toBuy.lines.length })}
        </span>
        {bought.length > 0 && <Money amountMinor={boughtMinor} />}
        <Button
          look="main"
          disabled={bought.length === 0}
          onClick={() => {
            setSaid('');
            setIsReceiving(true);
          }}
        >
          {say('shopping-list.receive-what-is-ticked')}
        </Button>
      </div>
      <div className={style.phone}>
        <Button look="quiet" onClick={() => savePage()}>
          {say('shopping-list.save-for-a-phone')}
        </Button>
        <Button look="quiet" onClick={() => setIsTaking(true)}>
          {say('shopping-list.ticks-from-the-phone')}
        </Button>
        <span className="quiet small" role="status">
          {isSaved && say('shopping-list.saved-as-one-file-send-it')}
        </span>
      </div>
      <ReadProblems read={trip.read} />
      <Problems problems={trip.problems} />
      {shoppingGroups(input, toBuy, trip.arrangement).map(({ title, lines }) => (
        <section key={title} className={style.group} aria-label={title}>
          <h2>{title}</h2>
          <ul>
            {lines.map((line) => (
              <Line key={line.offer.id} line={line} trip={trip} />
            ))}
          </ul>
        </section>
      ))}
      {isTaking && (
        <TicksFromPhone plan={input.plan} trip={trip} lists={lists} onClose={() => setIsTaking(false)} />
      )}
      {isReceiving && (
        <ReceiveBought
          plan={input.plan}
          lines={bought}
          onClose={() => setIsReceiving(false)}
          onReceived={received}
        />
      )}
    </section>
  );
}

function Line({ line, trip }: { line: ToBuyLine; trip: ShoppingTrip }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const item = input && itemById(input, line.itemId);
  if (!input || !item) return null;
  const isTicked = trip.ticked.has(line.offer.id);
  return (
    <li className={style.line} data-ticked={isTicked}>
      <label className={style.label}>
        <input
          type="checkbox"
          checked={isTicked}
          onChange={(event) => trip.tick(line.offer.id, event.target.checked)}
        />
        <span className={style.name}>
          {item.name}
          {item.colour && <span className="quiet">, {item.colour}</span>}
        </span>
      </label>
      <span className={`${style.units} number`}>{unitsWords(line.offer.unit, line.unitCount, system)}</span>
      <span className="quiet small">
        {sentenceCase(usedForWords(input, line.slotIds))}
        {trip.arrangement === 'aisle' && say('shopping-list.from', { supplier: line.offer.supplier })}
      </span>
      <span className={style.price}>
        <Money amountMinor={line.priceMinor} />
      </span>
    </li>
  );
}
