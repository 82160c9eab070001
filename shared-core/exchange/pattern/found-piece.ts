/** A drawn piece in the plan's frame: in mm, grain along x, edges named, allowances measured, notches on their edges. */
import { givenName } from '../../wording/given-names.ts';
import { say } from '../../wording/say.ts';
import { cutQuantity } from './cut-quantity.ts';
import { type Point, type Ring, ringBox } from '../../geometry/ring.ts';
import { oneLine } from '../../measure/text/plain-signs.ts';
import type { Problem } from '../../measure/problem.ts';
import type { CutFrom, Piece, TurnRule } from '../../plan/model/coat-plan.ts';
import type { Outline } from '../../plan/model/outline.ts';
import { cutRingIfAny, edgePoints, seamRing } from '../../plan/geometry/outline-ring.ts';
import { pieceProblems } from '../../plan/validation/outline-problems.ts';
import { allowanceSampleCount, measuredAllowance, sewingLineInside } from './allowances.ts';
import {
  counterClockwise,
  type DrawnPiece,
  distance,
  givenPointCount,
  type Matrix,
  movedPath,
  movedPoint,
  pathChordCount,
  pathPoints,
} from './drawn.ts';
import { edgesOfPath, thinnedOutline } from './edges.ts';
import { settledNotches } from './found-notches.ts';
import { joinedPaths } from './joined-paths.ts';
import type { FoundPiece, ReadChoices } from './pattern.ts';
import type { ReadMeter } from '../read-meter.ts';

/** Ends of lines this near are one point, mm. */
const joinedWithinMm = 0.2;
/** Both ends of a fold's edge lie this near to the mirror line, mm. */
const mirrorReachMm = 0.5;
const maxEdges = 400;
/** More points than a hand or a machine draws one line with. */
const maxDrawnPoints = 30_000;
/** An outline of more points than this is no drawing of a piece, and a plan would not keep it. */
const maxPoints = 3000;
const smoother = () => say('found-piece.save-it-with-smooth-curves-or');
/** Curves are followed this near, mm. */
const finestMm = 0.02;
/** Letters of a text that a file gives a piece. */
const longestText = 500;

export interface SettledPiece {
  /** Null where the problems forbid it. */
  readonly piece: FoundPiece | null;
  readonly problems: readonly Problem[];
  readonly notes: readonly string[];
}

/** Throws BeyondLimit where it is drawn too roughly to be looked over. */
export function settledPiece(
  drawn: DrawnPiece,
  mmPerUnit: number,
  choices: ReadChoices,
  meter: ReadMeter,
): SettledPiece {
  const text = (key: string) => oneLine((drawn.texts.get(key) ?? '').slice(0, longestText));
  const name = text('piece name') || oneLine(drawn.key);
  const where = say('found-piece.the-piece-line', { name, line: drawn.line });
  const problems: Problem[] = [];
  const notes: string[] = [];
  const drawnCount = Math.max(...[drawn.boundary, ...drawn.sewLines.slice(0, 1)].map(givenPointCount));
  if (drawnCount > maxDrawnPoints) {
    const what = say('found-piece.is-drawn-with-points-more-than', { drawnCount, maxDrawnPoints });
    return { piece: null, problems: [{ where, what, fix: smoother() }], notes };
  }
  const matrix = intoFrame(drawn, mmPerUnit);
  const [drawnBoundary, ...drawnSewn] = [drawn.boundary, ...drawn.sewLines].map((path) => {
    const moved = movedPath(matrix, path);
    meter.chords(pathChordCount(moved, finestMm), where);
    return moved;
  });
  const boundary = counterClockwise(drawnBoundary!, 0.1);
  const mirror = drawn.mirror?.map((point) => movedPoint(matrix, point)) ?? [];
  const turnPoints = drawn.turnPoints.map((point) => movedPoint(matrix, point));
  const sewn = joinedPaths(drawnSewn, joinedWithinMm, meter);
  const sewLine = sewn.length === 1 && sewn[0]?.isClosed ? counterClockwise(sewn[0], 0.1) : null;
  if (sewn.length > 0 && !sewLine) notes.push(say('found-piece.the-sewing-line-of-is-not', { name }));
  let outline = edgesOfPath(sewLine ?? boundary, turnPoints, mirror, meter);
  if (outline.edges.every(({ segments }) => segments.length === 0)) {
    const what = say('found-piece.is-so-small-that-nothing-of');
    return {
      piece: null,
      problems: [...problems, { where, what, fix: say('found-piece.check-the-unit') }],
      notes,
    };
  }
  if (outline.edges.length > maxEdges) {
    problems.push({
      where,
      what: say('found-piece.has-corners-more-than', { edgesCount: outline.edges.length, maxEdges }),
      fix: smoother(),
    });
    return { piece: null, problems, notes };
  }
  const foldIndex = foldEdgeIndex(outline, mirror);
  if (mirror.length > 0 && foldIndex < 0)
    notes.push(say('found-piece.the-mirror-line-of-lies-along', { name }));
  outline = withFold(outline, foldIndex);
  const foldEdge = foldIndex < 0 ? null : outline.edges[foldIndex]!.name;
  const cutPoints = pathPoints(boundary, finestMm);
  if (sewLine) {
    meter.steps(outline.edges.length * allowanceSampleCount * cutPoints.length, where);
    outline = withMeasured(outline, foldEdge, cutPoints, name, notes);
  }
  if (!sewLine && choices.outlineIs === 'cutting line' && choices.allowanceMm > 0)
    outline = sewingLineInside(outline, choices.allowanceMm, foldEdge);
  else if (!sewLine) outline = withAllowance(outline, foldEdge, choices.allowanceMm);
  const corner = ringBox(seamRing(outline, finestMm));
  outline = thinnedOutline(outline, meter);
  const seam = seamRing(outline);
  const pointCount = seam.length / 2;
  if (pointCount > maxPoints) {
    const what = say('found-piece.is-drawn-with-points-that-no', { pointCount, maxPoints });
    return { piece: null, problems: [...problems, { where, what, fix: smoother() }], notes };
  }
  // Every side may be held against every other, several times over, and is in the worst of files.
  meter.steps(4 * pointCount * pointCount, where);
  const notches = settledNotches(
    drawn.notches.map((point) => movedPoint(matrix, point)),
    outline,
    where,
    meter,
    problems,
  );
  const quantity = cutQuantity(text('quantity'));
  if (!quantity)
    problems.push({
      where,
      what: say('found-piece.has-a-quantity-that-cannot-be', { text: text('quantity') }),
      fix: say('found-piece.it-is-cut-once-until-you'),
    });
  const shape = { outline: movedBy(outline, -corner.minX, -corner.minY), foldEdge, notches };
  const wrong = pieceProblems({
    ...{ id: drawn.key, name, cutFrom: [], turns: 'grain', quilted: null },
    ...(quantity ?? once),
    ...shape,
  });
  if (wrong.length > 0) {
    const placed = wrong.map((each) => ({
      ...each,
      where: say('found-piece.line', { where: each.where, line: drawn.line }),
    }));
    return { piece: null, problems: [...problems, ...placed], notes };
  }
  const cut = cutRingIfAny(outline, null);
  if (!cut) {
    const what = say('found-piece.is-so-narrow-that-nothing-of');
    return {
      piece: null,
      problems: [...problems, { where, what, fix: say('found-piece.check-the-unit') }],
      notes,
    };
  }
  const extentMm = extentOf(cut);
  const isAsDrawn = sewLine !== null || choices.outlineIs === 'cutting line';
  const piece: FoundPiece = {
    key: drawn.key,
    place: say('found-piece.line-2', { line: drawn.line }),
    name,
    size: text('size'),
    material: text('material'),
    category: text('category'),
    annotation: text('annotation'),
    ...(quantity ?? once),
    ...shape,
    hasSewLine: sewLine !== null,
    hasGrain: drawn.grain !== null,
    extentMm,
    drawnAlongMm: isAsDrawn ? extentMm.alongMm : extentOf(seam).alongMm,
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

const once = { cutCount: 1, isMirrored: false };

function extentOf(ring: Ring): FoundPiece['extentMm'] {
  const { minX, minY, maxX, maxY } = ringBox(ring);
  return { alongMm: maxX - minX, acrossMm: maxY - minY };
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
        ? {
            ...edge,
            name: givenName('edge', 'fold'),
            segments: [{ kind: 'line', to: edge.segments.at(-1)!.to }],
          }
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
      notes.push(say('found-piece.at-of-the-boundary-lies-nowhere', { edgeName: edge.name, name }));
    else if (measured.isUneven)
      notes.push(
        say('found-piece.the-allowance-at-of-is-uneven', {
          edgeName: edge.name,
          name,
          allowanceMm: measured.allowanceMm.toFixed(1),
        }),
      );
    return { ...edge, allowanceMm: measured?.allowanceMm ?? 0 };
  });
  return { ...outline, edges };
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
