/** What is wrong with one piece by itself: its outline, its edges, how it is cut. */
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import { crossingSides } from '../../geometry/crossing.ts';
import { type Point, ringAreaMm2, ringBox, ringFromPoints } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import type { Piece } from '../model/coat-plan.ts';
import { edgeStart, type Outline } from '../model/outline.ts';
import { edgeIndexOf, edgeLengthMm, edgePoints } from '../geometry/outline-ring.ts';

/** Nothing in a coat is longer or wider. */
export const largestPieceMm = 5000;
const largestAllowanceMm = 200;
/** Ends of an outline nearer than this are one point. */
const closedWithinMm = 0.01;
const largestCutCount = 1000;

/** Problems of the piece, empty when all is well. Where numbers are not numbers, shapes are not looked at. */
export function pieceProblems(piece: Piece): Problem[] {
  const problems = countProblems(piece);
  const edges = edgeProblems(piece);
  problems.push(...edges);
  if (edges.length > 0) return problems;
  const shape = shapeProblems(piece);
  problems.push(...shape);
  if (shape.length > 0) return problems;
  return [...problems, ...foldProblems(piece), ...notchProblems(piece)];
}

function countProblems(piece: Piece): Problem[] {
  const { cutCount, isMirrored, name } = piece;
  const where = say('outline-problems.number-of-to-cut', { name });
  if (!Number.isInteger(cutCount) || cutCount < 1 || cutCount > largestCutCount) {
    return [
      {
        where,
        what: say('outline-problems.is', { cutCount }),
        fix: say('outline-problems.type-a-whole-number-from-1', { largestCutCount }),
      },
    ];
  }
  if (isMirrored && cutCount % 2 !== 0) {
    return [
      {
        where,
        what: say('outline-problems.is-odd-for-a-piece-cut', { cutCount }),
        fix: say('outline-problems.make-it-even-or-cut-the'),
      },
    ];
  }
  return [];
}

function edgeProblems(piece: Piece): Problem[] {
  const { outline, name } = piece;
  const problems: Problem[] = [];
  if (outline.edges.length === 0)
    return [
      {
        where: say('outline-problems.outline-of', { name }),
        what: say('outline-problems.has-no-edges'),
        fix: say('outline-problems.draw-it-or-remove-the-piece'),
      },
    ];
  const seen = new Set<string>();
  if (!isFinitePoint(outline.start))
    problems.push(notANumber(say('outline-problems.start-of-the-outline-of', { name })));
  for (const edge of outline.edges) {
    const where = say('outline-problems.edge-of', { edgeName: edge.name, name });
    if (edge.name.trim() === '')
      problems.push({
        where: say('outline-problems.an-edge-of', { name }),
        what: say('common.has-no-name'),
        fix: say('outline-problems.name-it'),
      });
    if (seen.has(edge.name))
      problems.push({
        where,
        what: say('outline-problems.comes-twice'),
        fix: say('outline-problems.give-each-edge-of-a-piece'),
      });
    seen.add(edge.name);
    if (edge.segments.length === 0)
      problems.push({
        where,
        what: say('outline-problems.has-no-lines'),
        fix: say('outline-problems.draw-it-or-remove-the-edge'),
      });
    const points = edge.segments.flatMap((segment) =>
      segment.kind === 'line' ? [segment.to] : [segment.control1, segment.control2, segment.to],
    );
    if (!points.every(isFinitePoint)) problems.push(notANumber(where));
    const allowance = say('outline-problems.seam-allowance-at-of', { edgeName: edge.name, name });
    if (!Number.isFinite(edge.allowanceMm)) problems.push(notANumber(allowance));
    else if (edge.allowanceMm < 0)
      problems.push({
        where: allowance,
        what: say('common.is-negative'),
        fix: say('outline-problems.type-0-or-more'),
      });
    else if (edge.allowanceMm > largestAllowanceMm) {
      problems.push({
        where: allowance,
        what: say('outline-problems.is-over-mm', { largestAllowanceMm }),
        fix: say('common.check-the-number-and-its-unit'),
      });
    }
  }
  return problems;
}

function shapeProblems(piece: Piece): Problem[] {
  const { outline, name } = piece;
  const where = say('outline-problems.outline-of', { name });
  const end = edgeStart({ ...outline, edges: [...outline.edges, outline.edges[0]!] }, outline.edges.length);
  const gapMm = distanceMm(end, outline.start);
  if (gapMm > closedWithinMm) {
    return [
      {
        where,
        what: say('outline-problems.is-open-its-end-lies-mm', { gapMm: withDecimalSign(gapMm.toFixed(1)) }),
        fix: say('outline-problems.end-the-last-edge-where-the'),
      },
    ];
  }
  const { points, edgeNames } = chords(outline);
  const ring = ringFromPoints(points);
  const box = ringBox(ring);
  const largestMm = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (largestMm > largestPieceMm) {
    return [
      {
        where,
        what: say('outline-problems.is-m-long-or-wide', {
          largestMm: withDecimalSign((largestMm / 1000).toFixed(2)),
        }),
        fix: say('outline-problems.check-its-numbers-and-their-unit'),
      },
    ];
  }
  const empty = outline.edges.find((_, index) => {
    const edge = edgePoints(outline, index);
    return edge.every((point) => distanceMm(point, edge[0]!) < closedWithinMm);
  });
  if (empty)
    return [
      {
        where: say('outline-problems.edge-of-2', { emptyName: empty.name, name }),
        what: say('outline-problems.has-no-length'),
        fix: say('outline-problems.remove-it-or-draw-it-longer'),
      },
    ];
  const crossing = crossingSides(ring);
  if (crossing) {
    const names = [...new Set(crossing.map((index) => edgeNames[index]!))];
    const what =
      names.length === 1
        ? say('outline-problems.crosses-or-touches-itself-in', { names: names[0] })
        : say('outline-problems.crosses-or-touches-itself-meets', { names: names[0], names2: names[1] });
    return [{ where, what, fix: say('outline-problems.redraw-one-of-them-so-that') }];
  }
  if (ringAreaMm2(ring) < 0) {
    return [
      {
        where,
        what: say('outline-problems.runs-clockwise'),
        fix: say('outline-problems.draw-its-edges-in-the-other'),
      },
    ];
  }
  if (ringAreaMm2(ring) < 1)
    return [
      {
        where,
        what: say('outline-problems.has-no-inside'),
        fix: say('outline-problems.check-its-numbers-and-their-unit-2'),
      },
    ];
  return [];
}

function foldProblems(piece: Piece): Problem[] {
  const { foldEdge, name, outline } = piece;
  if (foldEdge === null) return [];
  const where = say('outline-problems.fold-of', { name });
  if (!outline.edges.some((edge) => edge.name === foldEdge)) {
    return [
      {
        where,
        what: say('outline-problems.is-to-lie-along-which-is', { foldEdge }),
        fix: say('outline-problems.choose-one-of', {
          edges: outline.edges.map((edge) => edge.name).join(', '),
        }),
      },
    ];
  }
  const index = edgeIndexOf(outline, foldEdge);
  if (edgePoints(outline, index).length !== 2) {
    return [
      {
        where,
        what: say('outline-problems.lies-along-which-is-not-one', { foldEdge }),
        fix: say('outline-problems.choose-a-straight-edge-or-cut'),
      },
    ];
  }
  const [from, to] = edgePoints(outline, index) as [Point, Point];
  const lengthMm = distanceMm(from, to);
  const reachesOver = chords(outline).points.some(
    (point) =>
      ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x)) / lengthMm <
      -closedWithinMm,
  );
  if (reachesOver)
    return [
      {
        where,
        what: say('outline-problems.is-crossed-by-the-piece'),
        fix: say('outline-problems.draw-the-half-to-one-side'),
      },
    ];
  return [];
}

function notchProblems(piece: Piece): Problem[] {
  return piece.notches.flatMap((notch): Problem[] => {
    const where = say('outline-problems.a-notch-of', { pieceName: piece.name });
    if (!piece.outline.edges.some((edge) => edge.name === notch.edge)) {
      return [
        {
          where,
          what: say('outline-problems.lies-on-which-is-no-edge', { edge: notch.edge }),
          fix: say('outline-problems.remove-the-notch'),
        },
      ];
    }
    const lengthMm = edgeLengthMm(piece.outline, notch.edge);
    if (!(notch.atMm >= 0 && notch.atMm <= lengthMm + closedWithinMm)) {
      return [
        {
          where,
          what: say('outline-problems.lies-beyond-the-ends-of', { edge: notch.edge }),
          fix: say('outline-problems.set-it-between-0-and-mm', { lengthMm: lengthMm.toFixed(0) }),
        },
      ];
    }
    return [];
  });
}

/** The seam line's points, repeats left out, and for each the edge that runs on from it. */
function chords(outline: Outline): { points: Point[]; edgeNames: string[] } {
  const points: Point[] = [];
  const edgeNames: string[] = [];
  outline.edges.forEach((edge, index) => {
    for (const point of edgePoints(outline, index).slice(0, -1)) {
      const last = points.at(-1);
      if (last && distanceMm(last, point) <= 1e-6) edgeNames[edgeNames.length - 1] = edge.name;
      else {
        points.push(point);
        edgeNames.push(edge.name);
      }
    }
  });
  while (points.length > 1 && distanceMm(points[0]!, points.at(-1)!) <= 1e-6) {
    points.pop();
    edgeNames.pop();
  }
  return { points, edgeNames };
}

function isFinitePoint(point: Point): boolean {
  return Number.isFinite(point.x) && Number.isFinite(point.y);
}

function distanceMm(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function notANumber(where: string): Problem {
  return { where, what: say('common.is-not-a-number'), fix: say('outline-problems.type-it-again') };
}
