/** The cut part of a length, true to scale: the pieces, and the rests that go back, each with its letter. */
import { say } from '../../../shared-core/wording/say.ts';
import type { ProposedLine } from '../../../shared-core/cover/cutting-proposal.ts';
import type { LayRect } from '../../../shared-core/lay/job.ts';
import style from './CuttingRoom.module.css';
import { letterOf } from './letters.ts';

export interface CutDrawingProps {
  readonly line: ProposedLine;
  readonly kept: readonly LayRect[];
  /** As it is when it is cut: washed, where it is washed first. */
  readonly widthMm: number;
}

export function CutDrawing({ line, kept, widthMm }: CutDrawingProps) {
  const laidMm = line.amount * (1 - (line.washed?.alongRatio ?? 0));
  const letterMm = Math.max(40, widthMm / 9);
  return (
    <svg
      className={style.drawing}
      viewBox={`-4 -4 ${laidMm + 8} ${widthMm + 8}`}
      preserveAspectRatio="xMinYMid meet"
      role="img"
      aria-label={say('cut-drawing.the-cut-part-with-its-pieces')}
    >
      <rect className={style.cloth} width={laidMm} height={widthMm} />
      {line.placed.map((ring) => (
        <polygon key={`${ring[0]} ${ring[1]} ${ring[2]}`} className={style.piece} points={points(ring)} />
      ))}
      {line.rests.map((rest, index) => (
        <g key={`${rest.x} ${rest.y}`} className={kept.includes(rest) ? style.kept : style.dropped}>
          <rect x={rest.x} y={rest.y} width={rest.widthX} height={rest.widthY} />
          <text
            x={rest.x + rest.widthX / 2}
            y={rest.y + rest.widthY / 2}
            fontSize={Math.min(letterMm, rest.widthX * 0.7, rest.widthY * 0.7)}
            textAnchor="middle"
            dominantBaseline="central"
          >
            {letterOf(index)}
          </text>
        </g>
      ))}
    </svg>
  );
}

function points(ring: Float64Array): string {
  const pairs: string[] = [];
  for (let i = 0; i < ring.length; i += 2) pairs.push(`${ring[i]!.toFixed(1)},${ring[i + 1]!.toFixed(1)}`);
  return pairs.join(' ');
}
