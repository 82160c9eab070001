/**
 * The numbers of the coat block: the body with ease shared out over back, arm and front.
 * Ease is divided as the worked example of the proportionate men's draft divides its 8.5 cm on the half: 1.5 to the back,
 * 4 to the arm, 3 to the front. (It draws the arm 2.5 cm wider still and takes that out again in darts, which this
 * draft has not.) For women and children a fifth, a half and three tenths: common practice, no source.
 */
import { type WholeBody, wholeBody } from './body.ts';
import type { DraftInput } from './draft-input.ts';

export interface Block {
  readonly body: WholeBody;
  readonly lengthMm: number;
  /** Nape down to the underarm, lowered for ease and padding. */
  readonly scyeDepthMm: number;
  /** From the centre: back at the shoulder blades, front across the chest, and both at the underarm. */
  readonly backPitchMm: number;
  readonly frontPitchMm: number;
  readonly backQuarterMm: number;
  readonly frontQuarterMm: number;
  readonly stripMm: number;
  readonly neckWidthMm: number;
  /** Girth that the one padded layer of collar or hood takes: 2 pi x its thickness. */
  readonly neckPaddingMm: number;
  readonly neckRiseMm: number;
  readonly frontNeckDepthMm: number;
  /** The front's neck point over the back's. */
  readonly balanceMm: number;
  readonly shoulderMm: number;
  /** How far the side stands out from the underarm, at waist and hip; below 0: in. */
  readonly waistOutMm: number;
  readonly hipOutMm: number;
  /** How far the side goes out for each mm down below the hip. */
  readonly flareRatio: number;
  readonly facingWidthMm: number;
  readonly facingShoulderMm: number;
  readonly backFacingDepthMm: number;
  readonly lapMm: number;
  readonly halfPleatMm: number;
  readonly allowanceMm: number;
  readonly hemDepthMm: number;
  readonly liningHemDepthMm: number;
}

/** Shares of half the ease that back, arm and front take. */
export const easeShares = {
  women: { back: 0.2, arm: 0.5, front: 0.3 },
  men: { back: 1.5 / 8.5, arm: 4 / 8.5, front: 3 / 8.5 },
  children: { back: 0.2, arm: 0.5, front: 0.3 },
} as const;

/** A shoulder falls by this much of its length, back and front: common practice, no source. */
export const shoulderFallRatio = { back: 0.28, front: 0.34 };

const defaultBalanceMm = { women: 7, men: -5, children: -2 };
const defaultFlareRatio = { women: 0.06, men: 0.03, children: 0.05 };
const waistInMm = { women: 10, men: 3, children: 0 };

/** Waist and hip take this much of the ease at the bust. */
const lowerEaseRatio = 0.7;
/**
 * A worn coat's armhole lies lower than the body's by this much of ease and padding at the bust: 3 cm for the 18 of a
 * coat, and for padding about its thickness. Common practice, no source.
 */
const armholeLoweredRatio = 0.16;

/** However much ease is asked for, the side begins this far above the waist: a small child's would end below it. */
const minSideToWaistMm = 15;

/** Collar and hood are padded with one layer of the body's: its share of the girth that the body's padding takes. */
function neckPaddingGirthMm({ paddingGirthMm, battingPlies }: DraftInput): number {
  return paddingGirthMm.body / Math.max(1, battingPlies.body);
}

/** loweredMm: how much deeper still the armhole is set, for a large upper arm. */
export function blockOf(input: DraftInput, loweredMm: number): Block {
  const body = wholeBody(input.body);
  const { kind } = body;
  const paddingMm = input.paddingGirthMm.body;
  const easeMm = input.easeMm + paddingMm;
  const shares = easeShares[kind];
  const backWidthMm = body.backWidthMm + (shares.back * easeMm) / 2;
  const armWidthMm = body.armWidthMm + (shares.arm * easeMm) / 2;
  const halfMm = (body.bustMm + easeMm) / 2;
  const neckPaddingMm = neckPaddingGirthMm(input);
  const neckWidthMm = body.neckWidthMm + 8 + neckPaddingMm / 6;
  const fall = shoulderFallRatio.back;
  // Without a measure the shoulder ends a little outside the back's width.
  const reachMm = Math.sqrt(1 - fall ** 2);
  const shoulderMm = Math.max(
    (body.shoulderMm ?? 0) + 0.06 * easeMm,
    (backWidthMm + 8 - neckWidthMm) / reachMm,
  );
  const shoulderEndMm = neckWidthMm + shoulderMm * reachMm;
  const backQuarterMm = backWidthMm + armWidthMm / 2 - input.sideStripMm / 2;
  const frontQuarterMm = halfMm - backWidthMm - armWidthMm / 2 - input.sideStripMm / 2;
  const outAt = (bodyMm: number): number =>
    ((bodyMm + lowerEaseRatio * input.easeMm + paddingMm) / 2 - halfMm) / 2;
  const waistOutMm = Math.max(-waistInMm[kind], outAt(body.waistMm));
  return {
    body,
    lengthMm: input.coatLengthMm,
    scyeDepthMm: Math.min(
      body.scyeDepthMm + armholeLoweredRatio * easeMm + loweredMm,
      body.backLengthMm - minSideToWaistMm,
    ),
    backPitchMm: Math.min(backWidthMm, shoulderEndMm - 3, backQuarterMm - 12),
    frontPitchMm: Math.min(backWidthMm - 8, shoulderEndMm - 12, frontQuarterMm - 20),
    backQuarterMm,
    frontQuarterMm,
    stripMm: input.sideStripMm,
    neckWidthMm,
    neckPaddingMm,
    neckRiseMm: 0.3 * neckWidthMm,
    frontNeckDepthMm: 1.22 * neckWidthMm,
    balanceMm: defaultBalanceMm[kind],
    shoulderMm,
    waistOutMm,
    hipOutMm: Math.max(waistOutMm, 2, outAt(body.hipMm)),
    flareRatio: defaultFlareRatio[kind],
    facingWidthMm: 0.07 * body.bustMm + 28,
    facingShoulderMm: 0.4 * shoulderMm,
    backFacingDepthMm: 0.95 * neckWidthMm,
    lapMm: input.lapMm,
    halfPleatMm: input.pleatMm / 2,
    allowanceMm: input.allowanceMm,
    hemDepthMm: input.hemDepthMm,
    liningHemDepthMm: Math.max(input.allowanceMm, input.hemDepthMm - 15),
  };
}
