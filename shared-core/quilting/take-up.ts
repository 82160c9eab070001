/**
 * What quilting takes from the cloth. Between two lines it rises in an arc over the padding, so the finished spacing
 * is the chord and the cloth needed is the arc; and every row of stitches pulls it in a little, along the row too.
 */

/** Cloth that is cut larger, by ratios of its finished size along and across the grain; 0 or more. */
export interface TakeUp {
  readonly alongRatio: number;
  readonly acrossRatio: number;
}

/**
 * Extra cloth to cut for each unit of finished spacing: arc / chord - 1, 0 or more.
 * spacingMm: finished distance of the lines, above 0. riseMm: how far one face stands off the flat, 0 to spacingMm / 2.
 * Throws outside these. Source: geometry of a circular arc; flat faces and even lines assumed; a swatch beats it.
 */
export function takeUpRatio(spacingMm: number, riseMm: number): number {
  if (!(spacingMm > 0)) throw new RangeError(`quilting lines ${spacingMm} mm apart`);
  if (!(riseMm >= 0) || riseMm > spacingMm / 2)
    throw new RangeError(`a rise of ${riseMm} mm between lines ${spacingMm} mm apart`);
  if (riseMm === 0) return 0;
  const radiusMm = (spacingMm ** 2 / 4 + riseMm ** 2) / (2 * riseMm);
  // A quarter of the arc's turn by its tangent, which stays exact up to the half circle where the arc sine does not.
  return (4 * radiusMm * Math.atan((2 * riseMm) / spacingMm)) / spacingMm - 1;
}

/** The same where a rise above half of the spacing (a loft too great for such near lines) counts as that half. */
export function arcRatio(spacingMm: number, riseMm: number): number {
  return takeUpRatio(spacingMm, Math.min(riseMm, spacingMm / 2));
}

/**
 * Pull of the stitches in padded cloth, in each direction. Measured quilts of cotton over thin batting lost 2.2 to
 * 3.6 % each way; swatches from 0.6 % (a grid of 4 in) to 2.8 % (1 1/2 in), with washing 5.6 % and more.
 * Sources: a maker's sample page on quilting grids, 2020; four quilts before and after, a craft page.
 */
export const stitchPull = { usual: 0.025, min: 0.01, max: 0.05 } as const;

/** What padding is taken to take up, at right angles to the lines and along them, and from where to where it may lie. */
export interface EstimatedTakeUp {
  readonly ratio: number;
  readonly minRatio: number;
  readonly maxRatio: number;
}

/** Over the lines the arc or the pull of the stitches, whichever is more. */
export function takeUpOverLines(spacingMm: number, riseMm: number): EstimatedTakeUp {
  const arc = arcRatio(spacingMm, riseMm);
  return {
    ratio: Math.max(arc, stitchPull.usual),
    minRatio: stitchPull.min,
    maxRatio: Math.max(arc, stitchPull.max),
  };
}

/** Along the lines the pull of the stitches alone. */
export const takeUpAlongLines: EstimatedTakeUp = {
  ratio: stitchPull.usual,
  minRatio: stitchPull.min,
  maxRatio: stitchPull.max,
};

/** Share of the cut size that quilting loses: 1 - chord / arc for an extra of takeUp (arc / chord - 1). */
export function lossRatio(takeUp: number): number {
  return 1 - 1 / (1 + takeUp);
}
