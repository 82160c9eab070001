/**
 * What lays before this one have made of outlines and of pairs of them. A batch asks for the tables of its sets once
 * more, and another lay of the same pieces for all of them; each takes milliseconds to make. They depend on nothing
 * else, so a lay is the same with and without them.
 */
import type { Ring } from '../../geometry/ring.ts';
import { convexParts } from './convex.ts';
import { outwardRing } from './outward.ts';

/** What answers for one pair of shapes. */
export interface DepthTable {
  /** Half the extent of the grid, and cells per mm. */
  readonly halfX: number;
  readonly halfY: number;
  readonly cellsPerX: number;
  readonly cellsPerY: number;
  readonly columnCount: number;
  /** How far beyond the outlines two pieces count as overlapping. */
  readonly reachMm: number;
  /** Row by row: twice where the cell's list begins in `lists`, plus 1 when the cell is wholly inside; -1 when it is clear. */
  readonly cells: Int32Array;
  /** Per list: how many, then the numbers of the edges. Cells with the same edges share a list. */
  readonly lists: Int32Array;
  readonly edges: Float64Array;
}

/** An outline as tables are made of it. */
export interface Base {
  /** Another one for each outline and tolerance. */
  readonly id: number;
  readonly ring: Ring;
  readonly parts: readonly Ring[];
}

interface KeptBase extends Base {
  readonly outline: Ring;
  readonly toleranceMm: number;
}

/** More than the pieces of a coat in several sizes, turned as they may lie. */
const MOST_BASES = 256;
/** The tables of a coat take some megabytes. */
const MOST_BYTES = 32 * 2 ** 20;

/** Latest last. */
const bases: KeptBase[] = [];
let lastId = 0;

export function baseOf(outline: Ring, toleranceMm: number, mostCorners: number): Base {
  const at = bases.findLastIndex(
    (base) => base.toleranceMm === toleranceMm && areEqual(base.outline, outline),
  );
  const [kept] = at < 0 ? [] : bases.splice(at, 1);
  const base = kept ?? newBase(outline, toleranceMm, mostCorners);
  bases.push(base);
  if (bases.length > MOST_BASES) bases.shift();
  return base;
}

function newBase(outline: Ring, toleranceMm: number, mostCorners: number): KeptBase {
  const ring = outwardRing(outline, toleranceMm, mostCorners);
  lastId += 1;
  return { id: lastId, outline, toleranceMm, ring, parts: convexParts(ring) };
}

function areEqual(one: Ring, other: Ring): boolean {
  return one.length === other.length && one.every((number, at) => number === other[at]);
}

/** Latest last. */
const tables = new Map<string, DepthTable>();
let bytes = 0;

export function keptTable(
  a: Base,
  b: Base,
  flip: number,
  reachMm: number,
  make: () => DepthTable,
): DepthTable {
  const key = `${a.id} ${b.id} ${flip} ${reachMm}`;
  const kept = tables.get(key);
  const table = kept ?? make();
  if (kept === undefined) bytes += bytesOf(table);
  tables.delete(key);
  tables.set(key, table);
  for (const [oldest, old] of tables) {
    if (bytes <= MOST_BYTES) break;
    tables.delete(oldest);
    bytes -= bytesOf(old);
  }
  return table;
}

function bytesOf({ cells, lists, edges }: DepthTable): number {
  return cells.byteLength + lists.byteLength + edges.byteLength;
}
