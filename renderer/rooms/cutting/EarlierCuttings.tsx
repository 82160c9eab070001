/** What was cut for this coat so far, newest first; each can be taken back, and that is written down too. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { cutItemNames, type Cutting } from '../../../shared-core/stash/cutting.ts';
import { useRead } from '../../client/queries/reads.ts';
import { useCoatChange, useCoatValue } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { momentText } from '../../parts/figures/calendar.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './CuttingRoom.module.css';

export function EarlierCuttings() {
  const planId = useCoatValue(({ input }) => input?.plan.id);
  const read = useRead('listCuttings', planId === undefined ? null : { planId });
  const { make: undoCutting } = useCoatChange('undoCutting');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  /** The cutting that may be taken back once the maker has said so twice. */
  const [askedId, setAskedId] = useState<string | null>(null);
  const takeBack = async (cuttingId: string) => {
    setAskedId(null);
    const done = await undoCutting({ cuttingId });
    setProblems(done.ok ? [] : done.problems);
  };

  const booked = (read.data?.rows ?? []).filter((row) => row.undoes === null);
  if (booked.length === 0) return <ReadProblems read={read} />;
  return (
    <section className={style.earlier} aria-labelledby="earlier-cuttings">
      <h2 id="earlier-cuttings">{say('earlier-cuttings.cut-so-far')}</h2>
      <ReadProblems read={read} />
      <Problems problems={problems} />
      <ol className={style.rows}>
        {booked.map((cutting) => (
          <li key={cutting.id} className={style.row} data-undone={cutting.undoneBy !== null}>
            <div className={style.rowHead}>
              <strong>{momentText(cutting.at)}</strong>
              <span className="quiet">{coatsWords(cutting)}</span>
              <span className={style.rowCost}>
                <Money amountMinor={sum(cutting, (line) => line.costMinor)} />
              </span>
              {cutting.undoneBy === null ? (
                <Button
                  look="quiet"
                  aria-expanded={askedId === cutting.id}
                  onClick={() => setAskedId(askedId === cutting.id ? null : cutting.id)}
                >
                  {say('earlier-cuttings.take-back')}
                </Button>
              ) : (
                <span className="quiet">{say('earlier-cuttings.taken-back')}</span>
              )}
            </div>
            <ul className={style.rowSlots}>
              {cutting.slots.map((slot) => (
                <SlotWords key={slot.slotId} slot={slot} />
              ))}
            </ul>
            {askedId === cutting.id && (
              <div className={style.rowAsked}>
                <p>{say('earlier-cuttings.what-was-cut-goes-back-to')}</p>
                <Button onClick={() => void takeBack(cutting.id)}>
                  {say('earlier-cuttings.take-it-all-back')}
                </Button>
                <Button look="quiet" onClick={() => setAskedId(null)}>
                  {say('earlier-cuttings.leave-it-booked')}
                </Button>
              </div>
            )}
            {cutting.note !== '' && <p className="quiet small">{cutting.note}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}

function sum(cutting: Cutting, part: (line: Cutting['slots'][number]['lines'][number]) => number): number {
  return cutting.slots.flatMap((slot) => slot.lines).reduce((total, line) => total + part(line), 0);
}

function coatsWords({ coats }: Cutting): string {
  const cut = coats.filter(({ coatCount }) => coatCount > 0);
  if (cut.length === 0) return say('earlier-cuttings.part-of-a-coat');
  return listed(
    cut.map(({ size, coatCount }) => {
      const many = `${coatCount} ${say('earlier-cuttings.coats', { coatCount })}`;
      return size === '' ? many : say('earlier-cuttings.of-size', { many, size });
    }),
  );
}

function SlotWords({ slot }: { slot: Cutting['slots'][number] }) {
  const system = useSystem();
  const amount = slot.lines.reduce((total, line) => total + line.amount, 0);
  const keptCount = slot.lines.reduce((total, line) => total + line.kept.length, 0);
  const wasteMinor = slot.lines.reduce((total, line) => total + (line.area?.wasteMinor ?? 0), 0);
  const trimmedMinor = slot.lines.reduce((total, line) => total + (line.area?.trimmedMinor ?? 0), 0);
  return (
    <li className="small">
      {sentenceCase(slot.slotName)}: {amountText(slot.kind, amount, system)} {say('common.of')}{' '}
      {listed(cutItemNames(slot))}
      {keptCount > 0 && say('earlier-cuttings.rests-back-on-the-shelf', { keptCount })}
      {wasteMinor > 0 && (
        <span className="quiet">
          , <Money amountMinor={wasteMinor} /> {say('earlier-cuttings.of-it-waste')}
        </span>
      )}
      {trimmedMinor > 0 && (
        <span className="quiet">
          , <Money amountMinor={trimmedMinor} /> {say('earlier-cuttings.trimmed-off-after-quilting')}
        </span>
      )}
    </li>
  );
}
