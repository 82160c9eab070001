/** A piece of a simple shape by typed measures: a strip let in at the side, a pocket bag, a patch. */
import { type ReactNode, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { defaultAllowanceMm } from '../../../shared-core/plan/edits/pieces/allowance.ts';
import {
  addShape,
  type Shape,
  type ShapeKind,
  shapeOutline,
} from '../../../shared-core/plan/edits/pieces/shapes.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { grainTurned } from '../../../shared-core/plan/edits/pieces/grain.ts';
import { pieceProblems } from '../../../shared-core/plan/validation/outline-problems.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import {
  DraftField,
  draftOf,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../parts/forms/DraftField.tsx';
import { ChoiceField, FlagField, TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import style from './PlanRoom.module.css';

const kinds: readonly { readonly value: ShapeKind; readonly label: string; readonly name: string }[] = [
  { value: 'strip', label: 'Strip', name: 'Side strip' },
  { value: 'rectangle', label: 'Rectangle', name: 'Patch' },
  { value: 'taper', label: 'Taper, from one width to another', name: 'Gusset' },
  { value: 'trapezoid', label: 'Trapezoid, slanting as you choose', name: 'Flap' },
  { value: 'triangle', label: 'Triangle', name: 'Godet' },
  { value: 'circle', label: 'Circle', name: 'Disc' },
];

type Measure = 'length' | 'width' | 'top' | 'setIn';

/** Fields of each shape, in the words of its measures. */
const measures: Readonly<Record<ShapeKind, readonly { id: Measure; label: string; hint?: string }[]>> = {
  strip: [
    { id: 'length', label: 'Length', hint: 'along the grain, at the seam line' },
    { id: 'width', label: 'Width', hint: 'across it; allowance is added outside' },
  ],
  rectangle: [
    { id: 'length', label: 'Length', hint: 'along the grain, at the seam line' },
    { id: 'width', label: 'Width', hint: 'across it; allowance is added outside' },
  ],
  taper: [
    { id: 'length', label: 'Length', hint: 'along the grain' },
    { id: 'width', label: 'Width at the foot' },
    { id: 'top', label: 'Width at the top', hint: '0 for a point' },
  ],
  trapezoid: [
    { id: 'length', label: 'Length', hint: 'along the grain' },
    { id: 'width', label: 'Width at the foot' },
    { id: 'top', label: 'Width at the top' },
    { id: 'setIn', label: 'Set in at the right', hint: 'of the top; 0 for a square corner' },
  ],
  triangle: [
    { id: 'length', label: 'Height', hint: 'along the grain' },
    { id: 'width', label: 'Base' },
  ],
  circle: [{ id: 'width', label: 'Diameter', hint: 'at the seam line' }],
};

function shapeOf(kind: ShapeKind, value: (id: Measure) => number): Shape {
  const lengthMm = value('length');
  const widthMm = value('width');
  switch (kind) {
    case 'strip':
    case 'rectangle':
      return { kind, lengthMm, widthMm };
    case 'taper':
      return { kind, lengthMm, fromMm: widthMm, toMm: value('top') };
    case 'trapezoid':
      return { kind, lengthMm, footMm: widthMm, topMm: value('top'), setInMm: value('setIn') };
    case 'triangle':
      return { kind, heightMm: lengthMm, baseMm: widthMm };
    case 'circle':
      return { kind, diameterMm: widthMm };
    default:
      return kind satisfies never;
  }
}

export function ShapeSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const lengthText = useLengthText();
  const slots = input?.plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting') ?? [];
  const [kind, setKind] = useState<ShapeKind>('strip');
  const [name, setName] = useState('Side strip');
  const [drafts, setDrafts] = useState<Partial<Record<Measure, QuantityDraft>>>({});
  const [count, setCount] = useState(draftOf(2, '2'));
  const [allowance, setAllowance] = useState(() => {
    const mm = input ? defaultAllowanceMm(input.plan) : 0;
    return draftOf(mm, lengthText(mm));
  });
  const [grain, setGrain] = useState<'0' | '45' | '90'>('0');
  const [isMirrored, setIsMirrored] = useState(false);
  const [isOnFold, setIsOnFold] = useState(false);
  const [slotIds, setSlotIds] = useState<readonly string[]>(slots[0] ? [slots[0].id] : []);
  const draft = (id: Measure) => drafts[id] ?? emptyDraft;
  const asked = measures[kind];

  const choose = (next: ShapeKind) => {
    // A name that nobody typed changes with the shape.
    if (kinds.some((each) => each.name === name)) setName(kinds.find((each) => each.value === next)!.name);
    setKind(next);
  };
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems(`The ${kind}`, [...asked.map(({ id }) => draft(id)), count, allowance]);
    if (misread.length > 0) return misread;
    const missing = asked.find(({ id }) => draft(id).value === null);
    if (missing) {
      return [
        {
          where: missing.label,
          what: 'is missing',
          fix: 'Type it, such as 65 mm or 2 1/2 in.',
        },
      ];
    }
    const answer = await edit((plan) =>
      addShape(
        plan,
        {
          name,
          shape: shapeOf(kind, (id) => draft(id).value ?? Number.NaN),
          count: count.value ?? 0,
          isMirrored: isMirrored && !isOnFold,
          isOnFold,
          grainTurnDeg: Number(grain),
          turns: 'grain',
          slotIds,
          ...(allowance.value === null ? {} : { allowanceMm: allowance.value }),
        },
        lengthText,
      ),
    );
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet title="Add a shape" saveLabel={`Add the ${kind}`} onClose={onClose} onSave={save}>
      <div className={style.shapeHead}>
        <div className={style.group}>
          <ChoiceField
            label="Shape"
            value={kind}
            options={kinds}
            onChange={(next) => next !== '' && choose(next)}
          />
          <TextField label="Name" value={name} onChange={setName} />
        </div>
        <div className={style.shapePicture}>
          <Preview
            kind={kind}
            draft={draft}
            grainTurnDeg={Number(grain)}
            allowanceMm={allowance.value ?? 0}
          />
        </div>
      </div>
      <div className={style.pair}>
        {asked.map(({ id, label, hint }) => (
          <DraftField
            key={`${kind} ${id}`}
            label={label}
            quantity="length"
            draft={draft(id)}
            onChange={(next) => setDrafts((now) => ({ ...now, [id]: next }))}
            min={0}
            {...(hint === undefined ? {} : { hint })}
          />
        ))}
        <DraftField
          label="Allowance all round"
          quantity="length"
          draft={allowance}
          onChange={setAllowance}
          min={0}
        />
        <DraftField
          label="How many for one coat"
          quantity="count"
          draft={count}
          onChange={setCount}
          min={1}
        />
        <ChoiceField
          label="Grain"
          value={grain}
          options={[
            { value: '0', label: 'along the length' },
            { value: '45', label: 'on the bias, 45°' },
            { value: '90', label: 'across the length' },
          ]}
          onChange={(next) => next !== '' && setGrain(next)}
        />
      </div>
      <Flags legend="How it is cut">
        <FlagField
          label="On the fold"
          hint="the measures are those of the whole"
          value={isOnFold}
          onChange={setIsOnFold}
        />
        {!isOnFold && <FlagField label="Half of them mirrored" value={isMirrored} onChange={setIsMirrored} />}
      </Flags>
      <Flags legend="Cut from">
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
  readonly kind: ShapeKind;
  readonly draft: (id: Measure) => QuantityDraft;
  readonly grainTurnDeg: number;
  readonly allowanceMm: number;
}

/** The shape as its measures stand; until all are typed, words. */
function Preview({ kind, draft, grainTurnDeg, allowanceMm }: PreviewProps) {
  const values = measures[kind].map(({ id }) => draft(id).value);
  if (values.some((value) => value === null)) {
    return <p className="quiet small">Drawn here once its measures are typed.</p>;
  }
  const drawn: Piece = {
    id: 'shape',
    name: kinds.find((each) => each.value === kind)!.label,
    outline: shapeOutline(
      shapeOf(kind, (id) => draft(id).value ?? 0),
      allowanceMm,
    ),
    cutCount: 1,
    isMirrored: false,
    foldEdge: null,
    turns: 'grain',
    notches: [],
    cutFrom: [],
    quilted: null,
  };
  const piece = grainTurnDeg === 0 ? drawn : grainTurned(drawn, grainTurnDeg);
  if (pieceProblems(piece).length > 0) return <p className="quiet small">These measures give no shape.</p>;
  return <PieceDrawing piece={piece} />;
}
