/** The margin for safety of a slot: a share of what it takes, or for cloth and batting a length. */
import { useState } from 'react';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { Margin, Slot } from '../../../shared-core/plan/coat-plan.ts';
import { marginOfLength, marginWords, setMargin } from '../../../shared-core/plan/margin.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useLengthText } from '../../client/length-text.ts';
import { useSystem } from '../../client/workshop.ts';
import { clothLengthUnit, clothWidthUnit } from '../../parts/Amount.tsx';
import { OptionalSettledField } from '../../parts/SettledField.tsx';
import style from './NeedsRoom.module.css';

export function SlotMargin({ slot }: { slot: Slot }) {
  const { edit } = useCoat();
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
        Margin for safety{margin ? `: ${marginWords(margin, text)}` : ''}
      </summary>
      <div className={style.margin}>
        <OptionalSettledField
          label={`Share for the ${slot.name}`}
          quantity="ratio"
          value={margin?.kind === 'share' ? margin.ratio : null}
          hint="Of what it takes: 5 %"
          problem={problem}
          onSet={(ratio) => void set(ratio === null ? null : { kind: 'share', ratio })}
        />
        {isCut && (
          <OptionalSettledField
            label={`Length for the ${slot.name}`}
            quantity="length"
            unit={clothWidthUnit}
            value={margin?.kind === 'length' ? margin.lengthMm : null}
            hint="Instead of a share: 20 cm"
            onSet={(lengthMm) => void set(lengthMm === null ? null : { kind: 'length', lengthMm })}
          />
        )}
      </div>
    </details>
  );
}

/** What a lay of this length and its margin are together; nothing without a margin. */
export function WithMargin({ margin, lengthMm }: { margin: Margin | undefined; lengthMm: number }) {
  const system = useSystem();
  const text = useLengthText();
  if (margin === undefined || lengthMm === 0) return null;
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothLengthUnit, digits: 2 });
  const marginMm = marginOfLength(margin, lengthMm);
  return (
    <p className="small">
      With a margin of {marginWords(margin, text)}: {show(lengthMm + marginMm)}, held ready or bought. Nap,
      repeat and shrinkage are in the lay.
    </p>
  );
}
