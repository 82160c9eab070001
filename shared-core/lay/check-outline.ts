/** Outlines as the independent check of a lay turns, grows and compares them: its own geometry, none of the engine's. */
import { area, areaPaths, EndType, FillRule, inflatePaths, intersect, JoinType } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';

/** The same turn from 0 to under 360 degrees. */
export function normalTurn(turnDeg: number): number {
  const turn = turnDeg % 360;
  return turn < 0 ? turn + 360 : turn;
}

/** A point after mirroring (y becomes -y) and then turning about the origin, exact for quarter turns. */
export function turnedPoint(
  x: number,
  y: number,
  turnDeg: number,
  mirrored: boolean,
): readonly [number, number] {
  const up = mirrored ? -y : y;
  const turn = normalTurn(turnDeg);
  if (turn === 0) return [x, up];
  if (turn === 90) return [-up, x];
  if (turn === 180) return [-x, -up];
  if (turn === 270) return [up, -x];
  const angle = (turn / 180) * Math.PI;
  return [x * Math.cos(angle) - up * Math.sin(angle), x * Math.sin(angle) + up * Math.cos(angle)];
}

/** A ring as it lies after mirroring and turning. */
export function points(
  ring: Float64Array,
  turnDeg: number,
  mirrored: boolean,
): (readonly [number, number])[] {
  const result: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2)
    result.push(turnedPoint(ring[i]!, ring[i + 1]!, turnDeg, mirrored));
  return result;
}

/** Points on the integer grid of `scale` units a millimetre, counter-clockwise. */
export function integerPath(outline: readonly (readonly [number, number])[], scale: number): Path64 {
  const path = outline.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  return area(path) < 0 ? path.reverse() : path;
}

/** Grown by deltaUnits with round corners; shrunk where it is below 0. */
export function inflated(path: Path64, deltaUnits: number): Paths64 {
  if (Math.abs(deltaUnits) < 1) return [path];
  return inflatePaths(
    [path],
    deltaUnits,
    JoinType.Round,
    EndType.Polygon,
    2,
    Math.max(1, Math.abs(deltaUnits) * 0.002),
  );
}

function movedPaths(paths: Paths64, dx: number, dy: number): Paths64 {
  return paths.map((path) => path.map((point) => ({ x: point.x + dx, y: point.y + dy })));
}

/** Whether two outlines share more than a few square units, the second moved by dx, dy units. */
export function overlaps(first: Paths64, second: Paths64, dx: number, dy: number): boolean {
  const shared = intersect(first, movedPaths(second, dx, dy), FillRule.NonZero);
  return Math.abs(areaPaths(shared)) > 4;
}
