/** A quiet list of the first three steps, each a way into its room; gone once all are taken, or when it is put away. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { useRead } from '../../client/queries/reads.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './FirstSteps.module.css';
import { firstSteps } from './first-steps-taken.ts';

/** The cloth of which there is most. */
const mostOnHand: CallInput<'listItems'> = {
  search: '',
  kinds: ['cloth'],
  sortBy: 'onHand',
  isDescending: true,
  offset: 0,
  limit: 1,
};

export function FirstSteps() {
  const { facts } = useWorkshop();
  const cloths = useRead('listItems', mostOnHand);
  const plans = useRead('listPlans', {});
  const planId = plans.data?.rows[0]?.id;
  const coat = useRead('readPlan', planId === undefined ? null : { planId });
  const { make: saveSettings } = useChange('saveSettings');
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const putAway = async () => {
    const answer = await saveSettings({ ...facts.settings, isFirstStepsPutAway: true });
    setProblems(answer.ok ? [] : answer.problems);
  };

  // What cannot be read here is told by the room around it.
  if (!cloths.data || !plans.data || (planId !== undefined && !coat.data)) return null;
  const steps = firstSteps({
    hasCloth: (cloths.data.rows[0]?.onHand ?? 0) > 0,
    coat: coat.data?.plan ?? null,
  });
  const next = steps.find(({ isTaken }) => !isTaken);
  if (!next) return null;
  return (
    <section className={style.steps} aria-labelledby="first-steps">
      <header className={style.head}>
        <h2 id="first-steps" className={style.title}>
          {say('first-steps.your-first-answer-in-three-steps')}
        </h2>
        <Button look="quiet" onClick={() => void putAway()}>
          {say('first-steps.put-this-list-away')}
        </Button>
      </header>
      <ol className={style.list}>
        {steps.map(({ ask, why, route, isTaken }, index) => (
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
              {isTaken && <span className="only-read-aloud">{say('first-steps.done')}</span>}
              <span className={style.say}>{why}</span>
            </span>
          </li>
        ))}
      </ol>
      <Problems problems={problems} />
    </section>
  );
}
