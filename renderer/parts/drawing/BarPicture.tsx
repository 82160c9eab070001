/** Bars of money stacked of parts, to one scale, each part in a quiet tint of its own; the same figures stand in a table. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CSSProperties, ReactNode } from 'react';
import {
  barTotalMinor,
  inFewParts,
  smallerParts,
  type StackedBars,
} from '../../../shared-core/measure/bars.ts';
import { Money } from '../figures/Figure.tsx';
import { type Column, DataTable } from '../tables/DataTable.tsx';
import style from './BarPicture.module.css';

export interface BarPictureProps {
  readonly bars: StackedBars;
  /** What the picture shows, for those who hear it; the table says the rest. */
  readonly label: string;
  /** What the parts are: head of the column that names them. */
  readonly head: string;
  /** Whether the bars add up to something, too. */
  readonly hasSum?: boolean;
  /** Beside the name of a bar, by its key. */
  readonly noteOf?: (key: string) => ReactNode;
}

const maxParts = 8;
/** Quiet tints that neighbours are told apart by. Degrees. */
const hues = [162, 212, 40, 268, 100, 345, 190, 20];

export function BarPicture(props: BarPictureProps) {
  const { bars, label } = props;
  const drawn = inFewParts(bars, maxParts);
  const maxMinor = Math.max(1, ...drawn.bars.map(barTotalMinor));
  const look = (index: number) => ({
    'data-part': drawn.parts[index]?.key === smallerParts() ? 'smaller' : undefined,
    style: { '--hue': hues[index] } as CSSProperties,
  });
  return (
    <figure className={style.figure}>
      <ul className={style.legend} aria-hidden="true">
        {drawn.parts.map((part, index) => (
          <li key={part.key} className={style.name}>
            <span className={style.swatch} {...look(index)} />
            {part.label}
          </li>
        ))}
      </ul>
      <div className={style.bars} role="img" aria-label={label}>
        {drawn.bars.map((bar) => (
          <div key={bar.key} className={style.row}>
            <span className={style.label}>{bar.label}</span>
            <span className={style.track}>
              {bar.amountsMinor.map((amountMinor, index) => {
                if (amountMinor === 0) return null;
                const { style: tint, ...part } = look(index);
                const width = `${(amountMinor / maxMinor) * 100}%`;
                const key = drawn.parts[index]?.key;
                return <span key={key} className={style.part} {...part} style={{ ...tint, width }} />;
              })}
            </span>
            <span className={style.total}>
              {barTotalMinor(bar) > 0 ? <Money amountMinor={barTotalMinor(bar)} /> : '–'}
            </span>
          </div>
        ))}
      </div>
      <details className={style.figures}>
        <summary>{say('bar-picture.in-figures')}</summary>
        <div className={style.scroll}>
          <BarTable {...props} />
        </div>
      </details>
    </figure>
  );
}

/** A column for each bar, so that many parts stand one below the other. */
function BarTable({ bars: { parts, bars }, head, hasSum = false, noteOf }: BarPictureProps) {
  const sum = (amounts: readonly number[]) => amounts.reduce((all, amountMinor) => all + amountMinor, 0);
  const amounts = parts.map((part, index) => ({
    ...part,
    ofBars: bars.map((bar) => bar.amountsMinor[index] ?? 0),
  }));
  const totals = bars.map(barTotalMinor);
  return (
    <DataTable
      rows={amounts}
      keyOf={({ key }) => key}
      columns={[
        { head, cell: ({ label }) => label },
        ...bars.map(
          (bar, index): Column<(typeof amounts)[number]> => ({
            key: bar.key,
            head: (
              <>
                {bar.label}
                {noteOf && <span className={style.note}>{noteOf(bar.key)}</span>}
              </>
            ),
            align: 'end',
            cell: ({ ofBars }) => <BarAmount amountMinor={ofBars[index] ?? 0} />,
          }),
        ),
        ...(hasSum
          ? [
              {
                key: 'all',
                head: say('common.in-all'),
                align: 'end' as const,
                cell: ({ ofBars }: (typeof amounts)[number]) => <BarAmount amountMinor={sum(ofBars)} />,
              },
            ]
          : []),
      ]}
      foot={[
        {
          label: say('common.together'),
          cells: [...totals, ...(hasSum ? [sum(totals)] : [])].map((amountMinor, index) => (
            <BarAmount key={bars[index]?.key ?? 'all'} amountMinor={amountMinor} />
          )),
        },
      ]}
    />
  );
}

function BarAmount({ amountMinor }: { amountMinor: number }) {
  return amountMinor === 0 ? <span className="quiet">–</span> : <Money amountMinor={amountMinor} />;
}
