/** The maker's choices for the coat itself. An empty measure takes the usual one, which stands under the field. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Control, useWatch } from 'react-hook-form';
import type { Body } from '../../../shared-core/draft/body.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../../client/workshop.ts';
import { FormChoice, FormQuantity } from '../../parts/forms/FormFields.tsx';
import { defaultChoices } from './draft-form.ts';
import style from './DraftRoom.module.css';
import { bodyUnit, type ChoiceKey, choiceFields, type DraftForm, type TypedDraft } from './typed-draft.ts';

export interface CoatFieldsProps {
  readonly control: Control<TypedDraft, unknown, DraftForm>;
  /** Null while measures are missing. */
  readonly body: Body | null;
}

export function CoatFields({ control, body }: CoatFieldsProps) {
  const system = useSystem();
  const usual = body && defaultChoices(body);
  const [front, neck] = useWatch({ control, name: ['front', 'neck'] });
  const field = (key: ChoiceKey, more?: string) => {
    const words =
      usual && usual[key] > 0
        ? say('coat-fields.usual', { usual: showQuantity('length', usual[key], { system, unit: bodyUnit }) })
        : '';
    const hint = [more, words].filter(Boolean).join('; ') || undefined;
    return <FormQuantity control={control} name={`choices.${key}`} {...choiceFields[key]} hint={hint} />;
  };
  return (
    <fieldset className={style.group}>
      <legend>{say('common.the-coat')}</legend>
      <div className={style.pair}>
        {field('length', say('coat-fields.nape-to-hem'))}
        {field('ease')}
        <FormChoice
          control={control}
          name="front"
          label={say('coat-fields.front')}
          options={[
            { value: 'zip', label: say('coat-fields.zip') },
            { value: 'overlap', label: say('coat-fields.overlap') },
          ]}
        />
        {front === 'overlap' && field('lap')}
        <FormChoice
          control={control}
          name="neck"
          label={say('coat-fields.at-the-neck')}
          options={[
            { value: 'collar', label: say('coat-fields.stand-collar') },
            { value: 'hood', label: say('coat-fields.hood') },
            { value: 'both', label: say('coat-fields.collar-and-hood') },
          ]}
        />
        {neck !== 'collar' && (
          <FormChoice
            control={control}
            name="hood"
            label={say('coat-fields.hood')}
            options={[
              { value: 'two panels', label: say('coat-fields.two-panels') },
              { value: 'three panels', label: say('coat-fields.three-panels') },
            ]}
          />
        )}
        <FormChoice
          control={control}
          name="sleeve"
          label={say('coat-fields.sleeve')}
          options={[
            { value: 'two part', label: say('coat-fields.two-parts') },
            { value: 'one part', label: say('coat-fields.one-part') },
          ]}
        />
        <FormChoice
          control={control}
          name="sleeveLining"
          label={say('coat-fields.sleeves-lined-with')}
          options={[
            { value: 'own', label: say('coat-fields.their-own-lining') },
            { value: 'shell', label: say('coat-fields.shell-cloth') },
          ]}
        />
        <FormChoice
          control={control}
          name="interfacing"
          label={say('coat-fields.interfacing')}
          options={[
            { value: 'with', label: say('coat-fields.facings-fronts') },
            { value: 'without', label: say('coat-fields.none') },
          ]}
        />
      </div>
      <details className={style.more}>
        <summary>{say('coat-fields.strip-pleat-cap-and-allowances')}</summary>
        <div className={style.pair}>
          {field('strip', say('coat-fields.width-empty-for-none'))}
          {field('pleat', say('coat-fields.0-for-none'))}
          {field('allowance')}
          {field('hem')}
          {field('capEase', say('coat-fields.over-the-armhole-0-for-none'))}
        </div>
      </details>
    </fieldset>
  );
}
