import { say } from '../../../shared-core/wording/say.ts';
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
          label={say('asked-fields.widths-of-the-cloth')}
          value={draft.widths}
          hint={say('asked-fields.several-stand-apart-by-semicolons')}
          onChange={(widths) => onChange({ ...draft, widths })}
        />
        <ChoiceField
          label={say('asked-fields.nap')}
          value={draft.nap}
          options={[
            { value: 'both', label: say('asked-fields.without-and-with') },
            { value: 'without', label: say('asked-fields.without-nap') },
            { value: 'with', label: say('asked-fields.with-nap') },
          ]}
          onChange={(nap) => onChange({ ...draft, nap: nap || 'both' })}
        />
        <ChoiceField
          label={say('asked-fields.shown-in')}
          value={draft.shownIn}
          options={[
            { value: 'metric', label: say('asked-fields.tenths-of-a-metre') },
            { value: 'imperial', label: say('asked-fields.eighths-of-a-yard') },
            { value: 'both', label: say('asked-fields.both') },
          ]}
          onChange={(shownIn) => onChange({ ...draft, shownIn: shownIn || 'both' })}
        />
        <ChoiceField
          label={say('asked-fields.time-for-the-table')}
          value={draft.seconds}
          options={[
            { value: '15', label: say('asked-fields.seconds', { count: 15 }) },
            { value: '60', label: say('asked-fields.minutes', { count: 1 }) },
            { value: '300', label: say('asked-fields.minutes', { count: 5 }) },
          ]}
          onChange={(seconds) => onChange({ ...draft, seconds: seconds || '60' })}
        />
      </div>
      <fieldset className={style.slots}>
        <legend>{say('asked-fields.materials')}</legend>
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
