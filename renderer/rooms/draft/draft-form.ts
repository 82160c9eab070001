/** The drafts that come of the form for a drafted coat. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Body, wholeBody } from '../../../shared-core/draft/body.ts';
import { bodyFromRow } from '../../../shared-core/draft/body-tables.ts';
import { type DraftInput, defaultDraft } from '../../../shared-core/draft/draft-input.ts';
import { goneUpToSize, type TakenGirth, widenedForPadding } from '../../../shared-core/draft/padded.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import {
  effectiveThicknessMm,
  girthTakenMm,
  sizesToGoUp,
  type SizesUp,
  wornLoftRatio,
} from '../../../shared-core/requirement/finished/padding.ts';
import {
  type ChoiceKey,
  type DraftForm,
  type FormTable,
  formTables,
  measureAsked,
  type moreMeasures,
} from './typed-draft.ts';

/** Loft of one layer until the maker types one: 1/2 in (common practice, no source). */
const defaultLoftMm = 12.7;
const defaultLapMm = 60;

/** The wearer, or what is missing. */
export function wearer({ kind, measures, unread }: DraftForm): Result<Body> {
  const { bustMm, waistMm, heightMm } = measures;
  if (bustMm === null || waistMm === null || heightMm === null || unread.length > 0) {
    const missing = (['bustMm', 'waistMm', 'heightMm'] as const).filter((key) => measures[key] === null);
    return err(
      ...missing.map(
        (key): Problem => ({
          where: measureAsked(key).label,
          what: say('common.is-missing'),
          fix: say('draft-form.measure-it-or-choose-a-size'),
        }),
      ),
      ...unread.map(
        (fix): Problem => ({
          where: say('draft-form.the-draft'),
          what: say('draft-form.was-not-drawn-anew'),
          fix,
        }),
      ),
    );
  }
  return ok({ ...measures, kind, bustMm, waistMm, heightMm });
}

/** Thickness of the padding as worn, and the girth that it takes. */
export interface Padding {
  readonly bodyMm: number;
  readonly sleeveMm: number;
  readonly taken: TakenGirth;
}

export function paddingOf(form: DraftForm): Padding {
  const loftMm = form.choices.loft ?? defaultLoftMm;
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
    coatLengthMm: choices.length ?? usual.coatLengthMm,
    easeMm: choices.ease ?? usual.easeMm,
    lapMm: form.front === 'zip' ? 0 : (choices.lap ?? defaultLapMm),
    hasCollar: form.neck !== 'hood',
    hood: form.neck === 'collar' ? 'none' : form.hood,
    sleeve: form.sleeve,
    sideStripMm: choices.strip ?? 0,
    pleatMm: choices.pleat ?? usual.pleatMm,
    capEaseMm: choices.capEase ?? usual.capEaseMm,
    allowanceMm: choices.allowance ?? usual.allowanceMm,
    hemDepthMm: choices.hem ?? usual.hemDepthMm,
    battingPlies: { body: form.bodyPlies, sleeve: form.sleevePlies },
    sleeveLining: form.sleeveLining,
    hasInterfacing: form.interfacing === 'with',
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
