/** What stands in the form for a drafted coat: measures and choices as they are typed, and what they are read as. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { BodyKind } from '../../../shared-core/draft/body.ts';
import { type BodyRow, bodyTables, defaultHeightMm } from '../../../shared-core/draft/body-tables.ts';
import type { DraftInput, HoodKind, SleeveKind } from '../../../shared-core/draft/draft-input.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import { sizeTables } from '../../../shared-core/requirement/finished/size-tables.ts';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import { nothingShown, readAsked, type Shown, type Units } from '../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../parts/forms/typed-form.ts';

/** Measures of bodies and coats are spoken of in cm or inches. */
export const bodyUnit: FieldUnit = { metric: 'cm', imperial: 'in' };

export interface FormTable {
  readonly kind: BodyKind;
  readonly label: string;
  readonly source: string;
  readonly rows: readonly BodyRow[];
}

/** Every published table that a wearer's size can be chosen from. */
export const formTables: readonly FormTable[] = [
  ...sizeTables.map((table): FormTable => ({ kind: 'women', ...table })),
  ...bodyTables,
];

export const bodyMeasures = [
  { key: 'bustMm', label: say('typed-draft.bust-or-chest') },
  { key: 'waistMm', label: say('typed-draft.waist') },
  { key: 'hipMm', label: say('typed-draft.hip') },
  { key: 'heightMm', label: say('draft-input.body-height') },
] as const;

export const moreMeasures = [
  { key: 'backLengthMm', label: say('typed-draft.nape-to-waist') },
  { key: 'shoulderMm', label: say('typed-draft.shoulder') },
  { key: 'armMm', label: say('typed-draft.arm') },
  { key: 'upperArmMm', label: say('typed-draft.upper-arm') },
  { key: 'wristMm', label: say('typed-draft.wrist') },
  { key: 'neckMm', label: say('typed-draft.neck') },
] as const;

export type MeasureKey = (typeof bodyMeasures | typeof moreMeasures)[number]['key'];
/** The maker's own choices, each with how it is asked for. */
export const choiceFields = {
  length: { label: say('common.length'), quantity: 'length', unit: bodyUnit },
  ease: { label: say('typed-draft.ease-at-the-bust'), quantity: 'length', unit: bodyUnit },
  lap: { label: say('typed-draft.laps-over-by'), quantity: 'length', unit: bodyUnit },
  strip: { label: say('typed-draft.side-strip'), quantity: 'length', unit: bodyUnit },
  pleat: { label: say('typed-draft.pleat-of-the-back-lining'), quantity: 'length', unit: bodyUnit },
  allowance: { label: say('common.seam-allowance'), quantity: 'length', unit: bodyUnit },
  hem: { label: say('typed-draft.hem'), quantity: 'length', unit: bodyUnit },
  capEase: { label: say('typed-draft.ease-of-the-sleeve-cap'), quantity: 'length', unit: bodyUnit },
  loft: {
    label: say('typed-draft.loft-of-one-layer'),
    quantity: 'length',
    unit: { metric: 'mm', imperial: 'in' },
    max: 100,
  },
} as const satisfies Record<string, QuantityAsked>;
export type ChoiceKey = keyof typeof choiceFields;

const allMeasures = [...bodyMeasures, ...moreMeasures];
const choiceKeys = Object.keys(choiceFields) as ChoiceKey[];

export function measureAsked(key: MeasureKey): QuantityAsked {
  const { label } = allMeasures.find((each) => each.key === key)!;
  return { label, quantity: 'length', unit: bodyUnit, aboveZero: true };
}

export type PaddingWay = 'as it is' | 'add the girth' | 'go up sizes';

interface Chosen {
  name: string;
  kind: BodyKind;
  /** Label of the table, '' for the wearer's own measures. */
  table: string;
  size: string;
  /** More sizes of the same table, drafted into the same plan. */
  moreSizes: string[];
  front: 'zip' | 'overlap';
  neck: 'collar' | 'hood' | 'both';
  hood: Exclude<HoodKind, 'none'>;
  sleeve: SleeveKind;
  sleeveLining: DraftInput['sleeveLining'];
  interfacing: 'with' | 'without';
  bodyPlies: number;
  sleevePlies: number;
  way: PaddingWay;
}

/** What stands in the form: measures and choices as they are typed. */
export interface TypedDraft extends Chosen {
  measures: Record<MeasureKey, string>;
  /** What a size of a table put into the fields of the measures. */
  shown: Record<MeasureKey, Shown>;
  /** An empty one takes the usual value. */
  choices: Record<ChoiceKey, string>;
}

/** The same as it is read. */
export interface DraftForm extends Readonly<Chosen> {
  readonly measures: Readonly<Record<MeasureKey, number | null>>;
  readonly choices: Readonly<Record<ChoiceKey, number | null>>;
  /** Why some of it cannot be read, sentence by sentence. */
  readonly unread: readonly string[];
}

function forEach<Key extends string, Value>(keys: readonly Key[], value: (key: Key) => Value) {
  return Object.fromEntries(keys.map((key) => [key, value(key)])) as Record<Key, Value>;
}

const measureKeys = allMeasures.map(({ key }) => key);

/** Reads all that is typed. tell: what cannot be read, and where; it is then null. */
function readDraft(
  typed: TypedDraft,
  units: Units,
  tell: (path: readonly [part: string, key: string], misread: string) => void,
) {
  const read = (path: readonly [string, string], asked: QuantityAsked, text: string, shown: Shown) => {
    const found = readAsked(asked, units, text, shown);
    if ('value' in found) return found.value;
    tell(path, found.misread);
    return null;
  };
  return {
    measures: forEach(measureKeys, (key) =>
      read(['measures', key], measureAsked(key), typed.measures[key], typed.shown[key]),
    ),
    choices: forEach(choiceKeys, (key) =>
      read(['choices', key], choiceFields[key], typed.choices[key], nothingShown),
    ),
  };
}

/** The form as it stands while it is typed in. */
export function draftNow(typed: TypedDraft, units: Units): DraftForm {
  const unread: string[] = [];
  const read = readDraft(typed, units, (_, misread) => unread.push(misread));
  return { ...typed, ...read, unread };
}

/** What the form begins with, and how it is read when the plan is made of it. */
export function draftForm(units: Units): FormShape<TypedDraft, DraftForm> {
  const schema = z.custom<TypedDraft>().transform((typed, context): DraftForm => {
    const read = readDraft(typed, units, (path, message) =>
      context.addIssue({ code: 'custom', message, path: [...path] }),
    );
    return { ...typed, ...read, unread: [] };
  });
  return { start: firstForm(units.system), schema: () => schema };
}

/** A women's coat of a middle size of the first table. */
export function firstForm(system: MeasureSystem): TypedDraft {
  const empty: TypedDraft = {
    name: '',
    kind: 'women',
    table: '',
    size: '',
    moreSizes: [],
    measures: forEach(measureKeys, () => ''),
    shown: forEach(measureKeys, () => nothingShown),
    choices: forEach(choiceKeys, () => ''),
    front: 'zip',
    neck: 'collar',
    hood: 'three panels',
    sleeve: 'two part',
    sleeveLining: 'own',
    interfacing: 'with',
    bodyPlies: 2,
    sleevePlies: 1,
    way: 'add the girth',
  };
  return { ...empty, ...withTable(empty, formTables[0]!, '8', system) };
}

/** The table's size in the fields; measures that it does not give are left to proportion. */
export function withTable(
  {
    table: before,
    moreSizes,
    measures,
    shown,
  }: Pick<TypedDraft, 'table' | 'moreSizes' | 'measures' | 'shown'>,
  table: FormTable,
  size: string,
  system: MeasureSystem,
): Pick<TypedDraft, 'kind' | 'table' | 'size' | 'moreSizes' | 'measures' | 'shown'> {
  const row = table.rows.find((each) => each.size === size) ?? table.rows[Math.floor(table.rows.length / 2)]!;
  const text = (mm: number | null): Shown =>
    mm === null ? nothingShown : { value: mm, text: showQuantity('length', mm, { system, unit: bodyUnit }) };
  const of = {
    bustMm: text(row.bustMm),
    waistMm: text(row.waistMm),
    hipMm: text(row.hipMm),
    heightMm: text(row.heightMm ?? defaultHeightMm[table.kind]),
  };
  const texts = forEach(
    bodyMeasures.map(({ key }) => key),
    (key) => of[key].text,
  );
  return {
    kind: table.kind,
    table: table.label,
    size: row.size,
    moreSizes: before === table.label ? moreSizes.filter((each) => each !== row.size) : [],
    measures: { ...measures, ...texts },
    shown: { ...shown, ...of },
  };
}

/** Whether the form leaves the size of its table where this measure is typed: it is then the wearer's own. */
export function isOfTable(key: MeasureKey): boolean {
  return key === 'bustMm' || key === 'waistMm' || key === 'hipMm';
}
