/** A swatch measured before and after quilting, step by step; what it shows is saved for its number of layers. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { layersWords, measureOf } from '../../../shared-core/plan/model/quilted-layers.ts';
import { saveSwatch, type Swatch } from '../../../shared-core/plan/edits/swatch.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { FormQuantity } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import { nothingShown, quantityText, type Units } from '../../parts/forms/quantity-text.ts';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import style from './QuiltingRoom.module.css';

type Measure = Exclude<keyof Swatch, 'battingPlyCount'>;

interface Step {
  readonly title: string;
  readonly words: string;
  readonly fields: readonly (readonly [Measure, label: string, hint?: string])[];
}

const steps: readonly Step[] = [
  {
    title: say('swatch-sheet.before-quilting'),
    words: say('swatch-sheet.lay-the-layers-as-they-will'),
    fields: [
      ['spacingMm', say('swatch-sheet.lines-apart')],
      [
        'overLinesBeforeMm',
        say('swatch-sheet.over-the-lines-before'),
        say('swatch-sheet.at-right-angles-to-them'),
      ],
      ['alongLinesBeforeMm', say('swatch-sheet.along-the-lines-before')],
    ],
  },
  {
    title: say('swatch-sheet.after-quilting'),
    words: say('swatch-sheet.quilt-it-with-the-machine-thread'),
    fields: [
      ['overLinesAfterMm', say('swatch-sheet.over-the-lines-after')],
      ['alongLinesAfterMm', say('swatch-sheet.along-the-lines-after')],
      [
        'thicknessMm',
        say('swatch-sheet.thickness'),
        say('swatch-sheet.midway-between-two-lines-not-pressed'),
      ],
    ],
  },
];

const allFields = steps.flatMap(({ fields }) => fields);
/** Only the thickness may be left out. */
const needed = allFields.filter(([key]) => key !== 'thicknessMm');

function asked([, label, hint]: Step['fields'][number]): QuantityAsked {
  return { label, hint, quantity: 'length', aboveZero: true };
}

type Typed = Record<Measure, string>;

/** spacingMm: how far the lines are apart as the plan has it; null where it says nothing. */
function swatchForm(spacingMm: number | null, text: (mm: number) => string, units: Units) {
  const spacing = spacingMm === null ? nothingShown : { value: spacingMm, text: text(spacingMm) };
  const schema = z.object(
    Object.fromEntries(
      allFields.map((field) => [
        field[0],
        quantityText(asked(field), units, field[0] === 'spacingMm' ? spacing : nothingShown),
      ]),
    ) as Record<Measure, z.ZodType<number | null, string>>,
  );
  const start = Object.fromEntries(allFields.map(([key]) => [key, ''])) as Typed;
  return { start: { ...start, spacingMm: spacing.text }, schema: () => schema };
}

export function SwatchSheet({
  plan,
  battingPlyCount,
  onClose,
}: {
  plan: CoatPlan;
  battingPlyCount: number;
  onClose: () => void;
}) {
  const { edit } = useCoat('edit');
  const { settings } = useWorkshop().facts;
  const lengthText = useLengthText();
  const spacingMm = measureOf(plan, battingPlyCount)?.spacingMm ?? plan.quilting?.spacingMm ?? null;
  const { control, sheet } = useTypedForm({
    ...swatchForm(spacingMm, lengthText, settings),
    subject: say('swatch-sheet.the-swatch'),
    save: async (read): Promise<readonly Problem[]> => {
      const missing = needed.filter(([key]) => read[key] === null);
      if (missing.length > 0) {
        return missing.map(([, label]) => ({
          where: label,
          what: say('common.is-missing'),
          fix: say('swatch-sheet.type-it-such-as-300-mm'),
        }));
      }
      const mm = (key: Measure) => read[key] ?? 0;
      const swatch: Swatch = {
        battingPlyCount,
        spacingMm: mm('spacingMm'),
        overLinesBeforeMm: mm('overLinesBeforeMm'),
        overLinesAfterMm: mm('overLinesAfterMm'),
        alongLinesBeforeMm: mm('alongLinesBeforeMm'),
        alongLinesAfterMm: mm('alongLinesAfterMm'),
        thicknessMm: read.thicknessMm,
      };
      const answer = await edit((now) => saveSwatch(now, swatch, lengthText));
      return answer.ok ? [] : answer.problems;
    },
  });
  const layers = battingPlyCount === 0 ? say('swatch-sheet.no-batting') : layersWords(battingPlyCount);
  return (
    <FormSheet
      title={say('swatch-sheet.a-swatch-of', { layers })}
      saveLabel={say('swatch-sheet.use-these-measures')}
      onClose={onClose}
      {...sheet}
    >
      {steps.map(({ title, words, fields }) => (
        <fieldset key={title} className={style.step}>
          <legend>{title}</legend>
          <p className="quiet">{words}</p>
          <div className={style.triple}>
            {fields.map((field) => (
              <FormQuantity key={field[0]} control={control} name={field[0]} {...asked(field)} />
            ))}
          </div>
        </fieldset>
      ))}
    </FormSheet>
  );
}
