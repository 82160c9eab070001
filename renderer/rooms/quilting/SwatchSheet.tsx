/** A swatch measured before and after quilting, step by step; what it shows is saved for its number of layers. */
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { layersWords, measureOf } from '../../../shared-core/plan/model/quilted-layers.ts';
import { saveSwatch, type Swatch } from '../../../shared-core/plan/edits/swatch.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import {
  DraftField,
  draftOf,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../parts/forms/DraftField.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import style from './QuiltingRoom.module.css';

type Measure = Exclude<keyof Swatch, 'battingPlyCount'>;

interface Step {
  readonly title: string;
  readonly words: string;
  readonly fields: readonly (readonly [Measure, label: string, hint?: string])[];
}

const steps: readonly Step[] = [
  {
    title: 'Before quilting',
    words:
      'Lay the layers as they will be in the coat and cut a square of about 40 cm (16 in). Mark the corners of a square of about 30 cm (12 in) well inside it, and measure that both ways.',
    fields: [
      ['spacingMm', 'Lines apart'],
      ['overLinesBeforeMm', 'Over the lines, before', 'at right angles to them'],
      ['alongLinesBeforeMm', 'Along the lines, before'],
    ],
  },
  {
    title: 'After quilting',
    words:
      'Quilt it with the machine, thread and stitch of the coat. Do not wash it: what the wash takes is counted by itself. Let it lie for an hour, then measure the same square.',
    fields: [
      ['overLinesAfterMm', 'Over the lines, after'],
      ['alongLinesAfterMm', 'Along the lines, after'],
      ['thicknessMm', 'Thickness', 'midway between two lines, not pressed; may be empty'],
    ],
  },
];

/** Only the thickness may be left out. */
const needed = steps.flatMap(({ fields }) => fields).filter(([key]) => key !== 'thicknessMm');

type Drafts = Readonly<Record<Measure, QuantityDraft>>;

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
  const lengthText = useLengthText();
  const spacingMm = measureOf(plan, battingPlyCount)?.spacingMm ?? plan.quilting?.spacingMm ?? null;
  const [drafts, setDrafts] = useState<Drafts>({
    spacingMm: draftOf(spacingMm, spacingMm === null ? '' : lengthText(spacingMm)),
    overLinesBeforeMm: emptyDraft,
    overLinesAfterMm: emptyDraft,
    alongLinesBeforeMm: emptyDraft,
    alongLinesAfterMm: emptyDraft,
    thicknessMm: emptyDraft,
  });
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems('The swatch', Object.values(drafts));
    if (misread.length > 0) return misread;
    const missing = needed.filter(([key]) => drafts[key].value === null);
    if (missing.length > 0) {
      return missing.map(([, label]) => ({
        where: label,
        what: 'is missing',
        fix: 'Type it, such as 300 mm or 12 in.',
      }));
    }
    const mm = (key: Measure) => drafts[key].value ?? 0;
    const swatch: Swatch = {
      battingPlyCount,
      spacingMm: mm('spacingMm'),
      overLinesBeforeMm: mm('overLinesBeforeMm'),
      overLinesAfterMm: mm('overLinesAfterMm'),
      alongLinesBeforeMm: mm('alongLinesBeforeMm'),
      alongLinesAfterMm: mm('alongLinesAfterMm'),
      thicknessMm: drafts.thicknessMm.value,
    };
    const answer = await edit((now) => saveSwatch(now, swatch, lengthText));
    return answer.ok ? [] : answer.problems;
  };
  const layers = battingPlyCount === 0 ? 'no batting' : layersWords(battingPlyCount);
  return (
    <FormSheet title={`A swatch of ${layers}`} saveLabel="Use these measures" onClose={onClose} onSave={save}>
      {steps.map(({ title, words, fields }) => (
        <fieldset key={title} className={style.step}>
          <legend>{title}</legend>
          <p className="quiet">{words}</p>
          <div className={style.triple}>
            {fields.map(([key, label, hint]) => (
              <DraftField
                key={key}
                label={label}
                quantity="length"
                draft={drafts[key]}
                aboveZero
                {...(hint === undefined ? {} : { hint })}
                onChange={(draft) => setDrafts((now) => ({ ...now, [key]: draft }))}
              />
            ))}
          </div>
        </fieldset>
      ))}
    </FormSheet>
  );
}
