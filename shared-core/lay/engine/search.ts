/**
 * The search: pieces may overlap, and are moved one at a time to where their weighted overlap is least,
 * until none is left; then the cloth is shortened and it goes on from there. Pairs that stay in each other's
 * way grow in weight, which is what gets the search out of traps. Borders are never crossed: a position is
 * always inside some bin. The loops that move one piece or push pairs apart are in moves.as.ts.
 */
import { costsLess } from './lay-cost.ts';
import { depthsOf } from './depth.ts';
import type { DepthForm } from './depth.ts';
import { ringsNearer } from './exact.ts';
import type { Lay, Model } from './model.ts';
import type { Chain } from './repeat.ts';
import { movesOf } from './moves.ts';
import type { Random } from './random.ts';

/** Overlaps up to this many grains count as none; the tables ask for more than that beyond the clearance. */
const NOTHING_GRAINS = 1;
const SPARE_GRAINS = 2;
/** Nearer to the floor than this a lay is at the floor: the hairs between pieces add up. */
export const FLOOR_GRAINS = 200;
/** How far pieces may pass a selvage: far under what the check allows. */
const EDGE_GRAINS = 40;
/** A lay is shortened by parts of its length down to this one. */
const FINEST_RATIO = 0.001;
/** There, and on a new start, so many sweeps may bring nothing: few at first, more with each start that fails. */
const FIRST_PATIENCE = 100;
const MORE_PATIENCE = 10;
const MOST_PATIENCE = 200;
/** At most this many pieces are scattered at once, and a start that failed is tried again this often with a swap. */
const SCATTERED = 32;
const KICKS = 5;
/** With more pieces than this on the cloth that is shortened, a window of it is worked on and the rest is held still. */
const WINDOW_ABOVE = 80;
/** Of so many places for a window the one with the most cloth between its pieces is taken. */
const WINDOW_CHOICES = 3;
/** A start aims at clearly less cloth, at first by this part; it shrinks while starts fail, but not under the least. */
const FIRST_LEAP = 0.015;
const LEAST_LEAP = 0.002;
/** A start that fails is given more cloth: it aims at these shares of the leap. */
const RUNGS = [0.69, 0.375, 0.06];
/** So many exchanges are tried for a piece that finds no place; while shortening only after so many sweeps in vain. */
const EXCHANGES = 3;
const SWEEPS_BEFORE = 10;
/** Settling is tried on layouts whose deepest overlap is under this part of the width: while exploring a hair's. */
const SETTLE_DEPTH = 0.01;
const SETTLE_HAIR = 0.001;
const SETTLE_ROUNDS = 400;
const SQUEEZE_END = 4e-5;
/** What lies in each other by hairs is pulled apart along the cloth by these parts of its length, one after another. */
const PULLED = [0.0005, 0.001, 0.002, 0.004, 0.008, 0.016, 0.03];

export interface Search {
  /** Runs for ever; yields after every move of a piece. */
  run(): Generator<void, void, void>;
  /** The shortest valid lay found. */
  best(): Lay;
  /** Before it runs: begins with this valid lay, if it costs less than the best. */
  begin(lay: Lay): void;
  /** Before it runs: begins by pulling apart the pieces of this lay, which lie in each other by hairs. */
  beginNear(lay: Lay): void;
  /** Offers a lay found elsewhere: the search goes on from it at its next start, if it holds and costs less than the best. */
  adopt(lay: Lay): void;
  bestCostMm(): number;
  betterCount(): number;
  finished(): boolean;
}

export interface Progress {
  /** How much of the planned effort is spent, 0 to 1; 0 when none was planned. */
  spent(): number;
  planned: boolean;
  /** True once no more tables may be made: run() then ends by TimeIsUp, and a new run goes on from the best lay. */
  isLate(): boolean;
}

/** first: where the search begins. chains: ways to lay blocks that were laid before; the best slid together is where it begins. */
export function startSearch(
  model: Model,
  first: Lay,
  random: Random,
  progress: Progress,
  chains: readonly Chain[] = [],
): Search {
  const { items, forms, bins } = model;
  const movers = items.length;
  const grain = model.grainMm;

  // Flaws are items that never move, each with a form of its own.
  const depthForms: DepthForm[] = forms.map((form) => ({ ring: form.ring, flaw: false }));
  const fixed: { x: number; y: number; form: number }[] = [];
  for (const bin of bins) {
    for (const flaw of bin.flaws) {
      const hx = flaw.widthX / 2;
      const hy = flaw.widthY / 2;
      depthForms.push({ ring: Float64Array.of(-hx, -hy, hx, -hy, hx, hy, -hx, hy), flaw: true });
      fixed.push({ x: bin.startX + flaw.x + hx, y: flaw.y + hy, form: depthForms.length - 1 });
    }
  }
  for (const { x: heldX, y: heldY, form: heldForm } of model.held) {
    fixed.push({ x: heldX, y: heldY, form: heldForm });
  }
  const total = movers + fixed.length;
  const reach = model.clearanceMm + SPARE_GRAINS * grain;
  const depths = depthsOf(
    depthForms,
    model.clearanceMm,
    SPARE_GRAINS * grain,
    Math.min(0.5, model.widthMm * 3e-4),
  );
  const moves = movesOf({
    depths,
    forms: depthForms.map(({ ring }, k) => ({
      halfX: halfOf(ring, 0),
      halfY: halfOf(ring, 1),
      matchX: forms[k]?.matchX ?? 0,
      matchY: forms[k]?.matchY ?? 0,
    })),
    items,
    fixed,
    bins,
    reachMm: reach,
    grainMm: grain,
    nothingMm: NOTHING_GRAINS * grain,
    // Pieces that fill the width exactly need room for the hairs between them.
    edgeMm: EDGE_GRAINS * grain,
    widthMm: model.widthMm,
    seed: Math.floor(random.next() * 2 ** 31),
    isLate: progress.isLate,
  });
  const { x, y, form, halfX, halfY, overlap, limit, setForm, place } = moves;

  // The bin whose length is being shortened; those before it are full length, those after it shut.
  let active = 0;

  /** The best lay so far, from which the search goes on. */
  let bestLay: Lay = first;
  let bestCost = 0;
  /** A lay found elsewhere, not looked at yet. */
  let offered: Lay | null = null;
  /** A lay whose pieces lie in each other by hairs, to be pulled apart first. */
  let near: Lay | null = null;
  let better = 0;
  let done = movers === 0;

  function halfOf(ring: Float64Array, axis: 0 | 1): number {
    let max = 0;
    for (let i = axis; i < ring.length; i += 2) max = Math.max(max, ring[i]!);
    return max;
  }

  // Many pieces take more sweeps to find their order.
  const coarsePatience = Math.max(40, movers);
  const order = new Int32Array(movers);

  /** Pieces that are laid anew while all others are held still; what lies right of `about` is pulled along. */
  interface Window {
    readonly near: readonly number[];
    readonly about: number;
  }

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

  function heldEnd(b: number): number {
    return model.held.reduce(
      (end, one) => (one.bin === b ? Math.max(end, one.x + forms[one.form]!.halfX - bins[b]!.startX) : end),
      0,
    );
  }

  function binAt(px: number): number {
    let b = bins.length - 1;
    while (b > 0 && px < bins[b]!.startX) b -= 1;
    return b;
  }

  function usedOf(b: number): number {
    let used = heldEnd(b);
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
        const apart = depthForms[form[j]!]!.flaw ? 0 : model.clearanceMm;
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
    better += 1;
    return true;
  }

  /** Sets limits from the best lay: the last bin in use is the one to shorten. */
  function openBest(): void {
    if (offered !== null) takeOffered(offered);
    open(bestLay);
    active = Math.max(0, ...model.held.map(({ bin }) => bin));
    for (let i = 0; i < movers; i++) active = Math.max(active, bestLay.bin[i]!);
    moves.setActive(active);
    for (let b = 0; b < active; b++) limit[b] = bins[b]!.lengthMm;
    limit[active] = usedOf(active);
    bestCost = limit[active]!;
    if (active === 0 && bestCost <= model.floorMm + FLOOR_GRAINS * grain) done = true;
  }

  function open(lay: Lay): void {
    for (let i = 0; i < movers; i++) {
      x[i] = lay.x[i]!;
      y[i] = lay.y[i]!;
      setForm(i, lay.form[i]!);
    }
  }

  function takeOffered(lay: Lay): void {
    offered = null;
    if (!costsLess(model, lay, bestLay)) return;
    open(lay);
    if (holds()) bestLay = lay;
  }

  /** Shortens the active bin to lengthMm and pushes what sticks out back in. False when a piece has no room at all. */
  function shorten(lengthMm: number): boolean {
    limit[active] = lengthMm;
    let allInside = true;
    for (let i = 0; i < movers; i++) {
      if (place(i, form[i]!, x[i]!, y[i]!)) continue;
      // Too long for what is left of this bin in this form: try the others anywhere.
      let isInside = false;
      for (let tries = 0; tries < 60; tries++) {
        const choices = items[i]!.forms;
        const f = choices[(random.next() * choices.length) | 0]!;
        const b = (random.next() * (active + 1)) | 0;
        const px = bins[b]!.startX + random.next() * limit[b]!;
        const py = random.next() * bins[b]!.widthMm;
        if (!place(i, f, px, py)) continue;
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

  /** From the best lay: less cloth as long as settling makes room. Yields after each try. */
  function* squeeze(): Generator<void, void, void> {
    let ratio = 0.004;
    while (ratio > SQUEEZE_END && !done) {
      openBest();
      const target = shorter(ratio);
      const start = bins[active]!.startX;
      const factor = target / limit[active]!;
      for (let i = 0; i < movers; i++) if (x[i]! >= start) x[i] = start + (x[i]! - start) * factor;
      yield;
      if (shorten(target) && moves.settle(SETTLE_ROUNDS) && accept()) ratio *= 1.5;
      else ratio *= 0.35;
    }
    openBest();
  }

  /**
   * Separates what overlaps; gives up after `patience` sweeps that bring nothing, and exchanges pieces after
   * `exchangesAfter` of them. Yields after each move; leaves the least bad layout in place; true when valid.
   */
  function* separate(
    patience: number,
    exchangesAfter: number,
    settleDepth = SETTLE_HAIR,
    among: readonly number[] | null = null,
  ): Generator<void, boolean, void> {
    moves.resetWeights();
    let loss = moves.measure();
    let min = keep(loss);
    let settled = Infinity;
    // It goes on from the least bad layout as long as that brings progress.
    for (let begun = Infinity; loss > 0 && min.loss < begun * 0.98; ) {
      begun = min.loss;
      let without = 0;
      while (without < patience) {
        const exchanges = without < exchangesAfter ? 0 : EXCHANGES;
        let count = 0;
        for (let m = 0; m < (among?.length ?? movers); m++) {
          const i = among ? among[m]! : m;
          if (overlap[i]! > 0) {
            order[count] = i;
            count += 1;
          }
        }
        if (count === 0) return false;
        for (let k = count - 1; k > 0; k--) {
          const m = (random.next() * (k + 1)) | 0;
          const swap = order[k]!;
          order[k] = order[m]!;
          order[m] = swap;
        }
        for (let k = 0; k < count; k++) {
          moves.moveItem(order[k]!, exchanges);
          yield;
        }
        loss = moves.measure();
        if (loss === 0) return true;
        if (!among && moves.deepestMm() < settleDepth * model.widthMm && loss < settled * 0.8) {
          settled = loss;
          const before = keep(loss);
          yield;
          if (moves.settle(SETTLE_ROUNDS)) return true;
          restore(before);
          loss = moves.measure();
        }
        if (loss < min.loss * 0.98) without = 0;
        else without += 1;
        if (loss < min.loss) min = keep(loss);
        moves.raiseWeights();
      }
      restore(min);
      loss = moves.measure();
    }
    restore(min);
    return min.loss === 0;
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
      if (!place(a, form[a]!, bx, by)) continue;
      if (place(b, form[b]!, ax, ay)) return;
      x[a] = ax;
      y[a] = ay;
    }
  }

  /** The length to aim for: less than the best by this part, but not under the floor. */
  function shorter(part: number): number {
    const floor = active === 0 ? model.floorMm + 0.6 * FLOOR_GRAINS * grain : heldEnd(active);
    return Math.max(bestCost * (1 - part), floor);
  }

  /** Throws the pieces that lie nearest to one of them anywhere in the stretch that they take up. */
  function scatter(): void {
    const about = x[(random.next() * movers) | 0]!;
    const near = nearest(
      Array.from({ length: movers }, (_, i) => i),
      about,
    );
    const { from, to } = stretchOf(near);
    for (const i of near) scatterOne(i, from, to);
  }

  function scatterOne(i: number, from: number, to: number): void {
    const choices = items[i]!.forms;
    for (let tries = 0; tries < 20; tries++) {
      const px = from + random.next() * (to - from);
      const f = choices[(random.next() * choices.length) | 0]!;
      if (place(i, f, px, random.next() * bins[binAt(px)]!.widthMm)) break;
    }
  }

  /**
   * Separates a scattered lay on cloth shorter than the best by `leap`, or one that failed there before, with two large
   * pieces swapped; what does not come apart is given a little more cloth, still less than the best. Yields after each
   * move; true when a better lay stands.
   */
  function* startAnew(pool: State[], leap: number, patience: number): Generator<void, boolean, void> {
    // With many pieces only a part of them is scattered, which can bring only a part of the gain.
    const part = leap * Math.min(1, SCATTERED / movers);
    const target = shorter(part);
    if (pool.length > KICKS) pool.length = 0;
    if (pool.length === 0) {
      openBest();
      shorten(target);
      scatter();
    } else {
      const pick = Math.min(pool.length - 1, Math.floor(Math.abs(gauss() * 0.25) * pool.length));
      restore(pool[pick]!);
      limit[active] = target;
      disturb();
    }
    yield;
    if (shorten(target) && (yield* separate(patience, 0))) return accept();
    pool.push(keep(moves.measure()));
    pool.sort((a, b) => a.loss - b.loss);
    for (const share of RUNGS) {
      yield;
      if (shorten(shorter(part * share)) && (yield* separate(60, 0))) return accept();
    }
    return false;
  }

  /** Slides each block, and with it those behind it, towards those before it until they touch. */
  function* slideTogether({ lay, blockOfItem, blockCount }: Chain): Generator<void, void, void> {
    const before = bestLay;
    const beforeCost: readonly [number, number] = [active, bestCost];
    bestLay = lay;
    openBest();
    // On a pattern repeat or a grid they are as near as steps allow.
    const canSlide = items.every(({ stepX }) => stepX === 0);
    for (let block = 1; canSlide && block < blockCount; block++) {
      yield;
      const own = blockOfItem.indexOf(block);
      const bin = binAt(x[own]!);
      const start = bins[bin]!.startX;
      const sliding: number[] = [];
      const ahead: number[] = [];
      for (let j = 0; j < total; j++) {
        if (binAt(x[j]!) !== bin) continue;
        if (j < movers && blockOfItem[j] === block) sliding.push(j);
        else if (j >= movers || blockOfItem[j]! < block) ahead.push(j);
      }
      const room = Math.min(...sliding.map((i) => x[i]! - halfX[i]! - start));
      const isClear = (by: number) =>
        sliding.every((i) =>
          ahead.every((j) => {
            const dx = x[j]! - x[i]! + by;
            const dy = y[j]! - y[i]!;
            return (
              Math.abs(dx) >= halfX[i]! + halfX[j]! + reach ||
              Math.abs(dy) >= halfY[i]! + halfY[j]! + reach ||
              moves.depthBetween(form[i]!, form[j]!, dx, dy) <= 0
            );
          }),
        );
      let by = 0;
      for (let step = model.widthMm * 0.004; step > grain; step /= 4) {
        while (by + step <= room && isClear(by + step)) by += step;
      }
      for (let i = 0; i < movers; i++) {
        if (blockOfItem[i]! >= block && binAt(x[i]!) === bin) x[i]! -= by;
      }
    }
    if (accept() && (active < beforeCost[0] || (active === beforeCost[0] && bestCost < beforeCost[1])))
      return;
    bestLay = before;
    openBest();
  }

  /** Cloth between the pieces of the active bin whose centres lie around x, as a part of their stretch. */
  function wasteAbout(about: number): number {
    const near = nearest(inActive(), about);
    const { from, to } = stretchOf(near);
    const covered = near.reduce((sum, i) => sum + items[i]!.areaMm2, 0);
    return 1 - covered / ((to - from) * bins[active]!.widthMm);
  }

  function inActive(): number[] {
    const start = bins[active]!.startX;
    return Array.from({ length: movers }, (_, i) => i).filter((i) => x[i]! >= start);
  }

  /** At most as many of these as are scattered at once, those whose centres lie nearest to x. */
  function nearest(some: number[], about: number): number[] {
    some.sort((a, b) => Math.abs(x[a]! - about) - Math.abs(x[b]! - about) || a - b);
    return some.slice(0, SCATTERED);
  }

  function stretchOf(some: readonly number[]): { from: number; to: number } {
    let from = Infinity;
    let to = -Infinity;
    for (const i of some) {
      from = Math.min(from, x[i]! - halfX[i]!);
      to = Math.max(to, x[i]! + halfX[i]!);
    }
    return { from, to };
  }

  /**
   * A window of the best lay: what lies right of it is pulled left by a leap of the window's length, its pieces are
   * thrown anywhere in what is left between, and only they move. What does not come apart is given back a part of
   * what was taken. Yields after each move; true when a better lay stands.
   */
  function* startWindow(window: Window, leap: number, patience: number): Generator<void, boolean, void> {
    const { near, about } = window;
    const { from, to } = stretchOf(near);
    const full = bestCost;
    let taken = Math.min(leap * (to - from), full - shorter(1));
    const inWindow = new Set(near);
    const others = inActive().filter((i) => !inWindow.has(i));
    const right = others.filter((i) => x[i]! > about);
    const held = others.filter((i) => x[i]! + halfX[i]! > from && x[i]! - halfX[i]! < to);
    for (const i of right) x[i]! -= taken;
    limit[active] = full - taken;
    for (const i of near) scatterOne(i, from, to - taken);
    yield;
    try {
      for (let rung = 0; ; rung++) {
        moves.setWindow({ fromX: from, toX: to - taken, movers: near, held });
        if (shorten(full - taken) && (yield* separate(rung === 0 ? patience : 60, 0, SETTLE_HAIR, near))) {
          return accept();
        }
        if (rung === RUNGS.length) return false;
        yield;
        // A little more cloth than before, still less than the best.
        const less = taken;
        taken = Math.min(leap * (to - from), full - shorter(1)) * RUNGS[rung]!;
        for (const i of right) x[i]! += less - taken;
      }
    } finally {
      moves.setWindow(null);
    }
  }

  /** Of some places the one with the most waste around it. */
  function anyWindow(): Window {
    const inside = inActive();
    let about = 0;
    let max = -Infinity;
    for (let choice = 0; choice < WINDOW_CHOICES; choice++) {
      const at = x[inside[(random.next() * inside.length) | 0]!]!;
      const waste = wasteAbout(at);
      if (waste <= max) continue;
      max = waste;
      about = at;
    }
    return { near: nearest(inActive(), about), about };
  }

  /** From a lay whose pieces lie in each other by hairs: on a little more cloth they come apart. */
  function* pullApart(lay: Lay): Generator<void, void, void> {
    open(lay);
    const lengthMm = usedOf(0);
    for (const part of PULLED) {
      open(lay);
      for (let i = 0; i < movers; i++) x[i]! *= 1 + part;
      yield;
      if (shorten(lengthMm * (1 + part)) && (yield* separate(60, Infinity, SETTLE_DEPTH)) && accept()) break;
    }
    openBest();
  }

  function* run(): Generator<void, void, void> {
    openBest();
    if (near) {
      const lay = near;
      near = null;
      active = 0;
      moves.setActive(0);
      yield* pullApart(lay);
    }
    for (const chain of chains) yield* slideTogether(chain);
    let ratio = chains.length > 0 ? 0.004 : 0.05;
    let leap = FIRST_LEAP;
    let patience = FIRST_PATIENCE;
    while (!done) {
      // Explore: shorten a lay until it is stuck, throw its pieces anywhere on clearly less cloth, shorten again.
      const pool: State[] = [];
      let failures = 0;
      let isShortening = true;
      while (!done && (progress.planned ? progress.spent() < 0.8 : failures < 12)) {
        // A piece without room overlaps nothing, so no move would yield: give the caller its turn here.
        yield;
        if (isShortening) {
          const valid =
            shorten(shorter(ratio)) &&
            (yield* ratio > FINEST_RATIO ? separate(coarsePatience, SWEEPS_BEFORE) : separate(patience, 0));
          if (valid && accept()) {
            if (ratio < 0.02) ratio *= 1.2;
            continue;
          }
          if (ratio > FINEST_RATIO) {
            // Keep what was reached: on a little more cloth it may come apart.
            ratio = Math.max(FINEST_RATIO, ratio * 0.5);
            continue;
          }
          isShortening = false;
        }
        const isWide = inActive().length > WINDOW_ABOVE;
        if (isWide) openBest();
        if (yield* isWide ? startWindow(anyWindow(), leap, patience) : startAnew(pool, leap, patience)) {
          isShortening = !isWide;
          ratio = 0.004;
          leap *= 1.2;
          failures = 0;
          pool.length = 0;
        } else {
          failures += 1;
          patience = Math.min(MOST_PATIENCE, patience + MORE_PATIENCE);
          leap = Math.max(LEAST_LEAP, leap * 0.9);
        }
      }
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
        const valid =
          cutShort(limit[active]! * cutRatio) && (yield* separate(60, SWEEPS_BEFORE, SETTLE_DEPTH));
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
  return {
    run,
    best: () => bestLay,
    beginNear(lay) {
      near = lay;
    },
    begin(lay) {
      if (!costsLess(model, lay, bestLay)) return;
      bestLay = lay;
      openBest();
      better += 1;
    },
    adopt: (lay) => {
      offered = lay;
    },
    bestCostMm: () => bestCost,
    betterCount: () => better,
    finished: () => done,
  };
}
