/** The two numbers of the workshop that thread and needles hang on. */
import { useState } from 'react';
import { type Outcome, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edited.ts';
import { setSewingMinutes, setThreadWastage } from '../../../shared-core/plan/measured.ts';
import { useCoat } from '../../client/coat-context.ts';
import { SettledField } from '../../parts/SettledField.tsx';
import style from './NeedsRoom.module.css';
import { Stitching } from './Stitching.tsx';

export function SewingChoices() {
  const { input, edit } = useCoat();
  const [problem, setProblem] = useState<string | null>(null);
  if (!input) return null;
  const make = async (change: (plan: CoatPlan) => Outcome<Edited>) => {
    const answer = await edit(change);
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  return (
    <section aria-labelledby="sewing" className={style.section}>
      <h2 id="sewing">Sewing</h2>
      <div className={style.choices}>
        <SettledField
          label="Wastage of thread"
          quantity="ratio"
          value={input.plan.threadWastageRatio}
          max={2}
          hint="ends, breaks and bobbin changes"
          onSet={(ratio) => void make((plan) => setThreadWastage(plan, ratio))}
        />
        <SettledField
          label="Sewing time of one coat"
          quantity="duration"
          value={input.plan.sewingMinutesPerCoat}
          hint="needles wear out by it"
          onSet={(minutes) => void make((plan) => setSewingMinutes(plan, minutes))}
        />
      </div>
      <Stitching />
      {problem && (
        <p role="alert" className={style.problem}>
          {problem}
        </p>
      )}
    </section>
  );
}
