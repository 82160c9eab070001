/** The tape measure along a length of cloth. */
import { useSystem } from '../../client/workshop.ts';
import style from './LengthDrawing.module.css';
import { tapeMarks } from './ruler.ts';

/** Height of the tape above the cloth. */
export const tapePx = 26;

export function Tape({ lengthMm, pxPerMm }: { lengthMm: number; pxPerMm: number }) {
  const system = useSystem();
  const marks = tapeMarks(lengthMm, pxPerMm, system);
  return (
    <g>
      <path
        className={style.tape}
        d={`${marks.map((mark) => `M${mark.atMm * pxPerMm + 0.5} ${tapePx - 2}v${mark.label === null ? -5 : -10}`).join('')}M0 ${tapePx - 1.5}H${lengthMm * pxPerMm}`}
      />
      {marks.map(
        (mark) =>
          mark.label !== null && (
            <text key={mark.atMm} className={style.number} x={mark.atMm * pxPerMm + 4} y={tapePx - 9}>
              {mark.label}
            </text>
          ),
      )}
    </g>
  );
}
