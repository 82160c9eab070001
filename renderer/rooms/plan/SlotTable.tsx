/** Every slot with the item that fills it, and what of that item is free. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { bindSlot } from '../../../shared-core/plan/edits/edit.ts';
import { setWashing } from '../../../shared-core/plan/edits/washing.ts';
import { firstWash } from '../../../shared-core/requirement/cut/first-wash.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { type Item, itemFree } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { StateTag } from '../../parts/figures/StateTag.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import fields from '../../parts/forms/Field.module.css';
import style from './PlanRoom.module.css';

export function SlotTable() {
  const { input, estimate, edit } = useCoat('input', 'estimate', 'edit');
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input) return null;
  const bind = async (slotId: string, itemId: string | null) => {
    const answer = await edit((plan) =>
      bindSlot(plan, slotId, itemId, input.shelf.find((each) => each.item.id === itemId)?.item.name),
    );
    setProblems(answer.ok ? [] : answer.problems);
  };
  const boundTo = (slot: Slot) => input.shelf.find(({ item }) => item.id === slot.itemId);
  const wash = async (slotId: string, isBeforeCutting: boolean) => {
    const answer = await edit((plan) => setWashing(plan, slotId, isBeforeCutting));
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <>
      <Problems problems={problems} />
      <DataTable
        className={style.slots}
        rows={input.plan.slots}
        keyOf={({ id }) => id}
        columns={[
          {
            head: say('common.slot'),
            cell: ({ kind, name }) => (
              <>
                <KindMark kind={kind} /> {name}
              </>
            ),
          },
          {
            head: say('slot-table.filled-by'),
            cell: (slot) => {
              const bound = boundTo(slot);
              return (
                <>
                  <select
                    className={`${fields.input} ${fields.choice}`}
                    aria-label={say('slot-table.item-for-the', { slotName: slot.name })}
                    value={slot.itemId ?? ''}
                    onChange={(event) => void bind(slot.id, event.target.value || null)}
                  >
                    <option value="">{say('slot-table.choose-later')}</option>
                    {input.shelf
                      .filter(({ item }) => item.kind === slot.kind)
                      .map(({ item }) => (
                        <option key={item.id} value={item.id}>
                          {item.colour ? `${item.name}, ${item.colour}` : item.name}
                        </option>
                      ))}
                  </select>
                  {bound && <WashChoice slot={slot} item={bound.item} onChoose={wash} />}
                </>
              );
            },
          },
          {
            head: say('slot-table.free-on-the-shelf'),
            align: 'end',
            isNumber: true,
            cell: (slot) => {
              const bound = boundTo(slot);
              return bound ? (
                amountText(slot.kind, itemFree(bound), system)
              ) : (
                <span className="quiet">{kindRecords[slot.kind].label}</span>
              );
            },
          },
          {
            head: say('common.cover'),
            cell: ({ id }) => {
              const state = estimate?.cover.find(({ slotId }) => slotId === id)?.state;
              return state && <StateTag state={state} />;
            },
          },
        ]}
      />
    </>
  );
}

interface WashChoiceProps {
  readonly slot: Slot;
  readonly item: Item;
  readonly onChoose: (slotId: string, isBeforeCutting: boolean) => Promise<void>;
}

/** When cloth that shrinks is washed; of what does not shrink nothing is asked. */
function WashChoice({ slot, item, onChoose }: WashChoiceProps) {
  const wash = firstWash(slot, item);
  if (!wash) return null;
  return (
    <label className={`${style.wash} small quiet`}>
      <input
        type="checkbox"
        aria-label={say('slot-table.wash-the-before-cutting', { slotName: slot.name })}
        checked={wash.isBeforeCutting}
        onChange={(event) => void onChoose(slot.id, event.target.checked)}
      />
      {wash.isBeforeCutting
        ? say('slot-table.washed-before-cutting')
        : say('slot-table.cut-unwashed-its-pieces-larger')}
    </label>
  );
}
