/** Whether a lay has every copy that was asked, no more and no fewer: a part of the independent check. */
import { say } from '../../wording/say.ts';
import { areaPaths, FillRule, xor } from 'clipper2-ts';
import type { Problem } from '../../measure/problem.ts';
import { boxOf, integerPath, points, spanMm } from './check-outline.ts';
import type { LayJob, LayResult, LayShape } from '../job.ts';

export const AGAIN = () => say('check-count.lay-again-if-it-comes-back');

type Outline = readonly (readonly [number, number])[];

/** Corners as they lie from the corner of their box on, after mirroring and turning. */
function boxed(shape: LayShape, turnDeg: number, mirrored: boolean): Outline {
  const outline = points(shape.ring, turnDeg, mirrored);
  const { minX, minY } = boxOf(outline);
  return outline.map(([x, y]) => [x - minX, y - minY] as const);
}

/** Is each corner of one within nearMm of the corner of the other that it meets, walked the other way round? */
function cornersMeet(one: Outline, mirrored: Outline, nearMm: number): boolean {
  const count = one.length;
  return one.some((_, shift) =>
    one.every(([x, y], index) => {
      const [u, v] = mirrored[(shift - index + 2 * count) % count]!;
      return Math.abs(x - u) <= nearMm && Math.abs(y - v) <= nearMm;
    }),
  );
}

/**
 * How many placements on folded cloth give the copies asked of a shape without a half on the fold. One that is its own
 * mirror image in some allowed turn is cut twice by each. Where its two sides differ by so little that rounding decides
 * (to a 5-millionth of its span, on the mean along its edges) both numbers are sound.
 */
function foldedCounts(shape: LayShape): readonly number[] {
  const { count, mirroredCount } = shape;
  const apart = Math.max(count, mirroredCount);
  const alike = Math.ceil((count + mirroredCount) / 2);
  if (apart === alike) return [apart];
  const span = spanMm(shape.ring);
  const scale = 8e6 / span;
  const drawn = boxed(shape, 0, false);
  const path = integerPath(drawn, scale);
  const lengthOf = path.reduce((sum, { x, y }, index) => {
    const next = path[(index + 1) % path.length]!;
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
  const images = shape.turnsDeg.map((turnDeg) => boxed(shape, turnDeg, true));
  if (images.some((image) => cornersMeet(drawn, image, 1e-7 * span))) return [alike];
  const isNear = images.some((image) => {
    const difference = Math.abs(areaPaths(xor([path], [integerPath(image, scale)], FillRule.NonZero)));
    return difference <= (5e-6 * 8e6 + 2) * lengthOf;
  });
  return isNear ? [alike, apart] : [apart];
}

/** [mirrored, the numbers of placements that are sound] for each kind of copy of a shape. */
function soundCounts(job: LayJob, shape: LayShape): readonly (readonly [boolean, readonly number[]])[] {
  if (job.spread === 'open') {
    return [
      [false, [shape.count]],
      [true, [shape.mirroredCount]],
    ];
  }
  return [[false, shape.foldRing !== undefined ? [shape.count + shape.mirroredCount] : foldedCounts(shape)]];
}

/** Has the endless length room for the shape, in an allowed turn and on the repeat? */
function fitsEndless(job: LayJob, shape: LayShape, mirrored: boolean): boolean {
  const endless = job.lengths.find((length) => length.lengthMm === null);
  if (endless === undefined) return false;
  const isFolded = job.spread === 'folded';
  const widthMm = isFolded ? endless.widthMm / 2 : endless.widthMm;
  const onFold = isFolded && shape.foldRing !== undefined;
  const acrossMm = shape.match === undefined ? 0 : (job.repeat?.acrossMm ?? 0);
  return shape.turnsDeg.some((turnDeg) =>
    (isFolded ? [false, true] : [mirrored]).some((flip) => {
      const { minY, maxY } = boxOf(points(onFold ? shape.foldRing! : shape.ring, turnDeg, flip));
      if (acrossMm === 0 || shape.match === undefined) return maxY - minY <= widthMm;
      // The match point stands this far above the lowest edge; the next line of the repeat that leaves room for it.
      const [[, matchY]] = points(Float64Array.of(shape.match.x, shape.match.y), turnDeg, flip) as [
        [number, number],
      ];
      const above = matchY - minY;
      const line = shape.match.phaseY + Math.ceil((above - shape.match.phaseY) / acrossMm) * acrossMm;
      return line - above + (maxY - minY) <= widthMm;
    }),
  );
}

export function countProblems(job: LayJob, result: LayResult): Problem[] {
  const problems: Problem[] = [];
  job.shapes.forEach((shape, index) => {
    for (const [mirrored, counts] of soundCounts(job, shape)) {
      const isOfKind = (one: { readonly shape: number; readonly mirrored: boolean }) =>
        one.shape === index && (job.spread === 'folded' || one.mirrored === mirrored);
      const placed = result.placements.filter(isOfKind).length;
      const left = result.unplaced.filter(isOfKind).reduce((sum, entry) => sum + entry.count, 0);
      if (!counts.includes(placed + left)) {
        problems.push({
          where: say('check-count.shape', { shapeId: shape.id, ifMirrored: mirrored ? 'yes' : 'no' }),
          what: say('check-count.is-laid-times-instead-of', {
            placed,
            counts: counts.join(say('check-count.or')),
          }),
          fix: AGAIN(),
        });
      }
      if (left > 0 && fitsEndless(job, shape, mirrored)) {
        problems.push({
          where: say('check-count.shape-2', { shapeId: shape.id }),
          what: say('check-count.is-left-out-although-the-cloth'),
          fix: AGAIN(),
        });
      }
    }
  });
  return problems;
}
