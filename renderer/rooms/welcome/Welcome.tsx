/** The first screen: what the tool does for the maker, and the one thing to do next. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChangeIn } from '../../client/queries/changes.ts';
import { ask } from '../../client/queries/reads.ts';
import { goTo } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { UpgradeNotes } from '../../parts/notes/UpgradeNotes.tsx';
import { BoltDrawing } from './BoltDrawing.tsx';
import { FirstSteps } from './FirstSteps.tsx';
import { mayHaveFirstSteps } from './first-steps-taken.ts';
import { FirstUnits } from './FirstUnits.tsx';
import { Standing } from './Standing.tsx';
import style from './Welcome.module.css';

export function Welcome() {
  const { workshop, facts, open } = useWorkshop();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isOpening, setIsOpening] = useState(false);
  const { make: makeDemo } = useChangeIn('demo', 'openDemo');
  const isEmpty = facts.itemCount === 0 && facts.planCount === 0;

  const openDemo = async () => {
    setIsOpening(true);
    const made = await makeDemo({});
    const plans = made.ok ? await ask('demo', 'listPlans', {}) : made;
    if (!plans.ok) {
      setProblems(plans.problems);
      setIsOpening(false);
      return;
    }
    const [coat] = plans.value.rows;
    await open(
      'demo',
      coat ? { kind: 'coat', planId: coat.id, step: 'cover' } : { kind: 'stash', itemId: null },
    );
    setIsOpening(false);
  };

  return (
    <div className={style.welcome}>
      <section className={style.hero} data-empty={isEmpty}>
        <div className={style.words}>
          <h1 className={style.title}>
            {isEmpty
              ? say('welcome.from-the-cloth-on-your-shelf')
              : facts.settings.workshopName || say('common.your-workshop')}
          </h1>
          <p className={style.lead}>{say('welcome.say-what-lies-on-your-shelf')}</p>
          <Problems problems={problems} />
          <div className={style.actions}>
            {isEmpty ? (
              <>
                <Button look="main" onClick={() => void openDemo()} disabled={isOpening}>
                  {say('welcome.open-the-demo-workshop')}
                </Button>
                <Button onClick={() => goTo({ kind: 'stash', itemId: null })}>
                  {say('welcome.put-your-first-cloth-on-the')}
                </Button>
              </>
            ) : (
              <>
                <Button
                  look="main"
                  onClick={() =>
                    goTo(facts.planCount > 0 ? { kind: 'coats' } : { kind: 'stash', itemId: null })
                  }
                >
                  {facts.planCount > 0 ? say('welcome.go-to-your-coats') : say('welcome.go-to-your-stash')}
                </Button>
                {workshop === 'own' && (
                  <Button look="quiet" onClick={() => void openDemo()} disabled={isOpening}>
                    {say('welcome.open-the-demo-workshop')}
                  </Button>
                )}
              </>
            )}
          </div>
          {isEmpty && <p className={style.note}>{say('welcome.the-demo-is-an-invented-pair')}</p>}
        </div>
        <BoltDrawing />
      </section>
      <UpgradeNotes notes={facts.upgradeNotes.filter(({ isSeen }) => !isSeen)} />
      {isEmpty && facts.settings.unitsFrom === 'locale' && <FirstUnits />}
      {mayHaveFirstSteps(facts) && <FirstSteps />}
      {isEmpty ? <Road /> : <Standing />}
    </div>
  );
}

const questions = [
  {
    ask: say('welcome.what-does-this-coat-need'),
    say: say('welcome.every-piece-is-laid-on-the'),
  },
  { ask: say('welcome.does-the-stash-cover-it'), say: say('welcome.roll-by-roll-and-remnant-by') },
  { ask: say('welcome.what-must-i-buy'), say: say('welcome.in-the-steps-sheets-spools-and') },
  { ask: say('welcome.what-did-it-cost'), say: say('welcome.by-the-lots-that-you-really') },
] as const;

function Road() {
  return (
    <ol className={style.road} aria-label={say('welcome.what-it-answers')}>
      {questions.map(({ ask, say }) => (
        <li key={ask}>
          <h2 className={style.ask}>{ask}</h2>
          <p className="quiet">{say}</p>
        </li>
      ))}
    </ol>
  );
}
