import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { ChoiceField, FlagField, TextField } from '../../parts/forms/Field.tsx';
import type { AskedDraft } from './asked-draft.ts';
import style from './PatternTableRoom.module.css';

export interface AskedFieldsProps {
  readonly draft: AskedDraft;
  /** All that are cut. */
  readonly slots: readonly Slot[];
  readonly onChange: (draft: AskedDraft) => void;
}

/** What the table is for: widths, nap, units, materials, and how long may be looked. */
export function AskedFields({ draft, slots, onChange }: AskedFieldsProps) {
  const setSlot = (id: string, isIn: boolean) =>
    onChange({
      ...draft,
      leftOutSlotIds: isIn
        ? draft.leftOutSlotIds.filter((each) => each !== id)
        : [...draft.leftOutSlotIds, id],
    });
  return (
    <div className={style.asked}>
      <div className={style.fields}>
        <TextField
          label="Widths of the cloth"
          value={draft.widths}
          hint="Several stand apart by semicolons"
          onChange={(widths) => onChange({ ...draft, widths })}
        />
        <ChoiceField
          label="Nap"
          value={draft.nap}
          options={[
            { value: 'both', label: 'Without and with' },
            { value: 'without', label: 'Without nap' },
            { value: 'with', label: 'With nap' },
          ]}
          onChange={(nap) => onChange({ ...draft, nap: nap || 'both' })}
        />
        <ChoiceField
          label="Shown in"
          value={draft.shownIn}
          options={[
            { value: 'metric', label: 'Tenths of a metre' },
            { value: 'imperial', label: 'Eighths of a yard' },
            { value: 'both', label: 'Both' },
          ]}
          onChange={(shownIn) => onChange({ ...draft, shownIn: shownIn || 'both' })}
        />
        <ChoiceField
          label="Time for the table"
          value={draft.seconds}
          options={[
            { value: '15', label: '15 seconds' },
            { value: '60', label: '1 minute' },
            { value: '300', label: '5 minutes' },
          ]}
          onChange={(seconds) => onChange({ ...draft, seconds: seconds || '60' })}
        />
      </div>
      <fieldset className={style.slots}>
        <legend>Materials</legend>
        {slots.map((slot) => (
          <FlagField
            key={slot.id}
            label={sentenceCase(slot.name)}
            value={!draft.leftOutSlotIds.includes(slot.id)}
            onChange={(isIn) => setSlot(slot.id, isIn)}
          />
        ))}
      </fieldset>
    </div>
  );
}
