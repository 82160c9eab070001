/**
 * How deep two forms lie in one another, in constant time.
 *
 * Form B lies on form A exactly when the vector from A's centre to B's centre is inside the Minkowski sum
 * of A and -B. For each pair of shapes (up to turning or mirroring both) the boundary of that sum is
 * computed once, and a grid over it remembers for each cell the few boundary edges that can be nearest to a
 * point of the cell. So the depth is exact (distance to the nearest boundary edge), not a grid value.
 */
import { ringBox, ringsAlike } from '../../geometry/ring.ts';
import type { Ring } from '../../geometry/ring.ts';
import { type Base, baseOf, type DepthTable, keptTable } from './kept-tables.ts';

/** Numbers per boundary edge: start x, y; direction x, y; length. The inside is on the left. */
const EDGE = 5;
/**
 * Outlines with more corners than this are simplified beyond the tolerance too: the time that a table takes grows with
 * about the fourth power of the corners (100 take near 10 ms, 600 took 5 s), and drawn pieces keep fewer (the demo's
 * most is 92).
 */
const MOST_CORNERS = 100;
/** Numbers per convex half-plane: outward normal x, y; reach. */
const PLANE = 3;

function flipped(ring: Ring, flip: number): Ring {
  const flipX = (flip & 1) !== 0 ? -1 : 1;
  const flipY = (flip & 2) !== 0 ? -1 : 1;
  const count = ring.length;
  const result = new Float64Array(count);
  const turnsOver = flipX * flipY < 0;
  for (let i = 0; i < count; i += 2) {
    const to = turnsOver ? count - 2 - i : i;
    result[to] = ring[i]! * flipX;
    result[to + 1] = ring[i + 1]! * flipY;
  }
  return result;
}

/** Minkowski sum of two convex counter-clockwise rings as half-planes. */
function convexSumPlanes(a: Ring, b: Ring): Float64Array {
  const planes = new Float64Array(((a.length + b.length) / 2) * PLANE);
  let end = 0;
  const add = (ring: Ring, other: Ring): void => {
    const count = ring.length;
    for (let i = 0; i < count; i += 2) {
      const next = (i + 2) % count;
      const dx = ring[next]! - ring[i]!;
      const dy = ring[next + 1]! - ring[i + 1]!;
      const length = Math.sqrt(dx * dx + dy * dy);
      if (length < 1e-12) continue;
      const x = dy / length;
      const y = -dx / length;
      let support = -Infinity;
      for (let k = 0; k < other.length; k += 2)
        support = Math.max(support, other[k]! * x + other[k + 1]! * y);
      planes[end] = x;
      planes[end + 1] = y;
      planes[end + 2] = ring[i]! * x + ring[i + 1]! * y + support;
      end += PLANE;
    }
  };
  add(a, b);
  add(b, a);
  return planes.subarray(0, end);
}

/** Edges of the convolution of two rings: every edge of the boundary of their sum is part of one of them. */
function convolutionEdges(a: Ring, b: Ring): number[] {
  const edges: number[] = [];
  const add = (ring: Ring, other: Ring): void => {
    const count = ring.length;
    const otherCount = other.length;
    for (let k = 0; k < otherCount; k += 2) {
      const before = (k + otherCount - 2) % otherCount;
      const after = (k + 2) % otherCount;
      const inX = other[k]! - other[before]!;
      const inY = other[k + 1]! - other[before + 1]!;
      const outX = other[after]! - other[k]!;
      const outY = other[after + 1]! - other[k + 1]!;
      if (inX * outY - inY * outX < 0) continue;
      for (let i = 0; i < count; i += 2) {
        const next = (i + 2) % count;
        const dx = ring[next]! - ring[i]!;
        const dy = ring[next + 1]! - ring[i + 1]!;
        // The edge's direction must lie between the corner's two edges.
        const near = 1e-12 * (Math.abs(dx) + Math.abs(dy));
        if (inX * dy - inY * dx < -near * (Math.abs(inX) + Math.abs(inY))) continue;
        if (dx * outY - dy * outX < -near * (Math.abs(outX) + Math.abs(outY))) continue;
        if (inX * dx + inY * dy < 0 && outX * dx + outY * dy < 0) continue;
        edges.push(
          ring[i]! + other[k]!,
          ring[i + 1]! + other[k + 1]!,
          ring[next]! + other[k]!,
          ring[next + 1]! + other[k + 1]!,
        );
      }
    }
  };
  add(a, b);
  add(b, a);
  return edges;
}

/** Takes away from [from, to] (in place, list of intervals) what lies strictly inside the convex set. */
function cutOut(
  intervals: number[],
  x0: number,
  y0: number,
  ux: number,
  uy: number,
  planes: Float64Array,
  near: number,
): number[] {
  let enter = intervals[0]!;
  let leave = intervals[intervals.length - 1]!;
  for (let p = 0; p < planes.length; p += PLANE) {
    const nx = planes[p]!;
    const ny = planes[p + 1]!;
    const gap = planes[p + 2]! - near - (nx * x0 + ny * y0);
    const rate = nx * ux + ny * uy;
    if (rate > 1e-12) {
      const at = gap / rate;
      if (at < leave) leave = at;
    } else if (rate < -1e-12) {
      const at = gap / rate;
      if (at > enter) enter = at;
    } else if (gap <= 0) return intervals;
    if (leave <= enter) return intervals;
  }
  const result: number[] = [];
  for (let k = 0; k < intervals.length; k += 2) {
    const from = intervals[k]!;
    const to = intervals[k + 1]!;
    if (leave <= from || enter >= to) {
      result.push(from, to);
      continue;
    }
    if (enter - from > 20 * near) result.push(from, enter);
    if (to - leave > 20 * near) result.push(leave, to);
  }
  return result;
}

function insideAny(convexes: readonly Float64Array[], x: number, y: number): boolean {
  for (const planes of convexes) {
    let inside = true;
    for (let p = 0; p < planes.length; p += PLANE) {
      if (planes[p]! * x + planes[p + 1]! * y >= planes[p + 2]!) {
        inside = false;
        break;
      }
    }
    if (inside) return true;
  }
  return false;
}

/** Distance to an edge, squared. */
function squareToEdge(edges: Float64Array, e: number, x: number, y: number): number {
  const dx = x - edges[e]!;
  const dy = y - edges[e + 1]!;
  const ux = edges[e + 2]!;
  const uy = edges[e + 3]!;
  const along = dx * ux + dy * uy;
  if (along <= 0) return dx * dx + dy * dy;
  const length = edges[e + 4]!;
  if (along >= length) {
    const ex = dx - ux * length;
    const ey = dy - uy * length;
    return ex * ex + ey * ey;
  }
  const off = dx * uy - dy * ux;
  return off * off;
}

function tableOf(a: Base, b: Base, flip: number, reachMm: number): DepthTable {
  // -B: turned by half a turn, which keeps the winding.
  const minusB = flipped(b.ring, flip ^ 3);
  const boxA = ringBox(a.ring);
  const boxB = ringBox(b.ring);
  const extentX = boxA.maxX + boxB.maxX;
  const extentY = boxA.maxY + boxB.maxY;
  const size = Math.max(extentX, extentY);
  const near = size * 1e-9;
  const convexes: Float64Array[] = [];
  const boxes: number[] = [];
  const minusParts = b.parts.map((part) => flipped(part, flip ^ 3));
  for (const partA of a.parts) {
    const box1 = ringBox(partA);
    for (const partB of minusParts) {
      const box2 = ringBox(partB);
      convexes.push(convexSumPlanes(partA, partB));
      boxes.push(box1.minX + box2.minX, box1.minY + box2.minY, box1.maxX + box2.maxX, box1.maxY + box2.maxY);
    }
  }
  const raw = convolutionEdges(a.ring, minusB);
  const kept: number[] = [];
  for (let e = 0; e < raw.length; e += 4) {
    const x0 = raw[e]!;
    const y0 = raw[e + 1]!;
    const dx = raw[e + 2]! - x0;
    const dy = raw[e + 3]! - y0;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length <= near) continue;
    const ux = dx / length;
    const uy = dy / length;
    const minX = Math.min(x0, x0 + dx);
    const maxX = Math.max(x0, x0 + dx);
    const minY = Math.min(y0, y0 + dy);
    const maxY = Math.max(y0, y0 + dy);
    let intervals = [0, length];
    for (let c = 0; c < convexes.length && intervals.length > 0; c++) {
      if (
        maxX < boxes[c * 4]! ||
        minX > boxes[c * 4 + 2]! ||
        maxY < boxes[c * 4 + 1]! ||
        minY > boxes[c * 4 + 3]!
      )
        continue;
      intervals = cutOut(intervals, x0, y0, ux, uy, convexes[c]!, near);
    }
    for (let k = 0; k < intervals.length; k += 2) {
      const from = intervals[k]!;
      kept.push(x0 + ux * from, y0 + uy * from, ux, uy, intervals[k + 1]! - from);
    }
  }
  const edges = Float64Array.from(kept);
  const halfX = extentX + reachMm;
  const halfY = extentY + reachMm;
  const edgeCount = edges.length / EDGE;
  // About eight cells for each edge, of nearly square shape.
  const wanted = Math.min(4096, Math.max(256, edgeCount * 8));
  const columnCount = Math.max(4, Math.min(256, Math.round(Math.sqrt((wanted * halfX) / halfY))));
  const rowCount = Math.max(4, Math.min(256, Math.round(wanted / columnCount)));
  const cells = new Int32Array(columnCount * rowCount).fill(-1);
  const lists: number[] = [];
  const listOf = new Map<number, number>();
  const cellX = (2 * halfX) / columnCount;
  const cellY = (2 * halfY) / rowCount;
  // The candidates of a block of cells lie behind those of the block that it is half of.
  const halvings = Math.ceil(Math.log2(columnCount)) + Math.ceil(Math.log2(rowCount));
  const candidates = new Uint16Array((halvings + 2) * edgeCount);
  const squares = new Float64Array(edgeCount);
  const visit = (
    column0: number,
    column1: number,
    row0: number,
    row1: number,
    from: number,
    to: number,
    known: boolean,
  ): void => {
    const centreX = -halfX + ((column0 + column1) / 2) * cellX;
    const centreY = -halfY + ((row0 + row1) / 2) * cellY;
    const wide = (column1 - column0) * cellX;
    const high = (row1 - row0) * cellY;
    const spread = Math.sqrt(wide * wide + high * high) / 2;
    let min = Infinity;
    for (let k = from; k < to; k++) {
      const square = squareToEdge(edges, candidates[k]! * EDGE, centreX, centreY);
      squares[k - from] = square;
      if (square < min) min = square;
    }
    const nearest = Math.sqrt(min);
    let inside = known;
    if (!known && nearest > spread) {
      inside = insideAny(convexes, centreX, centreY);
      if (!inside && nearest > spread + reachMm) return;
    }
    const limit = (nearest + 2 * spread) ** 2;
    let past = to;
    for (let k = from; k < to; k++) {
      if (squares[k - from]! > limit) continue;
      candidates[past] = candidates[k]!;
      past += 1;
    }
    if (column1 - column0 === 1 && row1 - row0 === 1) {
      cells[row0 * columnCount + column0] = 2 * listOfCandidates(to, past) + (inside ? 1 : 0);
    } else if (column1 - column0 > 1 && (wide >= high || row1 - row0 === 1)) {
      const middle = (column0 + column1) >> 1;
      visit(column0, middle, row0, row1, to, past, inside);
      visit(middle, column1, row0, row1, to, past, inside);
    } else {
      const middle = (row0 + row1) >> 1;
      visit(column0, column1, row0, middle, to, past, inside);
      visit(column0, column1, middle, row1, to, past, inside);
    }
  };
  /** Where the list of those candidates begins: neighbours often share one. */
  const listOfCandidates = (from: number, to: number): number => {
    const count = to - from;
    let hash = count;
    for (let k = from; k < to; k++) hash = Math.imul(hash ^ candidates[k]!, 0x01000193);
    const known = listOf.get(hash);
    if (known !== undefined && lists[known] === count) {
      let same = 0;
      while (same < count && lists[known + 1 + same] === candidates[from + same]) same += 1;
      if (same === count) return known;
    }
    const list = lists.length;
    listOf.set(hash, list);
    lists.push(count);
    for (let k = from; k < to; k++) lists.push(candidates[k]!);
    return list;
  };
  for (let i = 0; i < edgeCount; i++) candidates[i] = i;
  visit(0, columnCount, 0, rowCount, 0, edgeCount, false);
  return {
    halfX,
    halfY,
    // A hair less, so that a point on the far border does not round into a cell that is not there.
    cellsPerX: (1 - 1e-12) / cellX,
    cellsPerY: (1 - 1e-12) / cellY,
    columnCount,
    reachMm,
    cells,
    lists: Int32Array.from(lists),
    edges,
  };
}

export interface Depths {
  readonly formCount: number;
  /**
   * Which table answers for two forms (pairs alike share one), how it is made, which takes milliseconds, and how the
   * vector from the first's centre to the second's is to be turned before the table is asked: 1 when its x must change
   * sign, 2 when its y must.
   */
  find(first: number, second: number): FoundTable;
}

export interface FoundTable {
  readonly key: number;
  readonly flips: number;
  make(): DepthTable;
}

export interface DepthForm {
  /** Centred on its box, counter-clockwise. */
  readonly ring: Ring;
  /** Flaws ask no clearance. */
  readonly flaw: boolean;
}

/** Everything needed to ask for depths between forms. toleranceMm: how far outwards outlines may be simplified. */
export function depthsOf(
  forms: readonly DepthForm[],
  clearanceMm: number,
  spareMm: number,
  toleranceMm: number,
): Depths {
  const bases: Base[] = [];
  const originals: Ring[] = [];
  const symmetries: number[][] = [];
  const baseAt = new Int32Array(forms.length);
  const flipOf = new Int32Array(forms.length);
  forms.forEach((form, index) => {
    const near = 1e-7 * (form.ring.length > 0 ? Math.max(...form.ring.map(Math.abs)) : 1);
    for (let b = 0; b < bases.length; b++) {
      if (originals[b]!.length !== form.ring.length) continue;
      for (let flip = 0; flip < 4; flip++) {
        if (!ringsAlike(flipped(originals[b]!, flip), form.ring, near)) continue;
        baseAt[index] = b;
        flipOf[index] = flip;
        return;
      }
    }
    baseAt[index] = bases.length;
    originals.push(form.ring);
    symmetries.push([0, 1, 2, 3].filter((flip) => ringsAlike(flipped(form.ring, flip), form.ring, near)));
    bases.push(baseOf(form.ring, toleranceMm, MOST_CORNERS));
  });
  const find: Depths['find'] = (first, second) => {
    let a = baseAt[first]!;
    let b = baseAt[second]!;
    let flipA = flipOf[first]!;
    let flipB = flipOf[second]!;
    const swapped = a > b;
    if (swapped) {
      [a, b] = [b, a];
      [flipA, flipB] = [flipB, flipA];
    }
    let relative = 4;
    let own = 0;
    for (const symmetryA of symmetries[a]!) {
      for (const symmetryB of symmetries[b]!) {
        const flip = flipA ^ symmetryA ^ flipB ^ symmetryB;
        if (flip < relative) {
          relative = flip;
          own = flipA ^ symmetryA;
        }
      }
    }
    const reachMm = forms[first]!.flaw || forms[second]!.flaw ? spareMm : clearanceMm + spareMm;
    const key = ((a * bases.length + b) * 4 + relative) * 2 + (reachMm === spareMm ? 1 : 0);
    return {
      key,
      flips: swapped ? own ^ 3 : own,
      make: () => {
        const [one, other] = [bases[a]!, bases[b]!];
        return keptTable(one, other, relative, reachMm, () => tableOf(one, other, relative, reachMm));
      },
    };
  };
  return { formCount: forms.length, find };
}
