/**
 * The search: pieces may overlap, and are moved one at a time to where their weighted overlap is least,
 * until none is left; then the cloth is shortened and it goes on from there. Pairs that stay in each other's
 * way grow in weight, which is what gets the search out of traps. Borders are never crossed: a position is
 * always inside some bin. No allocation inside the loops that move pieces.
 */
import { depthAt, depthsOf } from './depth.ts';
import type { DepthForm, Table } from './depth.ts';
import { ringsNearer } from './exact.ts';
import type { Lay, Model } from './model.ts';
import { latticeNear } from './model.ts';
import type { Random } from './random.ts';

/** Overlaps up to this many grains count as none; the tables ask for more than that beyond the clearance. */
const NOTHING_GRAINS = 1;
const SPARE_GRAINS = 2;
const UNIFORM_SAMPLES = 40;
const NEAR_SAMPLES = 20;
const KEPT_SAMPLES = 3;

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
  const tables: readonly Table[] = depths.tables;
  const { tableIndex, signsX, signsY, formCount } = depths;

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

  let bestLay: Lay = first;
  let bestCost = 0;
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

  /** Depth of form f at px, py against item j, whose centre is dx, dy away. */
  function depthAgainst(f: number, j: number, dx: number, dy: number): number {
    const g = form[j]!;
    const at = f * formCount + g;
    if (tableIndex[at]! < 0) depths.prepare(f, g);
    return depthAt(tables[tableIndex[at]!]!, dx * signsX[at]!, dy * signsY[at]!);
  }

  // The items near enough to matter while one item is moved within a small region.
  const near = new Int32Array(total);
  let nearCount = 0;
  function gatherNear(i: number, f: number, px: number, py: number, byX: number, byY: number): void {
    const hx = formHalfX[f]! + reach + byX;
    const hy = formHalfY[f]! + reach + byY;
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

  /** Weighted overlap of item i in form f at px, py; stops adding once it passes the bound. */
  function lossAt(i: number, f: number, px: number, py: number, bound: number): number {
    let loss = 0;
    const hx = formHalfX[f]! + reach;
    const hy = formHalfY[f]! + reach;
    const row = i * total;
    for (let j = 0; j < total; j++) {
      const dx = x[j]! - px;
      const ax = hx + halfX[j]!;
      if (dx >= ax || dx <= -ax) continue;
      const dy = y[j]! - py;
      const ay = hy + halfY[j]!;
      if (dy >= ay || dy <= -ay) continue;
      if (j === i) continue;
      const depth = depthAgainst(f, j, dx, dy);
      if (depth > 0) {
        loss += depth * weight[row + j]!;
        if (loss >= bound) return loss;
      }
    }
    return loss;
  }

  /** The same among the items gathered before. */
  function lossNear(i: number, f: number, px: number, py: number, bound: number): number {
    let loss = 0;
    const hx = formHalfX[f]! + reach;
    const hy = formHalfY[f]! + reach;
    const row = i * total;
    for (let k = 0; k < nearCount; k++) {
      const j = near[k]!;
      const dx = x[j]! - px;
      const ax = hx + halfX[j]!;
      if (dx >= ax || dx <= -ax) continue;
      const dy = y[j]! - py;
      const ay = hy + halfY[j]!;
      if (dy >= ay || dy <= -ay) continue;
      const depth = depthAgainst(f, j, dx, dy);
      if (depth > 0) {
        loss += depth * weight[row + j]!;
        if (loss >= bound) return loss;
      }
    }
    return loss;
  }

  function depthOf(i: number, j: number): number {
    const dx = x[j]! - x[i]!;
    const ax = halfX[i]! + halfX[j]! + reach;
    if (dx >= ax || dx <= -ax) return 0;
    const dy = y[j]! - y[i]!;
    const ay = halfY[i]! + halfY[j]! + reach;
    if (dy >= ay || dy <= -ay) return 0;
    return depthAgainst(form[i]!, j, dx, dy);
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
          sum += depth * size[i]! * size[j]!;
          overlapOf[i]! += depth;
          overlapOf[j]! += depth;
          if (depth > deepest) deepest = depth;
        }
      }
    }
    return sum;
  }

  // Scratch numbers live in an array: a captured number variable would be boxed at each write.
  const scratch = new Float64Array(5);
  /** Where the place tried last was put after fitting it into a bin and onto the lattice. */
  const FIT_X = 0;
  const FIT_Y = 1;
  /** The descent: where it stands and its loss. */
  const AT_X = 2;
  const AT_Y = 3;
  const AT_LOSS = 4;
  /** Brings a position into the bin that it is in or nearest to. False when the form cannot lie there. */
  function fit(i: number, f: number, px: number, py: number): boolean {
    let b = active;
    while (b > 0 && px < bins[b]!.startX) b -= 1;
    const bin = bins[b]!;
    const hx = formHalfX[f]!;
    const hy = formHalfY[f]!;
    const lowX = bin.startX + hx;
    const highX = bin.startX + limit[b]! - hx;
    const lowY = hy;
    const highY = bin.widthMm - hy;
    if (highX < lowX - grain || highY < lowY - grain) return false;
    const item = items[i]!;
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

  function offer(i: number, f: number, px: number, py: number): void {
    if (!fit(i, f, px, py)) return;
    const bound = keptCount < KEPT_SAMPLES ? Infinity : keptLoss[KEPT_SAMPLES - 1]!;
    const sx = scratch[FIT_X]!;
    const sy = scratch[FIT_Y]!;
    const loss = lossAt(i, f, sx, sy, bound);
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

  /** From AT_X, AT_Y down to less loss, one axis or diagonal at a time. */
  function descend(i: number, f: number, firstStep: number, lastStep: number): void {
    const roomX = firstStep * 3;
    let homeX = scratch[AT_X]!;
    let homeY = scratch[AT_Y]!;
    gatherNear(i, f, homeX, homeY, roomX, roomX);
    let stepX = firstStep;
    let stepY = firstStep;
    while ((stepX > lastStep || stepY > lastStep) && scratch[AT_LOSS]! > 0) {
      const way = random.next();
      let mx = 0;
      let my = 0;
      if (way < 0.4) mx = stepX;
      else if (way < 0.8) my = stepY;
      else if (way < 0.9) {
        mx = stepX;
        my = stepY;
      } else {
        mx = stepX;
        my = -stepY;
      }
      let bestLoss = scratch[AT_LOSS]!;
      let toX = 0;
      let toY = 0;
      for (let sign = -1; sign <= 1; sign += 2) {
        if (!fit(i, f, scratch[AT_X]! + sign * mx, scratch[AT_Y]! + sign * my)) continue;
        const tx = scratch[FIT_X]!;
        const ty = scratch[FIT_Y]!;
        if (tx === scratch[AT_X]! && ty === scratch[AT_Y]!) continue;
        if (Math.abs(tx - homeX) > roomX || Math.abs(ty - homeY) > roomX) {
          homeX = tx;
          homeY = ty;
          gatherNear(i, f, homeX, homeY, roomX, roomX);
        }
        const loss = lossNear(i, f, tx, ty, bestLoss);
        if (loss < bestLoss) {
          bestLoss = loss;
          toX = tx;
          toY = ty;
        }
      }
      const factor = bestLoss < scratch[AT_LOSS]! ? 1.1 : 0.5;
      if (bestLoss < scratch[AT_LOSS]!) {
        scratch[AT_LOSS] = bestLoss;
        scratch[AT_X] = toX;
        scratch[AT_Y] = toY;
      }
      if (mx !== 0) stepX *= mx !== 0 && my !== 0 ? Math.sqrt(factor) : factor;
      if (my !== 0) stepY *= mx !== 0 && my !== 0 ? Math.sqrt(factor) : factor;
    }
  }

  /** Moves item i to the best place found; true when it moved. */
  function moveItem(i: number): boolean {
    const item = items[i]!;
    const now = lossAt(i, form[i]!, x[i]!, y[i]!, Infinity);
    if (now === 0) return false;
    keptCount = 0;
    offer(i, form[i]!, x[i]!, y[i]!);
    const choices = item.forms;
    for (let s = 0; s < NEAR_SAMPLES; s++) {
      const f = choices[(random.next() * choices.length) | 0]!;
      offer(i, f, x[i]! + (random.next() - 0.5) * 2 * formHalfX[f]!, y[i]! + (random.next() - 0.5) * 2 * formHalfY[f]!);
    }
    for (let s = 0; s < UNIFORM_SAMPLES; s++) {
      const f = choices[(random.next() * choices.length) | 0]!;
      let open = 0;
      for (let b = 0; b <= active; b++) open += limit[b]!;
      let at = random.next() * open;
      let b = 0;
      while (b < active && at >= limit[b]!) {
        at -= limit[b]!;
        b += 1;
      }
      const hx = formHalfX[f]!;
      const hy = formHalfY[f]!;
      const bin = bins[b]!;
      const px = bin.startX + hx + (at / limit[b]!) * Math.max(0, limit[b]! - 2 * hx);
      const py = hy + random.next() * Math.max(0, bin.widthMm - 2 * hy);
      offer(i, f, px, py);
    }
    let bestLoss = Infinity;
    let bestX = 0;
    let bestY = 0;
    let bestForm = 0;
    for (let k = 0; k < keptCount; k++) {
      const f = keptForm[k]!;
      const side = 2 * Math.min(formHalfX[f]!, formHalfY[f]!);
      scratch[AT_X] = keptX[k]!;
      scratch[AT_Y] = keptY[k]!;
      scratch[AT_LOSS] = keptLoss[k]!;
      descend(i, f, side * 0.25, side * 0.02);
      if (scratch[AT_LOSS]! < bestLoss) {
        bestLoss = scratch[AT_LOSS]!;
        bestX = scratch[AT_X]!;
        bestY = scratch[AT_Y]!;
        bestForm = f;
      }
    }
    if (bestLoss > 0 && bestLoss < Infinity) {
      const side = 2 * Math.min(formHalfX[bestForm]!, formHalfY[bestForm]!);
      scratch[AT_X] = bestX;
      scratch[AT_Y] = bestY;
      scratch[AT_LOSS] = bestLoss;
      descend(i, bestForm, side * 0.01, side * 0.0005);
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
        if (depth > 0) value *= 1.2 + 0.8 * (depth / deepest);
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
    better += 1;
    openBest();
    return true;
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
    if (active === 0 && bestCost <= model.floorMm + grain) done = true;
  }

  /** Shortens the active bin to lengthMm and pushes what sticks out back in. False when a piece has no room at all. */
  function shorten(lengthMm: number): boolean {
    limit[active] = lengthMm;
    let allInside = true;
    for (let i = 0; i < movers; i++) {
      if (fit(i, form[i]!, x[i]!, y[i]!)) {
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
        if (!fit(i, f, bins[b]!.startX + random.next() * limit[b]!, random.next() * bins[b]!.widthMm)) continue;
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

  /** Separates what overlaps. Yields after each move; leaves the least bad layout in place; true when valid. */
  function* separate(sweepsWithout: number, strikes: number): Generator<void, boolean, void> {
    for (let i = 0; i < total; i++) for (let j = 0; j < total; j++) weight[i * total + j] = size[i]! * size[j]!;
    let loss = measure();
    let least = keep(loss);
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
        if (loss < least.loss * 0.98) without = 0;
        else without += 1;
        if (loss < least.loss) least = keep(loss);
        raiseWeights();
      }
      if (least.loss > begun * 0.95) strike += 0;
      restore(least);
      loss = measure();
    }
    restore(least);
    return least.loss === 0;
  }

  /** Swaps two large pieces, to leave a trap. */
  function disturb(): void {
    const bySize = Array.from({ length: movers }, (_, i) => i).sort((a, b) => items[b]!.areaMm2 - items[a]!.areaMm2 || a - b);
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
      if (!fit(a, form[a]!, bx, by)) continue;
      const fx = scratch[FIT_X]!;
      const fy = scratch[FIT_Y]!;
      if (!fit(b, form[b]!, ax, ay)) continue;
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
        const target = Math.max(bestCost * (1 - ratio), active === 0 ? model.floorMm : 0);
        // A piece without room overlaps nothing, so no move would yield: give the caller its turn here.
        yield;
        const valid = shorten(target) && (yield* separate(ratio > 0.002 ? 40 : 100, ratio > 0.002 ? 1 : 3));
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
        const state = keep(measure());
        pool.push(state);
        pool.sort((a, b) => a.loss - b.loss);
        const pick = Math.min(pool.length - 1, Math.floor(Math.abs(gauss() * 0.25) * pool.length));
        restore(pool[pick]!);
        disturb();
      }
      // Compress.
      const begun = progress.spent();
      let cutRatio = 0.0005;
      let cutFailures = 0;
      while (!done && (progress.planned ? progress.spent() < 1 : cutFailures < 20)) {
        openBest();
        const share = progress.planned ? (progress.spent() - begun) / Math.max(1e-9, 1 - begun) : cutFailures / 20;
        cutRatio = 0.0005 * (1 - share) + 0.00001 * share;
        yield;
        const valid = cutShort(limit[active]! * cutRatio) && (yield* separate(60, 1));
        if (valid && accept()) {
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
  return {
    run,
    best: () => bestLay,
    bestCostMm: () => bestCost,
    betterCount: () => better,
    finished: () => done,
  };
}
