/**
 * Instances whose best lay is known because they were cut from it: a strip of given width and length is cut into
 * pieces without loss, each piece is turned by one of its turns, and they are given in random order.
 */
import { type Ring, ringBox, ringMoved, ringTurned } from '../../../shared-core/geometry/ring.ts';
import type { LayJob, LayResult, Placement } from '../../../shared-core/lay/job.ts';

export interface MadePiece {
  /** Its lower left corner at the origin before it was turned. */
  readonly ring: Ring;
  readonly turnsDeg: readonly number[];
  /** Where its copies lay in the strip. */
  readonly places: readonly { readonly x: number; readonly y: number; readonly turnDeg: number }[];
}

export interface MadeInstance {
  readonly name: string;
  readonly kind: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly pieces: readonly MadePiece[];
}

/** A strip as it was cut. */
export interface CutStrip {
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Outlines where they lie; those in one list are copies of one shape, none of them turned. */
  readonly cut: readonly (readonly Ring[])[];
}

export type Dice = () => number;

/** A whole number from 0 to below count. */
export function below(next: Dice, count: number): number {
  return Math.floor(next() * count);
}

export function shuffled<T>(list: readonly T[], next: Dice): T[] {
  const result = [...list];
  for (let k = result.length - 1; k > 0; k--) {
    const m = below(next, k + 1);
    [result[k], result[m]] = [result[m]!, result[k]!];
  }
  return result;
}

/** The pieces of a cut strip, each turned and all of them mixed, so that order and turn give nothing away. */
export function mixed(
  name: string,
  kind: string,
  strip: CutStrip,
  turnsDeg: readonly number[],
  next: Dice,
): MadeInstance {
  const pieces = strip.cut.map((copies): MadePiece => {
    const turnDeg = turnsDeg[below(next, turnsDeg.length)]!;
    const places = copies.map((ring) => {
      const { minX, minY } = ringBox(ring);
      return { x: minX, y: minY, turnDeg };
    });
    const home = ringMoved(copies[0]!, -places[0]!.x, -places[0]!.y);
    return { ring: ringTurned(home, -turnDeg, false), turnsDeg, places };
  });
  return {
    name,
    kind,
    widthMm: strip.widthMm,
    lengthMm: strip.lengthMm,
    pieces: shuffled(pieces, next),
  };
}

export function madeJob(instance: MadeInstance, seed: number): LayJob {
  return {
    shapes: instance.pieces.map(({ ring, turnsDeg, places }, index) => ({
      id: `piece ${index + 1}`,
      ring,
      count: places.length,
      mirroredCount: 0,
      turnsDeg,
    })),
    lengths: [{ id: 'strip', widthMm: instance.widthMm, lengthMm: null, flaws: [] }],
    clearanceMm: 0,
    spread: 'open',
    repeat: null,
    seed,
  };
}

/** The lay that the instance was cut from: all of the strip is used. */
export function knownLay(instance: MadeInstance): LayResult {
  const placements = instance.pieces.flatMap(({ places }, shape) =>
    places.map((place): Placement => ({ shape, length: 0, mirrored: false, onFold: false, ...place })),
  );
  return {
    placements,
    unplaced: [],
    usedLengthMm: [instance.lengthMm],
    utilisation: 1,
    floorMm: instance.lengthMm,
    seed: 0,
    iterations: 0,
    seconds: 0,
    stoppedBy: 'floor',
  };
}
