/** Outlines as the independent check of a lay turns, grows and compares them: its own geometry, none of the engine's. */
import { area, areaPaths, EndType, FillRule, inflatePaths, intersect, JoinType } from 'clipper2-ts';
import type { Path64, Paths64, Point64 } from 'clipper2-ts';
import { remembered } from '../../geometry/remembered.ts';
import type { Box } from '../../geometry/ring.ts';

/** The same turn from 0 to under 360 degrees. */
export function normalTurn(turnDeg: number): number {
  const turn = turnDeg % 360;
  return turn < 0 ? turn + 360 : turn;
}

/** The same turn, within what rounding makes of one: a hundred-millionth of a degree. */
export function isSameTurn(oneDeg: number, otherDeg: number): boolean {
  const apart = normalTurn(oneDeg - otherDeg);
  return Math.min(apart, 360 - apart) <= 1e-8;
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

export function boxOf(outline: readonly (readonly [number, number])[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const [x, y] of outline) {
    box.minX = Math.min(box.minX, x);
    box.maxX = Math.max(box.maxX, x);
    box.minY = Math.min(box.minY, y);
    box.maxY = Math.max(box.maxY, y);
  }
  return box;
}

/** The longer side of the box round a ring, mm. */
export function spanMm(ring: Float64Array): number {
  const { minX, minY, maxX, maxY } = boxOf(points(ring, 0, false));
  return Math.max(maxX - minX, maxY - minY);
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

/** Outlines are compared with many others, so the box of each is worked out once. */
const bounds = remembered(
  (paths: Paths64): Box => boxOf(paths.flatMap((path) => path.map(({ x, y }) => [x, y] as const))),
);

/**
 * The same outline within the box, with fewer corners outside: of corners one after the other that all lie beyond one
 * side of it the first and the last are enough. Empty where it lies wholly beyond a side.
 */
function thinnedOutside(path: Path64, box: Box): Path64 {
  const beyond: readonly ((point: Point64) => boolean)[] = [
    ({ x }) => x > box.maxX,
    ({ x }) => x < box.minX,
    ({ y }) => y > box.maxY,
    ({ y }) => y < box.minY,
  ];
  return beyond.reduce((left, isBeyond) => {
    const flags = left.map(isBeyond);
    return left.filter((_, i) => !(flags.at(i - 1) && flags[i] && flags[(i + 1) % flags.length]));
  }, path);
}

function movedPaths(paths: Paths64, dx: number, dy: number): Paths64 {
  return paths.map((path) => path.map((point) => ({ x: point.x + dx, y: point.y + dy })));
}

/** Whether two outlines share more than a few square units, the second moved by dx, dy units. */
export function overlaps(first: Paths64, second: Paths64, dx: number, dy: number): boolean {
  const one = bounds(first);
  const two = bounds(second);
  const meeting = {
    minX: Math.max(one.minX, two.minX + dx),
    minY: Math.max(one.minY, two.minY + dy),
    maxX: Math.min(one.maxX, two.maxX + dx),
    maxY: Math.min(one.maxY, two.maxY + dy),
  };
  if (meeting.minX >= meeting.maxX || meeting.minY >= meeting.maxY) return false;
  const beforeMove = {
    minX: meeting.minX - dx,
    minY: meeting.minY - dy,
    maxX: meeting.maxX - dx,
    maxY: meeting.maxY - dy,
  };
  const shared = intersect(
    thinned(first, meeting),
    movedPaths(thinned(second, beforeMove), dx, dy),
    FillRule.NonZero,
  );
  return Math.abs(areaPaths(shared)) > 4;
}

function thinned(paths: Paths64, box: Box): Paths64 {
  return paths.map((path) => thinnedOutside(path, box)).filter((path) => path.length > 2);
}
