/** How good a lay is, in one line: "4.31 m; no lay can be shorter than 3.98 m; 82 % of the cloth is used; looked for 3 s". */
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { LayResult } from './job.ts';
import { totalUsedMm } from './plan-lay.ts';

export function layWords(result: LayResult, system: MeasureSystem): string {
  const length = (mm: number) => showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 2 });
  const looked = `looked for ${result.seconds < 10 ? result.seconds.toFixed(1) : Math.round(result.seconds)} s`;
  const end = result.stoppedBy === 'floor' ? `${looked}, and it cannot be shorter` : looked;
  return [
    length(totalUsedMm(result)),
    `no lay can be shorter than ${length(result.floorMm)}`,
    `${Math.round(result.utilisation * 100)} % of the cloth is used`,
    end,
  ].join('; ');
}
