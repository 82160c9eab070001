/** What one coat takes of a slot that is not cut, as the maker measured or counted it. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { setAmountPerCoat } from '../../../shared-core/plan/edits/measured.ts';
import { estimatedPerCoat } from '../../../shared-core/requirement/requirement.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { countedQuantity } from '../../client/wording/words.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { OwnFigure } from '../../parts/forms/OwnFigure.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import style from './NeedsRoom.module.css';

export function OwnAmount({ slot }: { slot: Slot }) {
  const { input, edit, estimate } = useCoat('input', 'edit', 'estimate');
  const system = useSystem();
  if (!input) return null;
  if (slot.kind === 'fastening') return <CountPerCoat slot={slot} />;
  const isOwn = slot.amountPerCoat !== null;
  const estimated = estimatedPerCoat(input.plan, slot.id, slotItems(input), estimate?.panels);
  return (
    <OwnFigure
      label={say('own-amount.for-one-coat', { slotName: slot.name })}
      quantity={countedQuantity(kindRecords[slot.kind].counted)}
      hint={say('own-amount.as-you-measured-it-on-a')}
      ask={say('own-amount.put-in-my-own-for-one')}
      isOwn={isOwn}
      computed={say('own-amount.for-one-coat-2', {
        amountText: amountText(slot.kind, Math.round(estimated * 10) / 10, system),
      })}
      onSet={(amount) => edit((plan) => setAmountPerCoat(plan, slot.id, amount))}
    />
  );
}

/** Fastenings are counted by the maker in the first place. */
function CountPerCoat({ slot }: { slot: Slot }) {
  const { edit } = useCoat('edit');
  const [problem, setProblem] = useState<string | null>(null);
  const set = async (count: number) => {
    const answer = await edit((plan) => setAmountPerCoat(plan, slot.id, count));
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  return (
    <div className={style.count}>
      <SettledField
        label={say('own-amount.in-one-coat', { slotName: sentenceCase(slot.name) })}
        quantity="count"
        value={slot.amountPerCoat ?? 1}
        problem={problem}
        onSet={(count) => void set(count)}
      />
    </div>
  );
}
