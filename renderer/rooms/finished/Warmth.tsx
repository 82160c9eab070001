/** Where the range of warmth comes from, and why it is a range. */
import type { FinishedCoat } from '../../../shared-core/requirement/finished/finished-coat.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import style from './FinishedRoom.module.css';

export function Warmth({ coat }: { coat: FinishedCoat }) {
  const { warmth } = coat;
  return (
    <section aria-labelledby="warmth" className={style.section}>
      <h2 id="warmth">Warmth</h2>
      {warmth ? (
        <>
          <p>
            The padding is <Figure quantity="length" value={warmth.thicknessMm} /> thick as worn, over{' '}
            <Figure quantity="ratio" value={warmth.paddedRatio} options={{ digits: 0 }} /> of the shell.
          </p>
          <p className="quiet">Why it is a range, and no promise:</p>
          <ul className={style.doubts}>
            {warmth.doubts.map((doubt) => (
              <li key={doubt}>{doubt}</li>
            ))}
          </ul>
          <BasisNote basis={warmth.basis} />
        </>
      ) : (
        <p className="quiet">
          No warmth to reckon with: no piece is padded, or the loft of its batting is not written down.
        </p>
      )}
    </section>
  );
}
