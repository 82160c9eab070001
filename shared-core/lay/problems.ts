import { say } from '../wording/say.ts';
import { crossingSides } from '../geometry/crossing.ts';
import { ringAreaMm2, ringBox, ringTurned } from '../geometry/ring.ts';
import type { Ring } from '../geometry/ring.ts';
import type { Problem } from '../measure/problem.ts';
import { laidRing, latticeUp, placementBatches, usableWidthMm } from './engine/model.ts';
import type { LayJob, LayShape, Placement } from './job.ts';

const FIT_MM = 1e-6;

function ringProblem(where: string, ring: Ring): Problem | null {
  if (ring.length < 6 || ring.length % 2 !== 0) {
    return {
      where,
      what: say('problems.has-fewer-than-three-corners'),
      fix: say('problems.draw-an-outline-with-three-corners'),
    };
  }
  if (!ring.every(Number.isFinite)) {
    return {
      where,
      what: say('problems.has-a-corner-that-is-not'),
      fix: say('problems.draw-the-outline-again'),
    };
  }
  const box = ringBox(ring);
  const area = Math.abs(ringAreaMm2(ring));
  if (area <= 1e-9 * ((box.maxX - box.minX) ** 2 + (box.maxY - box.minY) ** 2)) {
    return {
      where,
      what: say('problems.encloses-nothing'),
      fix: say('problems.draw-an-outline-that-goes-round'),
    };
  }
  if (crossingSides(ring) !== null) {
    return {
      where,
      what: say('problems.crosses-itself'),
      fix: say('problems.move-the-corners-so-that-no'),
    };
  }
  return null;
}

function isCount(value: number): boolean {
  return Number.isInteger(value) && value >= 0;
}

/** Widest problem first is no use to a maker: each shape is named with its own fix. */
function shapeProblems(job: LayJob, shape: LayShape): Problem[] {
  const where = say('problems.shape', { shapeId: shape.id });
  if (!isCount(shape.count) || !isCount(shape.mirroredCount)) {
    return [
      { where, what: say('problems.has-a-count-that-is-not'), fix: say('problems.type-how-many-to-cut-0') },
    ];
  }
  if (shape.turnsDeg.length === 0 || !shape.turnsDeg.every(Number.isFinite)) {
    return [
      { where, what: say('problems.has-no-allowed-turn'), fix: say('problems.allow-at-least-the-turn-in') },
    ];
  }
  const onFold = job.spread === 'folded' && shape.foldRing !== undefined;
  const ring = laidRing(job, shape);
  const wrong = ringProblem(onFold ? say('problems.its-half-on-the-fold', { where }) : where, ring);
  if (wrong !== null) return [wrong];
  if (onFold && Math.abs(ringBox(ring).minY) > 1e-3) {
    return [
      {
        where,
        what: say('problems.does-not-touch-the-fold'),
        fix: say('problems.draw-its-half-with-the-folded'),
      },
    ];
  }
  const match = shape.match;
  if (match !== undefined && ![match.x, match.y, match.phaseX, match.phaseY].every(Number.isFinite)) {
    return [
      {
        where,
        what: say('problems.has-a-match-point-that-is'),
        fix: say('problems.place-its-match-point-again'),
      },
    ];
  }
  return fitProblems(job, shape, ring, onFold);
}

/** Can the shape lie in some length's width, in some allowed turn, on the repeat if it has a match point? */
function fitProblems(job: LayJob, shape: LayShape, ring: Ring, onFold: boolean): Problem[] {
  const where = say('problems.shape', { shapeId: shape.id });
  const across = shape.match === undefined ? 0 : (job.repeat?.acrossMm ?? 0);
  const turns = onFold
    ? shape.turnsDeg.filter((turnDeg) => (((turnDeg % 360) + 360) % 360) % 180 === 0)
    : shape.turnsDeg;
  const mirrors = job.spread === 'folded' ? [false, true] : [];
  if (job.spread === 'open' && shape.count > 0) mirrors.push(false);
  if (job.spread === 'open' && shape.mirroredCount > 0) mirrors.push(true);
  const widestMm = Math.max(...job.lengths.map((length) => usableWidthMm(job, length.widthMm)));
  for (const mirrored of mirrors) {
    let fitsWidth = false;
    let fitsRepeat = false;
    for (const turnDeg of turns) {
      if (onFold && mirrored !== (((turnDeg % 360) + 360) % 360 === 180)) continue;
      const box = ringBox(ringTurned(ring, turnDeg, mirrored));
      const heightMm = box.maxY - box.minY;
      if (heightMm > widestMm + FIT_MM) continue;
      fitsWidth = true;
      if (across === 0) {
        fitsRepeat = true;
        continue;
      }
      const matched =
        ringTurned(Float64Array.of(shape.match!.x, shape.match!.y), turnDeg, mirrored)[1]! - box.minY;
      const lowest = latticeUp(-FIT_MM, across, shape.match!.phaseY, matched, 0);
      if (onFold ? Math.abs(lowest) <= 2 * FIT_MM : lowest + heightMm <= widestMm + FIT_MM) fitsRepeat = true;
    }
    if (onFold && !fitsWidth && mirrored !== mirrors.at(-1)) continue;
    if (!fitsWidth) {
      return [
        {
          where,
          what: say('problems.is-wider-than-every-length-no', { widestMm: Math.round(widestMm) }),
          fix: say('problems.use-wider-cloth-allow-more-turns'),
        },
      ];
    }
    if (!fitsRepeat) {
      return [
        {
          where,
          what: say('problems.cannot-stand-on-the-pattern-repeat'),
          fix: say('problems.move-its-match-point-or-use'),
        },
      ];
    }
    if (onFold) return [];
  }
  return [];
}

function lengthProblems(job: LayJob): Problem[] {
  const problems: Problem[] = [];
  job.lengths.forEach((length, index) => {
    const where = say('problems.length', { lengthId: length.id });
    if (!Number.isFinite(length.widthMm) || length.widthMm <= 0) {
      problems.push({
        where,
        what: say('problems.has-no-usable-width'),
        fix: say('problems.type-a-width-above-0'),
      });
    }
    if (length.lengthMm !== null && (!Number.isFinite(length.lengthMm) || length.lengthMm <= 0)) {
      problems.push({
        where,
        what: say('problems.has-no-length'),
        fix: say('problems.type-a-length-above-0-or'),
      });
    }
    if (length.lengthMm === null && index < job.lengths.length - 1) {
      problems.push({
        where,
        what: say('problems.is-endless-but-not-the-last'),
        fix: say('problems.put-the-endless-length-last'),
      });
    }
    for (const flaw of length.flaws) {
      const sound =
        [flaw.x, flaw.y, flaw.widthX, flaw.widthY].every(Number.isFinite) &&
        flaw.widthX > 0 &&
        flaw.widthY > 0;
      if (!sound) {
        problems.push({
          where,
          what: say('problems.has-a-flaw-without-a-size'),
          fix: say('problems.mark-the-flaw-as-a-rectangle'),
        });
      }
    }
  });
  return problems;
}

/**
 * Copies, and outlines in each of their turns, that a lay takes at once: for each pair of copies 20 bytes are kept, for
 * each pair of outlines 4. Measured on one thread: 5,000 copies of ten kinds take 0.5 GB of addresses, 0.3 GB of them in
 * use, and the first lay of them 0.3 s.
 */
const MOST_COPIES = 5000;
const MOST_FORMS = 6000;

function sizeProblems(job: LayJob): Problem[] {
  const problems: Problem[] = [];
  const refuse = (count: number, things: string, max: number): void => {
    problems.push({
      where: say('common.the-lay'),
      what: say('problems.has-to-lay-at-once-more', { count, things, max }),
      fix: say('problems.plan-fewer-coats-at-once-and'),
    });
  };
  const flaws = job.lengths.reduce((sum, length) => sum + length.flaws.length, 0);
  let copies = 0;
  let forms = flaws;
  for (const shape of job.shapes) {
    for (const batch of placementBatches(job, shape)) {
      copies += batch.count;
      if (batch.count > 0) forms += shape.turnsDeg.length * (job.spread === 'folded' ? 2 : 1);
    }
  }
  if (copies + flaws > MOST_COPIES)
    refuse(copies, flaws > 0 ? say('problems.copies-and-flaws', { flaws }) : 'copies', MOST_COPIES);
  else if (forms > MOST_FORMS) refuse(forms, say('problems.outlines-each-turn-counted'), MOST_FORMS);
  return problems;
}

/** Held copies must be copies of the job, on its lengths. Whether they lie on each other is for the check to say. */
function heldProblems(job: LayJob): Problem[] {
  const held = job.held ?? [];
  const refuse = (where: string, what: string): Problem => ({
    where,
    what,
    fix: say('problems.let-go-of-it-and-lay'),
  });
  const problems = held.flatMap((one) => {
    if (job.shapes[one.shape] === undefined)
      return [refuse(say('problems.a-held-piece'), say('common.is-not-in-the-plan'))];
    const where = say('problems.shape-2', { shapesId: job.shapes[one.shape]!.id });
    if (job.lengths[one.length] === undefined)
      return [refuse(where, say('problems.is-held-on-a-length-that'))];
    if (![one.x, one.y, one.turnDeg].every(Number.isFinite))
      return [refuse(where, say('problems.is-held-nowhere'))];
    return [];
  });
  if (problems.length > 0) return problems;
  return job.shapes.flatMap((shape, index) =>
    placementBatches(job, shape).flatMap((batch) => {
      const isOfKind = (one: Placement) =>
        one.shape === index && (job.spread === 'folded' || one.mirrored === batch.mirrored);
      return held.filter(isOfKind).length > batch.count
        ? [refuse(say('problems.shape', { shapeId: shape.id }), say('problems.is-held-more-often-than-it'))]
        : [];
    }),
  );
}

/** Everything that keeps a job from being laid; empty when it can be. */
export function layProblems(job: LayJob): Problem[] {
  if (job.lengths.length === 0) {
    return [
      {
        where: say('common.the-lay'),
        what: say('problems.has-no-cloth'),
        fix: say('problems.choose-at-least-one-length'),
      },
    ];
  }
  const problems = lengthProblems(job);
  if (!Number.isFinite(job.clearanceMm) || job.clearanceMm < 0) {
    problems.push({
      where: say('problems.clearance'),
      what: say('problems.is-not-0-or-more'),
      fix: say('problems.type-the-distance-between-pieces-0'),
    });
  }
  const repeat = job.repeat;
  if (
    repeat !== null &&
    ![repeat.alongMm, repeat.acrossMm].every((step) => Number.isFinite(step) && step >= 0)
  ) {
    problems.push({
      where: say('problems.pattern-repeat'),
      what: say('problems.is-not-0-or-more'),
      fix: say('problems.type-the-repeat-in-each-direction'),
    });
  }
  if (!Number.isFinite(job.seed)) {
    problems.push({
      where: say('common.the-lay'),
      what: say('problems.has-a-seed-that-is-not'),
      fix: say('problems.use-any-whole-number'),
    });
  }
  if (problems.length > 0) return problems;
  for (const shape of job.shapes) problems.push(...shapeProblems(job, shape));
  problems.push(...heldProblems(job));
  return problems.length > 0 ? problems : sizeProblems(job);
}
