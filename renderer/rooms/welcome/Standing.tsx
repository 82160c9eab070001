/** How the workshop stands: the coats last worked on, and the stash by kind. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { itemKinds, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { readTogether, useRead, useReads } from '../../client/queries/reads.ts';
import { routeHash } from '../../client/route.ts';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './Standing.module.css';

const recentCount = 5;
const usedUpCount = 4;

const all: CallInput<'listItems'> = {
  search: '',
  kinds: [],
  sortBy: 'name',
  isDescending: false,
  offset: 0,
  limit: 1,
};

export function Standing() {
  const plans = useRead('listPlans', {});
  const least = useRead('listItems', { ...all, sortBy: 'onHand', limit: usedUpCount });
  const byKind = useReads(
    'listItems',
    itemKinds.map((kind) => ({ ...all, kinds: [kind] })),
  );
  const read = readTogether([plans, least, ...byKind]);
  const isRead = byKind.every(({ data, problems }) => data || problems.length > 0);
  if (!plans.data || !least.data || !isRead) return <ReadProblems read={read} />;
  const coats = [...plans.data.rows]
    .sort((a, b) => b.changedAt.localeCompare(a.changedAt))
    .slice(0, recentCount);
  const usedUp = least.data.rows.filter((row) => row.onHand <= 0);
  const counts = itemKinds.map((kind, index) => ({ kind, count: byKind[index]?.data?.total ?? 0 }));
  return (
    <div className={style.halves}>
      <section className={style.card} aria-labelledby="recent-coats">
        <header className={style.head}>
          <h2 id="recent-coats">{say('standing.recent-coats')}</h2>
          <a href={routeHash({ kind: 'coats' })}>{say('standing.all-coats')}</a>
        </header>
        {coats.length === 0 ? (
          <p className="quiet">{say('standing.no-coat-is-planned-yet-once')}</p>
        ) : (
          <ul>
            {coats.map((coat) => (
              <li key={coat.id}>
                <a
                  className={`${style.coat} eased`}
                  href={routeHash({ kind: 'coat', planId: coat.id, step: 'cover' })}
                >
                  <span className={style.coatName}>{coat.name}</span>
                  <span className="quiet number">
                    {[
                      coat.size === '' ? null : say('standing.size', { coatCount: coat.size }),
                      say('standing.coats', { coatCount: coat.coatCount }),
                      dayWords(coat.changedAt),
                    ]
                      .filter((word) => word !== null)
                      .join(' · ')}
                  </span>
                </a>
              </li>
            ))}
          </ul>
        )}
      </section>

      <section className={style.card} aria-labelledby="stash-standing">
        <header className={style.head}>
          <h2 id="stash-standing">{say('standing.on-the-shelf')}</h2>
          <a href={routeHash({ kind: 'stash', itemId: null })}>{say('standing.all-of-the-stash')}</a>
        </header>
        <ul className={style.kinds}>
          {counts.map(({ kind, count }) => (
            <li key={kind} data-none={count === 0}>
              <KindMark kind={kind} />
              <span>
                <span className={style.count}>{count}</span>{' '}
                {count === 1
                  ? nounInSentence(kindRecords[kind].label)
                  : nounInSentence(kindRecords[kind].plural)}
              </span>
            </li>
          ))}
        </ul>
        {usedUp.length > 0 && (
          <p className={style.usedUp}>
            {say('standing.none-left-of')}{' '}
            {usedUp.map((row, index) => (
              <span key={row.id}>
                {index > 0 && ', '}
                <a href={routeHash({ kind: 'stash', itemId: row.id })}>{row.name}</a>
              </span>
            ))}
            .
          </p>
        )}
      </section>
    </div>
  );
}
