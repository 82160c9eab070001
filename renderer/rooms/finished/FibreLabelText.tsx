/** The fibre label as it may be printed in the US and in the EU, and how each share came about. */
import { say } from '../../../shared-core/wording/say.ts';
import { fibres } from '../../../shared-core/requirement/law/fibre-names.ts';
import type { FibreLabel } from '../../../shared-core/requirement/law/label.ts';
import { statableRatios } from '../../../shared-core/requirement/law/label-text.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './FinishedRoom.module.css';

export function FibreLabelText({ label }: { label: FibreLabel }) {
  return (
    <section aria-labelledby="label" className={style.section}>
      <h2 id="label">{say('fibre-label-text.fibre-label')}</h2>
      <Problems problems={label.problems} />
      {label.lines.length > 0 && (
        <>
          <div className={style.labels}>
            <Printed
              place={say('fibre-label-text.united-states')}
              lines={label.lines.map((line) => line.us)}
            />
            <Printed
              place={say('fibre-label-text.european-union')}
              lines={[...label.lines.map((line) => line.eu), ...label.euNotes]}
            />
          </div>
          <ul
            className={`${style.doubts} quiet`}
            aria-label={say('fibre-label-text.what-to-know-of-these-lines')}
          >
            {label.asides.map((aside) => (
              <li key={aside}>{aside}</li>
            ))}
          </ul>
          <Shares label={label} />
        </>
      )}
      <p className="quiet">{say('fibre-label-text.the-shares-follow-from-the-fibres')}</p>
      <BasisNote basis={label.basis} />
    </section>
  );
}

function Printed({ place, lines }: { place: string; lines: readonly string[] }) {
  return (
    <figure className={style.label}>
      <figcaption className="quiet small">{place}</figcaption>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </figure>
  );
}

function Shares({ label }: { label: FibreLabel }) {
  return (
    <details className="small">
      <summary className={style.summary}>{say('fibre-label-text.how-the-shares-came-about')}</summary>
      <DataTable
        className={style.narrow}
        rows={label.lines.flatMap((line) => line.shares.map((share, index) => ({ line, share, index })))}
        keyOf={({ line, share }) => `${line.component} ${share.fibre}`}
        columns={[
          {
            head: say('fibre-label-text.part-and-fibre'),
            cell: ({ line, share }) => `${line.component}, ${fibres[share.fibre].us}`,
          },
          {
            head: say('common.cut-from'),
            cellClass: 'quiet',
            cell: ({ line, index }) => (index === 0 ? line.slotNames.join(', ') : ''),
          },
          {
            head: say('fibre-label-text.share'),
            align: 'end',
            cell: ({ share }) => <Figure quantity="ratio" value={share.shareRatio} options={{ digits: 1 }} />,
          },
          {
            head: say('fibre-label-text.a-label-may-say'),
            align: 'end',
            cell: ({ line, share }) => (
              <Statable isAlone={line.shares.length === 1} shareRatio={share.shareRatio} />
            ),
          },
        ]}
      />
    </details>
  );
}

/** What a label may say of a share: the whole, or between two bounds. */
function Statable({ isAlone, shareRatio }: { isAlone: boolean; shareRatio: number }) {
  const { minRatio, maxRatio } = statableRatios(shareRatio);
  const whole = (ratio: number) => <Figure quantity="ratio" value={ratio} options={{ digits: 0 }} />;
  if (isAlone) return whole(1);
  return (
    <>
      {whole(minRatio)} {say('common.to')} {whole(maxRatio)}
    </>
  );
}
