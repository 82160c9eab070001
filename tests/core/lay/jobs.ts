/** Builders of small lay jobs, and seeded random ones with every rule mixed in. */
import type { Ring } from '../../../shared-core/geometry/ring.ts';
import type { LayJob, LayLength, LayRect, LayResult, LayShape } from '../../../shared-core/lay/job.ts';
import { lay, layProblems } from '../../../shared-core/lay/lay.ts';

export function ring(...points: readonly (readonly [number, number])[]): Ring {
  return Float64Array.from(points.flat());
}

export function rectangle(widthX: number, widthY: number): Ring {
  return ring([0, 0], [widthX, 0], [widthX, widthY], [0, widthY]);
}

/** Right-angled triangle with its square corner at the origin. */
export function wedge(widthX: number, widthY: number): Ring {
  return ring([0, 0], [widthX, 0], [0, widthY]);
}

export function shape(id: string, outline: Ring, more: Partial<LayShape> = {}): LayShape {
  return { id, ring: outline, count: 1, mirroredCount: 0, turnsDeg: [0, 180], ...more };
}

export function length(
  id: string,
  widthMm: number,
  lengthMm: number | null,
  flaws: readonly LayRect[] = [],
): LayLength {
  return { id, widthMm, lengthMm, flaws };
}

export function job(shapes: readonly LayShape[], more: Partial<LayJob> = {}): LayJob {
  return {
    shapes,
    lengths: [length('roll', 1400, null)],
    clearanceMm: 0,
    spread: 'open',
    repeat: null,
    seed: 11,
    ...more,
  };
}

/** Lays without looking at the time: the same on every machine. */
export function laid(asked: LayJob, iterations: number): LayResult {
  return lay(asked, { seconds: null, iterations }, { clock: () => 0 });
}

export function dice(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4294967296;
  };
}

/** A star-shaped outline: bulging, hollow or spiky. */
export function blob(next: () => number, spanX: number, spanY: number): Ring {
  const corners = 3 + Math.floor(next() * 14);
  const roughness = next() * 0.7;
  const points: [number, number][] = [];
  for (let i = 0; i < corners; i++) {
    const angle = ((i + 0.6 * next()) / corners) * 2 * Math.PI;
    const reach = 1 - roughness * next();
    points.push([Math.cos(angle) * reach * (spanX / 2), Math.sin(angle) * reach * (spanY / 2)]);
  }
  return ring(...points);
}

/** An outline torn all round: every corner lies anywhere between the oval and one smaller by `roughness` of it. */
export function roughOutline(
  next: () => number,
  corners: number,
  spanX: number,
  spanY: number,
  roughness: number,
): Ring {
  return ring(
    ...Array.from({ length: corners }, (_, i) => {
      const angle = ((i + 0.6 * next()) / corners) * 2 * Math.PI;
      const reach = (1 - roughness * next()) / 2;
      return [Math.cos(angle) * reach * spanX, Math.sin(angle) * reach * spanY] as const;
    }),
  );
}

/** A half whose straight edge lies on y = 0, and the whole that it opens to. */
export function foldedHalf(spanX: number, heightY: number, hollow: number): { half: Ring; whole: Ring } {
  const upper: [number, number][] = [
    [spanX, 0],
    [spanX * 0.93, heightY],
    [spanX * 0.5, heightY * (1 - hollow)],
    [0, heightY * 0.71],
    [0, 0],
  ];
  const lower = upper.slice(1, -1).map(([x, y]) => [x, -y] as [number, number]);
  return { half: ring(...upper), whole: ring(...upper, ...lower.reverse()) };
}

const TURNS = [[0], [0, 180], [0, 180], [0, 90, 180, 270], [0, 37.5, 180]];

/** A job with some of the rules, in proportions that stay solvable; null when this seed gives an impossible one. */
export function randomJob(seed: number): LayJob | null {
  const next = dice(seed + 1);
  const widthMm = 300 + Math.floor(next() * 1200);
  const spread = next() < 0.25 ? 'folded' : 'open';
  const usableMm = spread === 'folded' ? widthMm / 2 : widthMm;
  const repeat =
    next() < 0.25
      ? { alongMm: next() < 0.3 ? 0 : 40 + next() * 150, acrossMm: next() < 0.4 ? 0 : 30 + next() * 90 }
      : null;
  const shapes: LayShape[] = [];
  const kinds = 1 + Math.floor(next() * 3);
  for (let k = 0; k < kinds; k++) {
    const spanX = usableMm * (0.1 + 0.6 * next());
    const spanY = usableMm * (0.08 + 0.5 * next());
    const outline =
      next() < 0.25 ? rectangle(spanX, spanY) : next() < 0.3 ? wedge(spanX, spanY) : blob(next, spanX, spanY);
    const turnsDeg = TURNS[Math.floor(next() * TURNS.length)]!;
    const matched = repeat !== null && next() < 0.6;
    const match = matched
      ? { x: next() * spanX * 0.4, y: next() * spanY * 0.4, phaseX: next() * 50, phaseY: next() * 40 }
      : undefined;
    const count = Math.floor(next() * 4);
    const mirroredCount = next() < 0.5 ? Math.floor(next() * 3) : 0;
    const base = { count: count + mirroredCount === 0 ? 1 : count, mirroredCount, turnsDeg };
    if (spread === 'folded' && next() < 0.4) {
      const { half, whole } = foldedHalf(spanX, spanY, next() * 0.8);
      shapes.push(shape(`fold ${k}`, whole, { ...base, foldRing: half }));
    } else {
      shapes.push(shape(`kind ${k}`, outline, match === undefined ? base : { ...base, match }));
    }
  }
  const lengths: LayLength[] = [];
  const remnants = next() < 0.35 ? 1 + Math.floor(next() * 2) : 0;
  for (let k = 0; k < remnants; k++) {
    lengths.push(length(`remnant ${k}`, widthMm * (0.5 + 0.5 * next()), widthMm * (0.2 + next()), []));
  }
  if (remnants === 0 || next() < 0.6) lengths.push(length('roll', widthMm, null, []));
  const flawed = lengths.map((one) => {
    const flaws: LayRect[] = [];
    while (next() < 0.2) {
      flaws.push({
        x: next() * widthMm,
        y: next() * one.widthMm * 0.9,
        widthX: 5 + next() * widthMm * 0.2,
        widthY: 5 + next() * one.widthMm * 0.2,
      });
    }
    return { ...one, flaws };
  });
  const asked: LayJob = {
    shapes,
    lengths: flawed,
    clearanceMm: next() < 0.5 ? 0 : next() * 8,
    spread,
    repeat,
    seed,
  };
  return layProblems(asked).length === 0 ? asked : null;
}
