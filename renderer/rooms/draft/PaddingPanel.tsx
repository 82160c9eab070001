/** What the padding takes from the girth, the two ways to give it back, and the ease that is left at each place. */
import { say } from '../../../shared-core/wording/say.ts';
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import type { Control, UseFormSetValue } from 'react-hook-form';
import { type Body, wholeBody } from '../../../shared-core/draft/body.ts';
import type { DraftReport } from '../../../shared-core/draft/report.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { easeLeft } from '../../../shared-core/requirement/finished/padding.ts';
import { useSystem } from '../../client/workshop.ts';
import { FormChoice, FormQuantity } from '../../parts/forms/FormFields.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import { paddingOf, sizesUp } from './draft-form.ts';
import style from './DraftRoom.module.css';
import { bodyUnit, choiceFields, type DraftForm, type PaddingWay, type TypedDraft } from './typed-draft.ts';

const ways: readonly { value: PaddingWay; label: string }[] = [
  { value: 'add the girth', label: say('padding-panel.add-what-it-takes-to-the') },
  { value: 'go up sizes', label: say('padding-panel.go-up-sizes') },
  { value: 'as it is', label: say('padding-panel.leave-the-draft-as-it-is') },
];

export interface PaddingPanelProps {
  readonly form: DraftForm;
  readonly control: Control<TypedDraft, unknown, DraftForm>;
  readonly setValue: UseFormSetValue<TypedDraft>;
  readonly body: Body;
  readonly report: DraftReport;
}

export function PaddingPanel({ form, control, setValue, body, report }: PaddingPanelProps) {
  const system = useSystem();
  const padding = paddingOf(form);
  const worn = wholeBody(body);
  const left = easeLeft([
    { place: 'bust', bodyMm: worn.bustMm, garmentMm: report.girthMm.bust, thicknessMm: padding.bodyMm },
    { place: 'waist', bodyMm: worn.waistMm, garmentMm: report.girthMm.waist, thicknessMm: padding.bodyMm },
    { place: 'hip', bodyMm: worn.hipMm, garmentMm: report.girthMm.hip, thicknessMm: padding.bodyMm },
    {
      place: 'upper arm',
      bodyMm: worn.upperArmMm,
      garmentMm: report.girthMm.upperArm,
      thicknessMm: padding.sleeveMm,
    },
  ]);
  const text = (mm: number) => showQuantity('length', mm, { system, unit: bodyUnit });
  return (
    <section className={style.panel} aria-labelledby="padding">
      <h2 id="padding">{say('padding-panel.padding')}</h2>
      <div className={style.three}>
        <SettledField
          label={say('padding-panel.layers-in-the-body')}
          quantity="count"
          value={form.bodyPlies}
          max={6}
          onSet={(bodyPlies) => setValue('bodyPlies', bodyPlies)}
        />
        <SettledField
          label={say('padding-panel.layers-in-the-sleeve')}
          quantity="count"
          value={form.sleevePlies}
          max={6}
          onSet={(sleevePlies) => setValue('sleevePlies', sleevePlies)}
        />
        <FormQuantity
          control={control}
          name="choices.loft"
          {...choiceFields.loft}
          hint={say('padding-panel.usual', {
            amount: showQuantity('length', 12.7, { system, unit: { metric: 'mm', imperial: 'in' } }),
          })}
        />
      </div>
      <div className={style.wide}>
        <FormChoice control={control} name="way" label={say('padding-panel.give-it-room')} options={ways} />
      </div>
      <p className={style.words}>
        {say('padding-panel.worn-half-of-the-loft-is')} {text(padding.bodyMm)}{' '}
        {say('padding-panel.in-the-body-that-takes')} <strong>{text(padding.taken.bodyMm)}</strong>{' '}
        {say('padding-panel.from-the-girth-and')} {text(padding.taken.sleeveMm)}{' '}
        {say('padding-panel.in-the-sleeve')} <SizesUpWords form={form} />
      </p>
      <DataTable
        rows={left}
        keyOf={({ place }) => place}
        columns={[
          { head: say('common.place'), cell: ({ place }) => codeWords(place) },
          {
            head: say('common.coat'),
            align: 'end',
            cell: ({ place }) => <Girth mm={girthAt(report, place)} />,
          },
          {
            head: say('padding-panel.ease-drafted'),
            align: 'end',
            cell: ({ draftedMm }) => <Girth mm={draftedMm} />,
          },
          {
            head: say('padding-panel.padding-takes'),
            align: 'end',
            cell: ({ takenMm }) => <Girth mm={takenMm} />,
          },
          { head: say('padding-panel.ease-left'), align: 'end', cell: ({ leftMm }) => <Girth mm={leftMm} /> },
          { head: say('padding-panel.feels-like'), cell: ({ words }) => words },
        ]}
      />
      <p className={style.source}>{say('padding-panel.a-rule-of-thumb-2-times')}</p>
    </section>
  );
}

function Girth({ mm }: { mm: number }) {
  return <Figure quantity="length" value={mm} options={{ unit: bodyUnit }} />;
}

function girthAt(report: DraftReport, place: 'bust' | 'waist' | 'hip' | 'upper arm'): number {
  return report.girthMm[place === 'upper arm' ? 'upperArm' : place];
}

function SizesUpWords({ form }: { form: DraftForm }) {
  const up = sizesUp(form, form.size);
  if (up === null) return null;
  if (!up.ok) return <>{up.problems.map(problemSentence).join(' ')}</>;
  const { sizeCount, size } = up.value;
  if (sizeCount === 0) return <>{say('padding-panel.no-larger-size-is-needed')}</>;
  return <>{say('padding-panel.by-sizes-that-is-up-from', { sizeCount, formCount: form.size, size })}</>;
}
