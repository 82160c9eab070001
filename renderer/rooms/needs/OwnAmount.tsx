/** What one coat takes of a slot that is not cut, as the maker measured or counted it. */
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
      label={`${slot.name} for one coat`}
      quantity={countedQuantity(kindRecords[slot.kind].counted)}
      hint="as you measured it on a coat"
      ask="Put in my own for one coat"
      isOwn={isOwn}
      computed={`${amountText(slot.kind, Math.round(estimated * 10) / 10, system)} for one coat`}
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
        label={`${sentenceCase(slot.name)} in one coat`}
        quantity="count"
        value={slot.amountPerCoat ?? 1}
        problem={problem}
        onSet={(count) => void set(count)}
      />
    </div>
  );
}
