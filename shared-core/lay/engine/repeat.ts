/**
 * Jobs that ask for the same set of shapes again and again: several coats, in one size or more. A set can be laid by
 * itself, and its lay repeated along the cloth, which no lay of them all need ever be worse than.
 */
import type { LayJob, LayShape } from '../job.ts';
import type { Form, Lay, Model } from './model.ts';

/** Shapes of one set, by their index: how many as drawn and mirrored; and how often the job asks for the set. */
export interface Repeated {
  readonly counts: readonly number[];
  readonly mirroredCounts: readonly number[];
  readonly times: number;
}

/** The sets that a job is made of, one for each group of its shapes; what no set repeats is a set asked for once. */
export function repeatedSets(job: LayJob, groupOf: (shape: LayShape) => string): Repeated[] {
  const groups = [...new Set(job.shapes.map(groupOf))];
  return groups.flatMap((group): Repeated[] => {
    const isOfGroup = job.shapes.map((shape) => groupOf(shape) === group);
    const inGroup = (count: (shape: LayJob['shapes'][number]) => number) =>
      job.shapes.map((shape, at) => (isOfGroup[at] ? count(shape) : 0));
    const counts = inGroup(({ count }) => count);
    const mirroredCounts = inGroup(({ mirroredCount }) => mirroredCount);
    const times = [...counts, ...mirroredCounts].reduce(greatestDivisor, 0);
    if (times === 0) return [];
    return [
      {
        counts: counts.map((count) => count / times),
        mirroredCounts: mirroredCounts.map((count) => count / times),
        times,
      },
    ];
  });
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/** How many of each set stand in one block, in the order of the sets. */
export type BlockContent = readonly number[];

/** The job of one block, on endless cloth as wide as the widest length. */
export function blockJob(job: LayJob, sets: readonly Repeated[], content: BlockContent): LayJob {
  const sum = (shape: number, of: 'counts' | 'mirroredCounts') =>
    sets.reduce((total, set, at) => total + (set[of][shape] ?? 0) * (content[at] ?? 0), 0);
  return {
    ...job,
    shapes: job.shapes.map((shape, at) => ({
      ...shape,
      count: sum(at, 'counts'),
      mirroredCount: sum(at, 'mirroredCounts'),
    })),
    lengths: [
      {
        id: 'block',
        widthMm: Math.max(...job.lengths.map(({ widthMm }) => widthMm)),
        lengthMm: null,
        flaws: [],
      },
    ],
  };
}

/** A lay of a block, as placements that any model of the job can take over. */
export interface Block {
  readonly content: BlockContent;
  readonly lengthMm: number;
  readonly pieces: readonly BlockPiece[];
}

export interface BlockPiece {
  readonly shape: number;
  /** Which copies of the shape: as drawn, or mirrored. */
  readonly isMirroredCopy: boolean;
  readonly form: Form;
  /** Centre of the form's box, from the start of the block. */
  readonly x: number;
  readonly y: number;
}

export function blockOf(model: Model, lay: Lay, content: BlockContent): Block {
  let lengthMm = 0;
  const pieces = model.items.map((item, at): BlockPiece => {
    const form = model.forms[lay.form[at]!]!;
    lengthMm = Math.max(lengthMm, lay.x[at]! + form.halfX);
    return { shape: item.shape, isMirroredCopy: item.mirrored, form, x: lay.x[at]!, y: lay.y[at]! };
  });
  return { content, lengthMm, pieces };
}

/** How a block may lie: as it was found, or with its ends exchanged. */
export type BlockTurn = 'as laid' | 'end for end';

/** Whether every shape may be turned by half, so that a block may. */
export function mayTurnBlocks(job: LayJob): boolean {
  return (
    job.spread === 'open' &&
    job.repeat === null &&
    job.shapes.every(({ turnsDeg }) =>
      turnsDeg.every((turn) => turnsDeg.some((other) => (((other - turn - 180) % 360) + 360) % 360 === 0)),
    )
  );
}

/** A lay with the block of each of its items, so that blocks can be slid together. */
export interface Chain {
  readonly lay: Lay;
  /** For each item: which of the blocks. */
  readonly blockOfItem: Int32Array;
  readonly blockCount: number;
}

export interface ChainLink {
  readonly block: Block;
  readonly turn: BlockTurn;
}

/**
 * Blocks one behind another on the first bins that hold them, each clear of the one before. Null where the blocks are
 * not all that the model asks for, or one finds no bin.
 */
export function chainOf(model: Model, links: readonly ChainLink[], widthMm: number): Chain | null {
  const formAt = new Map(model.forms.map((form, at) => [formName(form), at]));
  const free = Map.groupBy(model.items.keys(), (at) => {
    const { shape, mirrored } = model.items[at]!;
    return `${shape} ${mirrored}`;
  });
  const count = model.items.length;
  const lay: Lay = {
    form: new Int32Array(count).fill(-1),
    x: new Float64Array(count),
    y: new Float64Array(count),
    bin: new Int32Array(count).fill(-1),
  };
  const blockOfItem = new Int32Array(count).fill(-1);
  const places = placesOf(model, links, widthMm);
  if (!places) return null;
  for (const [index, { block, turn }] of links.entries()) {
    const { bin, fromMm } = places[index]!;
    const isTurned = turn === 'end for end';
    for (const piece of block.pieces) {
      // On folded cloth a set alone may cut a piece more than it needs.
      const at = free.get(`${piece.shape} ${piece.isMirroredCopy}`)?.shift();
      if (at === undefined) continue;
      // A shape that is its own half turn has one form for both.
      const form = formAt.get(formName(piece.form, isTurned ? 180 : 0)) ?? formAt.get(formName(piece.form));
      if (form === undefined) return null;
      lay.form[at] = form;
      lay.x[at] = model.bins[bin]!.startX + fromMm + (isTurned ? block.lengthMm - piece.x : piece.x);
      lay.y[at] = isTurned ? widthMm - piece.y : piece.y;
      lay.bin[at] = bin;
      blockOfItem[at] = index;
    }
  }
  return blockOfItem.includes(-1) ? null : { lay, blockOfItem, blockCount: links.length };
}

interface BlockPlace {
  readonly bin: number;
  readonly fromMm: number;
}

/** Where each block begins: the first bin with room behind the one before, clear of flaws. */
function placesOf(model: Model, links: readonly ChainLink[], widthMm: number): BlockPlace[] | null {
  const places: BlockPlace[] = [];
  const step = Math.max(0, ...model.items.map(({ stepX }) => stepX));
  // Pieces on a grid of their own touch; on a pattern repeat they keep their clearance.
  const near = model.job.repeat ? 1e-9 : 1e-4;
  const onStep = (x: number) => (step > 0 ? Math.ceil(x / step - near) * step : x);
  const ends = model.bins.map(() => 0);
  for (const { block } of links) {
    let found: BlockPlace | null = null;
    for (let bin = 0; bin < model.bins.length && !found; bin++) {
      const { lengthMm, widthMm: own, flaws } = model.bins[bin]!;
      if (own < widthMm - 1e-9) continue;
      let fromMm = onStep(ends[bin]!);
      for (const flaw of [...flaws].sort((a, b) => a.x - b.x)) {
        const isHit = flaw.x < fromMm + block.lengthMm && flaw.x + flaw.widthX > fromMm;
        if (isHit) fromMm = onStep(flaw.x + flaw.widthX);
      }
      if (fromMm + block.lengthMm <= lengthMm + 1e-9) found = { bin, fromMm };
    }
    if (!found) return null;
    ends[found.bin] = found.fromMm + block.lengthMm + model.clearanceMm + 4 * model.grainMm;
    places.push(found);
  }
  return places;
}

function formName({ shape, turnDeg, mirrored, onFold }: Form, byDeg = 0): string {
  return `${shape} ${(turnDeg + byDeg) % 360} ${mirrored} ${onFold}`;
}
