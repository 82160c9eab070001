/**
 * The search: pieces may overlap, and are moved one at a time to where their weighted overlap is least,
 * until none is left; then the cloth is shortened and it goes on from there. Pairs that stay in each other's
 * way grow in weight, which is what gets the search out of traps. Borders are never crossed: a position is
 * always inside some bin. No allocation inside the loops that move pieces.
 */
import { HEAD, depthBetween, depthsOf } from './depth.ts';
import type { DepthForm } from './depth.ts';
import { ringsNearer } from './exact.ts';
import type { Lay, Model } from './model.ts';
import { latticeNear } from './model.ts';
import type { Random } from './random.ts';

/** Overlaps up to this many grains count as none; the tables ask for more than that beyond the clearance. */
const NOTHING_GRAINS = 1;
const SPARE_GRAINS = 2;
/** Nearer to the floor than this a lay is at the floor: the hairs between pieces add up. */
export const FLOOR_GRAINS = 200;
/** How far pieces may pass a selvage: far under what the check allows. */
const EDGE_GRAINS = 40;
const UNIFORM_SAMPLES = 10;
const NEAR_SAMPLES = 8;
const KEPT_SAMPLES = 2;
const OUT_STEPS = 6;
/** A start that has failed this often at the finest step is stuck; new starts are made in the first part of the effort. */
const STUCK_FAILURES = 2;
const NEW_STARTS_RATIO = 0.35;
/** A pair that stays in each other's way for long may not weigh more than numbers can hold. */
const MOST_WEIGHT = 1e60;
/** Settling is tried on layouts whose deepest overlap is under this part of the width. */
const SETTLE_DEPTH = 0.01;
/** While exploring only hair-wide overlaps are settled. */
const SETTLE_HAIR = 0.001;
const SETTLE_ROUNDS = 400;
/** Settling goes on as long as each two dozen rounds leave less than this part of the overlap. */
const SETTLE_PATIENCE = 0.7;
const SQUEEZE_END = 4e-5;

export interface Search {
  /** Runs for ever; yields after every move of a piece. */
  run(): Generator<void, void, void>;
  /** The shortest valid lay found. */
  best(): Lay;
  bestCostMm(): number;
  betterCount(): number;
  finished(): boolean;
}

export interface Progress {
  /** How much of the planned effort is spent, 0 to 1; 0 when none was planned. */
  spent(): number;
  planned: boolean;
}

export function startSearch(model: Model, first: Lay, random: Random, progress: Progress): Search {
  const { items, forms, bins } = model;
  const movers = items.length;
  const grain = model.grainMm;
  const nothing = NOTHING_GRAINS * grain;
  // Pieces that fill the width exactly need room for the hairs between them.
  const edge = EDGE_GRAINS * grain;

  // Flaws are items that never move, each with a form of its own.
  const depthForms: DepthForm[] = forms.map((form) => ({ ring: form.ring, flaw: false }));
  const flawX: number[] = [];
  const flawY: number[] = [];
  for (const bin of bins) {
    for (const flaw of bin.flaws) {
      const hx = flaw.widthX / 2;
      const hy = flaw.widthY / 2;
      depthForms.push({ ring: Float64Array.of(-hx, -hy, hx, -hy, hx, hy, -hx, hy), flaw: true });
      flawX.push(bin.startX + flaw.x + hx);
      flawY.push(flaw.y + hy);
    }
  }
  const total = movers + flawX.length;
  const toleranceMm = Math.min(0.5, model.widthMm * 3e-4);
  const depths = depthsOf(depthForms, model.clearanceMm, SPARE_GRAINS * grain, toleranceMm);
  const { codes, formCount, pool } = depths;

  const formHalfX = Float64Array.from(depthForms, (form) => halfOf(form.ring, 0));
  const formHalfY = Float64Array.from(depthForms, (form) => halfOf(form.ring, 1));
  const reach = model.clearanceMm + SPARE_GRAINS * grain;

  const x = new Float64Array(total);
  const y = new Float64Array(total);
  const form = new Int32Array(total);
  const halfX = new Float64Array(total);
  const halfY = new Float64Array(total);
  for (let k = 0; k < flawX.length; k++) {
    x[movers + k] = flawX[k]!;
    y[movers + k] = flawY[k]!;
    form[movers + k] = forms.length + k;
    halfX[movers + k] = formHalfX[forms.length + k]!;
    halfY[movers + k] = formHalfY[forms.length + k]!;
  }
  // Weight of each pair times its size.
  const weight = new Float64Array(total * total);
  const pairDepth = new Float64Array(total * total);
  // A deep overlap of two large pieces is worse than one of two small ones.
  const size = new Float64Array(total);
  for (let i = 0; i < movers; i++) size[i] = Math.sqrt(Math.sqrt(items[i]!.areaMm2));
  for (let i = movers; i < total; i++) size[i] = Math.sqrt(model.widthMm / 4);

  // The bin whose length is being shortened; those before it are full length, those after it shut.
  let active = 0;
  const limit = new Float64Array(bins.length);

  /** The best lay of this start, from which the search goes on; and the best of all starts. */
  let bestLay: Lay = first;
  let bestCost = 0;
  let shownLay: Lay = first;
  let shownActive = bins.length;
  let shownCost = Infinity;
  let better = 0;
  let done = movers === 0;

  function halfOf(ring: Float64Array, axis: 0 | 1): number {
    let most = 0;
    for (let i = axis; i < ring.length; i += 2) most = Math.max(most, ring[i]!);
    return most;
  }

  function setForm(i: number, f: number): void {
    form[i] = f;
    halfX[i] = formHalfX[f]!;
    halfY[i] = formHalfY[f]!;
  }

  // Numbers pass between the functions that move pieces through this array: V8 would box them otherwise.
  const scratch = new Float64Array(16);
  /** A place to try; where it came to be after fitting it into a bin and onto the lattice. */
  const TRY_X = 0;
  const TRY_Y = 1;
  const FIT_X = 2;
  const FIT_Y = 3;
  /** Loss at the fitted place; evaluation stops once it passes the bound. */
  const LOSS = 4;
  const BOUND = 5;
  /** The way out of the item that weighs most there. */
  const OUT_X = 6;
  const OUT_Y = 7;
  /** The descent: where it stands and its loss. */
  const AT_X = 8;
  const AT_Y = 9;
  const AT_LOSS = 10;

  const everyone = Int32Array.from({ length: total }, (_, j) => j);
  // The items near enough to matter while one item is moved within a small region.
  const near = new Int32Array(total);
  let nearCount = 0;
  /** Gathers those that item i in form f can meet within by of the fitted place. */
  function gatherNear(i: number, f: number): void {
    const px = scratch[FIT_X]!;
    const py = scratch[FIT_Y]!;
    const by = scratch[ROOM]!;
    const hx = formHalfX[f]! + reach + by;
    const hy = formHalfY[f]! + reach + by;
    let count = 0;
    for (let j = 0; j < total; j++) {
      const dx = x[j]! - px;
      const ax = hx + halfX[j]!;
      if (dx >= ax || dx <= -ax) continue;
      const dy = y[j]! - py;
      const ay = hy + halfY[j]!;
      if (dy >= ay || dy <= -ay || j === i) continue;
      near[count] = j;
      count += 1;
    }
    nearCount = count;
  }
  const ROOM = 11;

  /**
   * Weighted overlap of item i in form f at the fitted place with the first `count` of `others`: the loop of
   * depthAt written out, since a call would box its numbers.
   */
  function evaluate(i: number, f: number, others: Int32Array, count: number): void {
    const px = scratch[FIT_X]!;
    const py = scratch[FIT_Y]!;
    const bound = scratch[BOUND]!;
    const hx = formHalfX[f]! + reach;
    const hy = formHalfY[f]! + reach;
    const row = i * total;
    const formRow = f * formCount;
    let edges = pool.edges;
    let cells = pool.cells;
    let lists = pool.lists;
    let heads = pool.heads;
    let layouts = pool.layouts;
    let loss = 0;
    let worst = 0;
    let worstEdge = 0;
    let worstCode = 0;
    let worstDepth = 0;
    let worstX = 0;
    let worstY = 0;
    for (let k = 0; k < count; k++) {
      const j = others[k]!;
      let vx = x[j]! - px;
      const ax = hx + halfX[j]!;
      if (vx >= ax || vx <= -ax) continue;
      let vy = y[j]! - py;
      const ay = hy + halfY[j]!;
      if (vy >= ay || vy <= -ay) continue;
      if (j === i) continue;
      let code = codes[formRow + form[j]!]!;
      if (code < 0) {
        depths.prepare(f, form[j]!);
        code = codes[formRow + form[j]!]!;
        edges = pool.edges;
        cells = pool.cells;
        lists = pool.lists;
        heads = pool.heads;
        layouts = pool.layouts;
      }
      if ((code & 1) !== 0) vx = -vx;
      if ((code & 2) !== 0) vy = -vy;
      const table = code >> 2;
      const head = table * HEAD;
      const gridX = heads[head]!;
      const gridY = heads[head + 1]!;
      if (vx <= -gridX || vx >= gridX || vy <= -gridY || vy >= gridY) continue;
      const column = ((vx + gridX) * heads[head + 2]!) | 0;
      const line = ((vy + gridY) * heads[head + 3]!) | 0;
      const cell = cells[layouts[table * 2]! + line * layouts[table * 2 + 1]! + column]!;
      if (cell < 0) continue;
      let at = cell >> 1;
      const end = at + 1 + lists[at]!;
      let least = Infinity;
      let side = 0;
      let edge = 0;
      for (at += 1; at < end; at++) {
        const e = lists[at]!;
        const dx = vx - edges[e]!;
        const dy = vy - edges[e + 1]!;
        const ux = edges[e + 2]!;
        const uy = edges[e + 3]!;
        const along = dx * ux + dy * uy;
        const off = dx * uy - dy * ux;
        let squared = off * off;
        if (along < 0) squared = dx * dx + dy * dy;
        else {
          const over = along - edges[e + 4]!;
          if (over > 0) squared += over * over;
        }
        if (squared < least * 1.0001) {
          if (squared < least * 0.9999 || (off < 0 ? -off : off) > (side < 0 ? -side : side)) {
            side = off;
            edge = e;
          }
          if (squared < least) least = squared;
        }
      }
      const distance = Math.sqrt(least);
      const depth = ((cell & 1) === 1 || side < distance * 1e-4 ? distance : -distance) + heads[head + 4]!;
      if (depth <= 0) continue;
      const overX = Math.min(ax - (vx < 0 ? -vx : vx), 2 * halfX[j]!, 2 * hx);
      const overY = Math.min(ay - (vy < 0 ? -vy : vy), 2 * halfY[j]!, 2 * hy);
      // A long overlap is harder to undo than a corner of the same depth.
      const part = depth * Math.sqrt(overX + overY) * weight[row + j]!;
      loss += part;
      if (loss >= bound) {
        scratch[LOSS] = loss;
        return;
      }
      if (part > worst) {
        worst = part;
        worstEdge = edge;
        worstCode = code;
        worstDepth = depth;
        worstX = vx;
        worstY = vy;
      }
    }
    scratch[LOSS] = loss;
    if (worst > 0) {
      // Out through the nearest edge (or its end): the other would go there, so this one goes the other way.
      const e = worstEdge;
      const ux = edges[e + 2]!;
      const uy = edges[e + 3]!;
      const dx = worstX - edges[e]!;
      const dy = worstY - edges[e + 1]!;
      const along = dx * ux + dy * uy;
      let outX = uy;
      let outY = -ux;
      if (along < 0 || along > edges[e + 4]!) {
        const endX = along < 0 ? -dx : ux * edges[e + 4]! - dx;
        const endY = along < 0 ? -dy : uy * edges[e + 4]! - dy;
        const span = Math.sqrt(endX * endX + endY * endY);
        if (span > 1e-12 && span <= worstDepth) {
          outX = endX / span;
          outY = endY / span;
        }
      }
      scratch[OUT_X] = -outX * worstDepth * ((worstCode & 1) !== 0 ? -1 : 1);
      scratch[OUT_Y] = -outY * worstDepth * ((worstCode & 2) !== 0 ? -1 : 1);
    }
  }

  function depthOf(i: number, j: number): number {
    const dx = x[j]! - x[i]!;
    const ax = halfX[i]! + halfX[j]! + reach;
    if (dx >= ax || dx <= -ax) return 0;
    const dy = y[j]! - y[i]!;
    const ay = halfY[i]! + halfY[j]! + reach;
    if (dy >= ay || dy <= -ay) return 0;
    return depthBetween(depths, form[i]!, form[j]!, dx, dy);
  }

  /** Sides of the box that both boxes share, added: a long overlap is harder to undo than a corner. */
  function over(i: number, j: number): number {
    const ox = Math.min(halfX[i]! + halfX[j]! - Math.abs(x[i]! - x[j]!), 2 * halfX[i]!, 2 * halfX[j]!);
    const oy = Math.min(halfY[i]! + halfY[j]! - Math.abs(y[i]! - y[j]!), 2 * halfY[i]!, 2 * halfY[j]!);
    return Math.max(0, ox) + Math.max(0, oy);
  }

  /** Overlap depths of all pairs, and their sum with sizes but without weights. */
  const overlapOf = new Float64Array(total);
  let deepest = 0;
  function measure(): number {
    let sum = 0;
    deepest = 0;
    overlapOf.fill(0);
    for (let i = 0; i < movers; i++) {
      for (let j = i + 1; j < total; j++) {
        let depth = depthOf(i, j);
        if (depth <= nothing) depth = 0;
        pairDepth[i * total + j] = depth;
        pairDepth[j * total + i] = depth;
        if (depth > 0) {
          sum += depth * Math.sqrt(over(i, j)) * size[i]! * size[j]!;
          overlapOf[i]! += depth;
          overlapOf[j]! += depth;
          if (depth > deepest) deepest = depth;
        }
      }
    }
    return sum;
  }

  /** Brings the tried place into the bin that it is in or nearest to. False when the form cannot lie there. */
  function fit(i: number, f: number): boolean {
    const px = scratch[TRY_X]!;
    const py = scratch[TRY_Y]!;
    let b = active;
    while (b > 0 && px < bins[b]!.startX) b -= 1;
    const bin = bins[b]!;
    const hx = formHalfX[f]!;
    const hy = formHalfY[f]!;
    const lowX = bin.startX + hx;
    const highX = bin.startX + limit[b]! - hx + (b < active ? edge : 0);
    const item = items[i]!;
    const lowY = item.onFold ? hy : hy - edge;
    const highY = bin.widthMm - hy + edge;
    if (highX < lowX - grain || highY < lowY - grain) return false;
    scratch[FIT_X] = px < lowX ? lowX : px > highX ? highX : px;
    scratch[FIT_Y] = item.onFold ? lowY : py < lowY ? lowY : py > highY ? highY : py;
    if (item.stepX > 0 || item.stepY > 0) {
      const own = forms[f]!;
      scratch[FIT_X] = latticeNear(scratch[FIT_X]!, item.stepX, item.phaseX, own.matchX, bin.startX);
      if (scratch[FIT_X]! < lowX - grain) scratch[FIT_X] += item.stepX;
      if (scratch[FIT_X]! > highX + grain) scratch[FIT_X] -= item.stepX;
      if (scratch[FIT_X]! < lowX - grain) return false;
      if (!item.onFold) {
        scratch[FIT_Y] = latticeNear(scratch[FIT_Y]!, item.stepY, item.phaseY, own.matchY, 0);
        if (scratch[FIT_Y]! < lowY - grain) scratch[FIT_Y] += item.stepY;
        if (scratch[FIT_Y]! > highY + grain) scratch[FIT_Y] -= item.stepY;
        if (scratch[FIT_Y]! < lowY - grain) return false;
      } else if (item.stepY > 0) {
        const snapped = latticeNear(lowY, item.stepY, item.phaseY, own.matchY, 0);
        if (Math.abs(snapped - lowY) > 1e-5) return false;
      }
    }
    return true;
  }

  const keptLoss = new Float64Array(KEPT_SAMPLES + 1);
  const keptX = new Float64Array(KEPT_SAMPLES + 1);
  const keptY = new Float64Array(KEPT_SAMPLES + 1);
  const keptForm = new Int32Array(KEPT_SAMPLES + 1);
  let keptCount = 0;

  /** Keeps the tried place if it is one of the best so far, apart from the others. */
  function offer(i: number, f: number): void {
    if (!fit(i, f)) return;
    const bound = keptCount < KEPT_SAMPLES ? Infinity : keptLoss[KEPT_SAMPLES - 1]!;
    const sx = scratch[FIT_X]!;
    const sy = scratch[FIT_Y]!;
    scratch[BOUND] = bound;
    evaluate(i, f, everyone, total);
    const loss = scratch[LOSS]!;
    if (loss >= bound) return;
    const apart = 0.05 * Math.min(formHalfX[f]!, formHalfY[f]!);
    for (let k = 0; k < keptCount; k++) {
      if (keptForm[k] === f && Math.abs(keptX[k]! - sx) < apart && Math.abs(keptY[k]! - sy) < apart) {
        if (loss >= keptLoss[k]!) return;
        for (let m = k; m + 1 < keptCount; m++) {
          keptLoss[m] = keptLoss[m + 1]!;
          keptX[m] = keptX[m + 1]!;
          keptY[m] = keptY[m + 1]!;
          keptForm[m] = keptForm[m + 1]!;
        }
        keptCount -= 1;
        break;
      }
    }
    let k = keptCount < KEPT_SAMPLES ? keptCount : KEPT_SAMPLES - 1;
    if (keptCount < KEPT_SAMPLES) keptCount += 1;
    while (k > 0 && keptLoss[k - 1]! > loss) {
      keptLoss[k] = keptLoss[k - 1]!;
      keptX[k] = keptX[k - 1]!;
      keptY[k] = keptY[k - 1]!;
      keptForm[k] = keptForm[k - 1]!;
      k -= 1;
    }
    keptLoss[k] = loss;
    keptX[k] = sx;
    keptY[k] = sy;
    keptForm[k] = f;
  }

  /**
   * From AT_X, AT_Y down to less loss: first straight out of whatever weighs most, as long as that helps,
   * then one axis or diagonal at a time. Steps are parts of `side`, a length of the form.
   */
  function descend(i: number, f: number, firstRatio: number, lastRatio: number): void {
    const side = 2 * Math.min(formHalfX[f]!, formHalfY[f]!);
    const lastStep = side * lastRatio;
    const room = side * firstRatio * 3;
    let stepX = side * firstRatio;
    let stepY = stepX;
    scratch[ROOM] = room;
    let homeX = scratch[AT_X]!;
    let homeY = scratch[AT_Y]!;
    scratch[FIT_X] = homeX;
    scratch[FIT_Y] = homeY;
    gatherNear(i, f);
    scratch[BOUND] = Infinity;
    evaluate(i, f, near, nearCount);
    for (let outs = 0; outs < (firstRatio > 0.1 ? 0 : OUT_STEPS) && scratch[AT_LOSS]! > 0; outs++) {
      scratch[TRY_X] = scratch[AT_X]! + scratch[OUT_X]!;
      scratch[TRY_Y] = scratch[AT_Y]! + scratch[OUT_Y]!;
      if (!fit(i, f)) break;
      if (Math.abs(scratch[FIT_X]! - homeX) > room || Math.abs(scratch[FIT_Y]! - homeY) > room) {
        homeX = scratch[FIT_X]!;
        homeY = scratch[FIT_Y]!;
        gatherNear(i, f);
      }
      scratch[BOUND] = scratch[AT_LOSS]!;
      evaluate(i, f, near, nearCount);
      if (scratch[LOSS]! >= scratch[AT_LOSS]!) break;
      scratch[AT_LOSS] = scratch[LOSS]!;
      scratch[AT_X] = scratch[FIT_X]!;
      scratch[AT_Y] = scratch[FIT_Y]!;
    }
    while ((stepX > lastStep || stepY > lastStep) && scratch[AT_LOSS]! > 0) {
      const way = random.next();
      const moveX = way < 0.4 || way >= 0.8 ? stepX : 0;
      const moveY = way < 0.4 ? 0 : way < 0.9 ? stepY : -stepY;
      const fromX = scratch[AT_X]!;
      const fromY = scratch[AT_Y]!;
      let won = false;
      for (let sign = -1; sign <= 1; sign += 2) {
        scratch[TRY_X] = fromX + sign * moveX;
        scratch[TRY_Y] = fromY + sign * moveY;
        if (!fit(i, f)) continue;
        const toX = scratch[FIT_X]!;
        const toY = scratch[FIT_Y]!;
        if (toX === fromX && toY === fromY) continue;
        if (Math.abs(toX - homeX) > room || Math.abs(toY - homeY) > room) {
          homeX = toX;
          homeY = toY;
          gatherNear(i, f);
        }
        scratch[BOUND] = scratch[AT_LOSS]!;
        evaluate(i, f, near, nearCount);
        if (scratch[LOSS]! < scratch[AT_LOSS]!) {
          scratch[AT_LOSS] = scratch[LOSS]!;
          scratch[AT_X] = toX;
          scratch[AT_Y] = toY;
          won = true;
        }
      }
      const factor = won ? 1.1 : 0.5;
      const both = moveX !== 0 && moveY !== 0 ? Math.sqrt(factor) : factor;
      if (moveX !== 0) stepX *= both;
      if (moveY !== 0) stepY *= both;
    }
  }

  /** Moves item i to the best place found; true when it moved. */
  function moveItem(i: number): boolean {
    const item = items[i]!;
    scratch[FIT_X] = x[i]!;
    scratch[FIT_Y] = y[i]!;
    scratch[BOUND] = Infinity;
    evaluate(i, form[i]!, everyone, total);
    const now = scratch[LOSS]!;
    if (now === 0) return false;
    keptCount = 0;
    scratch[TRY_X] = x[i]!;
    scratch[TRY_Y] = y[i]!;
    offer(i, form[i]!);
    const choices = item.forms;
    for (let s = 0; s < NEAR_SAMPLES; s++) {
      const f = choices[(random.next() * choices.length) | 0]!;
      scratch[TRY_X] = x[i]! + (random.next() - 0.5) * 2 * formHalfX[f]!;
      scratch[TRY_Y] = y[i]! + (random.next() - 0.5) * 2 * formHalfY[f]!;
      offer(i, f);
    }
    let open = 0;
    for (let b = 0; b <= active; b++) open += limit[b]!;
    for (let s = 0; s < UNIFORM_SAMPLES; s++) {
      const f = choices[(random.next() * choices.length) | 0]!;
      let at = random.next() * open;
      let b = 0;
      while (b < active && at >= limit[b]!) {
        at -= limit[b]!;
        b += 1;
      }
      const hx = formHalfX[f]!;
      const hy = formHalfY[f]!;
      const bin = bins[b]!;
      scratch[TRY_X] = bin.startX + hx + (at / limit[b]!) * Math.max(0, limit[b]! - 2 * hx);
      scratch[TRY_Y] = hy + random.next() * Math.max(0, bin.widthMm - 2 * hy);
      offer(i, f);
    }
    let bestLoss = Infinity;
    let bestX = 0;
    let bestY = 0;
    let bestForm = 0;
    for (let k = 0; k < keptCount && bestLoss > 0; k++) {
      const f = keptForm[k]!;
      scratch[AT_X] = keptX[k]!;
      scratch[AT_Y] = keptY[k]!;
      scratch[AT_LOSS] = keptLoss[k]!;
      descend(i, f, 0.25, 0.02);
      if (scratch[AT_LOSS]! < bestLoss) {
        bestLoss = scratch[AT_LOSS]!;
        bestX = scratch[AT_X]!;
        bestY = scratch[AT_Y]!;
        bestForm = f;
      }
    }
    if (bestLoss > 0 && bestLoss < Infinity) {
      scratch[AT_X] = bestX;
      scratch[AT_Y] = bestY;
      scratch[AT_LOSS] = bestLoss;
      descend(i, bestForm, 0.01, 0.0005);
      bestLoss = scratch[AT_LOSS]!;
      bestX = scratch[AT_X]!;
      bestY = scratch[AT_Y]!;
    }
    if (bestLoss >= now) return false;
    setForm(i, bestForm);
    x[i] = bestX;
    y[i] = bestY;
    return true;
  }

  function raiseWeights(): void {
    for (let i = 0; i < movers; i++) {
      const row = i * total;
      for (let j = i + 1; j < total; j++) {
        const depth = pairDepth[row + j]!;
        let value = weight[row + j]!;
        const least = size[i]! * size[j]!;
        if (depth > 0) value = Math.min(least * MOST_WEIGHT, value * (1.2 + 0.8 * (depth / deepest)));
        else if (value > least) value = Math.max(least, value * 0.95);
        else continue;
        weight[row + j] = value;
        weight[j * total + i] = value;
      }
    }
  }

  const order = new Int32Array(movers);

  interface State {
    readonly x: Float64Array;
    readonly y: Float64Array;
    readonly form: Int32Array;
    loss: number;
  }
  function keep(loss: number): State {
    return { x: x.slice(), y: y.slice(), form: form.slice(), loss };
  }
  function restore(state: State): void {
    x.set(state.x);
    y.set(state.y);
    for (let i = 0; i < movers; i++) setForm(i, state.form[i]!);
  }

  function binAt(px: number): number {
    let b = bins.length - 1;
    while (b > 0 && px < bins[b]!.startX) b -= 1;
    return b;
  }

  function usedOf(b: number): number {
    let used = 0;
    for (let i = 0; i < movers; i++) {
      if (binAt(x[i]!) !== b) continue;
      const reached = x[i]! + halfX[i]! - bins[b]!.startX;
      if (reached > used) used = reached;
    }
    return used;
  }

  /** Does the lay hold on the true outlines too? */
  function holds(): boolean {
    for (let i = 0; i < movers; i++) {
      for (let j = i + 1; j < total; j++) {
        const dx = x[j]! - x[i]!;
        if (Math.abs(dx) >= halfX[i]! + halfX[j]! + reach) continue;
        const dy = y[j]! - y[i]!;
        if (Math.abs(dy) >= halfY[i]! + halfY[j]! + reach) continue;
        const apart = j < movers ? model.clearanceMm : 0;
        if (ringsNearer(depthForms[form[i]!]!.ring, depthForms[form[j]!]!.ring, dx, dy, apart)) return false;
      }
    }
    return true;
  }

  /** Remembers the lay as it stands as the best, if it holds. */
  function accept(): boolean {
    if (!holds()) return false;
    const bin = new Int32Array(movers);
    for (let i = 0; i < movers; i++) bin[i] = binAt(x[i]!);
    bestLay = { x: x.slice(0, movers), y: y.slice(0, movers), form: form.slice(0, movers), bin };
    openBest();
    show();
    return true;
  }

  /** Shows the best lay of this start, if it is the best of all. */
  function show(): void {
    if (active > shownActive || (active === shownActive && bestCost >= shownCost)) return;
    shownLay = bestLay;
    shownActive = active;
    shownCost = bestCost;
    better += 1;
  }

  /** Sets limits from the best lay: the last bin in use is the one to shorten. */
  function openBest(): void {
    for (let i = 0; i < movers; i++) {
      x[i] = bestLay.x[i]!;
      y[i] = bestLay.y[i]!;
      setForm(i, bestLay.form[i]!);
    }
    active = 0;
    for (let i = 0; i < movers; i++) active = Math.max(active, bestLay.bin[i]!);
    for (let b = 0; b < active; b++) limit[b] = bins[b]!.lengthMm;
    limit[active] = usedOf(active);
    bestCost = limit[active]!;
    if (active === 0 && bestCost <= model.floorMm + FLOOR_GRAINS * grain) done = true;
  }

  /** Shortens the active bin to lengthMm and pushes what sticks out back in. False when a piece has no room at all. */
  function shorten(lengthMm: number): boolean {
    limit[active] = lengthMm;
    let allInside = true;
    for (let i = 0; i < movers; i++) {
      scratch[TRY_X] = x[i]!;
      scratch[TRY_Y] = y[i]!;
      if (fit(i, form[i]!)) {
        x[i] = scratch[FIT_X]!;
        y[i] = scratch[FIT_Y]!;
        continue;
      }
      // Too long for what is left of this bin in this form: try the others anywhere.
      let isInside = false;
      for (let tries = 0; tries < 60; tries++) {
        const choices = items[i]!.forms;
        const f = choices[(random.next() * choices.length) | 0]!;
        const b = (random.next() * (active + 1)) | 0;
        scratch[TRY_X] = bins[b]!.startX + random.next() * limit[b]!;
        scratch[TRY_Y] = random.next() * bins[b]!.widthMm;
        if (!fit(i, f)) continue;
        setForm(i, f);
        x[i] = scratch[FIT_X]!;
        y[i] = scratch[FIT_Y]!;
        isInside = true;
        break;
      }
      allInside &&= isInside;
    }
    return allInside;
  }

  /** Shortens by pulling everything right of a random cut to the left. False as in shorten. */
  function cutShort(byMm: number): boolean {
    const start = bins[active]!.startX;
    const cut = start + random.next() * limit[active]!;
    for (let i = 0; i < movers; i++) if (x[i]! > cut && x[i]! >= start) x[i]! -= byMm;
    return shorten(limit[active]! - byMm);
  }

  const pairFirst: number[] = [];
  const pairSecond: number[] = [];
  const one = new Int32Array(1);
  /**
   * Pushes all overlapping pairs apart at once, each a little, again and again: what single moves cannot do
   * when many pieces are each in the way by a hair. True when nothing overlaps any more.
   */
  function settle(rounds: number): boolean {
    const room = 0.02 * model.widthMm;
    let last = Infinity;
    for (let round = 0; round < rounds; round++) {
      if (round % 16 === 0) {
        pairFirst.length = 0;
        pairSecond.length = 0;
        for (let i = 0; i < movers; i++) {
          for (let j = i + 1; j < total; j++) {
            if (Math.abs(x[j]! - x[i]!) >= halfX[i]! + halfX[j]! + reach + room) continue;
            if (Math.abs(y[j]! - y[i]!) >= halfY[i]! + halfY[j]! + reach + room) continue;
            pairFirst.push(i);
            pairSecond.push(j);
          }
        }
      }
      let sum = 0;
      let worst = 0;
      const forwards = round % 2 === 0;
      const count = pairFirst.length;
      for (let step = 0; step < count; step++) {
        const k = forwards ? step : count - 1 - step;
        const i = pairFirst[k]!;
        const j = pairSecond[k]!;
        if (Math.abs(x[j]! - x[i]!) >= halfX[i]! + halfX[j]! + reach) continue;
        if (Math.abs(y[j]! - y[i]!) >= halfY[i]! + halfY[j]! + reach) continue;
        scratch[FIT_X] = x[i]!;
        scratch[FIT_Y] = y[i]!;
        scratch[BOUND] = Infinity;
        one[0] = j;
        evaluate(i, form[i]!, one, 1);
        if (scratch[LOSS]! <= 0) continue;
        const outX = scratch[OUT_X]!;
        const outY = scratch[OUT_Y]!;
        const depth = Math.sqrt(outX * outX + outY * outY);
        if (depth <= nothing * 0.5) continue;
        sum += depth;
        if (depth > worst) worst = depth;
        const movesJ = j < movers && items[j]!.stepX === 0 && items[j]!.stepY === 0;
        const movesI = items[i]!.stepX === 0 && items[i]!.stepY === 0;
        const shareI = movesI ? (movesJ ? 0.52 : 1.02) : 0;
        const shareJ = movesJ ? (movesI ? 0.52 : 1.02) : 0;
        let leftX = outX * (shareI + shareJ);
        let leftY = outY * (shareI + shareJ);
        if (movesI) {
          scratch[TRY_X] = x[i]! + outX * shareI;
          scratch[TRY_Y] = y[i]! + outY * shareI;
          if (fit(i, form[i]!)) {
            leftX -= scratch[FIT_X]! - x[i]!;
            leftY -= scratch[FIT_Y]! - y[i]!;
            x[i] = scratch[FIT_X]!;
            y[i] = scratch[FIT_Y]!;
          }
        }
        if (movesJ) {
          // The second also takes what the border kept the first from doing.
          scratch[TRY_X] = x[j]! - leftX;
          scratch[TRY_Y] = y[j]! - leftY;
          if (fit(j, form[j]!)) {
            x[j] = scratch[FIT_X]!;
            y[j] = scratch[FIT_Y]!;
          }
        }
      }
      if (worst <= nothing * 0.5) return measure() === 0;
      if (round % 24 === 23) {
        if (sum > last * SETTLE_PATIENCE) return false;
        last = sum;
      }
    }
    return false;
  }

  /** From the best lay: less cloth as long as settling makes room. Yields after each try. */
  function* squeeze(): Generator<void, void, void> {
    let ratio = 0.004;
    while (ratio > SQUEEZE_END && !done) {
      openBest();
      const target = Math.max(
        limit[active]! * (1 - ratio),
        active === 0 ? model.floorMm + 0.6 * FLOOR_GRAINS * grain : 0,
      );
      const start = bins[active]!.startX;
      const factor = target / limit[active]!;
      for (let i = 0; i < movers; i++) if (x[i]! >= start) x[i] = start + (x[i]! - start) * factor;
      yield;
      if (shorten(target) && settle(SETTLE_ROUNDS) && accept()) ratio *= 1.5;
      else ratio *= 0.35;
    }
    openBest();
  }

  /** Separates what overlaps. Yields after each move; leaves the least bad layout in place; true when valid. */
  function* separate(
    sweepsWithout: number,
    strikes: number,
    settles: boolean,
  ): Generator<void, boolean, void> {
    for (let i = 0; i < total; i++)
      for (let j = 0; j < total; j++) weight[i * total + j] = size[i]! * size[j]!;
    let loss = measure();
    let least = keep(loss);
    let settled = Infinity;
    for (let strike = 0; strike < strikes && loss > 0; strike++) {
      const begun = least.loss;
      let without = 0;
      while (without < sweepsWithout) {
        let count = 0;
        for (let i = 0; i < movers; i++) {
          if (overlapOf[i]! > 0) {
            order[count] = i;
            count += 1;
          }
        }
        for (let k = count - 1; k > 0; k--) {
          const m = (random.next() * (k + 1)) | 0;
          const swap = order[k]!;
          order[k] = order[m]!;
          order[m] = swap;
        }
        for (let k = 0; k < count; k++) {
          moveItem(order[k]!);
          yield;
        }
        loss = measure();
        if (loss === 0) return true;
        if (deepest < (settles ? SETTLE_DEPTH : SETTLE_HAIR) * model.widthMm && loss < settled * 0.8) {
          settled = loss;
          const before = keep(loss);
          yield;
          if (settle(SETTLE_ROUNDS)) return true;
          restore(before);
          loss = measure();
        }
        if (loss < least.loss * 0.98) without = 0;
        else without += 1;
        if (loss < least.loss) least = keep(loss);
        raiseWeights();
      }
      // Strikes count in a row: progress earns full patience again.
      if (least.loss < begun * 0.98) strike = -1;
      restore(least);
      loss = measure();
    }
    restore(least);
    return least.loss === 0;
  }

  /** Swaps two large pieces, to leave a trap. */
  function disturb(): void {
    const bySize = Array.from({ length: movers }, (_, i) => i).sort(
      (a, b) => items[b]!.areaMm2 - items[a]!.areaMm2 || a - b,
    );
    let covered = 0;
    let large = 0;
    while (large < movers && covered < model.areaMm2 * 0.75) {
      covered += items[bySize[large]!]!.areaMm2;
      large += 1;
    }
    if (large < 2) return;
    for (let tries = 0; tries < 20; tries++) {
      const a = bySize[(random.next() * large) | 0]!;
      const b = bySize[(random.next() * large) | 0]!;
      if (items[a]!.shape === items[b]!.shape) continue;
      const ax = x[a]!;
      const ay = y[a]!;
      const bx = x[b]!;
      const by = y[b]!;
      scratch[TRY_X] = bx;
      scratch[TRY_Y] = by;
      if (!fit(a, form[a]!)) continue;
      const fx = scratch[FIT_X]!;
      const fy = scratch[FIT_Y]!;
      scratch[TRY_X] = ax;
      scratch[TRY_Y] = ay;
      if (!fit(b, form[b]!)) continue;
      x[b] = scratch[FIT_X]!;
      y[b] = scratch[FIT_Y]!;
      x[a] = fx;
      y[a] = fy;
      return;
    }
  }

  function* run(): Generator<void, void, void> {
    openBest();
    let ratio = 0.05;
    while (!done) {
      // Explore.
      const pool: State[] = [];
      let failures = 0;
      while (!done && (progress.planned ? progress.spent() < 0.8 : failures < 12)) {
        const target = Math.max(
          bestCost * (1 - ratio),
          active === 0 ? model.floorMm + 0.6 * FLOOR_GRAINS * grain : 0,
        );
        // A piece without room overlaps nothing, so no move would yield: give the caller its turn here.
        yield;
        const valid =
          shorten(target) && (yield* separate(ratio > 0.002 ? 40 : 200, ratio > 0.002 ? 1 : 3, false));
        if (valid && accept()) {
          pool.length = 0;
          failures = 0;
          if (ratio < 0.02) ratio *= 1.2;
          continue;
        }
        if (ratio > 0.001) {
          ratio = Math.max(0.001, ratio * 0.5);
          // Keep what was reached: on a little more cloth it may come apart.
          continue;
        }
        failures += 1;
        if (failures >= STUCK_FAILURES && bins.length === 1 && progress.planned) {
          const again = progress.spent() < NEW_STARTS_RATIO;
          if (again || bestLay !== shownLay) {
            // Stuck early: begin anew from the loose lay, and go on from the best of all starts later.
            bestLay = again ? first : shownLay;
            openBest();
            ratio = again ? 0.05 : 0.002;
            failures = 0;
            pool.length = 0;
            continue;
          }
        }
        const state = keep(measure());
        pool.push(state);
        pool.sort((a, b) => a.loss - b.loss);
        const pick = Math.min(pool.length - 1, Math.floor(Math.abs(gauss() * 0.25) * pool.length));
        restore(pool[pick]!);
        disturb();
      }
      bestLay = shownLay;
      openBest();
      // Compress: close the hair-wide gaps first, then cut and separate again.
      yield* squeeze();
      const begun = progress.spent();
      let cutRatio = 0.0005;
      let cutFailures = 0;
      while (!done && (progress.planned ? progress.spent() < 1 : cutFailures < 20)) {
        openBest();
        const share = progress.planned
          ? (progress.spent() - begun) / Math.max(1e-9, 1 - begun)
          : cutFailures / 20;
        cutRatio = 0.0005 * (1 - share) + 0.00001 * share;
        yield;
        const valid = cutShort(limit[active]! * cutRatio) && (yield* separate(60, 1, true));
        if (valid && accept()) {
          yield* squeeze();
          cutFailures = 0;
        } else cutFailures += 1;
      }
      openBest();
      if (progress.planned && progress.spent() >= 1) progress.planned = false;
      ratio = 0.004;
    }
  }

  function gauss(): number {
    return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
  }

  openBest();
  show();
  better = 0;
  return {
    run,
    best: () => shownLay,
    bestCostMm: () => shownCost,
    betterCount: () => better,
    finished: () => done,
  };
}
