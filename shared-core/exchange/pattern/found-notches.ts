/** Notches of a drawn piece put on the edges that they lie on. */
import { say } from '../../wording/say.ts';
import type { Point } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import type { Notch } from '../../plan/model/coat-plan.ts';
import type { Outline } from '../../plan/model/outline.ts';
import { edgePoints } from '../../plan/geometry/outline-ring.ts';
import { distance } from './drawn.ts';
import { nearestOnStep } from './edges.ts';
import type { ReadMeter } from '../read-meter.ts';

/** A notch may lie this far off the line it belongs to, mm. */
const notchReachMm = 5;
const maxNotches = 500;

/** Notches may be drawn on the sewing line or on the boundary: each goes to the edge whose line or allowance it lies on. */
export function settledNotches(
  drawn: readonly Point[],
  outline: Outline,
  where: string,
  meter: ReadMeter,
  problems: Problem[],
): Notch[] {
  const chains = outline.edges.map((edge, index) => ({ edge, points: edgePoints(outline, index, 0.02) }));
  const pointCount = chains.reduce((sum, { points }) => sum + points.length, 0);
  const notches: Notch[] = [];
  let lost = Math.max(0, drawn.length - maxNotches);
  for (const at of drawn.slice(0, maxNotches)) {
    // Once to find its place, and once more where the piece is looked over.
    meter.steps(2 * pointCount, where);
    let best: { notch: Notch; offMm: number; farMm: number } | null = null;
    for (const { edge, points } of chains) {
      const { atMm, farMm } = nearestAlong(points, at);
      const offMm = Math.min(farMm, Math.abs(farMm - edge.allowanceMm));
      if (offMm > notchReachMm) continue;
      const isBetter =
        !best || offMm < best.offMm - 0.05 || (offMm < best.offMm + 0.05 && farMm < best.farMm);
      if (isBetter) best = { notch: { edge: edge.name, atMm }, offMm, farMm };
    }
    if (best) notches.push(best.notch);
    else lost++;
  }
  if (lost > 0)
    problems.push({
      where,
      what: say('found-notches.has-notches-that-lie-on-none', { lost }),
      fix: say('found-notches.it-comes-in-without-set-them'),
    });
  return notches;
}

function nearestAlong(points: readonly Point[], to: Point): { atMm: number; farMm: number } {
  let atMm = 0;
  let farMm = Infinity;
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1]!;
    const step = distance(from, points[i]!);
    const { at, share } = nearestOnStep(from, points[i]!, to);
    const mm = distance(at, to);
    if (mm < farMm) {
      farMm = mm;
      atMm = along + step * share;
    }
    along += step;
  }
  return { atMm, farMm };
}
