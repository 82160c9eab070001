/** How the draft fits: armhole and cap, and every seam walked, in words and figures. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { DraftReport, MadeUp } from '../../../shared-core/draft/report.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { useSystem } from '../../client/workshop.ts';
import { SeamsInWords, SeamTable } from '../../parts/tables/SeamTable.tsx';
import { bodyUnit } from './typed-draft.ts';
import style from './DraftRoom.module.css';

export function FitReport({ report }: { report: DraftReport }) {
  const system = useSystem();
  const text = (mm: number) => showQuantity('length', mm, { system, unit: bodyUnit });
  return (
    <section className={style.panel} aria-labelledby="fit">
      <h2 id="fit">{say('fit-report.how-it-goes-together')}</h2>
      <ul className={style.facts}>
        <li>
          {say('fit-report.the-armhole-is-round-and-the', {
            text: text(report.armholeMm),
            text2: text(report.capMm),
            text3: text(report.capEaseMm),
            text4: text(report.capHeightMm),
          })}
        </li>
        <li>
          {say('fit-report.the-armhole-lies-below-the-nape', {
            text: text(report.scyeDepthMm),
            loweredMm:
              report.loweredMm > 0
                ? say('fit-report.deeper-than-usual-to-take-the', { text: text(report.loweredMm) })
                : '',
          })}
        </li>
        <li>
          <SeamsInWords seams={report.seams} />
        </li>
        {report.madeUp.map((made) => (
          <li key={made.whole}>{madeUpWords(made, text)}</li>
        ))}
      </ul>
      <details className={style.more}>
        <summary>{say('fit-report.every-seam-for-one-coat')}</summary>
        <SeamTable seams={report.seams} />
      </details>
    </section>
  );
}

/** Less than this is the stroke of a pencil. */
const nothingMm = 0.5;

function madeUpWords({ whole, parts, shoulderMm, hemMm, areaMm2 }: MadeUp, text: (mm: number) => string) {
  const names = listed(parts.map((part, index) => (index === 0 ? part : nounInSentence(part))));
  const off = [
    [say('fit-report.the-shoulder'), shoulderMm],
    [say('fit-report.the-hem'), hemMm],
  ].flatMap(([edge, mm]) =>
    Math.abs(Number(mm)) > nothingMm
      ? [
          say('fit-report.by-too-short', {
            edge,
            text: text(Math.abs(Number(mm))),
            ifMm: Number(mm) > 0 ? 'yes' : 'no',
          }),
        ]
      : [],
  );
  // An area is off by more than a pencil's stroke down the longest edge only where the pieces are.
  const isWhole = off.length === 0 && Math.abs(areaMm2) < 1000 * nothingMm;
  return isWhole
    ? say('fit-report.make-up-the-shoulder-hem-and', { names, whole: nounInSentence(whole) })
    : say('fit-report.do-not-make-up-the', {
        names,
        whole: nounInSentence(whole),
        offCount: off.length > 0 ? `: ${listed(off)}` : '',
      });
}
