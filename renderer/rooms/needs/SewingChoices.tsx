/** The numbers of the workshop that thread, needles and the thickness of seams hang on. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo, useState } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { type Result, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { setFootLift, setSewingMinutes, setThreadWastage } from '../../../shared-core/plan/edits/measured.ts';
import { seamBulk, defaultFootLiftMm } from '../../../shared-core/requirement/thread/seam-bulk.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { AdviceNotes } from '../../parts/notes/AdviceNotes.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { OptionalSettledField, SettledField } from '../../parts/forms/SettledField.tsx';
import style from './NeedsRoom.module.css';
import { Stitching } from './Stitching.tsx';

export function SewingChoices() {
  const { input, edit } = useCoat('input', 'edit');
  const text = useLengthText();
  const [problem, setProblem] = useState<string | null>(null);
  if (!input) return null;
  const make = async (change: (plan: CoatPlan) => Result<Edited>) => {
    const answer = await edit(change);
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  return (
    <section aria-labelledby="sewing" className={style.section}>
      <h2 id="sewing">{say('sewing-choices.sewing')}</h2>
      <div className={style.choices}>
        <SettledField
          label={say('common.wastage-of-thread')}
          quantity="ratio"
          value={input.plan.threadWastageRatio}
          max={2}
          hint={say('sewing-choices.ends-breaks-and-bobbin-changes')}
          onSet={(ratio) => void make((plan) => setThreadWastage(plan, ratio))}
        />
        <SettledField
          label={say('common.sewing-time-of-one-coat')}
          quantity="duration"
          value={input.plan.sewingMinutesPerCoat}
          hint={say('sewing-choices.needles-wear-out-by-it')}
          onSet={(minutes) => void make((plan) => setSewingMinutes(plan, minutes))}
        />
        <OptionalSettledField
          label={say('sewing-choices.foot-of-the-machine-lifts')}
          quantity="length"
          value={input.plan.footLiftMm ?? null}
          hint={say('sewing-choices.empty-as-of-a-usual-domestic', { text: text(defaultFootLiftMm) })}
          onSet={(liftMm) => void make((plan) => setFootLift(plan, liftMm, text))}
        />
      </div>
      <Bulk />
      <AdviceNotes kinds={['seam bulk']} />
      <Stitching />
      {problem && (
        <p role="alert" className={style.problem}>
          {problem}
        </p>
      )}
    </section>
  );
}

/** How thick the thickest seam is under the foot. */
function Bulk() {
  const { input } = useCoat('input');
  const bulk = useMemo(() => (input ? seamBulk(input.plan, slotItems(input)) : null), [input]);
  if (!bulk) return null;
  const inSmallUnit = { unit: { metric: 'mm', imperial: 'in' }, digits: 1 } as const;
  return (
    <p>
      {say('sewing-choices.the-thickest-seam')}
      {bulk.label}
      {say('sewing-choices.is-about')}{' '}
      <Figure quantity="length" value={bulk.thicknessMm} options={inSmallUnit} />{' '}
      {say('sewing-choices.thick-under-the-foot-and')}{' '}
      <Figure quantity="length" value={bulk.crossingMm} options={inSmallUnit} />{' '}
      {say('sewing-choices.where-two-like-it-cross')}
    </p>
  );
}
