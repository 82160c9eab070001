/** From engine terms to the answer that the rest of the house reads, and back. */
import type { LayResult, Placement } from '../job.ts';
import { latticeNear } from './model.ts';
import type { Lay, Model } from './model.ts';

export function layResult(
  model: Model,
  lay: Lay,
  iterations: number,
  seconds: number,
  stoppedBy: LayResult['stoppedBy'],
): LayResult {
  const placements: Placement[] = [];
  const unplaced = new Map<string, { shape: number; mirrored: boolean; count: number }>();
  const usedLengthMm = model.job.lengths.map(() => 0);
  let placedAreaMm2 = 0;
  model.items.forEach((item, index) => {
    const bin = model.bins[lay.bin[index]!]!;
    const form = model.forms[lay.form[index]!]!;
    if (bin.length === -1) {
      const key = `${item.shape} ${item.mirrored}`;
      const entry = unplaced.get(key) ?? { shape: item.shape, mirrored: item.mirrored, count: 0 };
      entry.count += 1;
      unplaced.set(key, entry);
      return;
    }
    placedAreaMm2 += item.areaMm2;
    const x = lay.x[index]! - bin.startX;
    usedLengthMm[bin.length] = Math.max(usedLengthMm[bin.length]!, x + form.halfX);
    placements.push({
      shape: item.shape,
      length: bin.length,
      x: x + form.originX,
      y: lay.y[index]! + form.originY,
      turnDeg: form.turnDeg,
      mirrored: form.mirrored,
      onFold: form.onFold,
    });
  });
  for (const { form: at, bin: b, x, areaMm2 } of model.held) {
    const bin = model.bins[b]!;
    placedAreaMm2 += areaMm2;
    usedLengthMm[bin.length] = Math.max(usedLengthMm[bin.length]!, x - bin.startX + model.forms[at]!.halfX);
  }
  placements.push(...(model.job.held ?? []));
  let usedAreaMm2 = 0;
  for (const bin of model.bins) if (bin.length !== -1) usedAreaMm2 += bin.widthMm * usedLengthMm[bin.length]!;
  return {
    placements,
    unplaced: [...unplaced.values()],
    usedLengthMm,
    utilisation: usedAreaMm2 === 0 ? 0 : placedAreaMm2 / usedAreaMm2,
    floorMm: model.floorMm,
    seed: model.job.seed,
    iterations,
    seconds,
    stoppedBy,
  };
}

/** How far past a border or off the repeat a piece of such an answer may be, as a share of the width: far under what the check allows. */
const NEAR_PART = 1e-5;

/**
 * The way back: the lay that an answer to this model's job tells of. Null where it is none: pieces missing, left out
 * or too many, turned or placed as they may not be. Whether they overlap is not looked at.
 */
export function layOfResult(model: Model, result: LayResult): Lay | null {
  const { items, forms, bins } = model;
  const placements = withoutHeld(result.placements, model.job.held ?? []);
  if (placements?.length !== items.length) return null;
  const nearMm = NEAR_PART * model.widthMm;
  const lay: Lay = {
    form: new Int32Array(items.length).fill(-1),
    x: new Float64Array(items.length),
    y: new Float64Array(items.length),
    bin: new Int32Array(items.length),
  };
  for (const { shape, length, turnDeg, mirrored, onFold, x, y } of placements) {
    const isSuch = (k: number): boolean => {
      const form = forms[k]!;
      return form.turnDeg === turnDeg && form.mirrored === mirrored && form.onFold === onFold;
    };
    const index = items.findIndex(
      (item, i) => item.shape === shape && lay.form[i] === -1 && item.forms.some(isSuch),
    );
    const item = items[index];
    const b = bins.findIndex((bin) => bin.length === length && length !== -1);
    const bin = bins[b];
    const formIndex = item?.forms.find(isSuch);
    if (item === undefined || bin === undefined || formIndex === undefined) return null;
    const form = forms[formIndex]!;
    const centreX = x - form.originX;
    const centreY = y - form.originY;
    const isInside =
      centreX - form.halfX >= -nearMm &&
      centreX + form.halfX <= bin.lengthMm + nearMm &&
      centreY - form.halfY >= -nearMm &&
      centreY + form.halfY <= bin.widthMm + nearMm &&
      (!form.onFold || centreY - form.halfY <= nearMm);
    const offX = centreX - latticeNear(centreX, item.stepX, item.phaseX, form.matchX, 0);
    const offY = centreY - latticeNear(centreY, item.stepY, item.phaseY, form.matchY, 0);
    if (!isInside || Math.abs(offX) > nearMm || Math.abs(offY) > nearMm) return null;
    lay.form[index] = formIndex;
    lay.x[index] = centreX + bin.startX;
    lay.y[index] = centreY;
    lay.bin[index] = b;
  }
  return lay;
}

/** The placements without those that are held; null where one of them is missing. */
function withoutHeld(placements: readonly Placement[], held: readonly Placement[]): Placement[] | null {
  const left = [...placements];
  for (const one of held) {
    const at = left.findIndex(
      ({ shape, length, x, y, turnDeg, mirrored }) =>
        shape === one.shape &&
        length === one.length &&
        x === one.x &&
        y === one.y &&
        turnDeg === one.turnDeg &&
        mirrored === one.mirrored,
    );
    if (at === -1) return null;
    left.splice(at, 1);
  }
  return left;
}
