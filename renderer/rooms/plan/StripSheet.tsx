/** A strip by typed measures: what is let into a side seam when the coat is too snug. */
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { addStrip } from '../../../shared-core/plan/strip.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useLengthText } from '../../client/length-text.ts';
import { DraftField, draftOf, emptyDraft, misreadProblems } from '../../parts/DraftField.tsx';
import { FlagField, TextField } from '../../parts/Field.tsx';
import { FormSheet } from '../../parts/FormSheet.tsx';
import style from './PlanRoom.module.css';

export function StripSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat();
  const lengthText = useLengthText();
  const slots = input?.plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting') ?? [];
  const [name, setName] = useState('Side strip');
  const [length, setLength] = useState(emptyDraft);
  const [width, setWidth] = useState(emptyDraft);
  const [count, setCount] = useState(draftOf(2, '2'));
  const [slotIds, setSlotIds] = useState<readonly string[]>(slots[0] ? [slots[0].id] : []);

  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems('The strip', [length, width, count]);
    if (misread.length > 0) return misread;
    const missing = (what: string): Problem => ({
      where: what,
      what: 'is missing',
      mend: 'Type it, such as 65 mm or 2 1/2 in.',
    });
    if (length.value === null) return [missing('The length')];
    if (width.value === null) return [missing('The width')];
    const strip = { name, lengthMm: length.value, widthMm: width.value, count: count.value ?? 0, slotIds };
    const answer = await edit((plan) => addStrip(plan, strip, lengthText));
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet title="Add a strip" saveLabel="Add the strip" onClose={onClose} onSave={save}>
      <TextField label="Name" value={name} onChange={setName} />
      <div className={style.pair}>
        <DraftField
          label="Length"
          quantity="length"
          draft={length}
          onChange={setLength}
          aboveZero
          hint="along the grain, at the seam line"
        />
        <DraftField
          label="Width"
          quantity="length"
          draft={width}
          onChange={setWidth}
          aboveZero
          hint="across it; allowance is added outside"
        />
        <DraftField
          label="How many for one coat"
          quantity="count"
          draft={count}
          onChange={setCount}
          min={1}
        />
      </div>
      <fieldset className={style.group}>
        <legend>Cut from</legend>
        {slots.map((slot) => (
          <FlagField
            key={slot.id}
            label={slot.name}
            value={slotIds.includes(slot.id)}
            onChange={(isOn) =>
              setSlotIds(isOn ? [...slotIds, slot.id] : slotIds.filter((id) => id !== slot.id))
            }
          />
        ))}
      </fieldset>
    </FormSheet>
  );
}
