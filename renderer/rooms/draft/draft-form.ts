/** What stands in the form for a drafted coat, and the drafts that come of it. Nothing typed is lost by another choice. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Body, type BodyKind, wholeBody } from '../../../shared-core/draft/body.ts';
import {
  type BodyRow,
  bodyFromRow,
  bodyTables,
  defaultHeightMm,
} from '../../../shared-core/draft/body-tables.ts';
import {
  type DraftInput,
  type HoodKind,
  type SleeveKind,
  defaultDraft,
} from '../../../shared-core/draft/draft-input.ts';
import { goneUpToSize, type TakenGirth, widenedForPadding } from '../../../shared-core/draft/padded.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import {
  effectiveThicknessMm,
  girthTakenMm,
  sizesToGoUp,
  type SizesUp,
  wornLoftRatio,
} from '../../../shared-core/requirement/finished/padding.ts';
import { sizeTables } from '../../../shared-core/requirement/finished/size-tables.ts';
import { draftOf, emptyDraft, misreadProblems, type QuantityDraft } from '../../parts/forms/DraftField.tsx';

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
  { key: 'bustMm', label: say('draft-form.bust-or-chest') },
  { key: 'waistMm', label: say('draft-form.waist') },
  { key: 'hipMm', label: say('draft-form.hip') },
  { key: 'heightMm', label: say('common.height') },
] as const;

export const moreMeasures = [
  { key: 'backLengthMm', label: say('draft-form.nape-to-waist') },
  { key: 'shoulderMm', label: say('draft-form.shoulder') },
  { key: 'armMm', label: say('draft-form.arm') },
  { key: 'upperArmMm', label: say('draft-form.upper-arm') },
  { key: 'wristMm', label: say('draft-form.wrist') },
  { key: 'neckMm', label: say('draft-form.neck') },
] as const;

export type MeasureKey = (typeof bodyMeasures | typeof moreMeasures)[number]['key'];
export type ChoiceKey =
  | 'length'
  | 'ease'
  | 'lap'
  | 'strip'
  | 'pleat'
  | 'allowance'
  | 'hem'
  | 'capEase'
  | 'loft';
export type PaddingWay = 'as it is' | 'add the girth' | 'go up sizes';

export interface DraftForm {
  readonly name: string;
  readonly kind: BodyKind;
  /** Label of the table, '' for the wearer's own measures. */
  readonly table: string;
  readonly size: string;
  /** More sizes of the same table, drafted into the same plan. */
  readonly moreSizes: readonly string[];
  readonly measures: Readonly<Record<MeasureKey, QuantityDraft>>;
  /** An empty one takes the usual value. */
  readonly choices: Readonly<Record<ChoiceKey, QuantityDraft>>;
  readonly front: 'zip' | 'overlap';
  readonly neck: 'collar' | 'hood' | 'both';
  readonly hood: Exclude<HoodKind, 'none'>;
  readonly sleeve: SleeveKind;
  readonly sleeveLining: DraftInput['sleeveLining'];
  readonly hasInterfacing: boolean;
  readonly bodyPlies: number;
  readonly sleevePlies: number;
  readonly way: PaddingWay;
}

/** Loft of one layer until the maker types one: 1/2 in (common practice, no source). */
const defaultLoftMm = 12.7;
const defaultLapMm = 60;

/** A women's coat of a middle size of the first table. */
export function firstForm(system: MeasureSystem): DraftForm {
  const none = (keys: readonly { key: string }[]) =>
    Object.fromEntries(keys.map(({ key }) => [key, emptyDraft]));
  const empty: DraftForm = {
    name: '',
    kind: 'women',
    table: '',
    size: '',
    moreSizes: [],
    measures: none([...bodyMeasures, ...moreMeasures]) as Record<MeasureKey, QuantityDraft>,
    choices: none(
      ['length', 'ease', 'lap', 'strip', 'pleat', 'allowance', 'hem', 'capEase', 'loft'].map((key) => ({
        key,
      })),
    ) as Record<ChoiceKey, QuantityDraft>,
    front: 'zip',
    neck: 'collar',
    hood: 'three panels',
    sleeve: 'two part',
    sleeveLining: 'own',
    hasInterfacing: true,
    bodyPlies: 2,
    sleevePlies: 1,
    way: 'add the girth',
  };
  return withTable(empty, formTables[0]!, '8', system);
}

/** The table's size in the fields; measures that it does not give are left to proportion. */
export function withTable(form: DraftForm, table: FormTable, size: string, system: MeasureSystem): DraftForm {
  const row = table.rows.find((each) => each.size === size) ?? table.rows[Math.floor(table.rows.length / 2)]!;
  const shown = (mm: number | null): QuantityDraft =>
    mm === null ? emptyDraft : draftOf(mm, showQuantity('length', mm, { system, unit: bodyUnit }));
  const heightMm = row.heightMm ?? defaultHeightMm[table.kind];
  return {
    ...form,
    kind: table.kind,
    table: table.label,
    size: row.size,
    moreSizes: form.table === table.label ? form.moreSizes.filter((each) => each !== row.size) : [],
    measures: {
      ...form.measures,
      bustMm: shown(row.bustMm),
      waistMm: shown(row.waistMm),
      hipMm: shown(row.hipMm),
      heightMm: shown(heightMm),
    },
  };
}

/** A measure of the wearer's own; the form no longer stands on a size of a table. */
export function withMeasure(form: DraftForm, key: MeasureKey, draft: QuantityDraft): DraftForm {
  const measures = { ...form.measures, [key]: draft };
  const isTables = (key === 'bustMm' || key === 'waistMm' || key === 'hipMm') && form.table !== '';
  return isTables ? { ...form, measures, table: '', moreSizes: [] } : { ...form, measures };
}

/** The wearer, or what is missing. */
export function wearer(form: DraftForm): Result<Body> {
  const { measures } = form;
  const missing = (['bustMm', 'waistMm', 'heightMm'] as const).filter((key) => measures[key].value === null);
  const unread = misreadProblems(
    say('draft-form.the-draft'),
    Object.values({ ...measures, ...form.choices }),
  );
  if (missing.length > 0 || unread.length > 0) {
    const labels = missing.map((key) => bodyMeasures.find((each) => each.key === key)!.label);
    return err(
      ...labels.map(
        (where): Problem => ({
          where,
          what: say('common.is-missing'),
          fix: say('draft-form.measure-it-or-choose-a-size'),
        }),
      ),
      ...unread.map((problem) => ({ ...problem, what: say('draft-form.was-not-drawn-anew') })),
    );
  }
  return ok({
    kind: form.kind,
    bustMm: measures.bustMm.value!,
    waistMm: measures.waistMm.value!,
    hipMm: measures.hipMm.value,
    heightMm: measures.heightMm.value!,
    backLengthMm: measures.backLengthMm.value,
    shoulderMm: measures.shoulderMm.value,
    armMm: measures.armMm.value,
    upperArmMm: measures.upperArmMm.value,
    wristMm: measures.wristMm.value,
    neckMm: measures.neckMm.value,
  });
}

/** Thickness of the padding as worn, and the girth that it takes. */
export interface Padding {
  readonly bodyMm: number;
  readonly sleeveMm: number;
  readonly taken: TakenGirth;
}

export function paddingOf(form: DraftForm): Padding {
  const loftMm = form.choices.loft.value ?? defaultLoftMm;
  const bodyMm = effectiveThicknessMm(form.bodyPlies, loftMm, wornLoftRatio);
  const sleeveMm = effectiveThicknessMm(form.sleevePlies, loftMm, wornLoftRatio);
  return { bodyMm, sleeveMm, taken: { bodyMm: girthTakenMm(bodyMm), sleeveMm: girthTakenMm(sleeveMm) } };
}

export function formTable(form: DraftForm): FormTable | null {
  return formTables.find((table) => table.label === form.table) ?? null;
}

/** How many sizes the padding takes; null for own measures, which stand in no table. */
export function sizesUp(form: DraftForm, size: string): Result<SizesUp> | null {
  const table = formTable(form);
  return table === null ? null : sizesToGoUp(table, size, paddingOf(form).taken.bodyMm);
}

/** The coat before its padding is reckoned with. */
export function plainInput(form: DraftForm, body: Body, id: string, size: string): DraftInput {
  const usual = defaultDraft(id, form.name.trim(), size, body);
  const { choices } = form;
  return {
    ...usual,
    coatLengthMm: choices.length.value ?? usual.coatLengthMm,
    easeMm: choices.ease.value ?? usual.easeMm,
    lapMm: form.front === 'zip' ? 0 : (choices.lap.value ?? defaultLapMm),
    hasCollar: form.neck !== 'hood',
    hood: form.neck === 'collar' ? 'none' : form.hood,
    sleeve: form.sleeve,
    sideStripMm: choices.strip.value ?? 0,
    pleatMm: choices.pleat.value ?? usual.pleatMm,
    capEaseMm: choices.capEase.value ?? usual.capEaseMm,
    allowanceMm: choices.allowance.value ?? usual.allowanceMm,
    hemDepthMm: choices.hem.value ?? usual.hemDepthMm,
    battingPlies: { body: form.bodyPlies, sleeve: form.sleevePlies },
    sleeveLining: form.sleeveLining,
    hasInterfacing: form.hasInterfacing,
  };
}

/** The coat redrawn for its padding in the way that was chosen. */
export function paddedInput(form: DraftForm, input: DraftInput): Result<DraftInput> {
  switch (form.way) {
    case 'as it is':
      return ok(input);
    case 'add the girth':
      return ok(widenedForPadding(input, paddingOf(form).taken));
    case 'go up sizes': {
      const up = sizesUp(form, input.size);
      if (up === null)
        return err({
          where: say('draft-form.going-up-sizes'),
          what: say('draft-form.needs-a-size-of-a-table'),
          fix: say('draft-form.choose-a-table-and-a-size'),
        });
      if (!up.ok) return up;
      const row = formTable(form)!.rows.find((each) => each.size === up.value.size)!;
      // The plan keeps the wearer's size; the notes of its pieces say nothing of the larger one.
      return ok({ ...goneUpToSize(input, row), size: input.size });
    }
    default:
      return form.way satisfies never;
  }
}

/** Values that stand in for empty fields. */
export function defaultChoices(body: Body): Readonly<Record<ChoiceKey, number>> {
  const usual = defaultDraft('usual', 'usual', '', body);
  return {
    length: usual.coatLengthMm,
    ease: usual.easeMm,
    lap: defaultLapMm,
    strip: 0,
    pleat: usual.pleatMm,
    allowance: usual.allowanceMm,
    hem: usual.hemDepthMm,
    capEase: usual.capEaseMm,
    loft: defaultLoftMm,
  };
}

/** What proportion says of the measures that were not taken. */
export function proportion(body: Body, key: (typeof moreMeasures)[number]['key'] | 'hipMm'): number | null {
  if (key === 'neckMm') return null;
  return wholeBody({ ...body, [key]: null })[key];
}

/** The row of another size of the table, with the wearer's height where the table is for every height. */
export function bodyOfSize(form: DraftForm, body: Body, size: string): Body | null {
  const table = formTable(form);
  const row = table?.rows.find((each) => each.size === size);
  return table && row ? bodyFromRow(table.kind, row, body.heightMm) : null;
}
