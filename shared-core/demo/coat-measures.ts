/**
 * Every number that the demo coat is drafted from, so that its outlines can be read back to a body and a choice.
 * The body is an invented one of about EU 40; ease and proportions are common practice, no source.
 */
export interface CoatMeasures {
  readonly bustMm: number;
  /** Added to the bust for padding and movement, all round. */
  readonly bustEaseMm: number;
  /** The front is wider than the back by this much at each side. */
  readonly frontMoreThanBackMm: number;
  readonly napeToWaistMm: number;
  readonly napeToHemMm: number;
  /** Nape down to the underarm, lowered for the padding. */
  readonly scyeDepthMm: number;
  readonly backNeckWidthMm: number;
  readonly backNeckRiseMm: number;
  readonly frontNeckWidthMm: number;
  /** From the shoulder's neck point down to the top of the zip. */
  readonly frontNeckDepthMm: number;
  /** The front's shoulder stands this much higher than the back's, for the bust. */
  readonly frontBalanceMm: number;
  readonly shoulderMm: number;
  readonly backShoulderDropMm: number;
  readonly frontShoulderDropMm: number;
  /** How far the side comes in at the waist and goes out at the hem, from the underarm. */
  readonly waistInMm: number;
  readonly hemOutMm: number;
  readonly facingWidthMm: number;
  /** How much of the shoulder, from the neck, the facings take. */
  readonly facingShoulderMm: number;
  readonly backFacingDepthMm: number;
  /** Half of the pleat at the centre of the back lining. */
  readonly pleatMm: number;
  /** Shoulder end to the cuff's seam. */
  readonly sleeveMm: number;
  readonly topSleeveMm: number;
  /** The under sleeve is narrower by this at each of its two seams. */
  readonly underLessMm: number;
  readonly topWristMm: number;
  /** The cap is eased into the armhole by this much. */
  readonly capEaseMm: number;
  readonly cuffDepthMm: number;
  readonly collarHeightMm: number;
  readonly hoodHeightMm: number;
  readonly hoodDepthMm: number;
  readonly hoodCentreAtFaceMm: number;
  readonly hoodCentreAtNeckMm: number;
  /** The hood stops this far from the zip on each side. */
  readonly hoodStopsMm: number;
  readonly pocketWidthMm: number;
  readonly pocketHeightMm: number;
  readonly pocketCornerMm: number;
  readonly flap: { readonly depthMm: number; readonly overlapMm: number };
  readonly belt: { readonly lengthMm: number; readonly widthMm: number };
  readonly welt: { readonly lengthMm: number; readonly depthMm: number };
  readonly bag: { readonly widthMm: number; readonly depthMm: number; readonly cornerMm: number };
  /** Zip and wind flap begin this far above the hem, so that the wearer can stride. */
  readonly zipAboveHemMm: number;
  readonly windFlapMm: number;
}

export const fenwalkMeasures: CoatMeasures = {
  bustMm: 940,
  bustEaseMm: 232,
  frontMoreThanBackMm: 12,
  napeToWaistMm: 415,
  napeToHemMm: 1058,
  scyeDepthMm: 250,
  backNeckWidthMm: 82,
  backNeckRiseMm: 23,
  frontNeckWidthMm: 84,
  frontNeckDepthMm: 104,
  frontBalanceMm: 7,
  shoulderMm: 131,
  backShoulderDropMm: 39,
  frontShoulderDropMm: 46,
  waistInMm: 9,
  hemOutMm: 61,
  facingWidthMm: 96,
  facingShoulderMm: 52,
  backFacingDepthMm: 78,
  pleatMm: 24,
  sleeveMm: 562,
  topSleeveMm: 266,
  underLessMm: 51,
  topWristMm: 192,
  capEaseMm: 18,
  cuffDepthMm: 62,
  collarHeightMm: 76,
  hoodHeightMm: 352,
  hoodDepthMm: 246,
  hoodCentreAtFaceMm: 124,
  hoodCentreAtNeckMm: 92,
  hoodStopsMm: 18,
  pocketWidthMm: 184,
  pocketHeightMm: 214,
  pocketCornerMm: 36,
  flap: { depthMm: 68, overlapMm: 4 },
  belt: { lengthMm: 1720, widthMm: 46 },
  welt: { lengthMm: 154, depthMm: 26 },
  bag: { widthMm: 178, depthMm: 226, cornerMm: 42 },
  zipAboveHemMm: 256,
  windFlapMm: 58,
};

/** Half of the back at the bust, from the centre to the side seam. */
export function backQuarterMm(m: CoatMeasures): number {
  return (m.bustMm + m.bustEaseMm) / 4 - m.frontMoreThanBackMm / 2;
}

/** Half of the front at the bust, from the zip to the side seam. */
export function frontQuarterMm(m: CoatMeasures): number {
  return backQuarterMm(m) + m.frontMoreThanBackMm;
}
