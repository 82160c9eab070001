/** A lay at a glance: its lengths one below the other, to one scale, without names. The lay's own room has the large drawing. */
import { placedRing, ringPath } from '../../../shared-core/lay/lay-svg.ts';
import type { SlotLay } from '../../../shared-core/lay/plan-lay.ts';
import style from './LayPicture.module.css';

const gapMm = 120;

export function LayPicture({ slotLay, label }: { slotLay: SlotLay; label: string }) {
  const { job, result } = slotLay;
  let topMm = 0;
  const drawn = job.lengths.flatMap((length, index) => {
    const usedMm = result.usedLengthMm[index] ?? 0;
    if (usedMm <= 0) return [];
    const atMm = topMm;
    topMm += length.widthMm + gapMm;
    return [{ index, usedMm, widthMm: length.widthMm, atMm }];
  });
  const longestMm = Math.max(1, ...drawn.map(({ usedMm }) => usedMm));
  return (
    <svg
      className={style.picture}
      role="img"
      aria-label={label}
      viewBox={`0 0 ${longestMm} ${Math.max(1, topMm - gapMm)}`}
    >
      {drawn.map(({ index, usedMm, widthMm, atMm }) => (
        // The cloth's y runs up and a drawing's runs down: turned over, no piece comes out as its mirror image.
        <g key={index} transform={`matrix(1 0 0 -1 0 ${atMm + widthMm})`}>
          <rect className={style.cloth} width={usedMm} height={widthMm} />
          {result.placements.flatMap((placement) =>
            placement.length === index
              ? [
                  <path
                    key={`${placement.shape} ${placement.x} ${placement.y}`}
                    className={style.piece}
                    d={ringPath(placedRing(job, placement))}
                  />,
                ]
              : [],
          )}
        </g>
      ))}
    </svg>
  );
}
