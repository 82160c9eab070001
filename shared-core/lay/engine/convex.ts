/** A ring as a few convex parts: ear clipping, then parts are joined while they stay convex. */
import type { Ring } from '../../geometry/ring.ts';

/** Vertex indexes, counter-clockwise. */
type Part = number[];

function cross(ring: Ring, a: number, b: number, c: number): number {
  const ax = ring[a * 2]!;
  const ay = ring[a * 2 + 1]!;
  return (ring[b * 2]! - ax) * (ring[c * 2 + 1]! - ay) - (ring[b * 2 + 1]! - ay) * (ring[c * 2]! - ax);
}

function triangles(ring: Ring): Part[] {
  const left: number[] = [];
  for (let i = 0; i < ring.length / 2; i++) left.push(i);
  const result: Part[] = [];
  while (left.length > 3) {
    let best = -1;
    let bestShape = -Infinity;
    for (let k = 0; k < left.length; k++) {
      const a = left[(k + left.length - 1) % left.length]!;
      const b = left[k]!;
      const c = left[(k + 1) % left.length]!;
      const turn = cross(ring, a, b, c);
      if (turn < 0) continue;
      const side = Math.hypot(ring[a * 2]! - ring[c * 2]!, ring[a * 2 + 1]! - ring[c * 2 + 1]!);
      const shape = turn === 0 ? Number.MAX_VALUE : turn / (side * side + 1e-300);
      // Whether it is empty takes longest to find out: only for an ear that would be the best.
      if (shape <= bestShape) continue;
      let empty = true;
      for (const p of left) {
        if (p === a || p === b || p === c) continue;
        if (cross(ring, a, b, p) >= 0 && cross(ring, b, c, p) >= 0 && cross(ring, c, a, p) >= 0) {
          empty = false;
          break;
        }
      }
      if (!empty && turn > 0) continue;
      bestShape = shape;
      best = k;
    }
    // Rounding can leave no ear; the least hollow corner is cut instead, which only adds forbidden cloth.
    if (best === -1) best = 0;
    const a = left[(best + left.length - 1) % left.length]!;
    const b = left[best]!;
    const c = left[(best + 1) % left.length]!;
    if (cross(ring, a, b, c) > 0) result.push([a, b, c]);
    left.splice(best, 1);
  }
  if (cross(ring, left[0]!, left[1]!, left[2]!) > 0) result.push([left[0]!, left[1]!, left[2]!]);
  return result;
}

/** The two parts joined along the edge that they share, or null when they share none or the union is hollow. */
function joined(ring: Ring, one: Part, two: Part): Part | null {
  for (let i = 0; i < one.length; i++) {
    const a = one[i]!;
    const b = one[(i + 1) % one.length]!;
    const j = two.indexOf(b);
    if (j === -1 || two[(j + 1) % two.length] !== a) continue;
    const union: Part = [];
    for (let k = 1; k <= one.length; k++) union.push(one[(i + k) % one.length]!);
    for (let k = 2; k < two.length; k++) union.push(two[(j + k) % two.length]!);
    for (let k = 0; k < union.length; k++) {
      if (cross(ring, union[k]!, union[(k + 1) % union.length]!, union[(k + 2) % union.length]!) < 0)
        return null;
    }
    return union;
  }
  return null;
}

/** Convex rings that together cover a counter-clockwise ring and overlap nowhere. */
export function convexParts(ring: Ring): Ring[] {
  const parts = triangles(ring);
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i < parts.length; i++) {
      for (let j = parts.length - 1; j > i; j--) {
        const union = joined(ring, parts[i]!, parts[j]!);
        if (union === null) continue;
        parts[i] = union;
        parts.splice(j, 1);
        again = true;
      }
    }
  }
  return parts.map((part) => {
    const flat = new Float64Array(part.length * 2);
    part.forEach((index, k) => {
      flat[k * 2] = ring[index * 2]!;
      flat[k * 2 + 1] = ring[index * 2 + 1]!;
    });
    return flat;
  });
}
