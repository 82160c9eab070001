/**
 * The independent check of a lay. It shares no code with the engine: outlines are turned here, scaled to
 * integers and compared with an exact clipping library, always the outlines as asked, never simplified ones.
 *
 * Tolerance: a hundred-thousandth of the widest usable width (0.015 mm on 1450 mm cloth), for every edge.
 */
import { say } from '../../wording/say.ts';
import { area } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';
import type { Box } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import { AGAIN, countProblems } from './check-count.ts';
import {
  boxOf,
  inflated,
  integerPath,
  isSameTurn,
  normalTurn,
  overlaps,
  points,
  spanMm,
  turnedPoint,
} from './check-outline.ts';
import type { LayJob, LayResult, Placement } from '../job.ts';

/** Depth to which two edges may lie in each other before the check objects, mm. */
export function checkToleranceMm(job: LayJob): number {
  return 1e-5 * Math.max(...job.lengths.map((length) => length.widthMm));
}

interface Outline {
  /** Where the outline lies with its shape's origin at 0, 0, mirrored and turned. */
  readonly box: Box;
  readonly areaMm2: number;
  /** Grown by half the clearance less the tolerance, from the corner of its box on; integers. */
  readonly grown: () => Paths64;
  /** Shrunk by the tolerance; integers. */
  readonly bare: () => Paths64;
}

interface Laid extends Box {
  readonly name: string;
  readonly placement: Placement;
  readonly outline: Outline;
}

function phaseError(value: number, phase: number, step: number): number {
  if (step === 0) return 0;
  const turns = (value - phase) / step;
  return Math.abs(turns - Math.round(turns)) * step;
}

/** Turn, mirror, fold, repeat and place of one placement. */
function placementProblems(job: LayJob, laid: Laid, toleranceMm: number): Problem[] {
  const problems: Problem[] = [];
  const { placement, name } = laid;
  const shape = job.shapes[placement.shape]!;
  const folded = job.spread === 'folded';
  const object = (what: string): void => {
    problems.push({ where: name, what, fix: AGAIN() });
  };
  if (!shape.turnsDeg.some((turnDeg) => isSameTurn(turnDeg, placement.turnDeg))) {
    object(say('check.is-turned-by-degrees-which-its', { turnDeg: placement.turnDeg }));
  }
  if (placement.onFold !== (folded && shape.foldRing !== undefined)) {
    object(placement.onFold ? say('check.is-laid-on-a-fold-that') : say('check.is-not-laid-on-the-fold'));
  }
  if (placement.onFold) {
    if (!isSameTurn(placement.turnDeg, placement.mirrored ? 180 : 0))
      object(say('check.is-turned-away-from-the-fold'));
    if (Math.abs(laid.minY) > toleranceMm) object(say('check.does-not-lie-on-the-fold'));
  }
  const length = job.lengths[placement.length]!;
  const widthMm = folded ? length.widthMm / 2 : length.widthMm;
  if (laid.minY < -toleranceMm || laid.maxY > widthMm + toleranceMm)
    object(say('check.lies-outside-the-usable-width'));
  if (laid.minX < -toleranceMm || laid.maxX > (length.lengthMm ?? Infinity) + toleranceMm) {
    object(say('check.lies-beyond-the-end-of-its'));
  }
  if (shape.match !== undefined && job.repeat !== null) {
    const [x, y] = turnedPoint(shape.match.x, shape.match.y, placement.turnDeg, placement.mirrored);
    const along = phaseError(placement.x + x, shape.match.phaseX, job.repeat.alongMm);
    const across = phaseError(placement.y + y, shape.match.phaseY, job.repeat.acrossMm);
    if (along > toleranceMm || across > toleranceMm) object(say('check.does-not-meet-the-pattern-repeat'));
  }
  return problems;
}

function flawBoxes(job: LayJob, index: number): { minX: number; minY: number; maxX: number; maxY: number }[] {
  const length = job.lengths[index]!;
  const half = length.widthMm / 2;
  return length.flaws.map((flaw) => {
    const box = { minX: flaw.x, maxX: flaw.x + flaw.widthX, minY: flaw.y, maxY: flaw.y + flaw.widthY };
    if (job.spread === 'open') return box;
    // Folded about the middle, a flaw in either ply spoils both.
    const below = Math.max(half - box.minY, half - box.maxY);
    const above = Math.max(box.minY - half, box.maxY - half);
    const far = Math.max(below, above);
    const near =
      box.minY < half && box.maxY > half
        ? 0
        : Math.max(0, Math.min(Math.abs(half - box.minY), Math.abs(half - box.maxY)));
    return { ...box, minY: near, maxY: far };
  });
}

/** Judges one lay after another of a job; outlines are grown once for all of them. See checkLay. */
export function layChecker(job: LayJob): (result: LayResult) => Problem[] {
  const toleranceMm = checkToleranceMm(job);
  const extentMm = Math.max(0, ...job.shapes.map((shape) => spanMm(shape.ring)));
  const scale = Math.min(8e6 / Math.max(extentMm, job.clearanceMm, 1e-9), 30 / toleranceMm);
  const outlines = new Map<string, Outline>();
  const outlineOf = (placement: Placement): Outline => {
    const key = `${placement.shape} ${normalTurn(placement.turnDeg)} ${placement.mirrored} ${placement.onFold}`;
    const known = outlines.get(key);
    if (known !== undefined) return known;
    const shape = job.shapes[placement.shape]!;
    const ring = placement.onFold ? (shape.foldRing ?? shape.ring) : shape.ring;
    const turned = points(ring, placement.turnDeg, placement.mirrored);
    const box = boxOf(turned);
    // From the corner of its box on: however far from its origin it was drawn, the integers stay small.
    const path = integerPath(
      turned.map(([x, y]) => [x - box.minX, y - box.minY] as const),
      scale,
    );
    const outline = {
      box,
      areaMm2: Math.abs(area(path)) / (scale * scale),
      grown: once(() => inflated(path, (job.clearanceMm / 2 - toleranceMm / 2) * scale)),
      bare: once(() => inflated(path, -toleranceMm * scale)),
    };
    outlines.set(key, outline);
    return outline;
  };
  return (result) => layFaults(job, result, scale, outlineOf);
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/**
 * Everything that is wrong with a lay; empty when it is sound: counts, turns, folds, repeat, nothing outside,
 * nothing on a flaw, nothing nearer than the clearance, and the lengths and utilisation that it claims.
 * Cost: a sweep over boxes, then one exact intersection for each pair of boxes that meet.
 */
export function checkLay(job: LayJob, result: LayResult): Problem[] {
  return layChecker(job)(result);
}

function layFaults(
  job: LayJob,
  result: LayResult,
  scale: number,
  outlineOf: (placement: Placement) => Outline,
): Problem[] {
  const toleranceMm = checkToleranceMm(job);
  const clearanceMm = job.clearanceMm;
  const problems = countProblems(job, result);
  const laidByLength: Laid[][] = job.lengths.map(() => []);
  const used = job.lengths.map(() => 0);
  const placedArea = job.lengths.map(() => 0);
  for (const placement of result.placements) {
    const shape = job.shapes[placement.shape];
    if (shape === undefined || job.lengths[placement.length] === undefined) {
      problems.push({
        where: say('common.the-lay'),
        what: say('check.names-a-shape-or-a-length'),
        fix: AGAIN(),
      });
      continue;
    }
    if (
      !Number.isFinite(placement.x) ||
      !Number.isFinite(placement.y) ||
      !Number.isFinite(placement.turnDeg)
    ) {
      problems.push({
        where: say('check.shape', { shapeId: shape.id }),
        what: say('check.lies-nowhere'),
        fix: AGAIN(),
      });
      continue;
    }
    const outline = outlineOf(placement);
    const { box } = outline;
    const laid: Laid = {
      name: say('check.shape', { shapeId: shape.id }),
      placement,
      outline,
      minX: box.minX + placement.x,
      maxX: box.maxX + placement.x,
      minY: box.minY + placement.y,
      maxY: box.maxY + placement.y,
    };
    laidByLength[placement.length]!.push(laid);
    used[placement.length] = Math.max(used[placement.length]!, laid.maxX);
    placedArea[placement.length]! += outline.areaMm2;
    problems.push(...placementProblems(job, laid, toleranceMm));
  }

  job.lengths.forEach((length, index) => {
    const laid = laidByLength[index]!.sort((a, b) => a.minX - b.minX);
    const reachMm = clearanceMm - toleranceMm;
    for (let i = 0; i < laid.length; i++) {
      const first = laid[i]!;
      for (let j = i + 1; j < laid.length; j++) {
        const second = laid[j]!;
        if (second.minX - first.maxX >= reachMm) break;
        if (second.minY - first.maxY >= reachMm || first.minY - second.maxY >= reachMm) continue;
        const dx = Math.round((second.minX - first.minX) * scale);
        const dy = Math.round((second.minY - first.minY) * scale);
        if (overlaps(first.outline.grown(), second.outline.grown(), dx, dy)) {
          const what =
            clearanceMm > 0
              ? say('check.lies-nearer-than-mm-to', { clearanceMm, secondName: second.name })
              : say('check.lies-on', { secondName: second.name });
          problems.push({
            where: say('check.on', { firstName: first.name, lengthId: length.id }),
            what,
            fix: AGAIN(),
          });
        }
      }
    }
    for (const flaw of flawBoxes(job, index)) {
      const rectangle: Path64 = [
        { x: Math.round(flaw.minX * scale), y: Math.round(flaw.minY * scale) },
        { x: Math.round(flaw.maxX * scale), y: Math.round(flaw.minY * scale) },
        { x: Math.round(flaw.maxX * scale), y: Math.round(flaw.maxY * scale) },
        { x: Math.round(flaw.minX * scale), y: Math.round(flaw.maxY * scale) },
      ];
      for (const one of laid) {
        if (one.maxX <= flaw.minX || one.minX >= flaw.maxX || one.maxY <= flaw.minY || one.minY >= flaw.maxY)
          continue;
        const dx = Math.round(one.minX * scale);
        const dy = Math.round(one.minY * scale);
        if (overlaps([rectangle], one.outline.bare(), dx, dy)) {
          problems.push({
            where: say('check.on-2', { oneName: one.name, lengthId: length.id }),
            what: say('check.lies-on-a-flaw'),
            fix: AGAIN(),
          });
        }
      }
    }
    if (Math.abs((result.usedLengthMm[index] ?? Number.NaN) - used[index]!) <= 2 * toleranceMm) return;
    problems.push({
      where: say('check.length', { lengthId: length.id }),
      what: say('check.is-used-to-another-extent-than'),
      fix: AGAIN(),
    });
  });

  let usedArea = 0;
  job.lengths.forEach((length, index) => {
    usedArea += used[index]! * (job.spread === 'folded' ? length.widthMm / 2 : length.widthMm);
  });
  const utilisation = usedArea === 0 ? 0 : placedArea.reduce((sum, one) => sum + one, 0) / usedArea;
  if (!(Math.abs(utilisation - result.utilisation) <= 1e-4)) {
    problems.push({
      where: say('common.the-lay'),
      what: say('check.claims-another-utilisation-than-it-has'),
      fix: AGAIN(),
    });
  }
  if (
    !(used.reduce((sum, one) => sum + one, 0) >= result.floorMm - toleranceMm) &&
    result.unplaced.length === 0
  ) {
    problems.push({
      where: say('common.the-lay'),
      what: say('check.is-shorter-than-the-floor-that'),
      fix: AGAIN(),
    });
  }
  return problems;
}
