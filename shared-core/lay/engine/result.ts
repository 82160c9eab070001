/** From engine terms to the answer that the rest of the house reads. */
import type { LayResult, Placement } from '../job.ts';
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
