/** A piece of a simple shape by typed measures: a strip let in at the side, a pocket bag, a patch. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { ReactNode } from 'react';
import { useController, useWatch } from 'react-hook-form';
import { defaultAllowanceMm } from '../../../shared-core/plan/edits/pieces/allowance.ts';
import { addShape, type Shape, shapeOutline } from '../../../shared-core/plan/edits/pieces/shapes.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { grainTurned } from '../../../shared-core/plan/edits/pieces/grain.ts';
import { pieceProblems } from '../../../shared-core/plan/validation/outline-problems.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import { FormChoice, FormFlag, FormQuantity, FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { readNow } from '../../parts/forms/quantity-text.ts';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import style from './PlanRoom.module.css';
import {
  allowanceField,
  countField,
  measureFields,
  newShape,
  shapeForm,
  shapeKinds,
  shapeNow,
} from './typed-shape.ts';

export function ShapeSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const { settings } = useWorkshop().facts;
  const lengthText = useLengthText();
  const slots = input?.plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting') ?? [];
  const begins = {
    allowanceMm: input ? defaultAllowanceMm(input.plan) : 0,
    slotIds: slots.slice(0, 1).map(({ id }) => id),
    lengthText,
  };
  const { control, getValues, setValue, sheet } = useTypedForm({
    ...shapeForm(begins, settings),
    subject: ({ kind }) => say('shape-sheet.the', { kind: codeWords(kind) }),
    save: async (read) => {
      const shape = newShape(read);
      const answer = shape.ok ? await edit((plan) => addShape(plan, shape.value, lengthText)) : shape;
      return answer.ok ? [] : answer.problems;
    },
  });
  const [kind, measures, grain, allowance, isOnFold] = useWatch({
    control,
    name: ['kind', 'measures', 'grain', 'allowance', 'isOnFold'],
  });
  const { value: slotIds, onChange: setSlotIds } = useController({ control, name: 'slotIds' }).field;

  /** A name that nobody typed changes with the shape. */
  const rename = (next: string) => {
    const name = shapeKinds.find((each) => each.value === next)?.name;
    if (name !== undefined && shapeKinds.some((each) => each.name === getValues('name')))
      setValue('name', name, { shouldDirty: true });
  };
  return (
    <FormSheet
      title={say('shape-sheet.add-a-shape')}
      saveLabel={say('shape-sheet.add-the', { kind: codeWords(kind) })}
      onClose={onClose}
      {...sheet}
    >
      <div className={style.shapeHead}>
        <div className={style.group}>
          <FormChoice
            control={control}
            name="kind"
            label={say('shape-sheet.shape')}
            options={shapeKinds}
            onChosen={rename}
          />
          <FormText control={control} name="name" label={say('common.name')} />
        </div>
        <div className={style.shapePicture}>
          <Preview
            name={shapeKinds.find((each) => each.value === kind)!.label}
            shape={shapeNow({ kind, measures }, settings)}
            grainTurnDeg={Number(grain)}
            allowanceMm={readNow(allowanceField, settings, allowance) ?? 0}
          />
        </div>
      </div>
      <div className={style.pair}>
        {measureFields[kind].map(({ id, ...asked }) => (
          <FormQuantity key={`${kind} ${id}`} control={control} name={`measures.${id}`} {...asked} />
        ))}
        <FormQuantity control={control} name="allowance" {...allowanceField} />
        <FormQuantity control={control} name="count" {...countField} />
        <FormChoice
          control={control}
          name="grain"
          label={say('shape-sheet.grain')}
          options={[
            { value: '0', label: say('shape-sheet.along-the-length') },
            { value: '45', label: say('shape-sheet.on-the-bias-45') },
            { value: '90', label: say('shape-sheet.across-the-length') },
          ]}
        />
      </div>
      <Flags legend={say('shape-sheet.how-it-is-cut')}>
        <FormFlag
          control={control}
          name="isOnFold"
          label={say('shape-sheet.on-the-fold')}
          hint={say('shape-sheet.the-measures-are-those-of-the')}
        />
        {!isOnFold && (
          <FormFlag control={control} name="isMirrored" label={say('shape-sheet.half-of-them-mirrored')} />
        )}
      </Flags>
      <Flags legend={say('common.cut-from')}>
        {slots.map((slot) => (
          <FlagField
            key={slot.id}
            label={slot.name}
            value={slotIds.includes(slot.id)}
            onChange={(isOn) =>
              setSlotIds(isOn ? [...slotIds, slot.id] : slotIds.filter((id) => id !== slot.id))
            }
          />
        ))}
      </Flags>
    </FormSheet>
  );
}

function Flags({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className={style.flags}>
      <legend>{legend}</legend>
      {children}
    </fieldset>
  );
}

interface PreviewProps {
  readonly name: string;
  readonly shape: Shape | null;
  readonly grainTurnDeg: number;
  readonly allowanceMm: number;
}

/** The shape as its measures stand; until all are typed, words. */
function Preview({ name, shape, grainTurnDeg, allowanceMm }: PreviewProps) {
  if (!shape) return <p className="quiet small">{say('shape-sheet.drawn-here-once-its-measures-are')}</p>;
  const drawn: Piece = {
    id: 'shape',
    name,
    outline: shapeOutline(shape, allowanceMm),
    cutCount: 1,
    isMirrored: false,
    foldEdge: null,
    turns: 'grain',
    notches: [],
    cutFrom: [],
    quilted: null,
  };
  const piece = grainTurnDeg === 0 ? drawn : grainTurned(drawn, grainTurnDeg);
  if (pieceProblems(piece).length > 0)
    return <p className="quiet small">{say('shape-sheet.these-measures-give-no-shape')}</p>;
  return <PieceDrawing piece={piece} />;
}
