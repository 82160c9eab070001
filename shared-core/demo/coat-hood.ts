/**
 * Stand collar, and a hood of three panels that snaps on under it.
 * Collar: x from the neck up, y from the centre back (on the fold) to the front.
 * Hood side: x from the neck up, y from the face backwards. Centre panel: x from the neck over the head to the face.
 */
import type { Outline } from '../plan/model/outline.ts';
import { backDraft, frontDraft } from './coat-body.ts';
import {
  at,
  curve,
  foldEdge,
  line,
  moved,
  type Path,
  path,
  pathEnd,
  pathLengthMm,
  solve,
} from '../draft/pen.ts';
import { edge } from './coat-drawing.ts';
import type { CoatMeasures } from './coat-measures.ts';

/** From the centre back to the zip along the neckline. */
export function halfNeckMm(m: CoatMeasures): number {
  return pathLengthMm(backDraft(m).neckline) + pathLengthMm(frontDraft(m).neckline);
}

export function collar(m: CoatMeasures, neckSeam: 'neck' | 'facing neck' = 'neck'): Outline {
  const heightMm = m.collarHeightMm;
  // The neck edge lifts towards the front, so that the collar leans to the throat.
  const neck = (reachMm: number) =>
    path(at(15, reachMm), curve(at(9, reachMm - 70), at(0, reachMm * 0.42), at(0, 0)));
  const reachMm = solve(120, 400, halfNeckMm(m), (value) => pathLengthMm(neck(value)));
  const drawnNeck = neck(reachMm);
  const topFront = at(15 + heightMm, reachMm - 7);
  const top = path(at(heightMm, 0), curve(at(heightMm, reachMm * 0.42), moved(topFront, -5, -64), topFront));
  return {
    start: at(0, 0),
    edges: [
      foldEdge('centre back', path(at(0, 0), line(at(heightMm, 0)))),
      edge('top', top, 'collar edge'),
      edge('front end', path(topFront, line(drawnNeck.from)), 'collar edge'),
      edge('neck edge', drawnNeck, neckSeam),
    ],
  };
}

interface HoodDraft {
  readonly face: Path;
  readonly crown: Path;
  readonly neck: Path;
}

function hoodDraft(m: CoatMeasures): HoodDraft {
  const neckMm = halfNeckMm(m) - m.hoodStopsMm - m.hoodCentreAtNeckMm / 2;
  const faceFoot = at(6, 0);
  const faceTop = at(m.hoodHeightMm - 12, 8);
  const neck = (reachMm: number) => path(at(24, reachMm), curve(at(9, reachMm - 46), at(-7, 58), faceFoot));
  const drawnNeck = neck(solve(80, 240, neckMm, (value) => pathLengthMm(neck(value))));
  const face = path(faceFoot, curve(at(120, 7), at(m.hoodHeightMm - 130, -9), faceTop));
  const rear = at(m.hoodHeightMm * 0.6, m.hoodDepthMm);
  const crown = path(
    faceTop,
    curve(moved(faceTop, 24, 96), moved(rear, 96, 4), rear),
    curve(moved(rear, -72, -3), moved(drawnNeck.from, 52, 13), drawnNeck.from),
  );
  return { face, crown, neck: drawnNeck };
}

export function hoodSide(
  m: CoatMeasures,
  crownSeam: 'hood crown' | 'hood lining crown' = 'hood crown',
): Outline {
  const draft = hoodDraft(m);
  return {
    start: draft.face.from,
    edges: [
      edge('face', draft.face, 'hood face'),
      edge('crown', draft.crown, crownSeam),
      edge('neck', draft.neck, 'hood neck'),
    ],
  };
}

/** A tapered strip whose long edges are as long as the crown of a hood side. */
export function hoodCentre(
  m: CoatMeasures,
  crownSeam: 'hood crown' | 'hood lining crown' = 'hood crown',
): Outline {
  const taperMm = (m.hoodCentreAtFaceMm - m.hoodCentreAtNeckMm) / 2;
  const lengthMm = Math.sqrt(pathLengthMm(hoodDraft(m).crown) ** 2 - taperMm ** 2);
  const right = path(at(0, taperMm), line(at(lengthMm, 0)));
  const face = path(pathEnd(right), line(at(lengthMm, m.hoodCentreAtFaceMm)));
  const left = path(pathEnd(face), line(at(0, taperMm + m.hoodCentreAtNeckMm)));
  return {
    start: right.from,
    edges: [
      edge('right crown', right, crownSeam),
      edge('face', face, 'hood face'),
      edge('left crown', left, crownSeam),
      edge('neck', path(pathEnd(left), line(right.from)), 'hood neck'),
    ],
  };
}
