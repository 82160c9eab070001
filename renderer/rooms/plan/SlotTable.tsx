/** Every slot with the item that fills it, and what of that item is free. */
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { bindSlot } from '../../../shared-core/plan/edits/edit.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { itemFree } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { StateTag } from '../../parts/figures/StateTag.tsx';
import table from '../../parts/tables/table.module.css';
import fields from '../../parts/forms/Field.module.css';
import style from './PlanRoom.module.css';

export function SlotTable() {
  const { input, estimate, edit } = useCoat();
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input) return null;
  const bind = async (slotId: string, itemId: string | null) => {
    const answer = await edit((plan) =>
      bindSlot(plan, slotId, itemId, input.shelf.find((each) => each.item.id === itemId)?.item.name),
    );
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <>
      <Problems problems={problems} />
      <table className={`${table.table} ${style.slots}`}>
        <thead>
          <tr>
            <th>Slot</th>
            <th>Filled by</th>
            <th className={table.amount}>Free on the shelf</th>
            <th>Cover</th>
          </tr>
        </thead>
        <tbody>
          {input.plan.slots.map((slot) => {
            const bound = input.shelf.find((each) => each.item.id === slot.itemId);
            const state = estimate?.cover.find((slotCover) => slotCover.slotId === slot.id)?.state;
            return (
              <tr key={slot.id}>
                <td>
                  <KindMark kind={slot.kind} /> {slot.name}
                </td>
                <td>
                  <select
                    className={`${fields.input} ${fields.choice}`}
                    aria-label={`Item for the ${slot.name}`}
                    value={slot.itemId ?? ''}
                    onChange={(event) => void bind(slot.id, event.target.value || null)}
                  >
                    <option value="">Choose later</option>
                    {input.shelf
                      .filter(({ item }) => item.kind === slot.kind)
                      .map(({ item }) => (
                        <option key={item.id} value={item.id}>
                          {item.colour ? `${item.name}, ${item.colour}` : item.name}
                        </option>
                      ))}
                  </select>
                </td>
                <td className={`${table.amount} number`}>
                  {bound ? (
                    amountText(slot.kind, itemFree(bound), system)
                  ) : (
                    <span className="quiet">{kindRecords[slot.kind].label}</span>
                  )}
                </td>
                <td>{state && <StateTag state={state} />}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}
