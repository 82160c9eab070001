/**
 * Pieces of any outline that fill a rectangle without loss. Each corner of the free cloth must be filled by a corner
 * of some piece that lies along its edges; where the fewest pieces can, one is tried after another, and what leads
 * nowhere is taken back. Pieces that do not fit together mostly show it at once: no sum of their edges is as long as
 * an edge of the rectangle, or nothing fits a corner.
 */
import { ringBox, ringMoved } from '../../../geometry/ring.ts';
import { ringsNearer } from '../exact.ts';
import type { Random } from '../random.ts';
import {
  clothWithout,
  type FreeCloth,
  type FreeCorner,
  freeCorners,
  hasPartUnder,
  rectangle,
} from './free-cloth.ts';
import { type Corner, drawnOut, type Likeness, type Puzzle, turnBetween, WIDE } from './puzzle-pieces.ts';

/** Which corner of the free cloth is filled next: where the fewest pieces can, or the leftmost. Neither is best for all. */
export type CornerOrder = 'fewest' | 'leftmost';

/** Where a piece lies: the centre of its box, in units of the puzzle. */
export interface Laid {
  readonly item: number;
  readonly form: number;
  readonly x: number;
  readonly y: number;
}

export interface TilingTry {
  /** Goes on until the next piece was tried; false when the try is over. */
  step(): boolean;
  /** All pieces, once they fill the rectangle. */
  found(): readonly Laid[] | null;
  /** The greatest part of the cloth that was covered at once, 0 to 1. */
  covered(): number;
}

interface Choice {
  readonly kind: number;
  readonly corner: Corner;
  readonly score: number;
}

/** How much chance there is in the order of what is tried, beside scores of 1 to 8. */
const CHANCE = 0.1;
/** Pieces of a solution may lie in each other by twice this much, units: less than the check of a lay allows. */
const DRAWN_IN = 4e-3;

/** One try after another differs by chance; a try that ends without a solution has shown that there is none. */
export function startTiling(
  puzzle: Puzzle,
  likeness: Likeness,
  order: CornerOrder,
  random: Random,
): TilingTry {
  const { kinds, forms, long } = puzzle;
  const { same } = likeness;
  const grown = forms.map(({ ring }) => drawnOut(ring, likeness.hair));
  const left = kinds.map(({ items }) => items.length);
  const laid: Laid[] = [];
  /** True corners of the rectangle and of what is laid, from which hairs do not add up: x and y in turn. */
  const marks: number[] = [0, 0, long, 0, long, WIDE, 0, WIDE];
  let mostCovered = 0;
  let solution: readonly Laid[] | null = null;

  /** The true corner at a corner of the free cloth. */
  function markAt({ x, y }: FreeCorner): readonly [number, number] {
    let at = -1;
    let least = 9 * same * same;
    for (let i = 0; i < marks.length; i += 2) {
      const squared = (marks[i]! - x) ** 2 + (marks[i + 1]! - y) ** 2;
      if (squared >= least) continue;
      least = squared;
      at = i;
    }
    return at === -1 ? [x, y] : [marks[at]!, marks[at + 1]!];
  }

  function choicesAt(free: FreeCorner, x: number, y: number): Choice[] {
    const { direction, angle, after, before, stopsAfter, stopsBefore, alike } = free;
    const choices: Choice[] = [];
    for (let kind = 0; kind < kinds.length; kind++) {
      if (left[kind] === 0) continue;
      for (const corner of kinds[kind]!.corners) {
        if (corner.angle > angle + alike || turnBetween(corner.direction, direction) > alike) continue;
        if (stopsAfter && corner.after > after + same) continue;
        const isFull = corner.angle > angle - alike;
        if (isFull && stopsBefore && corner.before > before + same) continue;
        const { halfX, halfY } = forms[corner.form]!;
        const centreX = x - corner.x;
        const centreY = y - corner.y;
        if (centreX < halfX - same || centreX > long - halfX + same) continue;
        if (centreY < halfY - same || centreY > WIDE - halfY + same) continue;
        // What fits the corner and its edges to their ends is tried first, then what is large.
        let score = kinds[kind]!.area / (long * WIDE) + CHANCE * random.next();
        if (isFull) score += 2;
        if (Math.abs(corner.after - after) < same) score += 3;
        if (isFull && Math.abs(corner.before - before) < same) score += 3;
        choices.push({ kind, corner, score });
      }
    }
    return choices;
  }

  /** Can edges of different pieces, end to end, be as long as this edge of the free cloth? */
  function canFill({ direction, after, alike }: FreeCorner): boolean {
    // A bit for each length in steps of same that can be reached.
    const steps = Math.round(after / same);
    const mask = (1n << BigInt(steps + 5)) - 1n;
    let reached = 1n;
    for (let kind = 0; kind < kinds.length; kind++) {
      if (left[kind] === 0) continue;
      const lengths = kinds[kind]!.edges.filter(
        (edge) => edge.length <= after + same && turnBetween(edge.direction, direction) <= alike,
      ).map(({ length }) => BigInt(Math.round(length / same)));
      for (let copy = 0; copy < left[kind]! && lengths.length > 0; copy++) {
        const before = reached;
        for (const length of lengths) reached |= (before << length) & mask;
        if (reached === before) break;
      }
    }
    // Each of some pieces is rounded by up to half a step.
    return reached >> BigInt(Math.max(0, steps - 4)) !== 0n;
  }

  /** What can be laid next, best first; empty where some corner cannot be filled. */
  function nextChoices(cloth: FreeCloth): { choices: Choice[]; x: number; y: number } | null {
    const corners = freeCorners(cloth, likeness);
    for (const corner of corners) {
      const isEdgeBetween = corner.stopsAfter && corner.angle < Math.PI - 0.05;
      if (isEdgeBetween && !canFill(corner)) return null;
    }
    let picked: { choices: Choice[]; x: number; y: number } | null = null;
    let least = Infinity;
    for (const corner of corners) {
      const [x, y] = markAt(corner);
      const choices = choicesAt(corner, x, y);
      if (choices.length === 0) return null;
      const rank = order === 'fewest' ? choices.length : x + y * 1e-3;
      if (rank >= least) continue;
      least = rank;
      picked = { choices, x, y };
    }
    picked?.choices.sort((one, other) => other.score - one.score);
    return picked;
  }

  function* fill(cloth: FreeCloth): Generator<void, boolean, void> {
    if (laid.length === puzzle.pieceCount) return true;
    const next = nextChoices(cloth);
    yield;
    if (!next) return false;
    for (const { kind, corner } of next.choices) {
      yield;
      const { area, perimeter, items } = kinds[kind]!;
      const x = next.x - corner.x;
      const y = next.y - corner.y;
      const rest = clothWithout(cloth, ringMoved(grown[corner.form]!, x, y), likeness.sliver);
      // It lies on nothing where just its own area is gone.
      if (Math.abs(rest.area - (cloth.area - area)) > perimeter * same) continue;
      left[kind]! -= 1;
      laid.push({ item: items[left[kind]!]!, form: corner.form, x, y });
      const smallest = Math.min(...kinds.map((one, at) => (left[at]! > 0 ? one.area : Infinity)));
      if (laid.length === puzzle.pieceCount || !hasPartUnder(rest, smallest - same * WIDE)) {
        mostCovered = Math.max(mostCovered, 1 - rest.area / (long * WIDE));
        const known = marks.length;
        const { ring } = forms[corner.form]!;
        for (let i = 0; i < ring.length; i += 2) marks.push(ring[i]! + x, ring[i + 1]! + y);
        if (yield* fill(rest)) return true;
        marks.length = known;
      }
      laid.pop();
      left[kind]! += 1;
    }
    return false;
  }

  function* run(): Generator<void, void, void> {
    if (yield* fill(rectangle(long))) solution = laid;
  }

  const steps = run();
  return {
    step: () => steps.next().done !== true,
    found: () => solution,
    covered: () => mostCovered,
  };
}

/** Do these pieces lie apart and on the cloth, but for less than the check of a lay allows? */
export function isSound({ forms, long }: Puzzle, laid: readonly Laid[]): boolean {
  const rings = forms.map(({ ring }) => drawnOut(ring, -DRAWN_IN));
  const boxes = rings.map(ringBox);
  return laid.every(({ form, x, y }, at) => {
    const { minX, minY, maxX, maxY } = boxes[form]!;
    if (x + minX < 0 || x + maxX > long || y + minY < 0 || y + maxY > WIDE) return false;
    return laid.slice(at + 1).every((other) => {
      const box = boxes[other.form]!;
      const isBeside = other.x + box.minX >= x + maxX || other.x + box.maxX <= x + minX;
      const isAbove = other.y + box.minY >= y + maxY || other.y + box.maxY <= y + minY;
      return (
        isBeside || isAbove || !ringsNearer(rings[form]!, rings[other.form]!, other.x - x, other.y - y, 0)
      );
    });
  });
}
