/** Who wears the coat: a size of a table, or measures; what was not measured follows by proportion. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Control, type UseFormSetValue, useWatch } from 'react-hook-form';
import type { Body, BodyKind } from '../../../shared-core/draft/body.ts';
import { defaultHeightMm } from '../../../shared-core/draft/body-tables.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../../client/workshop.ts';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { FormQuantity, FormText } from '../../parts/forms/FormFields.tsx';
import { proportion } from './draft-form.ts';
import style from './DraftRoom.module.css';
import {
  bodyMeasures,
  bodyUnit,
  type DraftForm,
  type FormTable,
  formTables,
  isOfTable,
  type MeasureKey,
  measureAsked,
  moreMeasures,
  type TypedDraft,
  withTable,
} from './typed-draft.ts';

const kindOptions: readonly { value: BodyKind; label: string }[] = [
  { value: 'women', label: say('wearer-fields.a-woman') },
  { value: 'men', label: say('wearer-fields.a-man') },
  { value: 'children', label: say('wearer-fields.a-child') },
];

export interface WearerFieldsProps {
  readonly control: Control<TypedDraft, unknown, DraftForm>;
  readonly setValue: UseFormSetValue<TypedDraft>;
  /** Null while measures are missing. */
  readonly body: Body | null;
}

export function WearerFields({ control, setValue, body }: WearerFieldsProps) {
  const system = useSystem();
  const [kind, label, size, moreSizes, measures, shown] = useWatch({
    control,
    name: ['kind', 'table', 'size', 'moreSizes', 'measures', 'shown'],
  });
  const table = formTables.find((each) => each.label === label) ?? null;
  const tables = formTables.filter((each) => each.kind === kind);
  const put = (part: Partial<TypedDraft>) => {
    // What could not be read before is judged anew.
    for (const [name, value] of Object.entries(part))
      setValue(name as 'measures', value as never, { shouldValidate: name === 'measures' });
  };
  const putTable = (chosen: FormTable, chosenSize: string) =>
    put(withTable({ table: label, moreSizes, measures, shown }, chosen, chosenSize, system));
  const leaveTable = () => put({ table: '', moreSizes: [] });
  const usual = (key: (typeof moreMeasures)[number]['key'] | 'hipMm'): string | undefined => {
    const mm = body && proportion(body, key);
    return mm === null
      ? undefined
      : say('wearer-fields.usual', { mm: showQuantity('length', mm, { system, unit: bodyUnit }) });
  };
  const field = (key: MeasureKey, hint: string | undefined) => (
    <FormQuantity
      key={key}
      control={control}
      name={`measures.${key}`}
      {...measureAsked(key)}
      hint={hint}
      onTyped={() => table && isOfTable(key) && leaveTable()}
    />
  );
  return (
    <>
      <FormText
        control={control}
        name="name"
        label={say('wearer-fields.name-of-the-coat')}
        placeholder={say('wearer-fields.as-you-call-the-style')}
      />
      <fieldset className={style.group}>
        <legend>{say('wearer-fields.the-wearer')}</legend>
        <div className={style.pair}>
          <ChoiceField
            label={say('wearer-fields.drafted-for')}
            value={kind}
            options={kindOptions}
            onChange={(next) => {
              const first = formTables.find((each) => each.kind === next);
              if (first) putTable(first, '');
            }}
          />
          {table ? (
            <ChoiceField
              label={say('common.size')}
              value={size}
              options={table.rows.map((row) => ({ value: row.size, label: row.size }))}
              onChange={(next) => putTable(table, next)}
            />
          ) : (
            <FormText control={control} name="size" label={say('common.size')} />
          )}
        </div>
        <ChoiceField
          label={say('wearer-fields.size-table')}
          value={label}
          emptyLabel={say('wearer-fields.own-measures')}
          options={tables.map((each) => ({ value: each.label, label: each.label }))}
          onChange={(next) => {
            const chosen = formTables.find((each) => each.label === next);
            if (chosen) putTable(chosen, size);
            else put({ table: '', size: '', moreSizes: [] });
          }}
        />
        {table && <p className={style.source}>{table.source}</p>}
        <div className={style.pair}>
          {bodyMeasures.map(({ key }) =>
            field(
              key,
              key === 'hipMm'
                ? usual('hipMm')
                : key === 'heightMm' && table && table.rows[0]!.heightMm === undefined
                  ? say('wearer-fields.the-table-is-for-all-heights', {
                      defaultHeightMm: showQuantity('length', defaultHeightMm[kind], {
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
          <div className={style.pair}>{moreMeasures.map(({ key }) => field(key, usual(key)))}</div>
        </details>
        {table && (
          <MoreSizes
            ownSize={size}
            chosen={moreSizes}
            sizes={table.rows.map((row) => row.size)}
            onChange={(next) => put({ moreSizes: next })}
          />
        )}
      </fieldset>
    </>
  );
}

interface MoreSizesProps {
  readonly ownSize: string;
  readonly chosen: readonly string[];
  readonly sizes: readonly string[];
  readonly onChange: (chosen: string[]) => void;
}

/** Other sizes of the table, drafted into the same plan. */
function MoreSizes({ ownSize, chosen, sizes, onChange }: MoreSizesProps) {
  return (
    <details className={style.more}>
      <summary>{say('wearer-fields.more-sizes-of-this-style')}</summary>
      <p className="quiet">{say('wearer-fields.they-stand-beside-this-one-in')}</p>
      <div className={style.sizes}>
        {sizes.map((size) => (
          <label key={size} className={`${style.size} eased`}>
            <input
              type="checkbox"
              checked={size === ownSize || chosen.includes(size)}
              disabled={size === ownSize}
              onChange={(event) =>
                onChange(
                  sizes.filter((each) => (each === size ? event.target.checked : chosen.includes(each))),
                )
              }
            />
            {size}
          </label>
        ))}
      </div>
    </details>
  );
}
