/** Care of the coat: what to wash before cutting, where its materials ask for different things, and the heat of the iron. */
import { sentenceCase } from '../../../shared-core/measure/sentence-case.ts';
import type { Care } from '../../../shared-core/requirement/care.ts';
import { useCoat } from '../../client/coat-context.ts';
import { slotName } from '../../client/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { BasisNote } from '../../parts/BasisNote.tsx';
import { Cautions } from '../../parts/Cautions.tsx';
import style from './FinishedRoom.module.css';

export function CareOfCoat({ care }: { care: Care }) {
  const { input } = useCoat();
  if (!input) return null;
  const unknown = care.unknownSlotIds.flatMap((slotId) => {
    const slot = input.plan.slots.find((each) => each.id === slotId);
    return slot ? [slot] : [];
  });
  return (
    <section aria-labelledby="care" className={style.section}>
      <h2 id="care">Care</h2>
      <p>
        {care.gentlest === null
          ? 'No care of a material is written down yet.'
          : `The whole coat bears: ${care.gentlest}. That is the gentlest of its materials.`}
      </p>
      {unknown.length > 0 && (
        <p className="quiet">
          Not written down yet:{' '}
          {unknown.map((slot, index) => (
            <span key={slot.id}>
              {index > 0 && ', '}
              <a href={routeHash({ kind: 'stash', itemId: slot.itemId })}>{slotName(input, slot.id)}</a>
            </span>
          ))}
          .
        </p>
      )}
      {care.conflicts.length > 0 && (
        <ul className={style.conflicts} aria-label="Where the materials ask for different things">
          {care.conflicts.map((conflict) => (
            <li key={conflict.kind}>
              <p>
                <strong>{sentenceCase(conflict.says)}</strong> {conflict.mend}
              </p>
              <BasisNote basis={[conflict.basis]} />
            </li>
          ))}
        </ul>
      )}
      <Cautions kinds={['hot iron']} />
    </section>
  );
}
