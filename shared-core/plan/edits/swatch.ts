/**
 * A swatch: a square of shell, padding and backing, quilted as the coat will be and measured before and after. What it
 * shows is kept by its number of layers, so that a body of two layers and a sleeve of one go each by their own.
 */
import { say } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { CoatPlan, QuiltedMeasure, Quilting } from '../model/coat-plan.ts';
import { type Edited, inMm } from './edited.ts';
import { layersWords, measureOf } from '../model/quilted-layers.ts';
import { quiltingSpacingProblem } from '../validation/quilting-problems.ts';

export interface Swatch {
  /** Layers of batting in it; 0: loose fill. */
  readonly battingPlyCount: number;
  /** How far apart its lines are, finished, mm. */
  readonly spacingMm: number;
  /** At right angles to its lines, before and after quilting, mm. */
  readonly overLinesBeforeMm: number;
  readonly overLinesAfterMm: number;
  /** Along its lines. */
  readonly alongLinesBeforeMm: number;
  readonly alongLinesAfterMm: number;
  /** Through all layers midway between two lines, mm; null: not measured. */
  readonly thicknessMm: number | null;
}

/** More than this is no take-up but a slip of the tape. */
const maxTakeUpRatio = 1;
const maxPlyCount = 20;

/** Writes take-up (before / after - 1, both ways) and rise (half of the thickness) of a swatch into the plan. */
export function saveSwatch(plan: CoatPlan, swatch: Swatch, text = inMm): Result<Edited> {
  const { battingPlyCount, spacingMm, thicknessMm } = swatch;
  if (plan.quilting === null) return err(notQuilted(plan));
  const over = swatch.overLinesBeforeMm / swatch.overLinesAfterMm - 1;
  const along = swatch.alongLinesBeforeMm / swatch.alongLinesAfterMm - 1;
  const riseMm = thicknessMm === null ? null : thicknessMm / 2;
  const problems = [
    plyProblem(battingPlyCount),
    quiltingSpacingProblem(spacingMm, say('swatch.distance-of-the-lines-of-the')),
    takeUpProblem(say('swatch.over-its-lines'), over),
    takeUpProblem(say('swatch.along-its-lines'), along),
    riseMm === null ? null : riseProblem(riseMm, spacingMm, say('swatch.thickness-of-the-swatch'), 2, text),
  ].filter((problem) => problem !== null);
  if (problems.length > 0) return err(...problems);
  const before = measureOf(plan, battingPlyCount);
  const measure: QuiltedMeasure = {
    battingPlyCount,
    spacingMm,
    riseMm: riseMm ?? before?.riseMm ?? null,
    overLinesRatio: over,
    alongLinesRatio: along,
  };
  return ok({
    plan: withMeasure(plan, plan.quilting, measure),
    said: say('swatch.take-up-and-rise-of-are', {
      ifRiseMm: riseMm === null ? 'yes' : 'no',
      layersWords: layersWords(battingPlyCount),
    }),
  });
}

/**
 * How far one face stands off the flat between two lines of so many layers, as measured; null goes back to the
 * estimate. 0 to half of what the lines are apart.
 */
export function setRise(
  plan: CoatPlan,
  plyCount: number,
  riseMm: number | null,
  text = inMm,
): Result<Edited> {
  const { quilting } = plan;
  if (quilting === null) return err(notQuilted(plan));
  const before = measureOf(plan, plyCount);
  const spacingMm = before?.spacingMm ?? quilting.spacingMm;
  const problem =
    plyProblem(plyCount) ??
    (riseMm === null ? null : riseProblem(riseMm, spacingMm, say('swatch.rise-of-the-quilting'), 1, text));
  if (problem) return err(problem);
  const measure: QuiltedMeasure = {
    ...(before ?? { battingPlyCount: plyCount, spacingMm, overLinesRatio: null, alongLinesRatio: null }),
    riseMm,
  };
  const layers = layersWords(plyCount);
  return ok({
    plan: withMeasure(plan, quilting, measure),
    said:
      riseMm === null
        ? say('swatch.the-rise-of-is-estimated-again', { layers })
        : say('swatch.one-face-rises-over-as-measured', { text: text(riseMm), layers }),
  });
}

/** Goes back to the estimates for so many layers. */
export function forgetSwatch(plan: CoatPlan, plyCount: number): Result<Edited> {
  const { quilting } = plan;
  if (quilting === null) return err(notQuilted(plan));
  const nothing = { riseMm: null, overLinesRatio: null, alongLinesRatio: null };
  const measure = { battingPlyCount: plyCount, spacingMm: quilting.spacingMm, ...nothing };
  return ok({
    plan: withMeasure(plan, quilting, measure),
    said: say('swatch.take-up-and-rise-of-are-2', { layersWords: layersWords(plyCount) }),
  });
}

/** Takes away what slots have of their own, so that swatches and estimates of the layers count. */
export function forgetSlotTakeUp(plan: CoatPlan): Result<Edited> {
  return ok({
    plan: {
      ...plan,
      slots: plan.slots.map((slot) => ({ ...slot, takeUpAlongRatio: null, takeUpAcrossRatio: null })),
    },
    said: say('swatch.take-up-follows-from-the-layers'),
  });
}

/** Measures of rise that lines so far apart leave room for; one with nothing else in it goes. */
export function measuresAt(quilting: Quilting, spacingMm: number): Pick<Quilting, 'measures'> {
  const kept = (quilting.measures ?? []).flatMap((measure) =>
    measure.riseMm !== null && measure.riseMm > spacingMm / 2
      ? withoutEmpty([{ ...measure, riseMm: null }])
      : [measure],
  );
  return kept.length > 0 ? { measures: kept } : {};
}

/** One entry for its number of layers, in rising order; without any the plan has no measures at all. */
function withMeasure(plan: CoatPlan, quilting: Quilting, measure: QuiltedMeasure): CoatPlan {
  const { measures = [], ...rest } = quilting;
  const others = measures.filter(({ battingPlyCount }) => battingPlyCount !== measure.battingPlyCount);
  const next = withoutEmpty([...others, measure]).sort((a, b) => a.battingPlyCount - b.battingPlyCount);
  return { ...plan, quilting: next.length > 0 ? { ...rest, measures: next } : rest };
}

function withoutEmpty(measures: readonly QuiltedMeasure[]): QuiltedMeasure[] {
  return measures.filter(
    ({ riseMm, overLinesRatio, alongLinesRatio }) =>
      riseMm !== null || overLinesRatio !== null || alongLinesRatio !== null,
  );
}

function plyProblem(plyCount: number): Problem | null {
  if (Number.isInteger(plyCount) && plyCount >= 0 && plyCount <= maxPlyCount) return null;
  return {
    where: say('swatch.layers-of-batting-in-the-swatch'),
    what: say('swatch.are-no-whole-number-of-layers'),
    fix: say('swatch.type-a-whole-number-from-0', { maxPlyCount }),
  };
}

function takeUpProblem(way: string, ratio: number): Problem | null {
  if (Number.isFinite(ratio) && ratio >= 0 && ratio <= maxTakeUpRatio) return null;
  return {
    where: say('swatch.the-swatch', { way }),
    what: ratio < 0 ? say('swatch.grew-in-quilting') : say('swatch.shrank-by-more-than-half'),
    fix: say('swatch.measure-it-before-and-after-quilting'),
  };
}

/** faces: of how many the measure is: 2 for a thickness, 1 for a rise. */
function riseProblem(
  riseMm: number,
  spacingMm: number,
  where: string,
  faces: number,
  text: (mm: number) => string,
): Problem | null {
  const maxMm = spacingMm / 2;
  if (riseMm >= 0 && riseMm <= maxMm) return null;
  return {
    where,
    what: Number.isFinite(riseMm)
      ? say('swatch.is', { text: text(riseMm * faces) })
      : say('common.is-not-a-number'),
    fix: say('swatch.type-0-to-between-lines-apart', { text: text(maxMm * faces), text2: text(spacingMm) }),
  };
}

function notQuilted(plan: CoatPlan): Problem {
  return { where: plan.name, what: say('common.is-not-quilted'), fix: say('common.turn-quilting-on-first') };
}
