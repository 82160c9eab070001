/**
 * Pieces that fit together like a puzzle, looked for before the search: what is cut from a rectangle without loss finds
 * its places again in a moment, where pushing pieces apart would stay a tenth behind. Most of what makers lay is no
 * puzzle, and mostly shows it at once, so that little of the effort goes into it.
 */
import type { Lay, Model } from '../model.ts';
import { costOf } from '../lay-cost.ts';
import { type Random, randomFrom } from '../random.ts';
import { boardOf, type BoardPiece, startFill } from './grid-fill.ts';
import { LIKENESSES, puzzleOf } from './puzzle-pieces.ts';
import { isSound, type Laid, startTiling } from './tiling.ts';

export interface Puzzling {
  /** Told of each lay that is shorter than those before it. */
  readonly found: (lay: Lay) => void;
  /** Told of a lay whose pieces lie in each other by what was rounded off their outlines. */
  readonly nearlyFound: (lay: Lay) => void;
  /** Which part of the planned effort is gone after so many steps, 0 to 1. */
  readonly spent: (steps: number) => number;
}

/** Parts of the effort: for pieces that may be no puzzle, for those that once covered half of the cloth, on a grid. */
const SHARE = 0.02;
const PROMISING_SHARE = 0.15;
const PROMISING = 0.5;
const GRID_SHARE = 0.4;
/** So many steps for each piece are made anyway, unless they take this part of the effort. */
const STEPS_ANYWAY = 3;
const SHARE_ANYWAY = 0.3;
/** A try is given up after so many steps, or a multiple of them (see longTries). */
const TILING_STEPS = 200;
const FILL_STEPS = 500;

/** With more pieces, or corners of all that they may lie as, a step would take long and a try too many of them. */
const MOST_PIECES = 400;
const MOST_CORNERS = 20_000;

/** Whether the pieces may touch each other and the edges of the first length anywhere, so that they could fill it. */
export function mayBePuzzle({ job, bins, held, items, forms, widthMm, areaMm2 }: Model): boolean {
  const isBare = held.length === 0 && job.clearanceMm === 0 && job.spread === 'open' && job.repeat === null;
  const bin = bins[0]!;
  const isRoomy = bin.widthMm === widthMm && bin.flaws.length === 0 && bin.lengthMm >= areaMm2 / widthMm;
  const cornerCount = forms.reduce((sum, { ring }) => sum + ring.length / 2, 0);
  const isSmall = items.length > 1 && items.length <= MOST_PIECES && cornerCount <= MOST_CORNERS;
  return isBare && isRoomy && isSmall;
}

/**
 * 1, 1, 2, 1, 1, 2, 4 and so on, for n from 1: where luck decides how long a try takes, tries of these lengths are
 * never far from the best that could be chosen (Luby, Sinclair and Zuckerman, 1993).
 */
function longTries(n: number): number {
  let power = 1;
  while (2 * power - 1 < n) power *= 2;
  return 2 * power - 1 === n ? power : longTries(n - power + 1);
}

/** Looks for lays without loss, or on a grid with little; first: the lay to beat. Yields after each step. */
export function* solvePuzzle(model: Model, first: Lay, puzzling: Puzzling): Generator<void, void, void> {
  const random = randomFrom(model.job.seed);
  if (model.items[0]!.stepX > 0) yield* fillGrid(model, first, random, puzzling);
  else yield* fillRectangle(model, random, puzzling);
}

function* fillRectangle(
  model: Model,
  random: Random,
  { found, nearlyFound, spent }: Puzzling,
): Generator<void, void, void> {
  const puzzle = puzzleOf(model);
  let steps = 0;
  let share = SHARE;
  let likeness = 0;
  const isEnough = () => spent(steps) >= (steps < STEPS_ANYWAY * puzzle.pieceCount ? SHARE_ANYWAY : share);
  for (let tries = 0; likeness < LIKENESSES.length && !isEnough(); tries++) {
    const one = startTiling(
      puzzle,
      LIKENESSES[likeness]!,
      random.next() < 0.5 ? 'leftmost' : 'fewest',
      random,
    );
    const most = TILING_STEPS * longTries(tries + 1);
    let isGoing = true;
    for (let step = 0; step < most && isGoing && !isEnough(); step++) {
      isGoing = one.step();
      steps += 1;
      yield;
    }
    const laid = one.found();
    if (laid) {
      const lay = layOfLaid(model, puzzle.unitMm, laid);
      if (isSound(puzzle, laid)) found(lay);
      else nearlyFound(lay);
      return;
    }
    if (!isGoing) likeness += 1;
    else if (one.covered() >= PROMISING) share = PROMISING_SHARE;
  }
}

function layOfLaid(model: Model, unitMm: number, laid: readonly Laid[]): Lay {
  const lay = emptyLay(model);
  for (const { item, form, x, y } of laid) {
    lay.form[item] = form;
    lay.x[item] = model.bins[0]!.startX + x * unitMm;
    lay.y[item] = y * unitMm;
  }
  return lay;
}

function emptyLay({ items: { length } }: Model): Lay {
  return {
    form: new Int32Array(length),
    x: new Float64Array(length),
    y: new Float64Array(length),
    bin: new Int32Array(length),
  };
}

/** Fewer columns than before, and as few as the squares take, in turn. */
function* fillGrid(
  model: Model,
  first: Lay,
  random: Random,
  { found, spent }: Puzzling,
): Generator<void, void, void> {
  const board = boardOf(model);
  const least = Math.ceil(board.squareCount / board.rows);
  const [bin, usedMm] = costOf(model, first);
  let best =
    bin > 0 ? Math.floor(model.bins[0]!.lengthMm / board.stepMm) + 1 : Math.round(usedMm / board.stepMm);
  let steps = 0;
  for (let tries = 0; best > least && spent(steps) < GRID_SHARE; tries++) {
    const columns = tries % 2 === 0 ? best - 1 : least + Math.floor(random.next() * (best - least));
    const one = startFill(board, columns, random);
    const most = FILL_STEPS * longTries(Math.floor(tries / 2) + 1);
    let isGoing = true;
    for (let step = 0; step < most && isGoing && spent(steps) < GRID_SHARE; step++) {
      isGoing = one.step();
      steps += 1;
      yield;
    }
    const pieces = one.found();
    if (!pieces) continue;
    best = columns;
    found(layOfBoard(model, board.stepMm, pieces));
  }
}

function layOfBoard(model: Model, stepMm: number, pieces: readonly BoardPiece[]): Lay {
  const lay = emptyLay(model);
  for (const { item, form, column, row } of pieces) {
    lay.form[item] = form;
    lay.x[item] = model.bins[0]!.startX + column * stepMm;
    lay.y[item] = row * stepMm;
  }
  return lay;
}
