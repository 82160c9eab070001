/** The first screen: what the tool does for the maker, and the one thing to do next. */
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
              ? 'From the cloth on your shelf to the coat on its hanger'
              : facts.settings.workshopName || 'Your workshop'}
          </h1>
          <p className={style.lead}>
            Say what lies on your shelf and which quilted coat you have in mind. Bolt &amp; Baffle lays the
            pieces out on your own cloth, tells you whether it reaches, what you still have to buy, and what
            each coat costs you. When the hem gets longer halfway through, you know at once whether what is
            left is enough.
          </p>
          <Problems problems={problems} />
          <div className={style.actions}>
            {isEmpty ? (
              <>
                <Button look="main" onClick={() => void openDemo()} disabled={isOpening}>
                  Open the demo workshop
                </Button>
                <Button onClick={() => goTo({ kind: 'stash', itemId: null })}>
                  Put your first cloth on the shelf
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
                  {facts.planCount > 0 ? 'Go to your coats' : 'Go to your stash'}
                </Button>
                {workshop === 'own' && (
                  <Button look="quiet" onClick={() => void openDemo()} disabled={isOpening}>
                    Open the demo workshop
                  </Button>
                )}
              </>
            )}
          </div>
          {isEmpty && (
            <p className={style.note}>
              The demo is an invented pair of makers with a full shelf and a coat half planned. It has a file
              of its own.
            </p>
          )}
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
    ask: 'What does this coat need?',
    say: 'Every piece is laid on the cloth, with nap, folds and seam allowances.',
  },
  { ask: 'Does the stash cover it?', say: 'Roll by roll and remnant by remnant, down to the pocket bags.' },
  { ask: 'What must I buy?', say: 'In the steps, sheets, spools and packs that your suppliers sell.' },
  { ask: 'What did it cost?', say: 'By the lots that you really paid for, for one coat or a batch of ten.' },
] as const;

function Road() {
  return (
    <ol className={style.road} aria-label="What it answers">
      {questions.map(({ ask, say }) => (
        <li key={ask}>
          <h2 className={style.ask}>{ask}</h2>
          <p className="quiet">{say}</p>
        </li>
      ))}
    </ol>
  );
}
