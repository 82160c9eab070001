/** Which of two lays is the better one: what the search lessens, and what is taken over from elsewhere. */
import type { Lay, Model } from './model.ts';

/** What a lay costs: the last bin in use counts most, then how much of it is used, mm. */
export function costOf(model: Model, lay: Lay): readonly [bin: number, usedMm: number] {
  let last = 0;
  let used = 0;
  for (const { bin, x, form } of model.held) {
    const reached = x + model.forms[form]!.halfX - model.bins[bin]!.startX;
    if (bin > last || (bin === last && reached > used)) used = reached;
    last = Math.max(last, bin);
  }
  for (let i = 0; i < model.items.length; i++) {
    const bin = lay.bin[i]!;
    const reached = lay.x[i]! + model.forms[lay.form[i]!]!.halfX - model.bins[bin]!.startX;
    if (bin > last) {
      last = bin;
      used = reached;
    } else if (bin === last && reached > used) used = reached;
  }
  return [last, used];
}

/** Does the first lay cost less than the second? */
export function costsLess(model: Model, one: Lay, other: Lay): boolean {
  const [bin, used] = costOf(model, one);
  const [otherBin, otherUsed] = costOf(model, other);
  return bin < otherBin || (bin === otherBin && used < otherUsed);
}
