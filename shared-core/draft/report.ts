/** How a drafted coat fits: its girths, armhole and sleeve, and every seam walked. */
import type { CoatPlan } from '../plan/coat-plan.ts';
import { type SeamReport, seamWalk } from '../plan/seam-walk.ts';
import { armholeMm } from './body-pieces.ts';
import type { DraftInput } from './draft-input.ts';
import { backHalf, frontHalf, type Half } from './halves.ts';
import type { Armhole } from './sleeve.ts';

export interface DraftReport {
  /** Girths of the coat at the seam line. */
  readonly girthMm: {
    readonly bust: number;
    readonly waist: number;
    readonly hip: number;
    readonly upperArm: number;
  };
  /** The same places of the body. */
  readonly bodyMm: {
    readonly bust: number;
    readonly waist: number;
    readonly hip: number;
    readonly upperArm: number;
  };
  readonly scyeDepthMm: number;
  /** How much deeper the armhole was set for the upper arm. */
  readonly loweredMm: number;
  /** One armhole all round, and one cap. */
  readonly armholeMm: number;
  readonly capMm: number;
  readonly capEaseMm: number;
  readonly capHeightMm: number;
  readonly seams: readonly SeamReport[];
}

/** Lengths are measured on the outlines of the plan, not taken from what was aimed at. */
export function draftReport(
  plan: CoatPlan,
  input: DraftInput,
  { block, sleeve, loweredMm }: Armhole,
): DraftReport {
  const back = backHalf(block);
  const front = frontHalf(block);
  const roundMm = (place: keyof Half['acrossMm']): number =>
    2 * (back.acrossMm[place] + front.acrossMm[place] + block.stripMm);
  const { body } = block;
  return {
    girthMm: {
      bust: roundMm('bust'),
      waist: roundMm('waist'),
      hip: roundMm('hip'),
      upperArm: sleeve.upperArmMm,
    },
    bodyMm: { bust: input.body.bustMm, waist: body.waistMm, hip: body.hipMm, upperArm: body.upperArmMm },
    scyeDepthMm: block.scyeDepthMm,
    loweredMm,
    armholeMm: armholeMm(block),
    capMm: sleeve.capMm,
    capEaseMm: sleeve.capMm - armholeMm(block),
    capHeightMm: sleeve.capHeightMm,
    seams: seamWalk(plan),
  };
}
