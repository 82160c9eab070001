/** Every movement of an item, newest first. The ledger only grows. */
import { nounInSentence } from '../../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { dayWords } from '../../../../shared-core/measure/calendar-date.ts';
import type { ItemOnShelf, Movement } from '../../../../shared-core/stash/stash.ts';
import { useRead } from '../../../client/queries/reads.ts';
import { useSystem } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import { formWords, lotText, movementText, widthText } from '../items/item-words.ts';
import style from './Ledger.module.css';

const shownAtFirst = 10;

export function Ledger({ shelf, movements }: { shelf: ItemOnShelf; movements: readonly Movement[] }) {
  const system = useSystem();
  // Names of the coats that movements belong to; read only where one does.
  const plans = useRead('listPlans', movements.some(({ planId }) => planId !== null) ? {} : null);
  const planNames = new Map(plans.data?.rows.map((row) => [row.id, row.name]));
  const [isWhole, setIsWhole] = useState(false);
  const shown = isWhole ? movements : movements.slice(0, shownAtFirst);
  return (
    <div className={style.ledger}>
      <ReadProblems read={plans} />
      <ol className={style.rows}>
        {shown.map((movement) => {
          const lot = shelf.lots.find((candidate) => candidate.id === movement.lotId);
          const length = lot?.lengths.find((candidate) => candidate.id === movement.lengthId);
          const planName = movement.planId === null ? null : (planNames.get(movement.planId) ?? 'a coat');
          const place = [
            length
              ? say('ledger.wide', {
                  formWords: nounInSentence(formWords[length.form]),
                  widthText: widthText(length.widthMm, system),
                })
              : null,
            lot ? say('ledger.lot-of', { lotText: lotText(lot) }) : null,
          ].filter((word) => word !== null);
          return (
            <li key={movement.id} className={style.row}>
              <time className={style.day} dateTime={movement.at}>
                {dayWords(movement.at)}
              </time>
              <span>
                {movementText(movement, shelf.item.kind, system, planName)}
                {movement.reason !== '' && <>: {movement.reason}</>}
                <span className={style.place}>{place.join(', ')}</span>
              </span>
            </li>
          );
        })}
      </ol>
      {movements.length > shown.length && (
        <Button look="quiet" className={style.more ?? ''} onClick={() => setIsWhole(true)}>
          {say('ledger.show-all-movements', { movementsCount: movements.length })}
        </Button>
      )}
    </div>
  );
}
