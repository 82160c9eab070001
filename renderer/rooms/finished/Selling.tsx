/** What to mind before a coat is sold; the rules of the place and licensed practice decide. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { setForChild } from '../../../shared-core/plan/edits/measured.ts';
import { isForChild } from '../../../shared-core/requirement/law/child-size.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { Cautions } from '../../parts/notes/Cautions.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import fields from '../../parts/forms/Field.module.css';
import style from './FinishedRoom.module.css';

export function Selling() {
  const { input } = useCoat('input');
  const { problem, change } = usePlanChange();
  // What was just chosen, while the plan is being saved.
  const [chosen, setChosen] = useState<boolean | null>(null);
  if (!input) return null;
  const choose = async (is: boolean) => {
    setChosen(is);
    await change((plan) => setForChild(plan, is));
    setChosen(null);
  };
  return (
    <section aria-labelledby="selling" className={style.section}>
      <h2 id="selling">{say('selling.before-it-is-sold')}</h2>
      <FlagField
        label={say('selling.this-coat-is-for-a-child')}
        hint={say('selling.rules-on-cords-and-burning-are')}
        value={chosen ?? isForChild(input.plan)}
        onChange={(is) => void choose(is)}
      />
      {problem && (
        <p role="alert" className={fields.problem}>
          {problem}
        </p>
      )}
      <Cautions kinds={['drawstrings, US', 'drawstrings, EU', 'flammability', 'filled goods']} />
    </section>
  );
}
