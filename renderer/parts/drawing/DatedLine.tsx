/** Amounts of money by their day: a dot for each, joined by a line, on a scale from nothing. A table must stand beside it. */
import { dayNumber, dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import { useWorkshop } from '../../client/workshop.ts';
import style from './DatedLine.module.css';

export interface DatedPoint {
  /** ISO date. */
  readonly day: string;
  readonly amountMinor: number;
}

const width = 720;
const height = 240;
const edge = { left: 72, right: 24, top: 16, bottom: 36 };

export function DatedLine({ points, label }: { points: readonly DatedPoint[]; label: string }) {
  const { currency } = useWorkshop().facts.settings;
  const days = points.map(({ day }) => dayNumber(day));
  const first = Math.min(...days);
  const last = Math.max(...days);
  const topMinor = niceTop(Math.max(1, ...points.map(({ amountMinor }) => amountMinor)));
  const x = (day: number) =>
    last === first
      ? (edge.left + width - edge.right) / 2
      : edge.left + ((day - first) / (last - first)) * (width - edge.left - edge.right);
  const y = (amountMinor: number) =>
    height - edge.bottom - (amountMinor / topMinor) * (height - edge.top - edge.bottom);
  const places = points.map(({ amountMinor }, index) => ({ x: x(days[index] ?? first), y: y(amountMinor) }));
  const steps = [0, 0.25, 0.5, 0.75, 1];
  const ends = points.length > 1 ? [points[0], points.at(-1)] : [points[0]];
  return (
    <svg className={style.picture} role="img" aria-label={label} viewBox={`0 0 ${width} ${height}`}>
      {steps.map((step) => (
        <g key={step}>
          <path
            className={step === 0 ? style.ground : style.rule}
            d={`M${edge.left} ${y(step * topMinor)}H${width - edge.right}`}
          />
          <text className={style.amount} x={edge.left - 12} y={y(step * topMinor) + 4}>
            {moneyNumber(Math.round(step * topMinor), currency)}
          </text>
        </g>
      ))}
      <path
        className={style.line}
        d={places.map((at, i) => `${i === 0 ? 'M' : 'L'}${at.x} ${at.y}`).join('')}
      />
      {places.map((at, index) => (
        <circle key={`${points[index]?.day} ${at.y}`} className={style.dot} cx={at.x} cy={at.y} r={5} />
      ))}
      {ends.map(
        (end, index) =>
          end && (
            <text
              key={end.day}
              className={style.day}
              x={x(dayNumber(end.day))}
              y={height - 10}
              textAnchor={ends.length === 1 ? 'middle' : index === 0 ? 'start' : 'end'}
            >
              {dayWords(end.day)}
            </text>
          ),
      )}
    </svg>
  );
}

/** The next amount above that divides into four round steps. */
function niceTop(amountMinor: number): number {
  const power = 10 ** Math.floor(Math.log10(amountMinor));
  const step = [1, 2, 4, 8, 10].find((each) => each * power >= amountMinor) ?? 10;
  return Math.max(4, step * power);
}
