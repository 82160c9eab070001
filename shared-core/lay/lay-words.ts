/** How good a lay is, in one line; washed: what its lengths lost, where the cloth is washed before it is cut. "4.31 m, 82 % of the cloth used; no lay can be shorter than 3.98 m; looked for 3 s". */
import { withDecimalSign } from '../wording/number-signs.ts';
import { say } from '../wording/say.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { LayResult } from './job.ts';
import { type SlotLay, totalUsedMm } from './plan-lay.ts';
import { takenInAllMm } from './washed.ts';

export function layWords(result: LayResult, system: MeasureSystem, washed?: SlotLay['washed']): string {
  const length = (mm: number) =>
    showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 2 });
  const offTheRoll = washed
    ? ` ${say('lay-words.of-washed-cloth-unwashed', { takenInAllMm: length(takenInAllMm({ result, washed })) })}`
    : '';
  const outsideCount = result.unplaced.reduce((sum, { count }) => sum + count, 0);
  return [
    say('lay-words.of-the-cloth-used', {
      totalUsedMm: length(totalUsedMm(result)),
      offTheRoll,
      utilisation: Math.floor(result.utilisation * 100),
    }),
    ...(outsideCount > 0 ? [say('lay-words.pieces-have-no-room', { outsideCount })] : []),
    shortestWords(result, length),
    lookedWords(result),
  ].join('; ');
}

function shortestWords(result: LayResult, length: (mm: number) => string): string {
  return result.stoppedBy === 'floor'
    ? say('lay-words.no-lay-can-be-shorter')
    : say('lay-words.no-lay-can-be-shorter-than', { floorMm: length(result.floorMm) });
}

function lookedWords({ seconds, stoppedBy }: LayResult): string {
  if (stoppedBy === 'by hand') return say('lay-words.laid-by-hand');
  const looked =
    seconds < 0.1
      ? say('lay-words.looked-for-less-than-0-1')
      : say('lay-words.looked-for-s', {
          seconds:
            seconds < 9.95 ? withDecimalSign(seconds.toFixed(1).replace('.0', '')) : Math.round(seconds),
        });
  if (stoppedBy === 'under way') return say('lay-words.so-far', { looked });
  return stoppedBy === 'maker' ? say('lay-words.then-stopped-by-you', { looked }) : looked;
}
