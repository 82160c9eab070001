/** The table for a published pattern: what one coat of each size takes on each width of cloth, every cell a lay of its own. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo, useState } from 'react';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import {
  type TableAsked,
  tableSizes,
  tableSlots,
} from '../../../shared-core/flow/requirements-table/requirements-table.ts';
import {
  napsOf,
  readWidths,
  tooManyCells,
} from '../../../shared-core/flow/requirements-table/table-asked.ts';
import { requirementsTable } from '../../../shared-core/flow/requirements-table/table-words.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useRequirementsTable } from '../../client/coat/requirements-table.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { useTypingIn } from '../../parts/forms/typing-in.ts';
import { Problems } from '../../parts/notes/Problems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import { AddSizes } from './AddSizes.tsx';
import { AskedFields } from './AskedFields.tsx';
import { type AskedDraft, keepAsked, keptAsked } from './asked-draft.ts';
import style from './PatternTableRoom.module.css';
import { SlotCells } from './SlotCells.tsx';

export function PatternTableRoom() {
  const { input } = useCoat('input');
  if (!input) return null;
  if (tableSlots(input.plan).length === 0) {
    return (
      <>
        <RoomHead title={say('pattern-table-room.pattern-table')} />
        <EmptyState
          title={say('pattern-table-room.nothing-is-cut-yet')}
          action={
            <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>
              {say('pattern-table-room.to-the-plan')}
            </a>
          }
        >
          {say('pattern-table-room.the-table-says-what-the-pieces')}
        </EmptyState>
      </>
    );
  }
  return <TableOfCoat input={input} />;
}

function TableOfCoat({ input }: { input: FlowInput }) {
  const { workshop, facts } = useWorkshop();
  const { system } = facts.settings;
  const { plan } = input;
  const [isAdding, setIsAdding] = useState(false);
  const [draft, setDraft] = useState<AskedDraft>(() => keptAsked(plan.id, system));
  const change = (next: AskedDraft) => {
    setDraft(next);
    keepAsked(plan.id, next);
  };
  const slots = tableSlots(plan);
  const slotIds = slots.map((slot) => slot.id).filter((id) => !draft.leftOutSlotIds.includes(id));
  const widths = readWidths(draft.widths, system);
  const tooMany = widths.ok
    ? tooManyCells(plan, widths.value.length, napsOf(draft.nap).length, slotIds.length)
    : null;
  const typing = useTypingIn();
  const askedProblems = widths.ok ? (tooMany ? [tooMany] : []) : widths.problems;
  const widthText = widths.ok && !tooMany ? widths.value.join() : '';
  const slotText = slotIds.join();
  const asked = useMemo<TableAsked>(
    () => ({
      widthsMm: widthText === '' ? [] : widthText.split(',').map(Number),
      naps: napsOf(draft.nap),
      slotIds: slotText === '' ? [] : slotText.split(','),
    }),
    [widthText, draft.nap, slotText],
  );
  const table = useRequirementsTable(workshop, input, asked);
  const systems = systemsOf(draft.shownIn, system);
  const isAnyFound = table.cells.some(({ result }) => result !== null);
  const sizeCount = tableSizes(plan).length;
  return (
    <>
      <RoomHead
        title={say('pattern-table-room.pattern-table')}
        lead={say('pattern-table-room.what-one-coat-of-each-size')}
        actions={
          isAnyFound && (
            <TableActions
              makeTable={() => requirementsTable(plan, table.cells, { systems })}
              name={say('pattern-table-room.what-each-size-takes', { planName: plan.name })}
            />
          )
        }
      />
      <p className={sizeCount === 1 ? style.note : style.sizes}>
        <span>
          {sizeCount === 1
            ? say('pattern-table-room.the-plan-holds-one-size')
            : say('pattern-table-room.sizes', { tableSizes: tableSizes(plan).join(', ') })}
        </span>
        <Button look="quiet" onClick={() => setIsAdding(true)}>
          {say('pattern-table-room.add-sizes')}
        </Button>
      </p>
      {isAdding && <AddSizes plan={plan} onClose={() => setIsAdding(false)} />}
      <div {...typing.around}>
        <AskedFields draft={draft} slots={slots} onChange={change} />
      </div>
      <Problems problems={askedProblems} isQuiet={typing.isTyping} />
      <Problems problems={table.problems} />
      <div className={style.run}>
        {table.running ? (
          <>
            <Button onClick={table.stop}>{say('pattern-table-room.stop')}</Button>
            <progress
              className={style.bar}
              aria-label={say('pattern-table-room.lays-found')}
              value={table.running.doneCount}
              max={table.running.jobCount}
            />
            <span className="number quiet" role="status">
              {say('pattern-table-room.of-lays', {
                doneCount: table.running.doneCount,
                jobCount: table.running.jobCount,
              })}
            </span>
          </>
        ) : (
          <>
            <Button
              look={isAnyFound ? 'plain' : 'main'}
              disabled={table.openCount === 0}
              onClick={() => table.start(Number(draft.seconds))}
            >
              {isAnyFound
                ? say('pattern-table-room.look-for-shorter-lays')
                : say('pattern-table-room.find-the-lengths')}
            </Button>
            <span className="quiet">{standing(table.cells.length, table.openCount, isAnyFound)}</span>
          </>
        )}
      </div>
      {slots
        .filter((slot) => slotIds.includes(slot.id))
        .map((slot) => (
          <SlotCells
            key={slot.id}
            slot={slot}
            cells={table.cells.filter((cell) => cell.slotId === slot.id)}
            systems={systems}
          />
        ))}
      {isAnyFound && (
        <p className="quiet small">{say('pattern-table-room.nothing-is-added-for-cloth-that')}</p>
      )}
    </>
  );
}

function systemsOf(
  shownIn: AskedDraft['shownIn'],
  own: MeasureSystem,
): readonly [MeasureSystem, ...MeasureSystem[]] {
  if (shownIn !== 'both') return [shownIn];
  return own === 'metric' ? ['metric', 'imperial'] : ['imperial', 'metric'];
}

function standing(cellCount: number, openCount: number, isAnyFound: boolean): string {
  if (cellCount === 0) return '';
  if (openCount === 0) return say('pattern-table-room.no-lay-of-this-table-can');
  const lays = say('pattern-table-room.lays', { openCount });
  return isAnyFound
    ? say('pattern-table-room.may-still-become-shorter', { lays })
    : say('pattern-table-room.cells-to-look-for', { cellCount, lays });
}
