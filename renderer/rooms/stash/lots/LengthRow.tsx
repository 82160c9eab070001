/** One line of a parcel: lengths of the same measure, with their flaws. */
import { clothLengthUnit, clothWidthUnit } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { DraftField } from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, FlagField } from '../../../parts/forms/Field.tsx';
import style from '../forms.module.css';
import { formOptions } from '../items/item-words.ts';
import { type FlawDraft, type LengthDraft, withFlaw } from './length-drafts.ts';

export interface LengthRowProps {
  readonly row: LengthDraft;
  readonly number: number;
  readonly onChange: (row: LengthDraft) => void;
  /** Whether the item is known to shrink, so that it matters if it was washed. */
  readonly shrinks: boolean;
  /** null where it is the only line. */
  readonly onRemove: (() => void) | null;
}

export function LengthRow({ row, number, shrinks, onChange, onRemove }: LengthRowProps) {
  return (
    <fieldset className={style.row}>
      <legend>Length {number}</legend>
      <div className={style.measures}>
        <ChoiceField
          label="Form"
          value={row.form}
          options={formOptions}
          onChange={(form) => form !== '' && onChange({ ...row, form })}
        />
        <DraftField
          label="Width"
          quantity="length"
          draft={row.width}
          onChange={(width) => onChange({ ...row, width })}
          unit={clothWidthUnit}
          aboveZero
        />
        <DraftField
          label="Length"
          quantity="length"
          draft={row.along}
          onChange={(along) => onChange({ ...row, along })}
          unit={clothLengthUnit}
          aboveZero
        />
        <DraftField
          label="How many"
          quantity="count"
          draft={row.count}
          onChange={(count) => onChange({ ...row, count })}
          aboveZero
        />
      </div>
      {shrinks && (
        <FlagField
          label="Washed already: it shrinks no more"
          value={row.isWashed}
          onChange={(isWashed) => onChange({ ...row, isWashed })}
        />
      )}
      {row.flaws.map((flaw, index) => (
        <Flaw
          key={flaw.key}
          flaw={flaw}
          number={index + 1}
          onChange={(next) =>
            onChange({ ...row, flaws: row.flaws.map((each) => (each.key === flaw.key ? next : each)) })
          }
          onRemove={() => onChange({ ...row, flaws: row.flaws.filter((each) => each.key !== flaw.key) })}
        />
      ))}
      <div className={style.rowActions}>
        <Button look="quiet" onClick={() => onChange(withFlaw(row))}>
          Note a flaw
        </Button>
        {onRemove && (
          <Button look="quiet" onClick={onRemove} aria-label={`Remove this line: length ${number}`}>
            Remove this line
          </Button>
        )}
      </div>
    </fieldset>
  );
}

interface FlawProps {
  readonly flaw: FlawDraft;
  readonly number: number;
  readonly onChange: (flaw: FlawDraft) => void;
  readonly onRemove: () => void;
}

function Flaw({ flaw, number, onChange, onRemove }: FlawProps) {
  return (
    <fieldset className={style.flaw}>
      <legend>Flaw {number}</legend>
      <div className={style.measures}>
        <DraftField
          label="From start"
          quantity="length"
          draft={flaw.fromStart}
          onChange={(fromStart) => onChange({ ...flaw, fromStart })}
          unit={clothLengthUnit}
        />
        <DraftField
          label="From edge"
          quantity="length"
          draft={flaw.fromEdge}
          onChange={(fromEdge) => onChange({ ...flaw, fromEdge })}
          unit={clothWidthUnit}
        />
        <DraftField
          label="Long"
          quantity="length"
          draft={flaw.along}
          onChange={(along) => onChange({ ...flaw, along })}
          unit={clothWidthUnit}
          aboveZero
        />
        <DraftField
          label="Wide"
          quantity="length"
          draft={flaw.across}
          onChange={(across) => onChange({ ...flaw, across })}
          unit={clothWidthUnit}
          aboveZero
        />
      </div>
      <div className={style.rowActions}>
        <Button look="quiet" onClick={onRemove} aria-label={`Remove this flaw: flaw ${number}`}>
          Remove this flaw
        </Button>
      </div>
    </fieldset>
  );
}
