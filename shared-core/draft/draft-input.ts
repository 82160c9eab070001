/** What a coat is drafted from: a body, and the maker's choices. */
import { withDecimalSign } from '../wording/number-signs.ts';
import { say } from '../wording/say.ts';
import type { Problem } from '../measure/problem.ts';
import type { PlanId } from '../stash/stash.ts';
import { type Body, type BodyKind, wholeBody } from './body.ts';

export type HoodKind = 'none' | 'two panels' | 'three panels';
export type SleeveKind = 'one part' | 'two part';

export interface DraftInput {
  readonly id: PlanId;
  readonly name: string;
  readonly size: string;
  readonly body: Body;
  /** Nape to hem. */
  readonly coatLengthMm: number;
  /** Bust ease for movement and cut, all round; waist and hip take most of it, the upper arm nearly half. */
  readonly easeMm: number;
  /** Drafted in beyond the ease, because the padding takes it. 0 or more. */
  readonly paddingGirthMm: { readonly body: number; readonly sleeve: number };
  /** How far each front reaches over the centre: 0 for a zip. */
  readonly lapMm: number;
  readonly hasCollar: boolean;
  readonly hood: HoodKind;
  readonly sleeve: SleeveKind;
  /** Width of a strip let in under each arm in place of the side seam, taken out of back and front; 0 for none. */
  readonly sideStripMm: number;
  /** Whole depth of the pleat at the centre of the back lining; 0 for none. */
  readonly pleatMm: number;
  readonly capEaseMm: number;
  readonly allowanceMm: number;
  readonly hemDepthMm: number;
  readonly battingPlies: { readonly body: number; readonly sleeve: number };
  /** Sleeves are lined with shell cloth, or with a cloth of their own. */
  readonly sleeveLining: 'shell' | 'own';
  /** Facings, collar and placket are interfaced, and the front edges stayed for zip or snaps. */
  readonly hasInterfacing: boolean;
}

/** 5/8 in: common practice, no source. */
export const defaultAllowanceMm = 15.875;

/** Choices that most quilted coats begin with, for a body: hip length, zip, collar, two layers in the body and one in the sleeve. */
export function defaultDraft(id: PlanId, name: string, size: string, body: Body): DraftInput {
  const whole = wholeBody(body);
  return {
    id,
    name,
    size,
    body,
    coatLengthMm: Math.round(whole.backLengthMm + whole.hipDepthMm + 0.05 * body.heightMm),
    easeMm: body.kind === 'children' ? 140 : 180,
    paddingGirthMm: { body: 0, sleeve: 0 },
    lapMm: 0,
    hasCollar: true,
    hood: 'none',
    sleeve: 'two part',
    sideStripMm: 0,
    pleatMm: body.kind === 'children' ? 24 : 40,
    capEaseMm: body.kind === 'children' ? 10 : 15,
    allowanceMm: defaultAllowanceMm,
    hemDepthMm: 40,
    battingPlies: { body: 2, sleeve: 1 },
    sleeveLining: 'own',
    hasInterfacing: true,
  };
}

/** Least and most of each body measure, mm; beyond them a slip of the hand is likelier than the body. */
const bodyLimits: Readonly<
  Record<BodyKind, { readonly bust: readonly [number, number]; readonly height: readonly [number, number] }>
> = {
  women: { bust: [700, 1700], height: [1300, 2100] },
  men: { bust: [750, 1700], height: [1400, 2300] },
  children: { bust: [440, 950], height: [800, 1800] },
};

/** Everything in the input that no coat can be drafted from; empty when all is well. */
export function draftProblems(input: DraftInput): Problem[] {
  const { body } = input;
  const limits = bodyLimits[body.kind];
  const problems = [
    outside(say('draft-input.bust-or-chest'), body.bustMm, ...limits.bust),
    outside(say('draft-input.body-height'), body.heightMm, ...limits.height),
    outside(say('draft-input.waist'), body.waistMm, 0.55 * body.bustMm, 1.35 * body.bustMm),
    outside(say('draft-input.ease-at-the-bust'), input.easeMm, 40, 500),
    outside(say('draft-input.girth-for-the-padding-of-the'), input.paddingGirthMm.body, 0, 300),
    outside(say('draft-input.girth-for-the-padding-of-the-2'), input.paddingGirthMm.sleeve, 0, 300),
    outside(say('draft-input.how-far-the-front-laps-over'), input.lapMm, 0, 120),
    outside(say('draft-input.pleat-of-the-back-lining'), input.pleatMm, 0, 120),
    outside(say('draft-input.ease-of-the-sleeve-cap'), input.capEaseMm, 0, 60),
    outside(say('common.seam-allowance'), input.allowanceMm, 3, 40),
    outside(say('draft-input.depth-of-the-hem'), input.hemDepthMm, 3, 120),
    ...optional(say('draft-input.hip'), body.hipMm, 0.7, 1.5, body.bustMm),
    ...optional(say('draft-input.nape-to-waist'), body.backLengthMm, 0.19, 0.32, body.heightMm),
    ...optional(say('draft-input.arm'), body.armMm, 0.28, 0.45, body.heightMm),
    ...optional(say('draft-input.shoulder'), body.shoulderMm, 0.09, 0.2, body.bustMm),
    ...optional(say('draft-input.upper-arm'), body.upperArmMm, 0.2, 0.5, body.bustMm),
    ...optional(say('draft-input.wrist'), body.wristMm, 0.1, 0.32, body.bustMm),
    ...optional(say('draft-input.neck'), body.neckMm, 0.25, 0.6, body.bustMm),
  ].filter((problem) => problem !== null);
  if (input.name.trim() === '')
    problems.push({
      where: say('draft-input.name-of-the-coat'),
      what: say('common.is-missing'),
      fix: say('common.type-a-name'),
    });
  if (input.sideStripMm !== 0) {
    const found = outside(
      say('draft-input.width-of-the-side-strip'),
      input.sideStripMm,
      20,
      0.12 * (body.bustMm + input.easeMm),
    );
    if (found) problems.push(found);
  }
  if (problems.length > 0) return problems;
  const { backLengthMm } = wholeBody(body);
  const length = outside(
    say('draft-input.length-of-the-coat'),
    input.coatLengthMm,
    backLengthMm + 60,
    0.9 * body.heightMm,
  );
  if (length) problems.push(length);
  if (!input.hasCollar && input.hood === 'none') {
    problems.push({
      where: say('draft-input.the-neck'),
      what: say('draft-input.has-neither-collar-nor-hood'),
      fix: say('draft-input.choose-one-of-them-or-both'),
    });
  }
  for (const [where, count] of Object.entries(input.battingPlies)) {
    if (!(Number.isInteger(count) && count >= 0 && count <= 6))
      problems.push({
        where: say('draft-input.layers-of-batting-in-the', { where }),
        what: say('draft-input.are', { count }),
        fix: say('draft-input.type-a-whole-number-from-0'),
      });
  }
  return problems;
}

function optional(
  where: string,
  value: number | null,
  min: number,
  max: number,
  ofMm: number,
): (Problem | null)[] {
  return value === null ? [] : [outside(where, value, min * ofMm, max * ofMm)];
}

function outside(where: string, value: number, leastMm: number, maxMm: number): Problem | null {
  if (Number.isFinite(value) && value >= leastMm && value <= maxMm) return null;
  const what = !Number.isFinite(value)
    ? say('common.is-not-a-number')
    : value < leastMm
      ? say('draft-input.is-too-small')
      : say('common.is-too-large');
  return {
    where,
    what,
    fix: say('draft-input.type-a-value-from-to', { shown: shown(leastMm), shown2: shown(maxMm) }),
  };
}

/** Both systems, since the sentence is read in either. */
function shown(mm: number): string {
  return say('draft-input.cm-in', { mm: Math.round(mm / 10), mm2: withDecimalSign((mm / 25.4).toFixed(1)) });
}
