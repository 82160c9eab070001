/** Where the range of warmth comes from, and why it is a range. */
import { say } from '../../../shared-core/wording/say.ts';
import type { FinishedCoat } from '../../../shared-core/requirement/finished/finished-coat.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import style from './FinishedRoom.module.css';

export function Warmth({ coat }: { coat: FinishedCoat }) {
  const { warmth } = coat;
  return (
    <section aria-labelledby="warmth" className={style.section}>
      <h2 id="warmth">{say('warmth.warmth')}</h2>
      {warmth ? (
        <>
          <p>
            {say('warmth.the-padding-is')} <Figure quantity="length" value={warmth.thicknessMm} />{' '}
            {say('warmth.thick-as-worn-over')}{' '}
            <Figure quantity="ratio" value={warmth.paddedRatio} options={{ digits: 0 }} />{' '}
            {say('warmth.of-the-shell')}
          </p>
          <p className="quiet">{say('warmth.why-it-is-a-range-and')}</p>
          <ul className={style.doubts}>
            {warmth.doubts.map((doubt) => (
              <li key={doubt}>{doubt}</li>
            ))}
          </ul>
          <BasisNote basis={warmth.basis} />
        </>
      ) : (
        <p className="quiet">{say('warmth.no-warmth-to-reckon-with-no')}</p>
      )}
    </section>
  );
}
