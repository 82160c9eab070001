/** Counting what is there, shelf by shelf: a field for each length and lot; only what was counted and differs is booked. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { listed } from '../../../../shared-core/plan/edits/edited.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { toMilli } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { readTogether, useRead } from '../../../client/queries/reads.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { useSystem } from '../../../client/workshop.ts';
import { amountText, amountUnit } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import {
  DraftField,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../../parts/forms/DraftField.tsx';
import { TextField } from '../../../parts/forms/Field.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import type { StashQuestion } from '../item-pages.ts';
import { type CountPlace, countPlaces } from './count-places.ts';
import style from './StockTake.module.css';

/** As many as one walks along in a quarter of an hour; more is found by the search. */
const maxItems = 100;

export function StockTake({ question }: { question: StashQuestion }) {
  const system = useSystem();
  const inList = useRead(
    'listItems',
    { ...question, sortBy: 'place', isDescending: false, offset: 0, limit: maxItems },
    { keepsBefore: true },
  );
  const itemIds = inList.data?.rows.map((row) => row.id);
  const shelf = useRead('readShelf', itemIds ? { itemIds } : null, { keepsBefore: true });
  const { make: takeStock } = useChange('takeStock');
  const [drafts, setDrafts] = useState<Readonly<Record<string, QuantityDraft>>>({});
  const [reason, setReason] = useState('stock-take');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const total = inList.data?.total ?? 0;
  const shelves = shelf.data?.shelves ?? [];
  const read = { ...readTogether([inList, shelf]), data: shelf.data };

  const places = shelves.flatMap((shelf) => countPlaces(shelf, system));
  const counted = places.flatMap((place) => {
    const value = drafts[place.key]?.value ?? null;
    return value === null ? [] : [{ place, value }];
  });
  const differing = counted.filter(({ place, value }) => toMilli(value) !== toMilli(place.onHand));

  const book = async () => {
    const unread = misreadProblems(say('stock-take.the-stock-take'), Object.values(drafts));
    if (unread.length > 0) return setProblems(unread);
    const done = await takeStock({
      reason: reason.trim(),
      counts: counted.map(({ place, value }) => ({
        lotId: place.lotId,
        lengthId: place.lengthId,
        counted: value,
      })),
    });
    setProblems(done.ok ? [] : done.problems);
    if (!done.ok) return;
    const { correctedCount, releasedFrom } = done.value;
    setSaid(
      [
        say('stock-take.counted', {
          countedCount: counted.length,
          correctedCount:
            correctedCount === 0
              ? say('stock-take.all-as-booked')
              : say('stock-take.corrected', { correctedCount }),
        }),
        ...(releasedFrom.length > 0
          ? [say('stock-take.less-is-there-than-was-set', { releasedFrom: listed(releasedFrom) })]
          : []),
      ].join(' '),
    );
    setDrafts({});
  };

  return (
    <section className={style.count} aria-label="Stock-take">
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
                {countPlaces(shelf, system).map((place) => (
                  <DraftField
                    key={place.key}
                    label={place.label}
                    quantity={countedQuantity(kindRecords[shelf.item.kind].counted)}
                    draft={drafts[place.key] ?? emptyDraft}
                    onChange={(draft) => setDrafts((now) => ({ ...now, [place.key]: draft }))}
                    unit={amountUnit(shelf.item.kind)}
                    hint={hintOf(place, drafts[place.key]?.value ?? null, (amount) =>
                      amountText(shelf.item.kind, amount, system),
                    )}
                  />
                ))}
              </div>
            </li>
          ))}
      </ul>
      <div className={style.foot}>
        <TextField label={say('stock-take.reason')} value={reason} onChange={setReason} />
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
