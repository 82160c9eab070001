/** Counting what is there, shelf by shelf: a field for each length and lot; only what was counted and differs is booked. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import type { CallOutput } from '../../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { listed } from '../../../../shared-core/plan/edits/edited.ts';
import { toMilli } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { readTogether, useRead } from '../../../client/queries/reads.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { amountText } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import { useTypedForm } from '../../../parts/forms/typed-form.ts';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import type { StashQuestion } from '../item-pages.ts';
import type { CountPlace } from './count-places.ts';
import style from './StockTake.module.css';
import {
  countAsked,
  countedNow,
  countsCall,
  countsSchema,
  nothingCounted,
  placesOf,
} from './typed-counts.ts';

/** As many as one walks along in a quarter of an hour; more is found by the search. */
const maxItems = 100;

export function StockTake({ question }: { question: StashQuestion }) {
  const { settings } = useWorkshop().facts;
  const { system } = settings;
  const inList = useRead(
    'listItems',
    { ...question, sortBy: 'place', isDescending: false, offset: 0, limit: maxItems },
    { keepsBefore: true },
  );
  const itemIds = inList.data?.rows.map((row) => row.id);
  const shelf = useRead('readShelf', itemIds ? { itemIds } : null, { keepsBefore: true });
  const { make: takeStock } = useChange('takeStock');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const total = inList.data?.total ?? 0;
  const shelves = shelf.data?.shelves ?? [];
  const read = { ...readTogether([inList, shelf]), data: shelf.data };
  const places = placesOf(shelves, system);

  const { control, reset, sheet } = useTypedForm({
    start: nothingCounted,
    schema: () => countsSchema(places, settings),
    subject: say('stock-take.the-stock-take'),
    save: async (counts): Promise<readonly Problem[]> => {
      const done = await takeStock(countsCall(counts));
      if (!done.ok) return done.problems;
      setSaid(bookedWords(counts.counted.length, done.value));
      reset({ counts: {}, reason: counts.reason });
      return [];
    },
  });
  const counts = useWatch({ control, name: 'counts' });
  const counted = countedNow(places, { counts }, settings);
  const differing = counted.filter(({ place, value }) => toMilli(value) !== toMilli(place.onHand));
  const book = async () => setProblems(await sheet.onSave());

  return (
    <section className={style.count} aria-label={say('stock-take.stock-take')}>
      <p className="quiet">
        {say('stock-take.type-what-really-lies-there-leave')}
        {total > maxItems && ` ${say('stock-take.the-first-of-items-are-shown', { maxItems, total })}`}
      </p>
      <ul className={style.items}>
        {shelves
          .filter((shelf) => shelf.lots.length > 0)
          .map((shelf) => (
            <li key={shelf.item.id} className={style.item} aria-label={shelf.item.name}>
              <div>
                <h2 className="of-card">{shelf.item.name}</h2>
                <p className="quiet small">
                  {[shelf.item.colour, shelf.item.place].filter((word) => word !== '').join(' · ')}
                </p>
              </div>
              <div className={style.places}>
                {placesOf([shelf], system).map((each) => (
                  <FormQuantity
                    key={each.place.key}
                    control={control}
                    name={`counts.${each.place.key}`}
                    {...countAsked(each)}
                    hint={hintOf(
                      each.place,
                      counted.find(({ place }) => place.key === each.place.key)?.value ?? null,
                      (amount) => amountText(shelf.item.kind, amount, system),
                    )}
                  />
                ))}
              </div>
            </li>
          ))}
      </ul>
      <div className={style.foot}>
        <FormText control={control} name="reason" label={say('stock-take.reason')} />
        <ReadProblems read={read} />
        <Problems problems={problems} />
        <div className={style.actions}>
          <Button look="main" disabled={counted.length === 0} onClick={() => void book()}>
            {say('stock-take.book-differences', { differingCount: differing.length })}
          </Button>
          <span role="status" className="quiet">
            {said}
          </span>
        </div>
      </div>
    </section>
  );
}

function bookedWords(
  countedCount: number,
  { correctedCount, releasedFrom }: CallOutput<'takeStock'>,
): string {
  return [
    say('stock-take.counted', {
      countedCount,
      correctedCount:
        correctedCount === 0
          ? say('stock-take.all-as-booked')
          : say('stock-take.corrected', { correctedCount }),
    }),
    ...(releasedFrom.length > 0
      ? [say('stock-take.less-is-there-than-was-set', { releasedFrom: listed(releasedFrom) })]
      : []),
  ].join(' ');
}

function hintOf(place: CountPlace, value: number | null, show: (amount: number) => string): string {
  const booked = say('stock-take.booked', { show: show(place.onHand) });
  if (value === null) return booked;
  const difference = value - place.onHand;
  if (toMilli(difference) === 0) return say('stock-take.as-counted', { booked });
  return say('stock-take.less-counted', {
    booked,
    show: show(Math.abs(difference)),
    ifDifference: difference > 0 ? 'yes' : 'no',
  });
}
