/** Who wears the coat: a size of a table, or measures; what was not measured follows by proportion. */
import { say } from '../../../shared-core/wording/say.ts';
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
    return mm === null
      ? undefined
      : say('wearer-fields.usual', { mm: showQuantity('length', mm, { system, unit: bodyUnit }) });
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
        label={say('wearer-fields.name-of-the-coat')}
        value={form.name}
        onChange={(name) => change({ name })}
        placeholder={say('wearer-fields.as-you-call-the-style')}
      />
      <fieldset className={style.group}>
        <legend>{say('wearer-fields.the-wearer')}</legend>
        <div className={style.pair}>
          <ChoiceField
            label={say('wearer-fields.drafted-for')}
            value={form.kind}
            options={kindOptions}
            onChange={(kind) => {
              const first = formTables.find((each) => each.kind === kind);
              if (first) setForm(withTable(form, first, '', system));
            }}
          />
          {table ? (
            <ChoiceField
              label={say('common.size')}
              value={form.size}
              options={table.rows.map(({ size }) => ({ value: size, label: size }))}
              onChange={(size) => setForm(withTable(form, table, size, system))}
            />
          ) : (
            <TextField label={say('common.size')} value={form.size} onChange={(size) => change({ size })} />
          )}
        </div>
        <ChoiceField
          label={say('wearer-fields.size-table')}
          value={form.table}
          emptyLabel={say('wearer-fields.own-measures')}
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
                  ? say('wearer-fields.the-table-is-for-all-heights', {
                      defaultHeightMm: showQuantity('length', defaultHeightMm[form.kind], {
                        system,
                        unit: bodyUnit,
                      }),
                    })
                  : undefined,
            ),
          )}
        </div>
        <details className={style.more}>
          <summary>{say('wearer-fields.more-measures')}</summary>
          <p className="quiet">{say('wearer-fields.each-that-is-left-empty-follows')}</p>
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
      <summary>{say('wearer-fields.more-sizes-of-this-style')}</summary>
      <p className="quiet">{say('wearer-fields.they-stand-beside-this-one-in')}</p>
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
