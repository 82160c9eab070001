/**
 * The independent check of a lay. It shares no code with the engine: outlines are turned here, scaled to
 * integers and compared with an exact clipping library, always the outlines as asked, never simplified ones.
 *
 * Tolerance: a hundred-thousandth of the widest usable width (0.015 mm on 1450 mm cloth), for every edge.
 */
import { area, areaPaths, FillRule, xor } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';
import type { Problem } from '../measure/problem.ts';
import { inflated, integerPath, normalTurn, overlaps, points, turnedPoint } from './check-outline.ts';
import type { LayJob, LayResult, LayShape, Placement } from './job.ts';

/** Depth to which two edges may lie in each other before the check objects, mm. */
export function checkToleranceMm(job: LayJob): number {
  return 1e-5 * Math.max(...job.lengths.map((length) => length.widthMm));
}

interface Laid {
  readonly name: string;
  readonly placement: Placement;
  /** Outline in its own frame after mirroring and turning, grown by half the clearance less the tolerance; integers. */
  readonly grown: Paths64;
  /** Outline shrunk by the tolerance; integers. */
  readonly bare: Paths64;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

interface Outline {
  readonly points: readonly (readonly [number, number])[];
  readonly areaMm2: number;
  readonly grown: Paths64;
  readonly bare: Paths64;
}

const AGAIN = 'Lay again; if it comes back, keep the project file and report it.';

/** Does the shape, mirrored, cover the same cloth in some allowed turn? Within a ten-thousandth of its area. */
function isOwnMirrorImage(shape: LayShape, scale: number): boolean {
  const boxed = (turnDeg: number, mirrored: boolean): Path64 => {
    const outline = points(shape.ring, turnDeg, mirrored);
    const minX = Math.min(...outline.map(([x]) => x));
    const minY = Math.min(...outline.map(([, y]) => y));
    return integerPath(
      outline.map(([x, y]) => [x - minX, y - minY] as const),
      scale,
    );
  };
  const drawn = boxed(0, false);
  return shape.turnsDeg.some((turnDeg) => {
    const difference = xor([drawn], [boxed(turnDeg, true)], FillRule.NonZero);
    return Math.abs(areaPaths(difference)) <= 1e-4 * Math.abs(area(drawn));
  });
}

function countProblems(job: LayJob, result: LayResult, scale: number): Problem[] {
  const problems: Problem[] = [];
  const endless = job.lengths.some((length) => length.lengthMm === null);
  job.shapes.forEach((shape, index) => {
    const asked: (readonly [boolean, number])[] = [];
    if (job.spread === 'open') {
      asked.push([false, shape.count], [true, shape.mirroredCount]);
    } else if (shape.foldRing !== undefined) {
      asked.push([false, shape.count + shape.mirroredCount]);
    } else if (shape.count !== shape.mirroredCount && isOwnMirrorImage(shape, scale)) {
      asked.push([false, Math.ceil((shape.count + shape.mirroredCount) / 2)]);
    } else {
      asked.push([false, Math.max(shape.count, shape.mirroredCount)]);
    }
    for (const [mirrored, count] of asked) {
      const placed = result.placements.filter(
        (placement) =>
          placement.shape === index && (job.spread === 'folded' || placement.mirrored === mirrored),
      ).length;
      const left = result.unplaced
        .filter((entry) => entry.shape === index && (job.spread === 'folded' || entry.mirrored === mirrored))
        .reduce((sum, entry) => sum + entry.count, 0);
      if (placed + left !== count) {
        const kind = mirrored ? ' (mirrored)' : '';
        problems.push({
          where: `Shape ${shape.id}${kind}`,
          what: `is laid ${placed} times instead of ${count}`,
          mend: AGAIN,
        });
      }
      if (endless && left > 0) {
        problems.push({
          where: `Shape ${shape.id}`,
          what: 'is left out although the cloth is endless',
          mend: AGAIN,
        });
      }
    }
  });
  return problems;
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
    problems.push({ where: name, what, mend: AGAIN });
  };
  if (!shape.turnsDeg.some((turnDeg) => normalTurn(turnDeg) === normalTurn(placement.turnDeg))) {
    object(`is turned by ${placement.turnDeg} degrees, which its grain does not allow`);
  }
  if (placement.onFold !== (folded && shape.foldRing !== undefined)) {
    object(placement.onFold ? 'is laid on a fold that is not there' : 'is not laid on the fold');
  }
  if (placement.onFold) {
    const turn = normalTurn(placement.turnDeg);
    if (turn !== (placement.mirrored ? 180 : 0)) object('is turned away from the fold');
    if (Math.abs(laid.minY) > toleranceMm) object('does not lie on the fold');
  }
  const length = job.lengths[placement.length]!;
  const widthMm = folded ? length.widthMm / 2 : length.widthMm;
  if (laid.minY < -toleranceMm || laid.maxY > widthMm + toleranceMm) object('lies outside the usable width');
  if (laid.minX < -toleranceMm || laid.maxX > (length.lengthMm ?? Infinity) + toleranceMm) {
    object('lies beyond the end of its length');
  }
  if (shape.match !== undefined && job.repeat !== null) {
    const [x, y] = turnedPoint(shape.match.x, shape.match.y, placement.turnDeg, placement.mirrored);
    const along = phaseError(placement.x + x, shape.match.phaseX, job.repeat.alongMm);
    const across = phaseError(placement.y + y, shape.match.phaseY, job.repeat.acrossMm);
    if (along > toleranceMm || across > toleranceMm) object('does not meet the pattern repeat');
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

/**
 * Everything that is wrong with a lay; empty when it is sound: counts, turns, folds, repeat, nothing outside,
 * nothing on a flaw, nothing nearer than the clearance, and the lengths and utilisation that it claims.
 * Cost: a sweep over boxes, then one exact intersection for each pair of boxes that meet.
 */
export function checkLay(job: LayJob, result: LayResult): Problem[] {
  const toleranceMm = checkToleranceMm(job);
  const clearanceMm = job.clearanceMm;
  let extentMm = 0;
  for (const shape of job.shapes)
    for (const value of shape.ring) extentMm = Math.max(extentMm, Math.abs(value));
  const scale = Math.min(8e6 / Math.max(extentMm, clearanceMm, 1e-9), 30 / toleranceMm);
  const problems = countProblems(job, result, scale);

  const outlines = new Map<string, Outline>();
  const outlineOf = (placement: Placement): Outline => {
    const key = `${placement.shape} ${normalTurn(placement.turnDeg)} ${placement.mirrored} ${placement.onFold}`;
    let outline = outlines.get(key);
    if (outline === undefined) {
      const shape = job.shapes[placement.shape]!;
      const ring = placement.onFold ? (shape.foldRing ?? shape.ring) : shape.ring;
      const turned = points(ring, placement.turnDeg, placement.mirrored);
      const path = integerPath(turned, scale);
      outline = {
        points: turned,
        areaMm2: Math.abs(area(path)) / (scale * scale),
        grown: inflated(path, (clearanceMm / 2 - toleranceMm / 2) * scale),
        bare: inflated(path, -toleranceMm * scale),
      };
      outlines.set(key, outline);
    }
    return outline;
  };

  const laidByLength: Laid[][] = job.lengths.map(() => []);
  const used = job.lengths.map(() => 0);
  const placedArea = job.lengths.map(() => 0);
  for (const placement of result.placements) {
    const shape = job.shapes[placement.shape];
    if (shape === undefined || job.lengths[placement.length] === undefined) {
      problems.push({ where: 'The lay', what: 'names a shape or a length that is not there', mend: AGAIN });
      continue;
    }
    if (
      !Number.isFinite(placement.x) ||
      !Number.isFinite(placement.y) ||
      !Number.isFinite(placement.turnDeg)
    ) {
      problems.push({ where: `Shape ${shape.id}`, what: 'lies nowhere', mend: AGAIN });
      continue;
    }
    const outline = outlineOf(placement);
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    for (const [x, y] of outline.points) {
      minX = Math.min(minX, x + placement.x);
      maxX = Math.max(maxX, x + placement.x);
      minY = Math.min(minY, y + placement.y);
      maxY = Math.max(maxY, y + placement.y);
    }
    const laid: Laid = {
      name: `Shape ${shape.id}`,
      placement,
      grown: outline.grown,
      bare: outline.bare,
      minX,
      minY,
      maxX,
      maxY,
    };
    laidByLength[placement.length]!.push(laid);
    used[placement.length] = Math.max(used[placement.length]!, maxX);
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
        const dx = Math.round((second.placement.x - first.placement.x) * scale);
        const dy = Math.round((second.placement.y - first.placement.y) * scale);
        if (overlaps(first.grown, second.grown, dx, dy)) {
          const what =
            clearanceMm > 0
              ? `lies nearer than ${clearanceMm} mm to ${second.name}`
              : `lies on ${second.name}`;
          problems.push({ where: `${first.name} on ${length.id}`, what, mend: AGAIN });
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
        const dx = Math.round(one.placement.x * scale);
        const dy = Math.round(one.placement.y * scale);
        if (overlaps([rectangle], one.bare, dx, dy)) {
          problems.push({ where: `${one.name} on ${length.id}`, what: 'lies on a flaw', mend: AGAIN });
        }
      }
    }
    if (Math.abs((result.usedLengthMm[index] ?? Number.NaN) - used[index]!) <= 2 * toleranceMm) return;
    problems.push({
      where: `Length ${length.id}`,
      what: 'is used to another extent than the lay says',
      mend: AGAIN,
    });
  });

  let usedArea = 0;
  job.lengths.forEach((length, index) => {
    usedArea += used[index]! * (job.spread === 'folded' ? length.widthMm / 2 : length.widthMm);
  });
  const utilisation = usedArea === 0 ? 0 : placedArea.reduce((sum, one) => sum + one, 0) / usedArea;
  if (!(Math.abs(utilisation - result.utilisation) <= 1e-4)) {
    problems.push({ where: 'The lay', what: 'claims another utilisation than it has', mend: AGAIN });
  }
  if (
    !(used.reduce((sum, one) => sum + one, 0) >= result.floorMm - toleranceMm) &&
    result.unplaced.length === 0
  ) {
    problems.push({ where: 'The lay', what: 'is shorter than the floor that it claims', mend: AGAIN });
  }
  return problems;
}
