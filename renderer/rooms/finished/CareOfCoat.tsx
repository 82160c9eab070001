/** Care of the coat: what to wash before cutting, where its materials ask for different things, and the heat of the iron. */
import { say } from '../../../shared-core/wording/say.ts';
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Care } from '../../../shared-core/requirement/law/care.ts';
import { partNames } from '../../../shared-core/requirement/law/care-limits.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { slotName } from '../../client/wording/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Cautions } from '../../parts/notes/Cautions.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './FinishedRoom.module.css';

export function CareOfCoat({ care }: { care: Care }) {
  const { input } = useCoat('input');
  if (!input) return null;
  const { plan } = input;
  return (
    <section aria-labelledby="care" className={style.section}>
      <h2 id="care">{say('care-of-coat.care')}</h2>
      <p className="quiet">{say('care-of-coat.each-process-is-decided-by-itself')}</p>
      <DataTable
        className={style.narrow}
        rows={care.limits}
        keyOf={({ process }) => process}
        columns={[
          { head: say('care-of-coat.process'), cell: ({ name }) => name },
          {
            head: say('care-of-coat.the-coat-bears'),
            cell: ({ limit }) =>
              limit ? codeWords(limit) : <span className="quiet">{say('common.not-known-yet')}</span>,
          },
          {
            head: say('care-of-coat.because-of'),
            cellClass: 'quiet',
            cell: ({ slotIds }) => partNames(plan, slotIds),
          },
          {
            head: say('care-of-coat.not-written-down-yet'),
            cell: ({ unknownSlotIds }) => <SlotLinks slotIds={unknownSlotIds} />,
          },
        ]}
      />
      <figure className={style.label}>
        <figcaption className="quiet small">{say('care-of-coat.care-label-as-a-draft')}</figcaption>
        {care.label.lines.map(({ process, text }) => (
          <p key={process}>{text}</p>
        ))}
        {care.label.lines.length === 0 && <p className="quiet">{say('care-of-coat.nothing-is-known-yet')}</p>}
      </figure>
      <ul className={`${style.doubts} quiet`} aria-label={say('care-of-coat.before-it-is-printed')}>
        {care.label.asides.map((aside) => (
          <li key={aside}>{aside}</li>
        ))}
      </ul>
      {care.conflicts.length > 0 && (
        <ul
          className={style.conflicts}
          aria-label={say('care-of-coat.where-the-materials-ask-for-different')}
        >
          {care.conflicts.map((conflict) => (
            <li key={conflict.kind}>
              <p>
                <strong>{sentenceCase(conflict.says)}</strong> {conflict.fix}
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

/** Slots whose material says nothing of a process, each a way to where it is written down. */
function SlotLinks({ slotIds }: { slotIds: readonly string[] }) {
  const { input } = useCoat('input');
  if (!input || slotIds.length === 0) return null;
  return (
    <span className="small">
      {slotIds.map((slotId, index) => (
        <span key={slotId}>
          {index > 0 && ', '}
          <a href={routeHash({ kind: 'stash', itemId: slotById(input.plan, slotId).itemId })}>
            {slotName(input, slotId)}
          </a>
        </span>
      ))}
    </span>
  );
}
