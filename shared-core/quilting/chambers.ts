/**
 * Chambers between sewn-through lines: both faces rise in an arc from line to line, so the section of a chamber is
 * a lens of two circular arcs. Cloth is cut larger by one share over the whole piece, so a narrower channel rises
 * less, in proportion.
 */
import type { Channel } from './lines.ts';

/**
 * Area of the lens between two lines, mm2: spacingMm apart (above 0), each face riseMm off the flat (0 to half of it).
 * Throws outside these. Source: geometry, two circular arcs.
 */
export function lensAreaMm2(spacingMm: number, riseMm: number): number {
  if (!(spacingMm > 0)) throw new RangeError(`quilting lines ${spacingMm} mm apart`);
  if (!(riseMm >= 0) || riseMm > spacingMm / 2) {
    throw new RangeError(`a rise of ${riseMm} mm between lines ${spacingMm} mm apart`);
  }
  // Below this the exact form loses all its digits; the parabola is equal to it there.
  if (riseMm < spacingMm * 1e-4) return (4 * spacingMm * riseMm) / 3;
  const radiusMm = (spacingMm ** 2 / 4 + riseMm ** 2) / (2 * riseMm);
  // By the tangent of a quarter of the turn, which stays exact up to the half circle.
  const turn = 4 * Math.atan((2 * riseMm) / spacingMm);
  return radiusMm ** 2 * (turn - Math.sin(turn));
}

/** Mean thickness of a chamber over its spacing, mm; the peak is twice the rise. */
export function averageLoftMm(spacingMm: number, riseMm: number): number {
  return lensAreaMm2(spacingMm, riseMm) / spacingMm;
}

export interface Chamber {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly volumeCm3: number;
}

/**
 * The chamber in a channel. riseMm belongs to channels of spacingMm; others rise in proportion to their width.
 * A channel wider than the spacing cannot be made by ringLines, but would rise no higher than half its width.
 */
export function chamberOf(channel: Channel, spacingMm: number, riseMm: number): Chamber {
  const ownRiseMm = (riseMm * channel.widthMm) / spacingMm;
  return {
    widthMm: channel.widthMm,
    lengthMm: channel.lengthMm,
    volumeCm3: (lensAreaMm2(channel.widthMm, ownRiseMm) * channel.lengthMm) / 1000,
  };
}

/**
 * Grams of loose fill for a volume: volumeCm3 / fillPowerCm3PerG x overfillFactor (1.2 is 20 % over).
 * Throws when fill power or factor are not above 0, or the volume is negative.
 */
export function fillMassG(volumeCm3: number, fillPowerCm3PerG: number, overfillFactor: number): number {
  if (!(volumeCm3 >= 0)) throw new RangeError(`a chamber of ${volumeCm3} cm3`);
  if (!(fillPowerCm3PerG > 0)) throw new RangeError(`a fill power of ${fillPowerCm3PerG} cm3/g`);
  if (!(overfillFactor > 0)) throw new RangeError(`an overfill factor of ${overfillFactor}`);
  return (volumeCm3 / fillPowerCm3PerG) * overfillFactor;
}
