/** Bars of money stacked of parts, to one scale, each part in a quiet tint of its own; the same figures stand in a table. */
import type { CSSProperties, ReactNode } from 'react';
import { barTotalMinor, type StackedBars } from '../../../shared-core/measure/bars.ts';
import { Money } from '../figures/Figure.tsx';
import table from '../tables/table.module.css';
import style from './BarPicture.module.css';

export interface BarPictureProps {
  readonly bars: StackedBars;
  /** What the picture shows, for those who hear it; the table says the rest. */
  readonly label: string;
  /** Head of the column that names the bars. */
  readonly head: string;
  /** The last row of the table, where the bars add up to something. */
  readonly hasSum?: boolean;
  /** Beside the name of a bar, by its key. */
  readonly noteOf?: (key: string) => ReactNode;
}

/** Far apart on the circle, however many there are. Degrees. */
function hueOfPart(index: number): number {
  return Math.round(160 + index * 137.5) % 360;
}

export function BarPicture({ bars, label, head, hasSum = false, noteOf }: BarPictureProps) {
  const mostMinor = Math.max(1, ...bars.bars.map(barTotalMinor));
  const tint = (index: number) => ({ '--hue': hueOfPart(index) }) as CSSProperties;
  return (
    <figure className={style.figure}>
      <ul className={style.legend} aria-hidden="true">
        {bars.parts.map((part, index) => (
          <li key={part.key} className={style.name}>
            <span className={style.swatch} style={tint(index)} />
            {part.label}
          </li>
        ))}
      </ul>
      <div className={style.bars} role="img" aria-label={label}>
        {bars.bars.map((bar) => (
          <div key={bar.key} className={style.row}>
            <span className={style.label}>{bar.label}</span>
            <span className={style.track}>
              {bar.amountsMinor.map(
                (amountMinor, index) =>
                  amountMinor > 0 && (
                    <span
                      key={bars.parts[index]?.key}
                      className={style.part}
                      style={{ ...tint(index), width: `${(amountMinor / mostMinor) * 100}%` }}
                    />
                  ),
              )}
            </span>
            <span className={style.total}>
              {barTotalMinor(bar) > 0 ? <Money amountMinor={barTotalMinor(bar)} /> : '–'}
            </span>
          </div>
        ))}
      </div>
      <details className={style.figures}>
        <summary>In figures</summary>
        <div className={style.scroll}>
          <table className={table.table}>
            <thead>
              <tr>
                <th scope="col">{head}</th>
                {bars.parts.map((part) => (
                  <th key={part.key} scope="col" className={table.amount}>
                    {part.label}
                  </th>
                ))}
                <th scope="col" className={table.amount}>
                  Together
                </th>
              </tr>
            </thead>
            <tbody>
              {bars.bars.map((bar) => (
                <tr key={bar.key}>
                  <td>
                    {bar.label}
                    {noteOf && <span className={`${style.note} small quiet`}>{noteOf(bar.key)}</span>}
                  </td>
                  {[...bar.amountsMinor, barTotalMinor(bar)].map((amountMinor, index) => (
                    <Cell key={bars.parts[index]?.key ?? 'together'} amountMinor={amountMinor} />
                  ))}
                </tr>
              ))}
            </tbody>
            {hasSum && (
              <tfoot>
                <tr>
                  <td>In all</td>
                  {bars.parts.map((part, index) => (
                    <Cell
                      key={part.key}
                      amountMinor={bars.bars.reduce((sum, bar) => sum + (bar.amountsMinor[index] ?? 0), 0)}
                    />
                  ))}
                  <Cell amountMinor={bars.bars.reduce((sum, bar) => sum + barTotalMinor(bar), 0)} />
                </tr>
              </tfoot>
            )}
          </table>
        </div>
      </details>
    </figure>
  );
}

function Cell({ amountMinor }: { amountMinor: number }) {
  return (
    <td className={table.amount}>
      {amountMinor === 0 ? <span className="quiet">–</span> : <Money amountMinor={amountMinor} />}
    </td>
  );
}
