/** The table for a published pattern: what one coat of each size takes on each width of cloth, every cell a lay of its own. */
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
        <RoomHead title="Pattern table" />
        <EmptyState
          title="Nothing is cut yet"
          action={<a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>To the plan</a>}
        >
          The table says what the pieces of each size take. Draw or bring in pieces first.
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
        title="Pattern table"
        lead="What one coat of each size takes, in lengths as shops sell them."
        actions={
          isAnyFound && (
            <TableActions
              table={requirementsTable(plan, table.cells, { systems })}
              name={`${plan.name} what each size takes`}
            />
          )
        }
      />
      <p className={sizeCount === 1 ? style.note : style.sizes}>
        <span>{sizeCount === 1 ? 'The plan holds one size.' : `Sizes ${tableSizes(plan).join(', ')}.`}</span>
        <Button look="quiet" onClick={() => setIsAdding(true)}>
          Add sizes
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
            <Button onClick={table.stop}>Stop</Button>
            <progress
              className={style.bar}
              aria-label="Lays found"
              value={table.running.doneCount}
              max={table.running.jobCount}
            />
            <span className="number quiet" role="status">
              {table.running.doneCount} of {table.running.jobCount} lays
            </span>
          </>
        ) : (
          <>
            <Button
              look={isAnyFound ? 'plain' : 'main'}
              disabled={table.openCount === 0}
              onClick={() => table.start(Number(draft.seconds))}
            >
              {isAnyFound ? 'Look for shorter lays' : 'Find the lengths'}
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
        <p className="quiet small">
          Nothing is added for cloth that is not true or a slip of the blade. Sew one coat from the pattern
          before you publish the table.
        </p>
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
  if (openCount === 0) return 'No lay of this table can be shorter.';
  const lays = openCount === 1 ? 'one lay' : `${openCount} lays`;
  return isAnyFound ? `${lays} may still become shorter.` : `${cellCount} cells, ${lays} to look for.`;
}
