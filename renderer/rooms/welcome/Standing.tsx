/** How the workshop stands: the coats last worked on, and the stash by kind. */
import { useEffect, useState } from 'react';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { ItemRow, PlanRow } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { type ItemKind, itemKinds, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { call } from '../../client/api.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './Standing.module.css';

const recentCount = 5;
const usedUpCount = 4;

interface Stood {
  readonly coats: readonly PlanRow[];
  readonly counts: readonly { readonly kind: ItemKind; readonly count: number }[];
  readonly usedUp: readonly ItemRow[];
}

export function Standing() {
  const { workshop } = useWorkshop();
  const [stood, setStood] = useState<Stood | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  useEffect(() => {
    let isHere = true;
    const all = { search: '', kinds: [], sortBy: 'name', isDescending: false, offset: 0, limit: 1 } as const;
    const read = async () => {
      const [plans, min, ...byKind] = await Promise.all([
        call('listPlans', workshop, {}),
        call('listItems', workshop, { ...all, kinds: [], sortBy: 'onHand', limit: usedUpCount }),
        ...itemKinds.map((kind) => call('listItems', workshop, { ...all, kinds: [kind] })),
      ]);
      if (!isHere) return;
      const refusals = [plans, min, ...byKind].flatMap((answer) => (answer.ok ? [] : answer.problems));
      setProblems(refusals);
      if (!plans.ok || !min.ok) return;
      setStood({
        coats: [...plans.value.rows]
          .sort((a, b) => b.changedAt.localeCompare(a.changedAt))
          .slice(0, recentCount),
        usedUp: min.value.rows.filter((row) => row.onHand <= 0),
        counts: itemKinds.map((kind, index) => {
          const answer = byKind[index];
          return { kind, count: answer?.ok ? answer.value.total : 0 };
        }),
      });
    };
    void read();
    return () => {
      isHere = false;
    };
  }, [workshop]);

  if (!stood) return <Problems problems={problems} />;
  return (
    <div className={style.halves}>
      <section className={style.card} aria-labelledby="recent-coats">
        <header className={style.head}>
          <h2 id="recent-coats">Recent coats</h2>
          <a href={routeHash({ kind: 'coats' })}>All coats</a>
        </header>
        {stood.coats.length === 0 ? (
          <p className="quiet">
            No coat is planned yet. Once some cloth is on the shelf, plan one under Coats.
          </p>
        ) : (
          <ul>
            {stood.coats.map((coat) => (
              <li key={coat.id}>
                <a
                  className={`${style.coat} eased`}
                  href={routeHash({ kind: 'coat', planId: coat.id, step: 'cover' })}
                >
                  <span className={style.coatName}>{coat.name}</span>
                  <span className="quiet number">
                    {[
                      coat.size === '' ? null : `size ${coat.size}`,
                      coat.coatCount === 1 ? '1 coat' : `${coat.coatCount} coats`,
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
          <h2 id="stash-standing">On the shelf</h2>
          <a href={routeHash({ kind: 'stash', itemId: null })}>All of the stash</a>
        </header>
        <ul className={style.kinds}>
          {stood.counts.map(({ kind, count }) => (
            <li key={kind} data-none={count === 0}>
              <KindMark kind={kind} />
              <span>
                <span className={style.count}>{count}</span>{' '}
                {count === 1 ? kindRecords[kind].label.toLowerCase() : kindRecords[kind].plural.toLowerCase()}
              </span>
            </li>
          ))}
        </ul>
        {stood.usedUp.length > 0 && (
          <p className={style.usedUp}>
            None left of{' '}
            {stood.usedUp.map((row, index) => (
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
