/** How the draft fits: armhole and cap, and every seam walked, in words and figures. */
import type { DraftReport, MadeUp } from '../../../shared-core/draft/report.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { listed } from '../../../shared-core/plan/edits/edited.ts';
import { useSystem } from '../../client/workshop.ts';
import { SeamsInWords, SeamTable } from '../../parts/tables/SeamTable.tsx';
import { bodyUnit } from './typed-draft.ts';
import style from './DraftRoom.module.css';

export function FitReport({ report }: { report: DraftReport }) {
  const system = useSystem();
  const text = (mm: number) => showQuantity('length', mm, { system, unit: bodyUnit });
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
          <SeamsInWords seams={report.seams} />
        </li>
        {report.madeUp.map((made) => (
          <li key={made.whole}>{madeUpWords(made, text)}</li>
        ))}
      </ul>
      <details className={style.more}>
        <summary>Every seam, for one coat</summary>
        <SeamTable seams={report.seams} />
      </details>
    </section>
  );
}

/** Less than this is the stroke of a pencil. */
const nothingMm = 0.5;

function madeUpWords({ whole, parts, shoulderMm, hemMm, areaMm2 }: MadeUp, text: (mm: number) => string) {
  const names = listed(parts.map((part, index) => (index === 0 ? part : part.toLowerCase())));
  const off = [
    ['the shoulder', shoulderMm],
    ['the hem', hemMm],
  ].flatMap(([edge, mm]) =>
    Math.abs(Number(mm)) > nothingMm
      ? [`${edge} by ${text(Math.abs(Number(mm)))} too ${Number(mm) > 0 ? 'long' : 'short'}`]
      : [],
  );
  // An area is off by more than a pencil's stroke down the longest edge only where the pieces are.
  const isWhole = off.length === 0 && Math.abs(areaMm2) < 1000 * nothingMm;
  return isWhole
    ? `${names} make up the ${whole.toLowerCase()}: shoulder, hem and area agree.`
    : `${names} do not make up the ${whole.toLowerCase()}${off.length > 0 ? `: ${listed(off)}` : ''}.`;
}
