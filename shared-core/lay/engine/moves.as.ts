/**
 * The loops that move pieces, in AssemblyScript: they take nearly all of the time of a lay and run half as long
 * again in plain TypeScript. moves.ts fills the memory and calls what is exported here; moves-binary.ts is this
 * file compiled (`npm run build:moves`), and a test holds the two together.
 *
 * All numbers live in the memory as arrays one after another; a name that ends in `At` is where one begins.
 */

/** Builds the table of two forms and writes where it is into `codes`. */
declare function prepare(first: i32, second: i32): void;

/** How many places are tried for a move near the item, anywhere, and touching another; and how many are refined. */
const NEAR_SAMPLES: i32 = 8;
const UNIFORM_SAMPLES: i32 = 4;
const TOUCH_SAMPLES: i32 = 6;
/** At most as many as moves.ts makes room for. */
const KEPT_SAMPLES: i32 = 2;
/** Half of the places that touch another item touch it at the end of an edge, where pieces fit into corners. */
const TOUCH_TRIES: i32 = 10;
const TOUCH_ENDS: f64 = 0.5;
/** Steps of a descent as parts of the form's smaller side: from, to; then the winner again. */
const FIRST_STEP: f64 = 0.25;
const FIRST_END: f64 = 0.02;
const LAST_STEP: f64 = 0.01;
const LAST_END: f64 = 0.0005;
const OUT_STEPS: i32 = 6;
/** A descent ends where its steps are under this part of the way out as the overlaps push: they bring little. */
const LEAST_PART: f64 = 0.2;
/** Items are exchanged with others of about their size: the area differs at most by twice. */
const EXCHANGE_TRIES: i32 = 10;
const EXCHANGE_SIZES: f64 = 1.2;
/** An exchange asks fewer places: near where the other lay; for the other also anywhere and touching. One is refined. */
const EXCHANGE_NEAR: i32 = 4;
const EXCHANGE_UNIFORM: i32 = 2;
const EXCHANGE_TOUCH: i32 = 4;
/** A place may begin with this much of the loss that it must beat: refining brings it down. */
const EXCHANGE_BOUND: f64 = 1.3;
const EDGE_BYTES: i32 = 40;
/** Short numbers are true to a smaller part of themselves, several added up. */
const SHORT_NUMBERS: f64 = 1 / <f64>(1 << 20);
const HEAD_BYTES: i32 = 64;
/** A pair that stays in each other's way for long may not weigh more than numbers can hold. */
const MOST_WEIGHT: f64 = 1e60;
/** Settling goes on as long as each two dozen rounds leave less than this part of the overlap. */
const SETTLE_PATIENCE: f64 = 0.7;

// Counts and lengths, set once.
export let total: i32 = 0;
export let movers: i32 = 0;
export let formCount: i32 = 0;
export let reachMm: f64 = 0;
export let grainMm: f64 = 0;
export let nothingMm: f64 = 0;
export let edgeMm: f64 = 0;
export let widthMm: f64 = 0;
/** More than short numbers round by on this cloth. */
let hairMm: f64 = 0;
/** The bin whose length is being shortened; those after it are shut. */
export let active: i32 = 0;

/** Between these x and among these items a piece is drawn anywhere: a window of the strip, or all of it. */
export let windowFrom: f64 = -Infinity;
export let windowTo: f64 = Infinity;
export let handyAt: usize = 0;
/** Of those, first the ones that may move. */
export let handyCount: i32 = 0;
export let handyMovers: i32 = 0;

// Per item.
export let xAt: usize = 0;
export let yAt: usize = 0;
export let formAt: usize = 0;
export let halfXAt: usize = 0;
export let halfYAt: usize = 0;
export let sizeAt: usize = 0;
export let overlapAt: usize = 0;
// The same in short numbers, four at a time.
export let noteXAt: usize = 0;
export let noteYAt: usize = 0;
export let noteHalfXAt: usize = 0;
export let noteHalfYAt: usize = 0;
export let onFoldAt: usize = 0;
export let stepXAt: usize = 0;
export let stepYAt: usize = 0;
export let phaseXAt: usize = 0;
export let phaseYAt: usize = 0;
/** Where the item's forms begin in `choices`, and how many they are. */
export let choiceStartAt: usize = 0;
export let choiceCountAt: usize = 0;
export let choicesAt: usize = 0;
export let nearAt: usize = 0;
// The best samples of a move.
export let keptLossAt: usize = 0;
export let keptXAt: usize = 0;
export let keptYAt: usize = 0;
export let keptFormAt: usize = 0;
// Per pair of items.
export let weightAt: usize = 0;
export let depthAt: usize = 0;
export let pairsAt: usize = 0;
// Per form.
export let formHalfXAt: usize = 0;
export let formHalfYAt: usize = 0;
export let matchXAt: usize = 0;
export let matchYAt: usize = 0;
/** Per pair of forms: where its table is, plus 1 (2) when x (y) must change sign before it is asked; 0: not yet there. */
export let codesAt: usize = 0;
// Per bin.
export let startXAt: usize = 0;
export let binWidthAt: usize = 0;
export let limitAt: usize = 0;

// Results that a call leaves behind.
export let fitX: f64 = 0;
export let fitY: f64 = 0;
export let deepest: f64 = 0;

let nearCount: i32 = 0;
let outX: f64 = 0;
let outY: f64 = 0;
/** Where a descent stands. */
let placeX: f64 = 0;
let placeY: f64 = 0;
let placeLoss: f64 = 0;
/** Where the overlaps at that place push together. */
let downX: f64 = 0;
let downY: f64 = 0;
/** Where the near items were gathered for a descent, and how far it may go before they are gathered anew. */
let homeX: f64 = 0;
let homeY: f64 = 0;
let roam: f64 = 0;
// The nearest edge of the last look into a table.
let nearestEdge: usize = 0;

/** Where the overlaps of the last evaluation push together, each by its weight. */
let pushX: f64 = 0;
let pushY: f64 = 0;

let keptCount: i32 = 0;
/** How many samples are kept, and from which loss on none is. */
let mostKept: i32 = 0;
let keptBound: f64 = 0;
/** The best of the refined samples. */
let bestLoss: f64 = 0;
let bestX: f64 = 0;
let bestY: f64 = 0;
let bestForm: i32 = 0;

function real(at: usize, index: i32): f64 {
  return load<f64>(at + ((<usize>index) << 3));
}
function setReal(at: usize, index: i32, value: f64): void {
  store<f64>(at + ((<usize>index) << 3), value);
}
function whole(at: usize, index: i32): i32 {
  return load<i32>(at + ((<usize>index) << 2));
}
function setWhole(at: usize, index: i32, value: i32): void {
  store<i32>(at + ((<usize>index) << 2), value);
}

/** As min, without the branches that a processor guesses wrong. */
function smaller(a: f64, b: f64): f64 {
  return 0.5 * (a + b - Math.abs(a - b));
}

let randomState: u32 = 0;
/** The same seed gives the same moves on every machine. */
export function seed(value: i32): void {
  randomState = <u32>value ^ 0x9e3779b9;
}
/** 0 (included) to 1 (excluded). */
function random(): f64 {
  randomState += 0x6d2b79f5;
  let mixed: u32 = (randomState ^ (randomState >>> 15)) * (1 | randomState);
  mixed = (mixed + (mixed ^ (mixed >>> 7)) * (61 | mixed)) ^ mixed;
  return <f64>(mixed ^ (mixed >>> 14)) / 4294967296.0;
}
function randomBelow(count: i32): i32 {
  return <i32>(random() * <f64>count);
}

/**
 * Depth in mm at x, y in the frame of a table: how far the second form must move to stand clear of the first.
 * Negative or 0 when it is clear. Leaves the nearest edge behind.
 *
 * A table begins with half the extent of its grid (x, y), cells per mm (x, y) and the reach beyond the outlines, five
 * numbers; then as whole numbers the columns, where the edges are, their count, the lines and where the rough depths
 * are. From byte 64 on lie the cells: where the cell's list of edges begins, plus 1 when the cell is wholly inside, or
 * 0 when it is clear. A list is a count and where each edge is; an edge is its start x, y, its direction x, y and its
 * length, with the inside on the left.
 */
function depthIn(table: usize, x: f64, y: f64): f64 {
  const gridX = load<f64>(table);
  const gridY = load<f64>(table, 8);
  if (Math.abs(x) >= gridX || Math.abs(y) >= gridY) return 0;
  const column = <i32>((x + gridX) * load<f64>(table, 16));
  const line = <i32>((y + gridY) * load<f64>(table, 24));
  const cell = load<u32>(table + ((<usize>(line * load<i32>(table, 40) + column)) << 2), HEAD_BYTES);
  if (cell === 0) return 0;
  return depthBy(table, cell, x, y);
}

/** The same by the edges of a cell that the place lies in or beside. */
function depthBy(table: usize, cell: u32, x: f64, y: f64): f64 {
  let at: usize = cell & ~1;
  const end = at + 4 + (load<u32>(at) << 2);
  let least = Infinity;
  let side: f64 = 0;
  let nearest: usize = 0;
  for (at += 4; at < end; at += 4) {
    const edge: usize = load<u32>(at);
    const dx = x - load<f64>(edge);
    const dy = y - load<f64>(edge, 8);
    const ux = load<f64>(edge, 16);
    const uy = load<f64>(edge, 24);
    const along = dx * ux + dy * uy;
    const off = dx * uy - dy * ux;
    const length = load<f64>(edge, 32);
    const past = 0.5 * (Math.abs(along) + Math.abs(along - length) - length);
    const squared = off * off + past * past;
    // At a shared corner the edge that is squarer to the point knows its side.
    const takes =
      <i32>(squared < least * 0.9999) |
      (<i32>(squared < least * 1.0001) & <i32>(Math.abs(off) > Math.abs(side)));
    const lower = <i32>(squared < least);
    side = reinterpret<f64>(select<i64>(reinterpret<i64>(off), reinterpret<i64>(side), takes));
    nearest = select<usize>(edge, nearest, takes);
    least = reinterpret<f64>(select<i64>(reinterpret<i64>(squared), reinterpret<i64>(least), lower));
  }
  nearestEdge = nearest;
  const distance = Math.sqrt(least);
  // A point that no near edge can place counts as inside, which is the safe side.
  return ((cell & 1) !== 0 || side < distance * 1e-4 ? distance : -distance) + load<f64>(table, 32);
}

/**
 * Fills the rough depths of a table of forms that reach so far from their centres: for each corner of its grid the
 * depth times the root of the sides that the boxes share (see overlapWith), under 0 where it is clear.
 */
export function fillRough(table: usize, firstX: f64, firstY: f64, secondX: f64, secondY: f64): void {
  const columns = load<i32>(table, 40);
  const lines = load<i32>(table, 52);
  const gridX = load<f64>(table);
  const gridY = load<f64>(table, 8);
  const wide = (2 * gridX) / <f64>columns;
  const high = (2 * gridY) / <f64>lines;
  const clear = -Math.sqrt(wide * wide + high * high);
  let to: usize = load<u32>(table, 56);
  for (let line = 0; line <= lines; line++) {
    const y = <f64>line * high - gridY;
    const overY = smaller(firstY + secondY - Math.abs(y), 2 * smaller(firstY, secondY));
    for (let column = 0; column <= columns; column++) {
      const x = <f64>column * wide - gridX;
      const overX = smaller(firstX + secondX - Math.abs(x), 2 * smaller(firstX, secondX));
      let depth = clear;
      for (let beside = 0; beside < 4; beside++) {
        const c = column - (beside & 1);
        const l = line - (beside >> 1);
        if (c < 0 || l < 0 || c >= columns || l >= lines) continue;
        const cell = load<u32>(table + ((<usize>(l * columns + c)) << 2), HEAD_BYTES);
        if (cell === 0) continue;
        depth = depthBy(table, cell, x, y);
        break;
      }
      store<f32>(to, <f32>(depth * Math.sqrt(max<f64>(0, overX + overY))));
      to += 4;
    }
  }
}

/** See roughBetween, in the frame of a table. */
function roughIn(table: usize, x: f64, y: f64): f64 {
  const gridX = load<f64>(table);
  const gridY = load<f64>(table, 8);
  if (Math.abs(x) >= gridX || Math.abs(y) >= gridY) return 0;
  const atX = (x + gridX) * load<f64>(table, 16);
  const atY = (y + gridY) * load<f64>(table, 24);
  const column = <i32>atX;
  const line = <i32>atY;
  const partX = atX - <f64>column;
  const partY = atY - <f64>line;
  const columns = load<i32>(table, 40) + 1;
  const near: usize = <usize>load<u32>(table, 56) + ((<usize>(line * columns + column)) << 2);
  const far: usize = near + ((<usize>columns) << 2);
  const a = <f64>load<f32>(near);
  const b = <f64>load<f32>(near, 4);
  const c = <f64>load<f32>(far);
  const d = <f64>load<f32>(far, 4);
  const low = a + (b - a) * partX;
  const high = c + (d - c) * partX;
  return low + (high - low) * partY;
}

function codeOf(first: i32, second: i32): i32 {
  const at = first * formCount + second;
  const code = whole(codesAt, at);
  if (code !== 0) return code;
  prepare(first, second);
  return whole(codesAt, at);
}

/** Turns x into the frame of the table that a code names, and back. */
function flipX(code: i32, x: f64): f64 {
  return (code & 1) !== 0 ? -x : x;
}
function flipY(code: i32, y: f64): f64 {
  return (code & 2) !== 0 ? -y : y;
}
function tableOf(code: i32): usize {
  return code & ~7;
}

/** Depth in mm of the second form in the first when its centre is x, y from the first's; 0 when it is clear. */
export function depthBetween(first: i32, second: i32, x: f64, y: f64): f64 {
  const code = codeOf(first, second);
  return max<f64>(0, depthIn(tableOf(code), flipX(code, x), flipY(code, y)));
}

/** Notes where an item lies, and in which form, for `meets`. A lifted one is nowhere. */
function note(i: i32): void {
  const at = (<usize>i) << 2;
  store<f32>(noteXAt + at, <f32>real(xAt, i));
  store<f32>(noteYAt + at, <f32>real(yAt, i));
  store<f32>(noteHalfXAt + at, <f32>real(halfXAt, i));
  store<f32>(noteHalfYAt + at, <f32>real(halfYAt, i));
}
function noteAll(): void {
  hairMm = SHORT_NUMBERS * (real(startXAt, active) + real(limitAt, active) + widthMm);
  for (let i = 0; i < total; i++) note(i);
}
function lift(i: i32): void {
  store<f32>(noteXAt + ((<usize>i) << 2), Infinity);
}

function isLifted(i: i32): bool {
  return load<f32>(noteXAt + ((<usize>i) << 2)) === Infinity;
}

/**
 * Depth times the root of the sides of the box that both boxes share, about: interpolated between the corners of the
 * table's grid, which costs a part of the exact depth and is enough to choose among places. 0 or less where it is clear.
 */
export function roughBetween(first: i32, second: i32, x: f64, y: f64): f64 {
  const code = codeOf(first, second);
  return roughIn(tableOf(code), flipX(code, x), flipY(code, y));
}

/**
 * Which of the four items from j on have their boxes nearer to px, py than hx, hy beyond their own halves, a bit for
 * each. By short numbers, so the halves are to be a hair more. Behind the last item lie some that are nowhere, so that
 * there are always four.
 */
function meets(j: i32, px: v128, py: v128, hx: v128, hy: v128): i32 {
  const at = (<usize>j) << 2;
  const apartX = f32x4.abs(f32x4.sub(v128.load(noteXAt + at), px));
  const apartY = f32x4.abs(f32x4.sub(v128.load(noteYAt + at), py));
  const isNearX = f32x4.lt(apartX, f32x4.add(v128.load(noteHalfXAt + at), hx));
  const isNearY = f32x4.lt(apartY, f32x4.add(v128.load(noteHalfYAt + at), hy));
  return i32x4.bitmask(v128.and(isNearX, isNearY));
}

/** Gathers those that a lifted item in form f can meet while a descent is no further than `roam` from px, py. */
function gatherNear(f: i32, px: f64, py: f64): void {
  homeX = px;
  homeY = py;
  const hx = f32x4.splat(<f32>(real(formHalfXAt, f) + reachMm + roam + hairMm));
  const hy = f32x4.splat(<f32>(real(formHalfYAt, f) + reachMm + roam + hairMm));
  const toX = f32x4.splat(<f32>px);
  const toY = f32x4.splat(<f32>py);
  let count = 0;
  for (let j = 0; j < total; j += 4) {
    for (let found = meets(j, toX, toY, hx, hy); found !== 0; found &= found - 1) {
      setWhole(nearAt, count, j + ctz(found));
      count += 1;
    }
  }
  nearCount = count;
}

/** Weighted overlap of item i in form f at px, py with item j, whose box it meets. */
function overlapWith(i: i32, f: i32, px: f64, py: f64, j: i32): f64 {
  const code = codeOf(f, whole(formAt, j));
  const vx = flipX(code, real(xAt, j) - px);
  const vy = flipY(code, real(yAt, j) - py);
  const depth = depthIn(tableOf(code), vx, vy);
  if (depth <= 0) return 0;
  const hx = real(formHalfXAt, f) + reachMm;
  const hy = real(formHalfYAt, f) + reachMm;
  const halfX = real(halfXAt, j);
  const halfY = real(halfYAt, j);
  const overX = smaller(hx + halfX - Math.abs(vx), 2 * smaller(halfX, hx));
  const overY = smaller(hy + halfY - Math.abs(vy), 2 * smaller(halfY, hy));
  // A long overlap is harder to undo than a corner of the same depth.
  const slope = Math.sqrt(overX + overY) * real(weightAt, i * total + j);
  // The other would leave through the nearest edge, so this one is pushed the other way.
  pushX -= flipX(code, slope * load<f64>(nearestEdge, 24));
  pushY += flipY(code, slope * load<f64>(nearestEdge, 16));
  return depth * slope;
}

/** Weighted overlap of item i in form f at px, py with all others. */
function evaluate(i: i32, f: i32, px: f64, py: f64): f64 {
  const hx = f32x4.splat(<f32>(real(formHalfXAt, f) + reachMm + hairMm));
  const hy = f32x4.splat(<f32>(real(formHalfYAt, f) + reachMm + hairMm));
  const toX = f32x4.splat(<f32>px);
  const toY = f32x4.splat(<f32>py);
  let loss: f64 = 0;
  for (let j = 0; j < total; j += 4) {
    for (let found = meets(j, toX, toY, hx, hy); found !== 0; found &= found - 1) {
      loss += overlapWith(i, f, px, py, j + ctz(found));
    }
  }
  return loss;
}

/** The same with those that were gathered; it stops once it passes `bound`. */
function evaluateNear(i: i32, f: i32, px: f64, py: f64, bound: f64): f64 {
  const hx = real(formHalfXAt, f) + reachMm;
  const hy = real(formHalfYAt, f) + reachMm;
  let loss: f64 = 0;
  pushX = 0;
  pushY = 0;
  for (let k = 0; k < nearCount; k++) {
    const j = whole(nearAt, k);
    if (Math.abs(real(xAt, j) - px) >= hx + real(halfXAt, j)) continue;
    if (Math.abs(real(yAt, j) - py) >= hy + real(halfYAt, j)) continue;
    loss += overlapWith(i, f, px, py, j);
    if (loss >= bound) {
      // What ends an evaluation early is asked earlier next time.
      const to = k >> 1;
      setWhole(nearAt, k, whole(nearAt, to));
      setWhole(nearAt, to, j);
      return loss;
    }
  }
  return loss;
}

/** As overlapWith, about. */
function roughWith(i: i32, f: i32, px: f64, py: f64, j: i32): f64 {
  const rough = roughBetween(f, whole(formAt, j), real(xAt, j) - px, real(yAt, j) - py);
  return rough <= 0 ? 0 : rough * real(weightAt, i * total + j);
}

/** As evaluate, about. */
function evaluateRough(i: i32, f: i32, px: f64, py: f64, bound: f64): f64 {
  const hx = f32x4.splat(<f32>(real(formHalfXAt, f) + reachMm + hairMm));
  const hy = f32x4.splat(<f32>(real(formHalfYAt, f) + reachMm + hairMm));
  const toX = f32x4.splat(<f32>px);
  const toY = f32x4.splat(<f32>py);
  let loss: f64 = 0;
  for (let j = 0; j < total; j += 4) {
    for (let found = meets(j, toX, toY, hx, hy); found !== 0; found &= found - 1) {
      loss += roughWith(i, f, px, py, j + ctz(found));
    }
    if (loss >= bound) return loss;
  }
  return loss;
}

/** The way out for the first of two items that the last look found that deep in one another: outX, outY. */
function findOut(code: i32, depth: f64, x: f64, y: f64): void {
  // Out through the nearest edge (or its end): the other would go there, so this one goes the other way.
  const ux = load<f64>(nearestEdge, 16);
  const uy = load<f64>(nearestEdge, 24);
  const length = load<f64>(nearestEdge, 32);
  const dx = x - load<f64>(nearestEdge);
  const dy = y - load<f64>(nearestEdge, 8);
  const along = dx * ux + dy * uy;
  let wayX = uy;
  let wayY = -ux;
  if (along < 0 || along > length) {
    const endX = along < 0 ? -dx : ux * length - dx;
    const endY = along < 0 ? -dy : uy * length - dy;
    const span = Math.sqrt(endX * endX + endY * endY);
    if (span > 1e-12 && span <= depth) {
      wayX = endX / span;
      wayY = endY / span;
    }
  }
  outX = -flipX(code, wayX * depth);
  outY = -flipY(code, wayY * depth);
}

function latticeNear(value: f64, step: f64, phase: f64, match: f64, start: f64): f64 {
  if (step === 0) return value;
  const base = start + phase - match;
  return base + Math.floor((value - base) / step + 0.5) * step;
}

/** Brings px, py into the bin that it is in or nearest to: fitX, fitY. False when the form cannot lie there. */
export function fit(i: i32, f: i32, px: f64, py: f64): bool {
  let b = active;
  while (b > 0 && px < real(startXAt, b)) b -= 1;
  const start = real(startXAt, b);
  const hx = real(formHalfXAt, f);
  const hy = real(formHalfYAt, f);
  const onFold = whole(onFoldAt, i) !== 0;
  const lowX = start + hx;
  const highX = start + real(limitAt, b) - hx + (b < active ? edgeMm : 0);
  const lowY = onFold ? hy : hy - edgeMm;
  const highY = real(binWidthAt, b) - hy + edgeMm;
  if (highX < lowX - grainMm || highY < lowY - grainMm) return false;
  let atX = px < lowX ? lowX : px > highX ? highX : px;
  let atY = onFold ? lowY : py < lowY ? lowY : py > highY ? highY : py;
  const stepX = real(stepXAt, i);
  const stepY = real(stepYAt, i);
  if (stepX > 0 || stepY > 0) {
    atX = latticeNear(atX, stepX, real(phaseXAt, i), real(matchXAt, f), start);
    if (atX < lowX - grainMm) atX += stepX;
    if (atX > highX + grainMm) atX -= stepX;
    if (atX < lowX - grainMm) return false;
    if (!onFold) {
      atY = latticeNear(atY, stepY, real(phaseYAt, i), real(matchYAt, f), 0);
      if (atY < lowY - grainMm) atY += stepY;
      if (atY > highY + grainMm) atY -= stepY;
      if (atY < lowY - grainMm) return false;
    } else if (stepY > 0) {
      const snapped = latticeNear(lowY, stepY, real(phaseYAt, i), real(matchYAt, f), 0);
      if (Math.abs(snapped - lowY) > 1e-5) return false;
    }
  }
  fitX = atX;
  fitY = atY;
  return true;
}

/** Keeps the tried place if it is one of the best so far, apart from the others. */
function offer(i: i32, f: i32, px: f64, py: f64): void {
  if (!fit(i, f, px, py)) return;
  const bound = keptCount < mostKept ? keptBound : real(keptLossAt, mostKept - 1);
  const toX = fitX;
  const toY = fitY;
  const loss = evaluateRough(i, f, toX, toY, bound);
  if (loss >= bound) return;
  const apart = 0.05 * min<f64>(real(formHalfXAt, f), real(formHalfYAt, f));
  for (let k = 0; k < keptCount; k++) {
    if (
      whole(keptFormAt, k) !== f ||
      Math.abs(real(keptXAt, k) - toX) >= apart ||
      Math.abs(real(keptYAt, k) - toY) >= apart
    )
      continue;
    if (loss >= real(keptLossAt, k)) return;
    for (let m = k; m + 1 < keptCount; m++) shiftKept(m + 1, m);
    keptCount -= 1;
    break;
  }
  let k = keptCount < mostKept ? keptCount : mostKept - 1;
  if (keptCount < mostKept) keptCount += 1;
  while (k > 0 && real(keptLossAt, k - 1) > loss) {
    shiftKept(k - 1, k);
    k -= 1;
  }
  setReal(keptLossAt, k, loss);
  setReal(keptXAt, k, toX);
  setReal(keptYAt, k, toY);
  setWhole(keptFormAt, k, f);
}

/** Tries a place where item i in form f touches another item and is on the cloth. */
function offerTouching(i: i32, f: i32): void {
  if (total < 2) return;
  const near = 0.001 * widthMm;
  for (let tries = 0; tries < TOUCH_TRIES; tries++) {
    const j = whole(handyAt, randomBelow(handyCount));
    if (j === i || isLifted(j)) continue;
    const code = codeOf(f, whole(formAt, j));
    const table = tableOf(code);
    const edge: usize = load<u32>(table, 44) + randomBelow(load<i32>(table, 48)) * EDGE_BYTES;
    const along = random() < TOUCH_ENDS ? 0 : random() * load<f64>(edge, 32);
    const ux = load<f64>(edge, 16);
    const uy = load<f64>(edge, 24);
    const reach = load<f64>(table, 32);
    const vx = load<f64>(edge) + ux * along + uy * reach;
    const vy = load<f64>(edge, 8) + uy * along - ux * reach;
    const toX = real(xAt, j) - flipX(code, vx);
    const toY = real(yAt, j) - flipY(code, vy);
    // A place beyond the cloth would be drawn in and touch no more; one off the lattice is brought to it.
    if (!fit(i, f, toX, toY)) continue;
    if (Math.abs(fitX - toX) > near + real(stepXAt, i)) continue;
    if (Math.abs(fitY - toY) > near + real(stepYAt, i)) continue;
    offer(i, f, toX, toY);
    return;
  }
}

function shiftKept(from: i32, to: i32): void {
  setReal(keptLossAt, to, real(keptLossAt, from));
  setReal(keptXAt, to, real(keptXAt, from));
  setReal(keptYAt, to, real(keptYAt, from));
  setWhole(keptFormAt, to, whole(keptFormAt, from));
}

/** Takes the descent to fitX, fitY if there is less loss there. */
function goesDown(i: i32, f: i32): bool {
  const toX = fitX;
  const toY = fitY;
  if (Math.abs(toX - homeX) > roam || Math.abs(toY - homeY) > roam) gatherNear(f, toX, toY);
  const loss = evaluateNear(i, f, toX, toY, placeLoss);
  if (loss >= placeLoss) return false;
  placeLoss = loss;
  placeX = toX;
  placeY = toY;
  downX = pushX;
  downY = pushY;
  return true;
}

/**
 * From the descent's place down to less loss: with short steps first straight out to where the overlaps push
 * together, as long as that helps, then one axis or diagonal at a time. What lies deep is not refined by hairs.
 */
function descend(i: i32, f: i32, firstRatio: f64, lastRatio: f64): void {
  const side = 2 * min<f64>(real(formHalfXAt, f), real(formHalfYAt, f));
  const lastStep = side * lastRatio;
  let stepX = side * firstRatio;
  let stepY = stepX;
  roam = stepX * 3;
  gatherNear(f, placeX, placeY);
  placeLoss = evaluateNear(i, f, placeX, placeY, Infinity);
  downX = pushX;
  downY = pushY;
  if (firstRatio < 0.1) {
    for (let outs = 0; outs < OUT_STEPS && placeLoss > 0; outs++) {
      const squared = downX * downX + downY * downY;
      const out = placeLoss / squared;
      if (squared === 0 || !fit(i, f, placeX + out * downX, placeY + out * downY) || !goesDown(i, f)) break;
    }
  }
  while ((stepX > lastStep || stepY > lastStep) && placeLoss > 0) {
    const out = placeLoss / Math.sqrt(downX * downX + downY * downY);
    if (max<f64>(stepX, stepY) < LEAST_PART * out) return;
    const way = random();
    const moveX = way < 0.4 || way >= 0.8 ? stepX : 0;
    const moveY = way < 0.4 ? 0 : way < 0.9 ? stepY : -stepY;
    // Only the side to which the overlaps push can bring less: the other is not asked.
    const sign: f64 = downX * moveX + downY * moveY < 0 ? -1 : 1;
    const won =
      fit(i, f, placeX + sign * moveX, placeY + sign * moveY) &&
      (fitX !== placeX || fitY !== placeY) &&
      goesDown(i, f);
    const factor = won ? 1.1 : 0.5;
    const both = moveX !== 0 && moveY !== 0 ? Math.sqrt(factor) : factor;
    if (moveX !== 0) stepX *= both;
    if (moveY !== 0) stepY *= both;
  }
}

function setPlace(i: i32, f: i32, toX: f64, toY: f64): void {
  setWhole(formAt, i, f);
  setReal(halfXAt, i, real(formHalfXAt, f));
  setReal(halfYAt, i, real(formHalfYAt, f));
  setReal(xAt, i, toX);
  setReal(yAt, i, toY);
  note(i);
}

/** One of the forms in which item i may lie. */
function anyForm(i: i32): i32 {
  return whole(choicesAt, whole(choiceStartAt, i) + randomBelow(whole(choiceCountAt, i)));
}

/** Forgets the samples; from now on the best `most` of less loss than `bound` are kept. */
function startSampling(most: i32, bound: f64): void {
  keptCount = 0;
  mostKept = most;
  keptBound = bound;
}

function offerNear(i: i32, nearX: f64, nearY: f64, samples: i32): void {
  for (let s = 0; s < samples; s++) {
    const f = anyForm(i);
    const toX = nearX + (random() - 0.5) * 2 * real(formHalfXAt, f);
    const toY = nearY + (random() - 0.5) * 2 * real(formHalfYAt, f);
    offer(i, f, toX, toY);
  }
}

function offerAnywhere(i: i32, samples: i32): void {
  if (windowTo < Infinity) {
    offerInWindow(i, samples);
    return;
  }
  let open: f64 = 0;
  for (let b = 0; b <= active; b++) open += real(limitAt, b);
  for (let s = 0; s < samples; s++) {
    const f = anyForm(i);
    let at = random() * open;
    let b = 0;
    while (b < active && at >= real(limitAt, b)) {
      at -= real(limitAt, b);
      b += 1;
    }
    const hx = real(formHalfXAt, f);
    const hy = real(formHalfYAt, f);
    const long = real(limitAt, b);
    const toX = real(startXAt, b) + hx + (at / long) * max<f64>(0, long - 2 * hx);
    const toY = hy + random() * max<f64>(0, real(binWidthAt, b) - 2 * hy);
    offer(i, f, toX, toY);
  }
}

function offerInWindow(i: i32, samples: i32): void {
  let b = active;
  while (b > 0 && windowFrom < real(startXAt, b)) b -= 1;
  for (let s = 0; s < samples; s++) {
    const f = anyForm(i);
    const hx = real(formHalfXAt, f);
    const hy = real(formHalfYAt, f);
    const toX = windowFrom + hx + random() * max<f64>(0, windowTo - windowFrom - 2 * hx);
    const toY = hy + random() * max<f64>(0, real(binWidthAt, b) - 2 * hy);
    offer(i, f, toX, toY);
  }
}

/** Refines the samples kept for item i by coarse steps; leaves the best place behind, with Infinity for loss when there is none. */
function refineKept(i: i32): void {
  bestLoss = Infinity;
  for (let k = 0; k < keptCount && bestLoss > 0; k++) {
    placeX = real(keptXAt, k);
    placeY = real(keptYAt, k);
    descend(i, whole(keptFormAt, k), FIRST_STEP, FIRST_END);
    if (placeLoss >= bestLoss) continue;
    bestLoss = placeLoss;
    bestX = placeX;
    bestY = placeY;
    bestForm = whole(keptFormAt, k);
  }
}

/** Offers item i that place, so many near it, anywhere and touching another, and refines those that were kept. */
function seek(i: i32, f: i32, px: f64, py: f64, near: i32, anywhere: i32, touching: i32): void {
  offer(i, f, px, py);
  offerNear(i, px, py, near);
  offerAnywhere(i, anywhere);
  for (let s = 0; s < touching; s++) offerTouching(i, anyForm(i));
  refineKept(i);
}

/** Refines the best place for item i by fine steps. */
function refineBest(i: i32): void {
  if (bestLoss === 0 || bestLoss === Infinity) return;
  placeX = bestX;
  placeY = bestY;
  descend(i, bestForm, LAST_STEP, LAST_END);
  bestLoss = placeLoss;
  bestX = placeX;
  bestY = placeY;
}

/** Moves item i to the best place found; if it overlaps there, tries to exchange it so often with another. */
export function moveItem(i: i32, exchanges: i32): void {
  const own = whole(formAt, i);
  const fromX = real(xAt, i);
  const fromY = real(yAt, i);
  noteAll();
  lift(i);
  let loss = evaluate(i, own, fromX, fromY);
  if (loss === 0) return;
  startSampling(KEPT_SAMPLES, Infinity);
  seek(i, own, fromX, fromY, NEAR_SAMPLES, UNIFORM_SAMPLES, TOUCH_SAMPLES);
  refineBest(i);
  if (bestLoss < loss) {
    setPlace(i, bestForm, bestX, bestY);
    loss = bestLoss;
  } else note(i);
  for (let tries = 0; tries < exchanges && loss > 0; tries++) if (exchange(i, loss)) return;
}

/** Another item of about the size of item i, but not of its shape; -1 when none is found. */
function partnerOf(i: i32): i32 {
  const size = real(sizeAt, i);
  const shape = whole(choicesAt, whole(choiceStartAt, i));
  for (let tries = 0; tries < EXCHANGE_TRIES; tries++) {
    const j = whole(handyAt, randomBelow(handyMovers));
    const ratio = real(sizeAt, j) / size;
    if (ratio > EXCHANGE_SIZES || ratio * EXCHANGE_SIZES < 1) continue;
    if (whole(choicesAt, whole(choiceStartAt, j)) !== shape) return j;
  }
  return -1;
}

/**
 * Lifts item i, whose weighted overlap is `loss`, and another; i is laid near where the other lay, then the other
 * near where i lay, anywhere or touching a third. True when the two overlap less than before; otherwise they lie as
 * they lay. What two moves one after the other cannot do while the place of each is taken by the other.
 */
function exchange(i: i32, loss: f64): bool {
  const j = partnerOf(i);
  if (j < 0) return false;
  const formI = whole(formAt, i);
  const fromIX = real(xAt, i);
  const fromIY = real(yAt, i);
  const formJ = whole(formAt, j);
  const fromJX = real(xAt, j);
  const fromJY = real(yAt, j);
  lift(i);
  lift(j);
  const before = loss + evaluate(j, formJ, fromJX, fromJY);
  startSampling(1, before * EXCHANGE_BOUND);
  seek(i, anyForm(i), fromJX, fromJY, EXCHANGE_NEAR, 0, 0);
  const left = before - bestLoss;
  if (left > 0) {
    setPlace(i, bestForm, bestX, bestY);
    startSampling(1, left * EXCHANGE_BOUND);
    seek(j, anyForm(j), fromIX, fromIY, EXCHANGE_NEAR, EXCHANGE_UNIFORM, EXCHANGE_TOUCH);
    if (bestLoss < left) {
      setPlace(j, bestForm, bestX, bestY);
      return true;
    }
  }
  setPlace(i, formI, fromIX, fromIY);
  setPlace(j, formJ, fromJX, fromJY);
  return false;
}

function isApart(i: i32, j: i32, by: f64): bool {
  return (
    Math.abs(real(xAt, j) - real(xAt, i)) >= real(halfXAt, i) + real(halfXAt, j) + by ||
    Math.abs(real(yAt, j) - real(yAt, i)) >= real(halfYAt, i) + real(halfYAt, j) + by
  );
}

/** Sides of the box that both boxes share, added. */
function sharedSides(i: i32, j: i32): f64 {
  const iX = real(halfXAt, i);
  const jX = real(halfXAt, j);
  const iY = real(halfYAt, i);
  const jY = real(halfYAt, j);
  const overX = min<f64>(iX + jX - Math.abs(real(xAt, i) - real(xAt, j)), 2 * min<f64>(iX, jX));
  const overY = min<f64>(iY + jY - Math.abs(real(yAt, i) - real(yAt, j)), 2 * min<f64>(iY, jY));
  return max<f64>(0, overX) + max<f64>(0, overY);
}

/** Overlap depths of all pairs and of each item; their sum with sizes but without weights. */
export function measure(): f64 {
  let sum: f64 = 0;
  deepest = 0;
  for (let i = 0; i < total; i++) setReal(overlapAt, i, 0);
  for (let i = 0; i < movers; i++) {
    for (let j = i + 1; j < total; j++) {
      let depth: f64 = 0;
      if (!isApart(i, j, reachMm)) {
        depth = depthBetween(
          whole(formAt, i),
          whole(formAt, j),
          real(xAt, j) - real(xAt, i),
          real(yAt, j) - real(yAt, i),
        );
        if (depth <= nothingMm) depth = 0;
      }
      setReal(depthAt, i * total + j, depth);
      if (depth === 0) continue;
      sum += depth * Math.sqrt(sharedSides(i, j)) * real(sizeAt, i) * real(sizeAt, j);
      setReal(overlapAt, i, real(overlapAt, i) + depth);
      setReal(overlapAt, j, real(overlapAt, j) + depth);
      deepest = max<f64>(deepest, depth);
    }
  }
  return sum;
}

/** All weights as at first: the sizes of the two, since a deep overlap of two large pieces is worse than of small ones. */
export function resetWeights(): void {
  for (let i = 0; i < total; i++) {
    for (let j = 0; j < total; j++) setReal(weightAt, i * total + j, real(sizeAt, i) * real(sizeAt, j));
  }
}

/** After a measure: pairs that overlap grow in weight, the others shrink. */
export function raiseWeights(): void {
  for (let i = 0; i < movers; i++) {
    for (let j = i + 1; j < total; j++) {
      const depth = real(depthAt, i * total + j);
      const least = real(sizeAt, i) * real(sizeAt, j);
      let value = real(weightAt, i * total + j);
      if (depth > 0) value = min<f64>(least * MOST_WEIGHT, value * (1.2 + 0.8 * (depth / deepest)));
      else if (value > least) value = max<f64>(least, value * 0.95);
      else continue;
      setReal(weightAt, i * total + j, value);
      setReal(weightAt, j * total + i, value);
    }
  }
}

function isFree(i: i32): bool {
  return i < movers && real(stepXAt, i) === 0 && real(stepYAt, i) === 0;
}

/**
 * Pushes all overlapping pairs apart at once, each a little, again and again: what single moves cannot do when many
 * pieces are each in the way by a hair. True when nothing overlaps any more.
 */
export function settle(rounds: i32): bool {
  const room = 0.02 * widthMm;
  let last = Infinity;
  let pairCount = 0;
  for (let round = 0; round < rounds; round++) {
    if (round % 16 === 0) {
      pairCount = 0;
      for (let i = 0; i < movers; i++) {
        for (let j = i + 1; j < total; j++) {
          if (isApart(i, j, reachMm + room)) continue;
          setWhole(pairsAt, 2 * pairCount, i);
          setWhole(pairsAt, 2 * pairCount + 1, j);
          pairCount += 1;
        }
      }
    }
    let sum: f64 = 0;
    let most: f64 = 0;
    for (let step = 0; step < pairCount; step++) {
      const k = round % 2 === 0 ? step : pairCount - 1 - step;
      const i = whole(pairsAt, 2 * k);
      const j = whole(pairsAt, 2 * k + 1);
      if (isApart(i, j, reachMm)) continue;
      const code = codeOf(whole(formAt, i), whole(formAt, j));
      const vx = flipX(code, real(xAt, j) - real(xAt, i));
      const vy = flipY(code, real(yAt, j) - real(yAt, i));
      const depth = depthIn(tableOf(code), vx, vy);
      if (depth <= nothingMm * 0.5) continue;
      findOut(code, depth, vx, vy);
      sum += depth;
      most = max<f64>(most, depth);
      const movesI = isFree(i);
      const movesJ = isFree(j);
      const shareI: f64 = movesI ? (movesJ ? 0.52 : 1.02) : 0;
      const shareJ: f64 = movesJ ? (movesI ? 0.52 : 1.02) : 0;
      let leftX = outX * (shareI + shareJ);
      let leftY = outY * (shareI + shareJ);
      if (movesI && fit(i, whole(formAt, i), real(xAt, i) + outX * shareI, real(yAt, i) + outY * shareI)) {
        leftX -= fitX - real(xAt, i);
        leftY -= fitY - real(yAt, i);
        setReal(xAt, i, fitX);
        setReal(yAt, i, fitY);
      }
      // The second also takes what the border kept the first from doing.
      if (movesJ && fit(j, whole(formAt, j), real(xAt, j) - leftX, real(yAt, j) - leftY)) {
        setReal(xAt, j, fitX);
        setReal(yAt, j, fitY);
      }
    }
    if (most <= nothingMm * 0.5) return measure() === 0;
    if (round % 24 === 23) {
      if (sum > last * SETTLE_PATIENCE) return false;
      last = sum;
    }
  }
  return false;
}
