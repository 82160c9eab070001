/** The maker's choices for the coat itself. An empty measure takes the usual one, which stands under the field. */
import { say } from '../../../shared-core/wording/say.ts';
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
        ? say('coat-fields.usual', { usual: showQuantity('length', usual[key], { system, unit: bodyUnit }) })
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
      <legend>{say('common.the-coat')}</legend>
      <div className={style.pair}>
        {field('length', say('common.length'), say('coat-fields.nape-to-hem'))}
        {field('ease', say('coat-fields.ease-at-the-bust'))}
        <ChoiceField
          label={say('coat-fields.front')}
          value={form.front}
          options={[
            { value: 'zip', label: say('coat-fields.zip') },
            { value: 'overlap', label: say('coat-fields.overlap') },
          ]}
          onChange={(front) => front && change({ front })}
        />
        {form.front === 'overlap' && field('lap', say('coat-fields.laps-over-by'))}
        <ChoiceField
          label={say('coat-fields.at-the-neck')}
          value={form.neck}
          options={[
            { value: 'collar', label: say('coat-fields.stand-collar') },
            { value: 'hood', label: say('coat-fields.hood') },
            { value: 'both', label: say('coat-fields.collar-and-hood') },
          ]}
          onChange={(neck) => neck && change({ neck })}
        />
        {form.neck !== 'collar' && (
          <ChoiceField
            label={say('coat-fields.hood')}
            value={form.hood}
            options={[
              { value: 'two panels', label: say('coat-fields.two-panels') },
              { value: 'three panels', label: say('coat-fields.three-panels') },
            ]}
            onChange={(hood) => hood && change({ hood })}
          />
        )}
        <ChoiceField
          label={say('coat-fields.sleeve')}
          value={form.sleeve}
          options={[
            { value: 'two part', label: say('coat-fields.two-parts') },
            { value: 'one part', label: say('coat-fields.one-part') },
          ]}
          onChange={(sleeve) => sleeve && change({ sleeve })}
        />
        <ChoiceField
          label={say('coat-fields.sleeves-lined-with')}
          value={form.sleeveLining}
          options={[
            { value: 'own', label: say('coat-fields.their-own-lining') },
            { value: 'shell', label: say('coat-fields.shell-cloth') },
          ]}
          onChange={(sleeveLining) => sleeveLining && change({ sleeveLining })}
        />
        <ChoiceField
          label={say('coat-fields.interfacing')}
          value={form.hasInterfacing ? 'with' : 'without'}
          options={[
            { value: 'with', label: say('coat-fields.facings-fronts') },
            { value: 'without', label: say('coat-fields.none') },
          ]}
          onChange={(next) => next && change({ hasInterfacing: next === 'with' })}
        />
      </div>
      <details className={style.more}>
        <summary>{say('coat-fields.strip-pleat-cap-and-allowances')}</summary>
        <div className={style.pair}>
          {field('strip', say('coat-fields.side-strip'), say('coat-fields.width-empty-for-none'))}
          {field('pleat', say('coat-fields.pleat-of-the-back-lining'), say('coat-fields.0-for-none'))}
          {field('allowance', say('common.seam-allowance'))}
          {field('hem', say('coat-fields.hem'))}
          {field(
            'capEase',
            say('coat-fields.ease-of-the-sleeve-cap'),
            say('coat-fields.over-the-armhole-0-for-none'),
          )}
        </div>
      </details>
    </fieldset>
  );
}
