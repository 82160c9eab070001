/** A quiet list of the first three steps, each a way into its room; gone once all are taken, or when it is put away. */
import { useEffect, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './FirstSteps.module.css';
import { type FirstFacts, firstSteps } from './first-steps-taken.ts';

export function FirstSteps() {
  const { workshop, facts, refresh } = useWorkshop();
  const [first, setFirst] = useState<FirstFacts | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  useEffect(() => {
    let isHere = true;
    const read = async () => {
      const max = {
        search: '',
        kinds: ['cloth' as const],
        sortBy: 'onHand' as const,
        isDescending: true,
        offset: 0,
        limit: 1,
      };
      const cloths = await call('listItems', workshop, max);
      const plans = await call('listPlans', workshop, {});
      const [row] = plans.ok ? plans.value.rows : [];
      const coat = row ? await call('readPlan', workshop, { planId: row.id }) : null;
      // What cannot be read here is told by the room around it.
      if (!isHere || !cloths.ok || !plans.ok || (coat && !coat.ok)) return;
      setFirst({
        hasCloth: (cloths.value.rows[0]?.onHand ?? 0) > 0,
        coat: coat ? coat.value.plan : null,
      });
    };
    void read();
    return () => {
      isHere = false;
    };
  }, [workshop]);

  const putAway = async () => {
    const answer = await call('saveSettings', workshop, { ...facts.settings, isFirstStepsPutAway: true });
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) await refresh();
  };

  if (!first) return null;
  const steps = firstSteps(first);
  const next = steps.find(({ isTaken }) => !isTaken);
  if (!next) return null;
  return (
    <section className={style.steps} aria-labelledby="first-steps">
      <header className={style.head}>
        <h2 id="first-steps" className={style.title}>
          Your first answer in three steps
        </h2>
        <Button look="quiet" onClick={() => void putAway()}>
          Put this list away
        </Button>
      </header>
      <ol className={style.list}>
        {steps.map(({ ask, say, route, isTaken }, index) => (
          <li
            key={ask}
            className={style.step}
            data-taken={isTaken}
            aria-current={ask === next.ask ? 'step' : undefined}
          >
            <span className={style.sign} aria-hidden="true">
              {isTaken ? '✓' : index + 1}
            </span>
            <span>
              <a href={routeHash(route)}>{ask}</a>
              {isTaken && <span className="only-read-aloud">, done</span>}
              <span className={style.say}>{say}</span>
            </span>
          </li>
        ))}
      </ol>
      <Problems problems={problems} />
    </section>
  );
}
