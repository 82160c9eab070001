/** How the draft fits: armhole and cap, and every seam walked, in words and figures. */
import type { DraftReport } from '../../../shared-core/draft/report.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { SeamReport } from '../../../shared-core/plan/seam-walk.ts';
import { useSystem } from '../../client/workshop.ts';
import { Figure } from '../../parts/Figure.tsx';
import table from '../../parts/table.module.css';
import { bodyUnit } from './draft-form.ts';
import style from './DraftRoom.module.css';

export function FitReport({ report }: { report: DraftReport }) {
  const system = useSystem();
  const text = (mm: number) => showQuantity('length', mm, { system, unit: bodyUnit });
  const joined = report.seams.filter((seam) => seam.sides === 'two');
  const misfits = joined.filter((seam) => !seam.fits);
  const eased = joined.filter((seam) => seam.fits && Math.abs(seam.differenceMm) > 1);
  return (
    <section className={style.panel} aria-labelledby="fit">
      <h2 id="fit">How it goes together</h2>
      <ul className={style.facts}>
        <li>
          The armhole is {text(report.armholeMm)} round and the sleeve cap {text(report.capMm)}:{' '}
          {text(report.capEaseMm)} of ease to work in. The cap stands {text(report.capHeightMm)} high.
        </li>
        <li>
          The armhole lies {text(report.scyeDepthMm)} below the nape
          {report.loweredMm > 0 ? `, ${text(report.loweredMm)} deeper than usual to take the upper arm` : ''}.
        </li>
        <li>
          {misfits.length === 0
            ? `All ${joined.length} seams between pieces fit.`
            : `These seams do not fit: ${misfits.map((seam) => seam.label).join(', ')}.`}{' '}
          {eased.length > 0 && `Longer on one side by intent: ${eased.map((seam) => seam.label).join(', ')}.`}
        </li>
      </ul>
      <details className={style.more}>
        <summary>Every seam, for one coat</summary>
        <table className={table.table}>
          <thead>
            <tr>
              <th>Seam</th>
              <th className={table.amount}>One side</th>
              <th className={table.amount}>Other side</th>
              <th className={table.amount}>Difference</th>
            </tr>
          </thead>
          <tbody>
            {joined.map((seam) => (
              <SeamRow key={seam.seamId} seam={seam} />
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}

function SeamRow({ seam }: { seam: SeamReport }) {
  return (
    <tr>
      <td>{seam.label}</td>
      {[seam.firstMm, seam.secondMm, seam.differenceMm].map((mm, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the columns never move
        <td key={index} className={table.amount}>
          <Figure
            quantity="length"
            value={Math.abs(mm) < 0.05 ? 0 : mm}
            options={{ unit: index === 2 ? { metric: 'mm', imperial: 'in' } : bodyUnit }}
          />
        </td>
      ))}
    </tr>
  );
}
