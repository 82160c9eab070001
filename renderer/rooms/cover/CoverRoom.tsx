/** Whether the stash carries the plan: the answer first, then slot by slot what is used, missing or could stand in. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import { coverHeadline, coverSentences } from '../../../shared-core/cover/cover-words.ts';
import { stillEnoughSentence } from '../../../shared-core/cover/still-enough.ts';
import type { SlotCover } from '../../../shared-core/cover/slot-cover.ts';
import { coverSentence, slotsStillFall } from '../../../shared-core/flow/falls-of-estimate.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { bindSlot } from '../../../shared-core/plan/edits/edit.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { itemFree } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { isLookingForLays } from '../../client/coat/coat-store.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { RoomAwaited } from '../../parts/layout/EstimateAwaited.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { StateTag } from '../../parts/figures/StateTag.tsx';
import { StillFallsNote } from '../../parts/notes/StillFallsNote.tsx';
import style from './CoverRoom.module.css';
import { LengthsUsed } from './LengthsUsed.tsx';
import { SetAsideBar } from './SetAsideBar.tsx';

/** What asks for something to be done stands first. */
const urgency: Readonly<Record<SlotCover['state'], number>> = {
  short: 0,
  open: 1,
  'covered with care': 2,
  covered: 3,
};

export function CoverRoom() {
  const { input, estimate, phase } = useCoat('input', 'estimate', 'phase');
  if (!input) return null;
  if (!estimate)
    return <RoomAwaited title={say('common.cover')} lead={say('cover-room.laying-the-pieces-on-what-the')} />;
  const isLooking = isLookingForLays(phase);
  const shortSlots = estimate.cover.filter(({ state }) => state === 'short').map(({ slotId }) => slotId);
  const falls = slotsStillFall(estimate, shortSlots, isLooking);
  const covers = [...estimate.cover].sort((a, b) => urgency[a.state] - urgency[b.state]);
  return (
    <>
      <RoomHead title={say('common.cover')} lead={<strong>{coverHeadline(estimate.cover)}</strong>} />
      {falls && <StillFallsNote falls={falls} sentence={coverSentence(falls, isLooking)} />}
      <SetAsideBar />
      <ul className={style.slots} aria-label={say('cover-room.cover-by-slot')}>
        {covers.map((slotCover) => (
          <SlotCard key={slotCover.slotId} slotCover={slotCover} />
        ))}
      </ul>
    </>
  );
}

function SlotCard({ slotCover }: { slotCover: SlotCover }) {
  const { input, estimate } = useCoat('input', 'estimate');
  const system = useSystem();
  if (!input || !estimate) return null;
  const { plan, shelf } = input;
  const slot = slotById(plan, slotCover.slotId);
  const still = estimate.still.find((each) => each.slotId === slot.id);
  const bound = shelf.find(({ item }) => item.id === slotCover.itemId);
  // What is wholly cut has nothing more to say.
  const sentences = still?.state === 'all cut' ? [] : coverSentences(slotCover, { plan, shelf, system });
  const link = (step: 'lay' | 'to-buy' | 'plan', words: string) => (
    <a href={routeHash({ kind: 'coat', planId: plan.id, step, slotId: slot.id })}>{words}</a>
  );
  return (
    <li className={style.slot} data-state={slotCover.state} aria-label={sentenceCase(slot.name)}>
      <div className={style.head}>
        <h2 className="of-card">{sentenceCase(slot.name)}</h2>
        {bound && (
          <a className={style.item} href={routeHash({ kind: 'stash', itemId: bound.item.id })}>
            {bound.item.name}
          </a>
        )}
        <StateTag state={slotCover.state} />
        <span className={`${style.links} small`}>
          {slotCover.lay && link('lay', say('cover-room.see-the-lay'))}
          {slotCover.state === 'short' && link('to-buy', say('cover-room.what-to-buy'))}
          {slotCover.state === 'open' && link('plan', say('cover-room.choose-an-item'))}
        </span>
      </div>
      {still && (
        <p className={style.still} data-state={still.state}>
          {stillEnoughSentence(still, { plan, shelf, system })}
        </p>
      )}
      <div className={style.words}>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {bound && <LengthsUsed slotCover={slotCover} shelf={bound} kind={slot.kind} />}
      <Substitutes slotCover={slotCover} />
    </li>
  );
}

/** Like items of the shelf, each with a button that fills the slot with it. */
function Substitutes({ slotCover }: { slotCover: SlotCover }) {
  const { input, edit } = useCoat('input', 'edit');
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input || slotCover.substitutes.length === 0) return null;
  const take = async (itemId: string, name: string) => {
    const done = await edit((plan) => bindSlot(plan, slotCover.slotId, itemId, name));
    setProblems(done.ok ? [] : done.problems);
  };
  return (
    <div className={style.substitutes}>
      <span className="quiet small">{say('cover-room.on-the-shelf-and-like-it')}</span>
      {input.shelf
        .filter(({ item }) => slotCover.substitutes.includes(item.id))
        .map((onShelf) => (
          <Button
            key={onShelf.item.id}
            look="quiet"
            onClick={() => void take(onShelf.item.id, onShelf.item.name)}
          >
            {say('cover-room.use-free', {
              itemName: onShelf.item.name,
              colour: onShelf.item.colour && `, ${onShelf.item.colour}`,
              amountText: amountText(onShelf.item.kind, itemFree(onShelf), system),
            })}
          </Button>
        ))}
      <Problems problems={problems} />
    </div>
  );
}
