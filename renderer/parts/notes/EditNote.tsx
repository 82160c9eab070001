/** What the last change of the plan did, slot by slot, and whether what is left is still enough. */
import { say } from '../../../shared-core/wording/say.ts';
import type { SlotChange } from '../../../shared-core/flow/estimate-change.ts';
import { useCoat, useCoatValue } from '../../client/coat/coat-context.ts';
import { isLookingForLays } from '../../client/coat/coat-store.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../figures/Amount.tsx';
import { Button } from '../forms/Button.tsx';
import style from './EditNote.module.css';
import { Money } from '../figures/Figure.tsx';

export function EditNote() {
  const { lastEdit, input, canUndo, undo } = useCoat('lastEdit', 'input', 'canUndo', 'undo');
  const isWorking = useCoatValue(({ phase }) => isLookingForLays(phase));
  if (!lastEdit || !input) return null;
  const { change } = lastEdit;
  return (
    <section className={style.note} role="status" aria-label={say('edit-note.what-the-last-change-did')}>
      <div className={style.said}>
        <strong>{lastEdit.said}</strong>
        {canUndo && (
          <Button look="quiet" onClick={() => void undo()}>
            {say('common.undo')}
          </Button>
        )}
      </div>
      {!change && isWorking && <p className="quiet">{say('edit-note.working-out-what-that-changes')}</p>}
      {change && (
        <>
          <ul className={style.changes}>
            {change.slots.map((slot) => (
              <li key={slot.slotId}>
                <SlotSentence change={slot} />
              </li>
            ))}
            {change.slots.length === 0 && <li>{say('edit-note.no-slot-needs-more-or-less')}</li>}
          </ul>
          <p>
            {change.isEnough
              ? say('edit-note.what-is-on-the-shelf-is')
              : say('edit-note.what-is-on-the-shelf-is-2')}{' '}
            {say('common.to-buy-2')} <Money amountMinor={change.toBuyMinor} withSign />
            {say('edit-note.cost-of-the-batch')} <Money amountMinor={change.batchCostMinor} withSign />.
          </p>
        </>
      )}
    </section>
  );
}

function SlotSentence({ change }: { change: SlotChange }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const slot = input?.plan.slots.find((candidate) => candidate.id === change.slotId);
  if (!slot) return <>{say('edit-note.a-slot-was-taken-out')}</>;
  const show = (value: number) => amountText(slot.kind, value, system);
  const name = slot.name[0]?.toUpperCase() + slot.name.slice(1);
  const more = (change.after ?? 0) - (change.before ?? 0);
  const isCovered = (state: SlotChange['stateAfter']) => state === 'covered' || state === 'covered with care';
  return (
    <>
      {name}: {change.before === null ? say('edit-note.now-needs', { show: show(change.after ?? 0) }) : null}
      {change.before !== null && Math.abs(more) > 0
        ? say('edit-note.less-in-all', {
            show: show(Math.abs(more)),
            ifMore: more > 0 ? 'yes' : 'no',
            show2: show(change.after ?? 0),
          })
        : null}
      {change.stateAfter !== change.stateBefore
        ? isCovered(change.stateAfter)
          ? say('edit-note.now-covered')
          : isCovered(change.stateBefore)
            ? say('edit-note.no-longer-covered')
            : `; ${change.stateAfter}.`
        : isCovered(change.stateAfter)
          ? say('edit-note.still-covered')
          : say('edit-note.still-short')}
    </>
  );
}
