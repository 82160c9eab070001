/** A cutting is written down: what was taken of each length and lot, what goes back to the shelf, what fell away. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo, useState } from 'react';
import { wholeBatch } from '../../../shared-core/flow/next-cutting.ts';
import { proposedSheet } from '../../../shared-core/flow/output/lay-sheets.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { coatsCut, type CutCoats } from '../../../shared-core/stash/cutting.ts';
import { useCoat, useCoatChange } from '../../client/coat/coat-context.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { misreadProblems } from '../../parts/forms/DraftField.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { EstimateAwaited } from '../../parts/layout/EstimateAwaited.tsx';
import { TextField } from '../../parts/forms/Field.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { CuttingSheetButton } from '../../parts/tables/CuttingSheetButton.tsx';
import { Waiting } from '../../parts/layout/Waiting.tsx';
import style from './CuttingRoom.module.css';
import { cuttingCall, emptyCutting, ownAmounts } from './cutting-drafts.ts';
import { CutSlotCard } from './CutSlotCard.tsx';
import { EarlierCuttings } from './EarlierCuttings.tsx';
import { useHeldProposal, useProposal } from './proposal.ts';

export function CuttingRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  if (!input) return null;
  return (
    <>
      <RoomHead title={say('cutting-room.cutting')} lead={say('cutting-room.write-down-what-was-cut-it')} />
      {estimate ? <NewCutting key={input.cuttings.length} /> : <EstimateAwaited />}
      <EarlierCuttings />
    </>
  );
}

function NewCutting() {
  const { input, estimate } = useCoat('input', 'estimate');
  const { make: record, isUnderWay: isBooking } = useCoatChange('recordCutting');
  const system = useSystem();
  const [coats, setCoats] = useState<readonly CutCoats[] | null>(null);
  const [draft, setDraft] = useState(emptyCutting);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const found = useProposal(coats);
  const held = useHeldProposal(found.slots, { input, coats });
  const proposal = held.slots;
  const done = useMemo(
    () => new Map(coatsCut(input?.cuttings ?? []).map((each) => [each.size, each.coatCount])),
    [input],
  );
  if (!input || !estimate) return null;
  const { plan } = input;
  const asked = coats ?? wholeBatch(plan);
  const isWhole = coats === null;
  const chosen = proposal?.filter(({ slotId }) => !draft.leftOut.includes(slotId)) ?? [];

  const book = async () => {
    const unread = misreadProblems(say('common.the-cutting'), ownAmounts(draft, proposal ?? []));
    if (unread.length > 0) return setProblems(unread);
    const booked = await record(cuttingCall(input, asked, proposal ?? [], draft, isWhole));
    setProblems(booked.ok ? [] : booked.problems);
  };

  if (isWhole && proposal?.length === 0) {
    return <NothingToCut planId={plan.id} isAllCut={input.cuttings.length > 0} />;
  }
  return (
    <section className={style.cutting} aria-label={say('cutting-room.a-new-cutting')}>
      <div className={style.coats}>
        {wholeBatch(plan).map(({ size, coatCount }) => (
          <SettledField
            key={size}
            label={
              size === ''
                ? say('cutting-room.coats-cut-in-all')
                : say('cutting-room.coats-cut-in-all-size', { size })
            }
            quantity="count"
            value={asked.find((each) => each.size === size)?.coatCount ?? 0}
            min={done.get(size) ?? 0}
            max={coatCount}
            hint={say('cutting-room.cut-so-far-planned', { get: done.get(size) ?? 0, coatCount })}
            onSet={(count) => setCoats(withCount(asked, wholeBatch(plan), size, count))}
          />
        ))}
      </div>
      <Problems problems={found.problems} onTryAgain={found.lookAgain} />
      {held.isOlder && (
        <div className={style.newer} role="status">
          <p>{say('cutting-room.a-better-lay-was-found-since')}</p>
          <Button onClick={held.takeNewer}>{say('cutting-room.take-the-better-lay')}</Button>
        </div>
      )}
      {proposal === null ? (
        found.problems.length === 0 && (isWhole ? <EstimateAwaited /> : <Waiting />)
      ) : (
        <ul className={style.slots} aria-label={say('cutting-room.what-is-cut')}>
          {proposal.map((slot) => (
            <CutSlotCard key={slot.slotId} slot={slot} draft={draft} onChange={setDraft} onOwn={held.hold} />
          ))}
        </ul>
      )}
      <div className={style.foot}>
        <TextField
          label={say('cutting-room.note')}
          value={draft.note}
          onChange={(note) => setDraft((now) => ({ ...now, note }))}
          hint={say('cutting-room.who-cut-what-went-wrong-may')}
        />
        <Problems problems={problems} />
        <div className={style.acts}>
          <CuttingSheetButton
            name={plan.name}
            isOff={chosen.every(({ laid }) => !laid)}
            sheet={() => proposedSheet(input, chosen, system)}
          />
          <Button look="main" disabled={chosen.length === 0 || isBooking} onClick={() => void book()}>
            {say('cutting-room.book-the-cutting')}
          </Button>
        </div>
      </div>
    </section>
  );
}

/** Null for the whole batch, so that it goes on meaning that when the plan changes. */
function withCount(
  asked: readonly CutCoats[],
  whole: readonly CutCoats[],
  size: string,
  coatCount: number,
): readonly CutCoats[] | null {
  const next = asked.map((each) => (each.size === size ? { size, coatCount } : each));
  const isWhole = whole.every((each) =>
    next.some(({ size: other, coatCount: count }) => other === each.size && count === each.coatCount),
  );
  return isWhole ? null : next;
}

function NothingToCut({ planId, isAllCut }: { planId: string; isAllCut: boolean }) {
  return isAllCut ? (
    <EmptyState title={say('cutting-room.all-is-cut')}>
      {say('cutting-room.everything-that-the-plan-needs-of')}
    </EmptyState>
  ) : (
    <EmptyState
      title={say('cutting-room.nothing-to-cut-yet')}
      action={
        <a href={routeHash({ kind: 'coat', planId, step: 'cover' })}>{say('cutting-room.see-the-cover')}</a>
      }
    >
      {say('cutting-room.nothing-on-the-shelf-covers-any')}
    </EmptyState>
  );
}
