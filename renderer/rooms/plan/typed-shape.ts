/** What stands in the form of a simple shape, and the piece that it makes. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { Shape, ShapeKind, ShapePiece } from '../../../shared-core/plan/edits/pieces/shapes.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import { quantityText, readNow, shownCount, type Units } from '../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../parts/forms/typed-form.ts';

export const shapeKinds: readonly {
  readonly value: ShapeKind;
  readonly label: string;
  readonly name: string;
}[] = [
  { value: 'strip', label: say('typed-shape.strip'), name: say('typed-shape.side-strip') },
  { value: 'rectangle', label: say('typed-shape.rectangle'), name: say('typed-shape.patch') },
  {
    value: 'taper',
    label: say('typed-shape.taper-from-one-width-to-another'),
    name: say('typed-shape.gusset'),
  },
  {
    value: 'trapezoid',
    label: say('typed-shape.trapezoid-slanting-as-you-choose'),
    name: say('typed-shape.flap'),
  },
  { value: 'triangle', label: say('typed-shape.triangle'), name: say('typed-shape.godet') },
  { value: 'circle', label: say('typed-shape.circle'), name: say('typed-shape.disc') },
];

const measureIds = ['length', 'width', 'top', 'setIn'] as const;
type Measure = (typeof measureIds)[number];

interface MeasureField extends QuantityAsked {
  readonly id: Measure;
}

function measure(id: Measure, label: string, hint?: string): MeasureField {
  return { id, label, hint, quantity: 'length', min: 0 };
}

const lengthAndWidth = [
  measure('length', say('common.length'), say('typed-shape.along-the-grain-at-the-seam')),
  measure('width', say('common.width'), say('typed-shape.across-it-allowance-is-added-outside')),
];

/** Fields of each shape, in the words of its measures. */
export const measureFields: Readonly<Record<ShapeKind, readonly MeasureField[]>> = {
  strip: lengthAndWidth,
  rectangle: lengthAndWidth,
  taper: [
    measure('length', say('common.length'), say('common.along-the-grain')),
    measure('width', say('typed-shape.width-at-the-foot')),
    measure('top', say('typed-shape.width-at-the-top'), say('typed-shape.0-for-a-point')),
  ],
  trapezoid: [
    measure('length', say('common.length'), say('common.along-the-grain')),
    measure('width', say('typed-shape.width-at-the-foot')),
    measure('top', say('typed-shape.width-at-the-top')),
    measure('setIn', say('typed-shape.set-in-at-the-right'), say('typed-shape.of-the-top-0-for-a')),
  ],
  triangle: [
    measure('length', say('common.height'), say('common.along-the-grain')),
    measure('width', say('typed-shape.base')),
  ],
  circle: [measure('width', say('typed-shape.diameter'), say('typed-shape.at-the-seam-line'))],
};

export const allowanceField: QuantityAsked = {
  label: say('typed-shape.allowance-all-round'),
  quantity: 'length',
  min: 0,
};
export const countField: QuantityAsked = {
  label: say('typed-shape.how-many-for-one-coat'),
  quantity: 'count',
  min: 1,
};

export interface TypedShape {
  kind: ShapeKind;
  name: string;
  measures: Record<Measure, string>;
  count: string;
  allowance: string;
  grain: '0' | '45' | '90';
  isMirrored: boolean;
  isOnFold: boolean;
  slotIds: string[];
}

export interface ReadShape extends Omit<TypedShape, 'measures' | 'count' | 'allowance'> {
  /** Of those that the shape asks for. */
  readonly measures: Partial<Record<Measure, number | null>>;
  readonly count: number | null;
  readonly allowance: number | null;
}

/** What the form begins with: the allowance of the other pieces, and the slot that is cut first. */
export interface ShapeBegins {
  readonly allowanceMm: number;
  readonly slotIds: readonly string[];
  readonly lengthText: (mm: number) => string;
}

export function shapeForm(begins: ShapeBegins, units: Units): FormShape<TypedShape, ReadShape> {
  const { allowanceMm, slotIds, lengthText } = begins;
  const allowance = { value: allowanceMm, text: lengthText(allowanceMm) };
  const count = shownCount(2);
  return {
    start: {
      kind: 'strip',
      name: say('typed-shape.side-strip'),
      measures: { length: '', width: '', top: '', setIn: '' },
      count: count.text,
      allowance: allowance.text,
      grain: '0',
      isMirrored: false,
      isOnFold: false,
      slotIds: [...slotIds],
    },
    schema: ({ kind }) =>
      z.object({
        kind: z.enum(Object.keys(measureFields) as [ShapeKind, ...ShapeKind[]]),
        name: z.string(),
        measures: measuresSchema(kind, units),
        count: quantityText(countField, units, count),
        allowance: quantityText(allowanceField, units, allowance),
        grain: z.enum(['0', '45', '90']),
        isMirrored: z.boolean(),
        isOnFold: z.boolean(),
        slotIds: z.array(z.string()),
      }),
  };
}

function measuresSchema(kind: ShapeKind, units: Units) {
  const asked = measureFields[kind].map((field) => [field.id, quantityText(field, units)]);
  return z.object(Object.fromEntries(asked)) as unknown as z.ZodType<
    ReadShape['measures'],
    TypedShape['measures']
  >;
}

/** The shape as its measures stand while they are typed; null until all are there. */
export function shapeNow(
  { kind, measures }: Pick<TypedShape, 'kind' | 'measures'>,
  units: Units,
): Shape | null {
  const now = new Map(
    measureFields[kind].map((field) => [field.id, readNow(field, units, measures[field.id])]),
  );
  if ([...now.values()].includes(null)) return null;
  return shapeOf(kind, (id) => now.get(id) ?? 0);
}

/** What is to be added to the plan, or the measure that is missing. */
export function newShape(read: ReadShape): Result<ShapePiece> {
  const { kind, measures, name, count, allowance, isMirrored, isOnFold, slotIds } = read;
  const missing = measureFields[kind].find(({ id }) => measures[id] == null);
  if (missing)
    return err({
      where: missing.label,
      what: say('common.is-missing'),
      fix: say('typed-shape.type-it-such-as-65-mm'),
    });
  return ok({
    name,
    shape: shapeOf(kind, (id) => measures[id] ?? Number.NaN),
    count: count ?? 0,
    isMirrored: isMirrored && !isOnFold,
    isOnFold,
    grainTurnDeg: Number(read.grain),
    turns: 'grain',
    slotIds,
    ...(allowance === null ? {} : { allowanceMm: allowance }),
  });
}

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
