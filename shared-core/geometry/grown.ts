/** A ring grown outwards, for what is cut with so much to spare all round. */
import { Clipper, EndType, JoinType } from 'clipper2-ts';
import { remembered } from './remembered.ts';
import { fromPath, toPath, unitsPerMm } from './boolean.ts';
import { type Ring, ringAreaMm2 } from './ring.ts';

/** A corner reaches no further than this many times byMm; a sharper one is cut off square. */
const mitreLimit = 2;

/**
 * The ring moved outwards by byMm (0 or more), corners drawn out to their mitre, notches closed where their sides meet;
 * counter-clockwise, on a grid of 1/1000 mm. Throws for a negative byMm, or a ring without an area.
 */
export const ringGrown = remembered((ring: Ring, byMm: number): Ring => {
  if (!(byMm >= 0)) throw new RangeError(`grown by ${byMm} mm`);
  if (byMm === 0) return ring;
  const paths = Clipper.inflatePaths(
    [toPath(ring)],
    byMm * unitsPerMm,
    JoinType.Miter,
    EndType.Polygon,
    mitreLimit,
  );
  // A narrow hole between two parts of the piece is no place that anyone cuts out.
  const [outer] = paths.map(fromPath).sort((a, b) => Math.abs(ringAreaMm2(b)) - Math.abs(ringAreaMm2(a)));
  if (!outer) throw new RangeError('a ring without an area cannot grow');
  return outer;
});
