/** A drawn piece in the plan's frame: in mm, grain along x, edges named, allowances measured, notches on their edges. */
import { ringBox } from '../geometry/ring.ts';
import type { Point } from '../geometry/ring.ts';
import type { Problem } from '../measure/problem.ts';
import type { CutFrom, Notch, Piece, TurnRule } from '../plan/coat-plan.ts';
import type { Outline } from '../plan/outline.ts';
import { edgePoints, seamRing } from '../plan/outline-ring.ts';
import { pieceProblems } from '../plan/outline-problems.ts';
import { measuredAllowance, sewingLineInside } from './allowances.ts';
import {
  counterClockwise,
  type DrawnPiece,
  distance,
  joinedPaths,
  type Matrix,
  movedPath,
  movedPoint,
  pathPoints,
} from './drawn.ts';
import { edgesOfPath, nearestOnStep, thinnedOutline } from './edges.ts';
import type { FoundPiece, ReadChoices } from './pattern.ts';

/** Ends of lines this near are one point, mm. */
const joinedWithinMm = 0.2;
/** A notch may lie this far off the line it belongs to, mm. */
const notchReachMm = 5;
/** Both ends of a fold's edge lie this near to the mirror line, mm. */
const mirrorReachMm = 0.5;
const mostEdges = 400;
const mostNotches = 500;

export interface SettledPiece {
  /** Null where the problems forbid it. */
  readonly piece: FoundPiece | null;
  readonly problems: readonly Problem[];
  readonly notes: readonly string[];
}

export function settledPiece(drawn: DrawnPiece, mmPerUnit: number, choices: ReadChoices): SettledPiece {
  const name = drawn.texts.get('piece name') || drawn.key;
  const problems: Problem[] = [];
  const notes: string[] = [];
  const matrix = intoFrame(drawn, mmPerUnit);
  const boundary = counterClockwise(movedPath(matrix, drawn.boundary), 0.1);
  const mirror = drawn.mirror?.map((point) => movedPoint(matrix, point)) ?? [];
  const turnPoints = drawn.turnPoints.map((point) => movedPoint(matrix, point));
  const sewn = joinedPaths(
    drawn.sewLines.map((path) => movedPath(matrix, path)),
    joinedWithinMm,
  );
  const sewLine = sewn.length === 1 && sewn[0]?.isClosed ? counterClockwise(sewn[0], 0.1) : null;
  if (sewn.length > 0 && !sewLine)
    notes.push(`The sewing line of ${name} is not one closed line, so its boundary is taken alone.`);
  let outline = edgesOfPath(sewLine ?? boundary, turnPoints, mirror);
  if (outline.edges.length > mostEdges) {
    problems.push({
      where: placed(name, drawn),
      what: `has ${outline.edges.length} corners, more than ${mostEdges}`,
      mend: 'Save it with smooth curves, or with turn points at its true corners.',
    });
    return { piece: null, problems, notes };
  }
  const foldIndex = foldEdgeIndex(outline, mirror);
  if (mirror.length > 0 && foldIndex < 0)
    notes.push(
      `The mirror line of ${name} lies along none of its edges, so the piece is cut as it is drawn.`,
    );
  outline = withFold(outline, foldIndex);
  const foldEdge = foldIndex < 0 ? null : outline.edges[foldIndex]!.name;
  const cutPoints = pathPoints(boundary, 0.02);
  if (sewLine) outline = withMeasured(outline, foldEdge, cutPoints, name, notes);
  else if (choices.outlineIs === 'cutting line' && choices.allowanceMm > 0)
    outline = sewingLineInside(outline, choices.allowanceMm, foldEdge);
  else outline = withAllowance(outline, foldEdge, choices.allowanceMm);
  const corner = ringBox(seamRing(outline, 0.02));
  outline = thinnedOutline(outline);
  const notches = settledNotches(drawn, matrix, outline, name, problems);
  const quantity = cutQuantity(drawn.texts.get('quantity') ?? '');
  if (!quantity)
    problems.push({
      where: placed(name, drawn),
      what: `has a quantity that cannot be read: ${drawn.texts.get('quantity')}`,
      mend: 'It is cut once until you type how many.',
    });
  const piece: FoundPiece = {
    key: drawn.key,
    place: `line ${drawn.line}`,
    name,
    size: drawn.texts.get('size') ?? '',
    material: drawn.texts.get('material') ?? '',
    category: drawn.texts.get('category') ?? '',
    annotation: drawn.texts.get('annotation') ?? '',
    ...(quantity ?? { cutCount: 1, isMirrored: false }),
    outline: movedBy(outline, -corner.minX, -corner.minY),
    foldEdge,
    notches,
    hasSewLine: sewLine !== null,
    hasGrain: drawn.grain !== null,
  };
  const wrong = pieceProblems(
    pieceOf(piece, { id: drawn.key, name, cutFrom: [], turns: 'grain', quilted: null }),
  );
  if (wrong.length > 0)
    return {
      piece: null,
      problems: [
        ...problems,
        ...wrong.map((each) => ({ ...each, where: `${each.where} (line ${drawn.line})` })),
      ],
      notes,
    };
  return { piece, problems, notes };
}

export interface PieceIdentity {
  readonly id: string;
  readonly name: string;
  readonly cutFrom: readonly CutFrom[];
  readonly turns: TurnRule;
  readonly quilted: Piece['quilted'];
}

/** The found piece as one of a plan. */
export function pieceOf(found: FoundPiece, identity: PieceIdentity): Piece {
  const { outline, cutCount, isMirrored, foldEdge, notches } = found;
  return { ...identity, outline, cutCount, isMirrored, foldEdge, notches };
}

function placed(name: string, drawn: DrawnPiece): string {
  return `The piece ${name} (line ${drawn.line})`;
}

/** Scaled to mm and turned so that the grain runs along x. */
function intoFrame(drawn: DrawnPiece, mmPerUnit: number): Matrix {
  const [foot, head] = drawn.grain ?? [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
  ];
  const long = distance(foot, head);
  const cos = (head.x - foot.x) / long;
  const sin = (head.y - foot.y) / long;
  return [cos * mmPerUnit, -sin * mmPerUnit, sin * mmPerUnit, cos * mmPerUnit, 0, 0];
}

function foldEdgeIndex(outline: Outline, mirror: readonly Point[]): number {
  const [from, to] = mirror;
  if (!from || !to || distance(from, to) === 0) return -1;
  const ux = (to.x - from.x) / distance(from, to);
  const uy = (to.y - from.y) / distance(from, to);
  const offMm = (point: Point) => Math.abs((point.x - from.x) * -uy + (point.y - from.y) * ux);
  let best = -1;
  let bestMm = 0;
  outline.edges.forEach((_, index) => {
    const points = edgePoints(outline, index);
    const lengthMm = distance(points[0]!, points.at(-1)!);
    if (lengthMm > bestMm && points.every((point) => offMm(point) <= mirrorReachMm)) {
      best = index;
      bestMm = lengthMm;
    }
  });
  return best;
}

/** The fold as one straight line, called so. */
function withFold(outline: Outline, foldIndex: number): Outline {
  return {
    ...outline,
    edges: outline.edges.map((edge, index) =>
      index === foldIndex
        ? { ...edge, name: 'fold', segments: [{ kind: 'line', to: edge.segments.at(-1)!.to }] }
        : edge,
    ),
  };
}

function withAllowance(outline: Outline, foldEdge: string | null, allowanceMm: number): Outline {
  return {
    ...outline,
    edges: outline.edges.map((edge) => ({ ...edge, allowanceMm: edge.name === foldEdge ? 0 : allowanceMm })),
  };
}

function withMeasured(
  outline: Outline,
  foldEdge: string | null,
  cutPoints: readonly Point[],
  name: string,
  notes: string[],
): Outline {
  const edges = outline.edges.map((edge, index) => {
    if (edge.name === foldEdge) return { ...edge, allowanceMm: 0 };
    const measured = measuredAllowance(outline, index, cutPoints);
    if (!measured)
      notes.push(`At ${edge.name} of ${name} the boundary lies nowhere outside: no allowance there.`);
    else if (measured.isUneven)
      notes.push(
        `The allowance at ${edge.name} of ${name} is uneven; ${measured.allowanceMm.toFixed(1)} mm is taken.`,
      );
    return { ...edge, allowanceMm: measured?.allowanceMm ?? 0 };
  });
  return { ...outline, edges };
}

/** Notches may be drawn on the sewing line or on the boundary: each goes to the edge whose line or allowance it lies on. */
function settledNotches(
  drawn: DrawnPiece,
  matrix: Matrix,
  outline: Outline,
  name: string,
  problems: Problem[],
): Notch[] {
  const chains = outline.edges.map((edge, index) => ({ edge, points: edgePoints(outline, index, 0.02) }));
  const notches: Notch[] = [];
  let lost = Math.max(0, drawn.notches.length - mostNotches);
  for (const drawnNotch of drawn.notches.slice(0, mostNotches)) {
    const at = movedPoint(matrix, drawnNotch);
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
      where: placed(name, drawn),
      what:
        lost === 1
          ? 'has a notch that lies on none of its edges'
          : `has ${lost} notches that lie on none of its edges`,
      mend: 'It comes in without; set them in the file if they matter.',
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

/**
 * "2" is two alike, "1,1" one and its mirror image (from memory of the standard's use), "" one. Null for anything else.
 */
export function cutQuantity(text: string): { cutCount: number; isMirrored: boolean } | null {
  if (text.trim() === '') return { cutCount: 1, isMirrored: false };
  const match = /^\s*(\d{1,4})\s*(?:[,;/]\s*(\d{1,4})\s*)?$/.exec(text);
  if (!match) return null;
  const plain = Number(match[1]);
  const mirrored = Number(match[2] ?? 0);
  if (plain + mirrored < 1 || plain + mirrored > 1000) return null;
  // A plan cuts mirrored pieces in pairs: two and one mirrored have no form in it.
  if (mirrored !== 0 && mirrored !== plain) return null;
  return { cutCount: plain + mirrored, isMirrored: mirrored > 0 };
}

function movedBy(outline: Outline, dx: number, dy: number): Outline {
  const move = (point: Point): Point => ({ x: point.x + dx, y: point.y + dy });
  return {
    start: move(outline.start),
    edges: outline.edges.map((edge) => ({
      ...edge,
      segments: edge.segments.map((segment) =>
        segment.kind === 'line'
          ? { kind: 'line', to: move(segment.to) }
          : {
              kind: 'cubic',
              control1: move(segment.control1),
              control2: move(segment.control2),
              to: move(segment.to),
            },
      ),
    })),
  };
}
