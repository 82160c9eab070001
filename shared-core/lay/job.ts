/**
 * What a lay is asked, and what it answers. The engine (lay/engine) sees shapes and obstacles only:
 * no coats, no cloth names. Frame: see geometry/ring.ts (x along the cloth, y across it).
 */
import type { Ring } from '../geometry/ring.ts';

export interface LayRect {
  readonly x: number;
  readonly y: number;
  readonly widthX: number;
  readonly widthY: number;
}

/** One shape to be cut `count` times. */
export interface LayShape {
  readonly id: string;
  /** Shapes of one size or style, which are cut together set by set. Absent: all belong together. */
  readonly group?: string;
  /** Counter-clockwise, open, mm, cut edge (allowances inside), grain along x. Own origin. */
  readonly ring: Ring;
  /** How many as drawn, and how many mirrored (y becomes -y before any turn). 0 or more each. */
  readonly count: number;
  readonly mirroredCount: number;
  /** Turns the grain and nap allow, degrees counter-clockwise: [0], [0, 180], [0, 90, 180, 270]. */
  readonly turnsDeg: readonly number[];
  /**
   * Only for folded cloth: the half of the shape whose straight edge on y = 0 goes on the fold.
   * Such a shape is placed with that edge on the fold line and cut once through both plies.
   */
  readonly foldRing?: Ring;
  /** Only with a repeat: the point of the shape (its own frame) that must stand at `phase` of the repeat. */
  readonly match?: {
    readonly x: number;
    readonly y: number;
    readonly phaseX: number;
    readonly phaseY: number;
  };
}

/** A physical length of cloth, or cloth yet to be bought (lengthMm null: as long as needed). */
export interface LayLength {
  readonly id: string;
  /** Usable: selvages and crosswise shrinkage are already taken off. Full width also when folded. */
  readonly widthMm: number;
  readonly lengthMm: number | null;
  /**
   * Parts that nothing may be cut from, in the frame of this length opened flat (y from 0 to widthMm).
   * Folded, the fold is at y = widthMm / 2 of that frame, and a flaw in either ply spoils both.
   */
  readonly flaws: readonly LayRect[];
}

export interface LayJob {
  readonly shapes: readonly LayShape[];
  /** Filled in the order given; at most one is endless (lengthMm null), and it is the last. */
  readonly lengths: readonly LayLength[];
  /** Least distance between two shapes. Shapes may touch the edge of the usable width and the ends. */
  readonly clearanceMm: number;
  /**
   * 'open': one ply. 'folded': folded lengthwise right sides together, the fold at y = 0 and the
   * two selvages at y = widthMm / 2; each placement cuts the shape and its mirror image.
   */
  readonly spread: 'open' | 'folded';
  /** Pattern repeat of the cloth, mm; a direction without a repeat is 0. */
  readonly repeat: { readonly alongMm: number; readonly acrossMm: number } | null;
  readonly seed: number;
  /** Copies that already lie where they shall stay; the others are laid around them. Absent: none. */
  readonly held?: readonly Placement[];
}

export interface LayBudget {
  /** Wall time; null for none. */
  readonly seconds: number | null;
  /** Search moves; null for none. With seconds null the result depends on job and iterations alone. */
  readonly iterations: number | null;
  /**
   * A slow or busy machine is given up to `maxOvertime` times the seconds until so many moves are made,
   * so that it too gives a sensible lay. Absent: none.
   */
  readonly minIterations?: number;
}

/** Moves for each piece after which a lay is sensible: on the demo's shell 60 come within 4 % of what 300 give. */
export const sensibleMovesPerPiece = 60;

/** How many times the seconds of a budget a busy machine may take. */
export const maxOvertime = 4;

/** How many moves make a sensible lay of the job. */
export function sensibleIterations(job: LayJob): number {
  return (
    sensibleMovesPerPiece * job.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0)
  );
}

export interface Placement {
  readonly shape: number;
  readonly length: number;
  /** Where the shape's own origin lies after mirroring and turning. */
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** True when foldRing was placed on the fold instead of ring. */
  readonly onFold: boolean;
}

export interface LayResult {
  readonly placements: readonly Placement[];
  /**
   * Copies that no length had room for: shape index and how many as drawn or mirrored. Empty with an endless length that
   * is wide enough for all of them.
   */
  readonly unplaced: readonly {
    readonly shape: number;
    readonly mirrored: boolean;
    readonly count: number;
  }[];
  /** Used extent along x for each length of the job, from its start to the last cut edge. */
  readonly usedLengthMm: readonly number[];
  /** Area of what was placed (both plies when folded) over used length x usable width, 0 to 1. */
  readonly utilisation: number;
  /** No lay can use less in all: area / width, and the longest shape's shortest allowed extent. */
  readonly floorMm: number;
  readonly seed: number;
  readonly iterations: number;
  readonly seconds: number;
  /** 'under way': the search has not ended; what it has found so far. */
  readonly stoppedBy:
    | 'under way'
    | 'floor'
    | 'time'
    | 'iterations'
    | 'maker'
    | 'nothing left to try'
    | 'by hand';
}
