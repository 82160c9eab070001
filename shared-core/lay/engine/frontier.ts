/**
 * The first valid lay, in milliseconds: pieces are pushed against the frontier of what lies already,
 * one at a time, largest first. The frontier is kept in narrow rows along the cloth; within a row
 * nothing is ever laid behind it, so the lay is valid by construction, if loose.
 */
import { remembered } from '../../geometry/remembered.ts';
import type { Form, Item, Lay, Model } from './model.ts';
import { latticeDown, latticeUp } from './model.ts';
import type { Random } from './random.ts';

const ROW_COUNT = 96;
/** Rounding when an x is put on a lattice; far under what any check can see. */
const NEAR_MM = 1e-6;

/** Leftmost and rightmost x of a form within each row from `low` on; Infinity / -Infinity in rows that it does not reach. */
interface Silhouette {
  readonly low: number;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/**
 * When the form's centre is at y, widened up and down by reachMm. Copies of a piece are tried at the same places, each
 * in three orders.
 */
const silhouette = remembered((form: Form, reachMm: number, rowMm: number, y: number): Silhouette => {
  const ring = form.ring;
  const count = ring.length;
  const low = Math.max(0, Math.floor((y - form.halfY - reachMm) / rowMm));
  const high = Math.min(ROW_COUNT - 1, Math.floor((y + form.halfY + reachMm) / rowMm));
  const rowCount = Math.max(0, high + 1 - low);
  const left = new Float64Array(rowCount).fill(Infinity);
  const right = new Float64Array(rowCount).fill(-Infinity);
  let x0 = ring[count - 2]!;
  let y0 = ring[count - 1]! + y;
  for (let i = 0; i < count; i += 2) {
    const x1 = ring[i]!;
    const y1 = ring[i + 1]! + y;
    const bottom = Math.min(y0, y1);
    const top = Math.max(y0, y1);
    const from = Math.max(low, Math.floor((bottom - reachMm) / rowMm));
    const to = Math.min(high, Math.floor((top + reachMm) / rowMm));
    for (let row = from; row <= to; row++) {
      const cutLow = Math.max(bottom, row * rowMm - reachMm);
      const cutHigh = Math.min(top, (row + 1) * rowMm + reachMm);
      let xa = x0;
      let xb = x1;
      if (top - bottom > 1e-9 && cutHigh >= cutLow) {
        xa = x0 + ((x1 - x0) * (cutLow - y0)) / (y1 - y0);
        xb = x0 + ((x1 - x0) * (cutHigh - y0)) / (y1 - y0);
      }
      const min = xa < xb ? xa : xb;
      const max = xa < xb ? xb : xa;
      if (min < left[row - low]!) left[row - low] = min;
      if (max > right[row - low]!) right[row - low] = max;
    }
    x0 = x1;
    y0 = y1;
  }
  return { low, left, right };
});

/** Candidate centres across the cloth for a form in a bin of this width; empty when it is too wide. */
function acrossChoices(
  item: Item,
  form: Form,
  widthMm: number,
  slackMm: number,
  rowMm: number,
  everyRows: number,
): number[] {
  const lowest = form.halfY;
  const highest = widthMm - form.halfY;
  if (highest < lowest - slackMm) return [];
  if (item.onFold) {
    if (item.stepY === 0) return [lowest];
    const snapped = latticeUp(lowest - 1e-6, item.stepY, item.phaseY, form.matchY, 0);
    return Math.abs(snapped - lowest) < 1e-6 ? [lowest] : [];
  }
  if (item.stepY > 0) {
    const choices: number[] = [];
    let y = latticeUp(lowest, item.stepY, item.phaseY, form.matchY, 0);
    const last = latticeDown(highest, item.stepY, item.phaseY, form.matchY, 0);
    for (; y <= last + 1e-9; y += item.stepY) choices.push(Math.min(Math.max(y, lowest), highest));
    return choices;
  }
  if (highest <= lowest) return [(lowest + highest) / 2];
  const choices: number[] = [];
  for (let y = lowest; y < highest; y += rowMm * everyRows) choices.push(y);
  choices.push(highest);
  return choices;
}

/**
 * Lays every item in the given order. Returns the lay; items that fit no real length lie in the overflow bin.
 * An item that fits nowhere at all is the caller's mistake and throws.
 */
export function frontierLay(model: Model, order: readonly number[], random: Random, everyRows: number): Lay {
  const { forms, items, bins } = model;
  const rows = bins.map(() => new Float64Array(ROW_COUNT));
  const reachMm = model.clearanceMm + 4 * model.grainMm;
  const lay = {
    form: new Int32Array(items.length).fill(-1),
    x: new Float64Array(items.length),
    y: new Float64Array(items.length),
    bin: new Int32Array(items.length).fill(-1),
  };
  /** What lies there pushes the frontier of its bin to its right side. */
  function advance(b: number, form: Form, x: number, y: number): void {
    const { low, right } = silhouette(form, reachMm, bins[b]!.widthMm / ROW_COUNT, y);
    for (let k = 0; k < right.length; k++) {
      const reached = x - bins[b]!.startX + right[k]!;
      if (reached > rows[b]![low + k]!) rows[b]![low + k] = reached;
    }
  }
  for (const { bin, form, x, y } of model.held) advance(bin, forms[form]!, x, y);
  for (const index of order) {
    const item = items[index]!;
    for (let b = 0; b < bins.length && lay.bin[index] === -1; b++) {
      const bin = bins[b]!;
      const frontier = rows[b]!;
      const rowMm = bin.widthMm / ROW_COUNT;
      let bestScore = Infinity;
      for (const formIndex of item.forms) {
        const form = forms[formIndex]!;
        for (const y of acrossChoices(item, form, bin.widthMm, model.grainMm, rowMm, everyRows)) {
          const { low, left } = silhouette(form, reachMm, rowMm, y);
          let x = form.halfX;
          for (let k = 0; k < left.length; k++) {
            if (left[k] === Infinity || frontier[low + k] === 0) continue;
            const needed = frontier[low + k]! + reachMm - left[k]!;
            if (needed > x) x = needed;
          }
          x = pastFlaws(bin.flaws, form, item, x, y);
          if (x + form.halfX > bin.lengthMm + model.grainMm) continue;
          let waste = 0;
          for (let k = 0; k < left.length; k++) {
            if (left[k] !== Infinity) waste += x + left[k]! - frontier[low + k]!;
          }
          // Places as good differ by chance; on a grid by how far from the selvage, so that the rest stays in one piece.
          const rank = item.stepY > 0 ? y / model.widthMm : random.next();
          const score = x + form.halfX + (0.6 * waste) / left.length + rank * model.widthMm * 1e-4;
          if (score < bestScore) {
            bestScore = score;
            lay.form[index] = formIndex;
            lay.x[index] = x + bin.startX;
            lay.y[index] = y;
            lay.bin[index] = b;
          }
        }
      }
      if (lay.bin[index] === -1) continue;
      advance(b, forms[lay.form[index]!]!, lay.x[index]!, lay.y[index]!);
    }
    if (lay.bin[index] === -1) throw new Error('an item fits no length in any allowed turn');
  }
  return lay;
}

function pastFlaws(
  flaws: Model['bins'][number]['flaws'],
  form: Form,
  item: Item,
  fromX: number,
  y: number,
): number {
  let x = latticeUp(fromX, item.stepX, item.phaseX, form.matchX, 0);
  for (let again = true; again; ) {
    again = false;
    for (const flaw of flaws) {
      if (flaw.y + flaw.widthY <= y - form.halfY + NEAR_MM || flaw.y >= y + form.halfY - NEAR_MM) continue;
      if (flaw.x + flaw.widthX <= x - form.halfX + NEAR_MM || flaw.x >= x + form.halfX - NEAR_MM) continue;
      // The box of the form, not its outline: the search may tuck it round the flaw later.
      x = latticeUp(flaw.x + flaw.widthX + form.halfX, item.stepX, item.phaseX, form.matchX, 0);
      again = true;
    }
  }
  return x;
}

/** Items with the largest first, in the sense given: by area, by extent along the cloth, or across it. */
export function orderBy(model: Model, sense: 'area' | 'along' | 'across'): number[] {
  const sizes = {
    area: (item: Item) => item.areaMm2,
    along: (_: Item, form: Form) => form.halfX * form.halfX * form.halfY,
    across: (_: Item, form: Form) => form.halfY * form.halfY * form.halfX,
  };
  const measure = model.items.map((item) => sizes[sense](item, model.forms[item.forms[0]!]!));
  return model.items.map((_, index) => index).sort((a, b) => measure[b]! - measure[a]! || a - b);
}
