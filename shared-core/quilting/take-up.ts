/**
 * What quilting takes from the cloth: between two lines the cloth rises in an arc over the padding,
 * so the finished spacing is the chord and the cloth needed is the arc.
 */

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

/**
 * Take-up along and across the piece for lines that run one way: what rises between the lines is taken at right
 * angles to them. A rise above half of the spacing (a loft too great for such near lines) counts as that half.
 */
export function takeUpBoth(
  direction: 'across' | 'along',
  spacingMm: number,
  riseMm: number,
): { readonly alongRatio: number; readonly acrossRatio: number } {
  const ratio = takeUpRatio(spacingMm, Math.min(riseMm, spacingMm / 2));
  return direction === 'across'
    ? { alongRatio: ratio, acrossRatio: 0 }
    : { alongRatio: 0, acrossRatio: ratio };
}

/** Share of the cut size that quilting loses: 1 - chord / arc for an extra of takeUp (arc / chord - 1). */
export function lossRatio(takeUp: number): number {
  return 1 - 1 / (1 + takeUp);
}
