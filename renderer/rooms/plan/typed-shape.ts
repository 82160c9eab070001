/** What stands in the form of a simple shape, and the piece that it makes. */
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
  { value: 'strip', label: 'Strip', name: 'Side strip' },
  { value: 'rectangle', label: 'Rectangle', name: 'Patch' },
  { value: 'taper', label: 'Taper, from one width to another', name: 'Gusset' },
  { value: 'trapezoid', label: 'Trapezoid, slanting as you choose', name: 'Flap' },
  { value: 'triangle', label: 'Triangle', name: 'Godet' },
  { value: 'circle', label: 'Circle', name: 'Disc' },
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
  measure('length', 'Length', 'along the grain, at the seam line'),
  measure('width', 'Width', 'across it; allowance is added outside'),
];

/** Fields of each shape, in the words of its measures. */
export const measureFields: Readonly<Record<ShapeKind, readonly MeasureField[]>> = {
  strip: lengthAndWidth,
  rectangle: lengthAndWidth,
  taper: [
    measure('length', 'Length', 'along the grain'),
    measure('width', 'Width at the foot'),
    measure('top', 'Width at the top', '0 for a point'),
  ],
  trapezoid: [
    measure('length', 'Length', 'along the grain'),
    measure('width', 'Width at the foot'),
    measure('top', 'Width at the top'),
    measure('setIn', 'Set in at the right', 'of the top; 0 for a square corner'),
  ],
  triangle: [measure('length', 'Height', 'along the grain'), measure('width', 'Base')],
  circle: [measure('width', 'Diameter', 'at the seam line')],
};

export const allowanceField: QuantityAsked = { label: 'Allowance all round', quantity: 'length', min: 0 };
export const countField: QuantityAsked = { label: 'How many for one coat', quantity: 'count', min: 1 };

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
      name: 'Side strip',
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
    return err({ where: missing.label, what: 'is missing', fix: 'Type it, such as 65 mm or 2 1/2 in.' });
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
