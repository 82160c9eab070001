/**
 * Stand collar, and hoods of two or three panels.
 * Collar: x from the neck up, y from the centre back (on the fold) to the front.
 * Hood side: x from the neck up, y from the face backwards. Centre panel: x from the neck over the head to the face.
 */
import type { Outline } from '../plan/model/outline.ts';
import { halfNeckMm } from './body-pieces.ts';
import type { Block } from './block.ts';
import type { DraftInput } from './draft-input.ts';
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
  sewnEdge,
  solve,
} from './pen.ts';

/** How high a stand collar stands. */
export function collarHeightMm(block: Block): number {
  return 30 + 0.05 * block.body.bustMm;
}

export function collarOutline(block: Block, neckSeam: 'neck' | 'facing neck'): Outline {
  const heightMm = collarHeightMm(block);
  const neckMm = halfNeckMm(block);
  // The neck edge lifts towards the front, so that the collar leans to the throat.
  const liftMm = 0.075 * neckMm;
  const neck = (reachMm: number) =>
    path(at(liftMm, reachMm), curve(at(0.6 * liftMm, reachMm * 0.66), at(0, reachMm * 0.42), at(0, 0)));
  const reachMm = solve(0.7 * neckMm, neckMm, neckMm, (value) => pathLengthMm(neck(value)));
  const drawnNeck = neck(reachMm);
  const topFront = at(liftMm + heightMm, reachMm - 0.035 * neckMm);
  const top = path(
    at(heightMm, 0),
    curve(at(heightMm, reachMm * 0.42), moved(topFront, -0.33 * liftMm, -0.32 * reachMm), topFront),
  );
  const edge = (name: string, drawn: Path, seam: string) => sewnEdge(name, drawn, seam, block.allowanceMm);
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

/** Under a collar the hood snaps on and stops short of the front; alone it is sewn to the whole neckline. */
const stopsMm = 18;

interface Hood {
  readonly face: Path;
  readonly crown: Path;
  readonly neck: Path;
  readonly centreAtFaceMm: number;
  readonly centreAtNeckMm: number;
}

function hoodOf(input: DraftInput, block: Block): Hood {
  // The padding lies over the head, behind it and on both of its sides.
  const paddingMm = block.neckPaddingMm / (2 * Math.PI);
  const heightMm = 230 + 0.072 * block.body.heightMm + paddingMm;
  const s = heightMm / 352;
  const hasCentre = input.hood === 'three panels';
  const centreAtNeckMm = hasCentre ? 92 * s : 0;
  const neckMm = halfNeckMm(block) - (input.hasCollar ? stopsMm : 0) - centreAtNeckMm / 2;
  const faceFoot = at(6 * s, 0);
  const faceTop = at(heightMm - 12 * s, 8 * s);
  const neck = (reachMm: number) =>
    path(at(24 * s, reachMm), curve(at(9 * s, reachMm * 0.68), at(-7 * s, reachMm * 0.42), faceFoot));
  const reachMm = solve(0.5 * neckMm, neckMm, neckMm, (value) => pathLengthMm(neck(value)));
  const drawnNeck = neck(reachMm);
  const depthMm = Math.max((hasCentre ? 0.7 : 0.76) * heightMm, 1.12 * reachMm + 20) + paddingMm;
  const rear = at(heightMm * 0.6, depthMm);
  return {
    face: path(faceFoot, curve(at(heightMm * 0.34, 7 * s), at(heightMm * 0.63, -9 * s), faceTop)),
    crown: path(
      faceTop,
      curve(moved(faceTop, 24 * s, 0.4 * depthMm), moved(rear, 96 * s, 4 * s), rear),
      curve(moved(rear, -72 * s, -3 * s), moved(drawnNeck.from, 52 * s, 13 * s), drawnNeck.from),
    ),
    neck: drawnNeck,
    centreAtFaceMm: 124 * s + 2 * paddingMm,
    centreAtNeckMm,
  };
}

/** Names of the seams that a layer of the hood is sewn in. */
export interface HoodSeams {
  readonly crown: string;
  readonly neck: string;
}

export function hoodSideOutline(input: DraftInput, block: Block, seams: HoodSeams): Outline {
  const hood = hoodOf(input, block);
  const edge = (name: string, drawn: Path, seam: string) => sewnEdge(name, drawn, seam, block.allowanceMm);
  return {
    start: hood.face.from,
    edges: [
      edge('face', hood.face, 'hood face'),
      edge('crown', hood.crown, seams.crown),
      edge('neck', hood.neck, seams.neck),
    ],
  };
}

/** A tapered strip whose long edges are as long as the crown of a hood side. */
export function hoodCentreOutline(input: DraftInput, block: Block, seams: HoodSeams): Outline {
  const hood = hoodOf(input, block);
  const taperMm = (hood.centreAtFaceMm - hood.centreAtNeckMm) / 2;
  const lengthMm = Math.sqrt(pathLengthMm(hood.crown) ** 2 - taperMm ** 2);
  const right = path(at(0, taperMm), line(at(lengthMm, 0)));
  const face = path(pathEnd(right), line(at(lengthMm, hood.centreAtFaceMm)));
  const left = path(pathEnd(face), line(at(0, taperMm + hood.centreAtNeckMm)));
  const edge = (name: string, drawn: Path, seam: string) => sewnEdge(name, drawn, seam, block.allowanceMm);
  return {
    start: right.from,
    edges: [
      edge('right crown', right, seams.crown),
      edge('face', face, 'hood face'),
      edge('left crown', left, seams.crown),
      edge('neck', path(pathEnd(left), line(right.from)), seams.neck),
    ],
  };
}
