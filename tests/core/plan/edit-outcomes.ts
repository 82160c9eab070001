/** What an edit gave, or the sentence that refused it; and sums over pieces that edits must keep. */
import { ringAreaMm2 } from '../../../shared-core/geometry/ring.ts';
import { type Result, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { seamRing } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';

export function edited(outcome: Result<Edited>): Edited {
  if (!outcome.ok) throw new Error(outcome.problems.map(problemSentence).join(' '));
  return outcome.value;
}

export function refusal(outcome: Result<Edited>): string {
  if (outcome.ok) throw new Error(`was not refused: ${outcome.value.said}`);
  return outcome.problems.map(problemSentence).join(' ');
}

/** At the seam line, curves within 0.002 mm, as drafted: a half on the fold counts once. */
export function areaMm2(piece: Piece): number {
  return ringAreaMm2(seamRing(piece.outline, 0.002));
}

/** Labels of the seams that do not fit. */
export function unfittedSeams(plan: CoatPlan): string[] {
  return seamWalk(plan)
    .filter((report) => !report.fits)
    .map((report) => report.label);
}

/** What is stitched of each seam, by its id. */
export function stitchedMm(plan: CoatPlan): Map<string, number> {
  return new Map(seamWalk(plan).map((report) => [report.seamId, report.stitchedMm]));
}
