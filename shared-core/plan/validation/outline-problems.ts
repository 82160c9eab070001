/** What is wrong with one piece by itself: its outline, its edges, how it is cut. */
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
  const where = `Number of ${name} to cut`;
  if (!Number.isInteger(cutCount) || cutCount < 1 || cutCount > largestCutCount) {
    return [{ where, what: `is ${cutCount}`, fix: `Type a whole number from 1 to ${largestCutCount}.` }];
  }
  if (isMirrored && cutCount % 2 !== 0) {
    return [
      {
        where,
        what: `is ${cutCount}, odd for a piece cut in mirrored pairs`,
        fix: 'Make it even, or cut the piece without mirroring.',
      },
    ];
  }
  return [];
}

function edgeProblems(piece: Piece): Problem[] {
  const { outline, name } = piece;
  const problems: Problem[] = [];
  if (outline.edges.length === 0)
    return [{ where: `Outline of ${name}`, what: 'has no edges', fix: 'Draw it, or remove the piece.' }];
  const seen = new Set<string>();
  if (!isFinitePoint(outline.start)) problems.push(notANumber(`Start of the outline of ${name}`));
  for (const edge of outline.edges) {
    const where = `Edge ${edge.name} of ${name}`;
    if (edge.name.trim() === '')
      problems.push({ where: `An edge of ${name}`, what: 'has no name', fix: 'Name it.' });
    if (seen.has(edge.name))
      problems.push({ where, what: 'comes twice', fix: 'Give each edge of a piece a name of its own.' });
    seen.add(edge.name);
    if (edge.segments.length === 0)
      problems.push({ where, what: 'has no lines', fix: 'Draw it, or remove the edge.' });
    const points = edge.segments.flatMap((segment) =>
      segment.kind === 'line' ? [segment.to] : [segment.control1, segment.control2, segment.to],
    );
    if (!points.every(isFinitePoint)) problems.push(notANumber(where));
    const allowance = `Seam allowance at ${edge.name} of ${name}`;
    if (!Number.isFinite(edge.allowanceMm)) problems.push(notANumber(allowance));
    else if (edge.allowanceMm < 0)
      problems.push({ where: allowance, what: 'is negative', fix: 'Type 0 or more.' });
    else if (edge.allowanceMm > largestAllowanceMm) {
      problems.push({
        where: allowance,
        what: `is over ${largestAllowanceMm} mm`,
        fix: 'Check the number and its unit.',
      });
    }
  }
  return problems;
}

function shapeProblems(piece: Piece): Problem[] {
  const { outline, name } = piece;
  const where = `Outline of ${name}`;
  const end = edgeStart({ ...outline, edges: [...outline.edges, outline.edges[0]!] }, outline.edges.length);
  const gapMm = distanceMm(end, outline.start);
  if (gapMm > closedWithinMm) {
    return [
      {
        where,
        what: `is open: its end lies ${gapMm.toFixed(1)} mm from its start`,
        fix: 'End the last edge where the first begins.',
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
        what: `is ${(largestMm / 1000).toFixed(2)} m long or wide`,
        fix: 'Check its numbers and their unit: inches read as centimetres, perhaps.',
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
        where: `Edge ${empty.name} of ${name}`,
        what: 'has no length',
        fix: 'Remove it, or draw it longer.',
      },
    ];
  const crossing = crossingSides(ring);
  if (crossing) {
    const names = [...new Set(crossing.map((index) => edgeNames[index]!))];
    const what =
      names.length === 1
        ? `crosses or touches itself in ${names[0]}`
        : `crosses or touches itself: ${names[0]} meets ${names[1]}`;
    return [{ where, what, fix: 'Redraw one of them so that the outline runs round once.' }];
  }
  if (ringAreaMm2(ring) < 0) {
    return [{ where, what: 'runs clockwise', fix: 'Draw its edges in the other order, counter-clockwise.' }];
  }
  if (ringAreaMm2(ring) < 1)
    return [{ where, what: 'has no inside', fix: 'Check its numbers and their unit.' }];
  return [];
}

function foldProblems(piece: Piece): Problem[] {
  const { foldEdge, name, outline } = piece;
  if (foldEdge === null) return [];
  const where = `Fold of ${name}`;
  if (!outline.edges.some((edge) => edge.name === foldEdge)) {
    return [
      {
        where,
        what: `is to lie along ${foldEdge}, which is no edge of it`,
        fix: `Choose one of: ${outline.edges.map((edge) => edge.name).join(', ')}.`,
      },
    ];
  }
  const index = edgeIndexOf(outline, foldEdge);
  if (edgePoints(outline, index).length !== 2) {
    return [
      {
        where,
        what: `lies along ${foldEdge}, which is not one straight line`,
        fix: 'Choose a straight edge, or cut the piece whole.',
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
        what: 'is crossed by the piece',
        fix: 'Draw the half to one side of its fold, or cut the piece whole.',
      },
    ];
  return [];
}

function notchProblems(piece: Piece): Problem[] {
  return piece.notches.flatMap((notch): Problem[] => {
    const where = `A notch of ${piece.name}`;
    if (!piece.outline.edges.some((edge) => edge.name === notch.edge)) {
      return [{ where, what: `lies on ${notch.edge}, which is no edge of it`, fix: 'Remove the notch.' }];
    }
    const lengthMm = edgeLengthMm(piece.outline, notch.edge);
    if (!(notch.atMm >= 0 && notch.atMm <= lengthMm + closedWithinMm)) {
      return [
        {
          where,
          what: `lies beyond the ends of ${notch.edge}`,
          fix: `Set it between 0 and ${lengthMm.toFixed(0)} mm.`,
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
  return { where, what: 'is not a number', fix: 'Type it again.' };
}
