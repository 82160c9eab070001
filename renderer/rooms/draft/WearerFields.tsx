/** Who wears the coat: a size of a table, or measures; what was not measured follows by proportion. */
import type { BodyKind } from '../../../shared-core/draft/body.ts';
import { defaultHeightMm } from '../../../shared-core/draft/body-tables.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../../client/workshop.ts';
import { DraftField } from '../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../parts/forms/Field.tsx';
import {
  bodyMeasures,
  bodyUnit,
  type DraftForm,
  formTable,
  formTables,
  type MeasureKey,
  moreMeasures,
  proportion,
  wearer,
  withMeasure,
  withTable,
} from './draft-form.ts';
import style from './DraftRoom.module.css';

const kindOptions: readonly { value: BodyKind; label: string }[] = [
  { value: 'women', label: 'A woman' },
  { value: 'men', label: 'A man' },
  { value: 'children', label: 'A child' },
];

export interface WearerFieldsProps {
  readonly form: DraftForm;
  readonly setForm: (form: DraftForm) => void;
  readonly change: (part: Partial<DraftForm>) => void;
}

export function WearerFields({ form, setForm, change }: WearerFieldsProps) {
  const system = useSystem();
  const table = formTable(form);
  const tables = formTables.filter((each) => each.kind === form.kind);
  const body = wearer(form);
  const usual = (key: (typeof moreMeasures)[number]['key'] | 'hipMm'): string | undefined => {
    const mm = body.ok ? proportion(body.value, key) : null;
    return mm === null ? undefined : `usual: ${showQuantity('length', mm, { system, unit: bodyUnit })}`;
  };
  const field = (key: MeasureKey, label: string, hint: string | undefined) => (
    <DraftField
      key={key}
      label={label}
      quantity="length"
      unit={bodyUnit}
      draft={form.measures[key]}
      {...(hint === undefined ? {} : { hint })}
      onChange={(draft) => setForm(withMeasure(form, key, draft))}
      aboveZero
    />
  );
  return (
    <>
      <TextField
        label="Name of the coat"
        value={form.name}
        onChange={(name) => change({ name })}
        placeholder="as you call the style"
      />
      <fieldset className={style.group}>
        <legend>The wearer</legend>
        <div className={style.pair}>
          <ChoiceField
            label="Drafted for"
            value={form.kind}
            options={kindOptions}
            onChange={(kind) => {
              const first = formTables.find((each) => each.kind === kind);
              if (first) setForm(withTable(form, first, '', system));
            }}
          />
          {table ? (
            <ChoiceField
              label="Size"
              value={form.size}
              options={table.rows.map(({ size }) => ({ value: size, label: size }))}
              onChange={(size) => setForm(withTable(form, table, size, system))}
            />
          ) : (
            <TextField label="Size" value={form.size} onChange={(size) => change({ size })} />
          )}
        </div>
        <ChoiceField
          label="Size table"
          value={form.table}
          emptyLabel="Own measures"
          options={tables.map(({ label }) => ({ value: label, label }))}
          onChange={(label) => {
            const chosen = formTables.find((each) => each.label === label);
            if (chosen) setForm(withTable(form, chosen, form.size, system));
            else change({ table: '', size: '', moreSizes: [] });
          }}
        />
        {table && <p className={style.source}>{table.source}</p>}
        <div className={style.pair}>
          {bodyMeasures.map(({ key, label }) =>
            field(
              key,
              label,
              key === 'hipMm'
                ? usual('hipMm')
                : key === 'heightMm' && table && table.rows[0]!.heightMm === undefined
                  ? `the table is for all heights; ${showQuantity('length', defaultHeightMm[form.kind], { system, unit: bodyUnit })} is usual`
                  : undefined,
            ),
          )}
        </div>
        <details className={style.more}>
          <summary>More measures</summary>
          <p className="quiet">Each that is left empty follows from bust and height.</p>
          <div className={style.pair}>
            {moreMeasures.map(({ key, label }) => field(key, label, usual(key)))}
          </div>
        </details>
        {table && <MoreSizes form={form} change={change} sizes={table.rows.map(({ size }) => size)} />}
      </fieldset>
    </>
  );
}

/** Other sizes of the table, drafted into the same plan. */
function MoreSizes({
  form,
  change,
  sizes,
}: Pick<WearerFieldsProps, 'form' | 'change'> & { sizes: readonly string[] }) {
  return (
    <details className={style.more}>
      <summary>More sizes of this style</summary>
      <p className="quiet">
        They stand beside this one in its plan, with the same choices; there you say how many of each are
        made.
      </p>
      <div className={style.sizes}>
        {sizes.map((size) => (
          <label key={size} className={`${style.size} eased`}>
            <input
              type="checkbox"
              checked={size === form.size || form.moreSizes.includes(size)}
              disabled={size === form.size}
              onChange={(event) =>
                change({
                  moreSizes: sizes.filter((each) =>
                    each === size ? event.target.checked : form.moreSizes.includes(each),
                  ),
                })
              }
            />
            {size}
          </label>
        ))}
      </div>
    </details>
  );
}
