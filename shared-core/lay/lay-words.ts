/** How good a lay is, in one line; washed: what its lengths lost, where the cloth is washed before it is cut. "4.31 m, 82 % of the cloth used; no lay can be shorter than 3.98 m; looked for 3 s". */
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { LayResult } from './job.ts';
import { type SlotLay, totalUsedMm } from './plan-lay.ts';
import { takenInAllMm } from './washed.ts';

export function layWords(result: LayResult, system: MeasureSystem, washed?: SlotLay['washed']): string {
  const length = (mm: number) =>
    showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 2 });
  const offTheRoll = washed ? ` of washed cloth, ${length(takenInAllMm({ result, washed }))} unwashed` : '';
  const outsideCount = result.unplaced.reduce((sum, { count }) => sum + count, 0);
  return [
    `${length(totalUsedMm(result))}${offTheRoll}, ${Math.floor(result.utilisation * 100)} % of the cloth used`,
    ...(outsideCount > 0
      ? [`${outsideCount} ${outsideCount === 1 ? 'piece has' : 'pieces have'} no room`]
      : []),
    shortestWords(result, length),
    lookedWords(result),
  ].join('; ');
}

function shortestWords(result: LayResult, length: (mm: number) => string): string {
  return result.stoppedBy === 'floor'
    ? 'no lay can be shorter'
    : `no lay can be shorter than ${length(result.floorMm)}`;
}

function lookedWords({ seconds, stoppedBy }: LayResult): string {
  if (stoppedBy === 'by hand') return 'laid by hand';
  const looked =
    seconds < 0.1
      ? 'looked for less than 0.1 s'
      : `looked for ${seconds < 9.95 ? seconds.toFixed(1).replace('.0', '') : Math.round(seconds)} s`;
  if (stoppedBy === 'under way') return `${looked} so far`;
  return stoppedBy === 'maker' ? `${looked}, then stopped by you` : looked;
}
