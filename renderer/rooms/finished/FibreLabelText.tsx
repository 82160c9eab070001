/** The fibre label as it may be printed in the US and in the EU, and how each share came about. */
import { fibres } from '../../../shared-core/requirement/law/fibre-names.ts';
import type { FibreLabel, LabelLine } from '../../../shared-core/requirement/law/label.ts';
import { statableRatios } from '../../../shared-core/requirement/law/label-text.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import table from '../../parts/tables/table.module.css';
import style from './FinishedRoom.module.css';

export function FibreLabelText({ label }: { label: FibreLabel }) {
  return (
    <section aria-labelledby="label" className={style.section}>
      <h2 id="label">Fibre label</h2>
      <Problems problems={label.problems} />
      {label.lines.length > 0 && (
        <>
          <div className={style.labels}>
            <Printed place="United States" lines={label.lines.map((line) => line.us)} />
            <Printed
              place="European Union"
              lines={[...label.lines.map((line) => line.eu), ...label.euNotes]}
            />
          </div>
          <ul className={`${style.doubts} quiet`} aria-label="What to know of these lines">
            {label.asides.map((aside) => (
              <li key={aside}>{aside}</li>
            ))}
          </ul>
          <Shares label={label} />
        </>
      )}
      <p className="quiet">
        The shares follow from the fibres written down at each material. Where a laboratory or the maker of
        the cloth says otherwise, change them there.
      </p>
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
      <summary className={style.summary}>How the shares came about</summary>
      <table className={`${table.table} ${style.narrow}`}>
        <thead>
          <tr>
            <th scope="col">Part and fibre</th>
            <th scope="col">Cut from</th>
            <th scope="col" className={table.amount}>
              Share
            </th>
            <th scope="col" className={table.amount}>
              A label may say
            </th>
          </tr>
        </thead>
        <tbody>
          {label.lines.flatMap((line) =>
            line.shares.map((share, index) => (
              <ShareRow key={`${line.component} ${share.fibre}`} line={line} index={index} />
            )),
          )}
        </tbody>
      </table>
    </details>
  );
}

function ShareRow({ line, index }: { line: LabelLine; index: number }) {
  const { input } = useCoat('input');
  const share = line.shares[index];
  if (!input || !share) return null;
  const isAlone = line.shares.length === 1;
  const { minRatio, maxRatio } = statableRatios(share.shareRatio);
  const whole = (ratio: number) => <Figure quantity="ratio" value={ratio} options={{ digits: 0 }} />;
  return (
    <tr>
      <td>
        {line.component}, {fibres[share.fibre].us}
      </td>
      <td className="quiet">{index === 0 ? line.slotNames.join(', ') : ''}</td>
      <td className={table.amount}>
        <Figure quantity="ratio" value={share.shareRatio} options={{ digits: 1 }} />
      </td>
      <td className={table.amount}>
        {isAlone ? (
          whole(1)
        ) : (
          <>
            {whole(minRatio)} to {whole(maxRatio)}
          </>
        )}
      </td>
    </tr>
  );
}
