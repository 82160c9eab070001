/** The maker's choices for the coat itself. An empty measure takes the usual one, which stands under the field. */
import type { Body } from '../../../shared-core/draft/body.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../../client/workshop.ts';
import { DraftField } from '../../parts/forms/DraftField.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { bodyUnit, type ChoiceKey, type DraftForm, defaultChoices } from './draft-form.ts';
import style from './DraftRoom.module.css';

export interface CoatFieldsProps {
  readonly form: DraftForm;
  readonly change: (part: Partial<DraftForm>) => void;
  /** Null while measures are missing. */
  readonly body: Body | null;
}

export function CoatFields({ form, change, body }: CoatFieldsProps) {
  const system = useSystem();
  const usual = body && defaultChoices(body);
  const field = (key: ChoiceKey, label: string, more?: string) => {
    const words =
      usual && usual[key] > 0
        ? `usual: ${showQuantity('length', usual[key], { system, unit: bodyUnit })}`
        : '';
    const hint = [more, words].filter(Boolean).join('; ');
    return (
      <DraftField
        label={label}
        quantity="length"
        unit={bodyUnit}
        draft={form.choices[key]}
        {...(hint === '' ? {} : { hint })}
        onChange={(draft) => change({ choices: { ...form.choices, [key]: draft } })}
      />
    );
  };
  return (
    <fieldset className={style.group}>
      <legend>The coat</legend>
      <div className={style.pair}>
        {field('length', 'Length', 'nape to hem')}
        {field('ease', 'Ease at the bust')}
        <ChoiceField
          label="Front"
          value={form.front}
          options={[
            { value: 'zip', label: 'Zip' },
            { value: 'overlap', label: 'Overlap' },
          ]}
          onChange={(front) => front && change({ front })}
        />
        {form.front === 'overlap' && field('lap', 'Laps over by')}
        <ChoiceField
          label="At the neck"
          value={form.neck}
          options={[
            { value: 'collar', label: 'Stand collar' },
            { value: 'hood', label: 'Hood' },
            { value: 'both', label: 'Collar and hood' },
          ]}
          onChange={(neck) => neck && change({ neck })}
        />
        {form.neck !== 'collar' && (
          <ChoiceField
            label="Hood"
            value={form.hood}
            options={[
              { value: 'two panels', label: 'Two panels' },
              { value: 'three panels', label: 'Three panels' },
            ]}
            onChange={(hood) => hood && change({ hood })}
          />
        )}
        <ChoiceField
          label="Sleeve"
          value={form.sleeve}
          options={[
            { value: 'two part', label: 'Two parts' },
            { value: 'one part', label: 'One part' },
          ]}
          onChange={(sleeve) => sleeve && change({ sleeve })}
        />
        <ChoiceField
          label="Sleeves lined with"
          value={form.sleeveLining}
          options={[
            { value: 'own', label: 'Their own lining' },
            { value: 'shell', label: 'Shell cloth' },
          ]}
          onChange={(sleeveLining) => sleeveLining && change({ sleeveLining })}
        />
        <ChoiceField
          label="Interfacing"
          value={form.hasInterfacing ? 'with' : 'without'}
          options={[
            { value: 'with', label: 'Facings, fronts' },
            { value: 'without', label: 'None' },
          ]}
          onChange={(next) => next && change({ hasInterfacing: next === 'with' })}
        />
      </div>
      <details className={style.more}>
        <summary>Strip, pleat, cap and allowances</summary>
        <div className={style.pair}>
          {field('strip', 'Side strip', 'width; empty for none')}
          {field('pleat', 'Pleat of the back lining', '0 for none')}
          {field('allowance', 'Seam allowance')}
          {field('hem', 'Hem')}
          {field('capEase', 'Ease of the sleeve cap', 'over the armhole; 0 for none')}
        </div>
      </details>
    </fieldset>
  );
}
