/** The margin for safety of a slot: a share of what it takes, or for cloth and batting a length. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { marginOf } from '../../../shared-core/cover/held-back.ts';
import type { SlotLay } from '../../../shared-core/lay/plan-lay.ts';
import { takenInAllMm } from '../../../shared-core/lay/washed.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { Margin, Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { marginWords, setMargin } from '../../../shared-core/plan/model/margin.ts';
import type { Need } from '../../../shared-core/requirement/need.ts';
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText, clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';
import { OptionalSettledField } from '../../parts/forms/SettledField.tsx';
import style from './NeedsRoom.module.css';

export function SlotMargin({ slot }: { slot: Slot }) {
  const { edit } = useCoat('edit');
  const text = useLengthText();
  const [problem, setProblem] = useState<string | null>(null);
  const { margin } = slot;
  const set = async (next: Margin | null) => {
    const answer = await edit((plan) => setMargin(plan, slot.id, next, text));
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  const isCut = slot.kind === 'cloth' || slot.kind === 'batting';
  return (
    <details className="small">
      <summary className={style.summary}>
        {say('slot-margin.margin-for-safety', { margin: margin ? `: ${marginWords(margin, text)}` : '' })}
      </summary>
      <div className={style.margin}>
        <OptionalSettledField
          label={say('slot-margin.share-for-the', { slotName: slot.name })}
          quantity="ratio"
          value={margin?.kind === 'share' ? margin.ratio : null}
          hint={say('slot-margin.of-what-it-takes-5')}
          problem={problem}
          onSet={(ratio) => void set(ratio === null ? null : { kind: 'share', ratio })}
        />
        {isCut && (
          <OptionalSettledField
            label={say('slot-margin.length-for-the', { slotName: slot.name })}
            quantity="length"
            unit={clothWidthUnit}
            value={margin?.kind === 'length' ? margin.lengthMm : null}
            hint={say('slot-margin.instead-of-a-share-20-cm')}
            onSet={(lengthMm) => void set(lengthMm === null ? null : { kind: 'length', lengthMm })}
          />
        )}
      </div>
    </details>
  );
}

/** What a need and its margin are together; nothing without a margin, or while what is cut is not laid yet. */
export function WithMargin({ need, slot, slotLay }: { need: Need; slot: Slot; slotLay?: SlotLay }) {
  const system = useSystem();
  const text = useLengthText();
  const marginAmount = marginOf(need, slotLay);
  if (need.margin === undefined || marginAmount <= 0) return null;
  const taken = need.kind === 'amount' ? need.amount : slotLay ? takenInAllMm(slotLay) : 0;
  return (
    <p className="small">
      {say('slot-margin.with-a-margin-of')} {marginWords(need.margin, text)}:{' '}
      {totalText(need, slot.kind, taken + marginAmount, system)}
      {say('slot-margin.held-ready-or-bought')}
      {need.kind === 'shapes' && ` ${say('slot-margin.nap-repeat-and-shrinkage-are-in')}`}
    </p>
  );
}

/** Thread is had by the whole metre, as the need above it is shown. */
function totalText(need: Need, kind: ItemKind, amount: number, system: MeasureSystem): string {
  if (need.kind === 'shapes') {
    return showQuantity('length', amount, { system, unit: clothLengthUnit, digits: 2 });
  }
  return amountText(kind, need.counted === 'thread' ? Math.ceil(amount - 1e-9) : amount, system);
}
