/** How a drafted coat fits: its girths, armhole and sleeve, and every seam walked. */
import { givenName } from '../wording/given-names.ts';
import { ringAreaMm2 } from '../geometry/ring.ts';
import { type CoatPlan, type Piece, pieceById } from '../plan/model/coat-plan.ts';
import { edgeLengthMm, seamRing } from '../plan/geometry/outline-ring.ts';
import { type SeamReport, seamWalk } from '../plan/geometry/seam-walk.ts';
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
  readonly madeUp: readonly MadeUp[];
}

/** Facing and lining against the outer piece that they lie behind; the pleat of the back lining is left out of them. */
export interface MadeUp {
  readonly whole: string;
  readonly parts: readonly string[];
  /** Parts less whole: along the shoulder and, where both reach it, the hem; and their area. */
  readonly shoulderMm: number;
  readonly hemMm: number;
  readonly areaMm2: number;
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
    madeUp: [
      madeUp(plan, 'front', ['front-facing', 'front-lining'], 0),
      madeUp(plan, 'back', ['back-neck-facing', 'back-lining'], block.halfPleatMm),
    ],
  };
}

function madeUp(plan: CoatPlan, wholeId: string, partIds: readonly string[], halfPleatMm: number): MadeUp {
  const whole = pieceById(plan, wholeId);
  const parts = partIds.map((id) => pieceById(plan, id));
  const shoulder = givenName('edge', 'shoulder');
  const hem = givenName('edge', 'hem');
  const along =
    (name: string) =>
    (sum: number, { outline }: Piece) =>
      sum + (outline.edges.some((edge) => edge.name === name) ? edgeLengthMm(outline, name) : 0);
  const area = ({ outline }: Piece) => ringAreaMm2(seamRing(outline, 0.05));
  // The pleat lies at the fold, as long as the fold and half as wide as it is deep.
  const folded = parts.at(-1)!;
  const pleatMm2 =
    halfPleatMm > 0 && folded.foldEdge ? halfPleatMm * edgeLengthMm(folded.outline, folded.foldEdge) : 0;
  return {
    whole: whole.name,
    parts: parts.map((part) => part.name),
    shoulderMm: parts.reduce(along(shoulder), 0) - along(shoulder)(0, whole),
    hemMm: parts.reduce(along(hem), 0) - halfPleatMm - along(hem)(0, whole),
    areaMm2: parts.reduce((sum, part) => sum + area(part), 0) - pleatMm2 - area(whole),
  };
}
