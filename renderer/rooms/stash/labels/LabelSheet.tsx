/** Labels for the shelf as PDF: for which of the listed items, and where on the sheet they begin. */
import { useState } from 'react';
import { labelsOfShelf } from '../../../../shared-core/flow/output/labels-of-shelf.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { sheetFormat } from '../../../../shared-core/paper/paper-table.ts';
import { labelGrids, labelsOnSheet } from '../../../../shared-core/paper/shelf-labels.ts';
import { ask, useRead } from '../../../client/queries/reads.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { amountText } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { SettledField } from '../../../parts/forms/SettledField.tsx';
import { Sheet } from '../../../parts/layout/Sheet.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import { savePdf } from '../../../parts/tables/save-pdf.ts';
import type { StashQuestion } from '../item-pages.ts';
import style from './LabelSheet.module.css';

/** Of what is listed, the first so many: twenty sheets. */
const maxItems = 500;

export interface LabelSheetProps {
  /** What the list shows. */
  readonly question: StashQuestion;
  readonly total: number;
  /** The open one is chosen alone at first. */
  readonly itemId: string | null;
  readonly onClose: () => void;
}

export function LabelSheet({ question, total, itemId, onClose }: LabelSheetProps) {
  const { workshop, facts } = useWorkshop();
  const { system, workshopName } = facts.settings;
  // As the list stood when the sheet was opened.
  const [listed] = useState({ ...question, offset: 0, limit: maxItems });
  const read = useRead('listItems', listed);
  const rows = read.data?.rows ?? [];
  const ids = rows.map(({ id }) => id);
  /** Null until the maker chooses. */
  const [own, setChosen] = useState<ReadonlySet<string> | null>(null);
  const chosen = own ?? new Set(itemId !== null && ids.includes(itemId) ? [itemId] : ids);
  const [usedCount, setUsedCount] = useState(0);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const format = sheetFormat(system);
  const grid = labelGrids[format];

  const choose = (id: string, isChosen: boolean) => {
    const next = new Set(chosen);
    if (isChosen) next.add(id);
    else next.delete(id);
    setChosen(next);
  };
  const save = async () => {
    setSaid('Writing the PDF.');
    const itemIds = ids.filter((id) => chosen.has(id));
    const answer = await ask(workshop, 'readShelf', { itemIds });
    setProblems(answer.ok ? [] : answer.problems);
    if (!answer.ok) return setSaid('');
    const labels = labelsOfShelf(answer.value.shelves, {
      system,
      amountText: (kind, amount) => amountText(kind, amount, system),
    });
    const unsaid = await savePdf(`${workshopName} shelf labels`, async (files) => {
      // Loaded when it is first wanted: no screen needs it.
      const { labelsPdf } = await import('../../../../shared-core/paper/labels-pdf.ts');
      return labelsPdf(labels, { format, usedCount }, files);
    });
    const saved = labels.length === 1 ? 'Saved: 1 label.' : `Saved: ${labels.length} labels.`;
    setSaid(unsaid === '' ? saved : unsaid);
  };
  return (
    <Sheet
      title="Shelf labels"
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button onClick={onClose}>Close</Button>
          <Button look="main" disabled={chosen.size === 0} onClick={() => void save()}>
            Save PDF
          </Button>
        </>
      }
    >
      <p className="quiet">
        One label for each lot of which something is left, {grid.columnCount} x {grid.rowCount} on{' '}
        {format === 'A4' ? 'A4' : 'Letter'}, {grid.labelWidthMm} x {grid.labelHeightMm} mm, to cut apart. The
        square code holds the item’s number in this workshop and no address: a phone shows it as text; typed
        or scanned into Find (Ctrl K), it opens the item.
      </p>
      <SettledField
        label="Labels already used on the first sheet"
        quantity="count"
        value={usedCount}
        min={0}
        max={labelsOnSheet(grid) - 1}
        hint="from the upper left, row by row"
        onSet={setUsedCount}
      />
      <ReadProblems read={read} />
      <Problems problems={problems} />
      <div className={style.head}>
        <h3>
          {chosen.size} of {rows.length} items
        </h3>
        <Button look="quiet" onClick={() => setChosen(new Set(ids))}>
          All
        </Button>
        <Button look="quiet" onClick={() => setChosen(new Set())}>
          None
        </Button>
      </div>
      {total > maxItems && (
        <p className="quiet small">
          The first {maxItems} of {total} listed. Narrow the list by search or kind for the others.
        </p>
      )}
      <ul className={style.items} aria-label="Items with a label">
        {rows.map(({ id, name, colour }) => (
          <li key={id}>
            <label>
              <input
                type="checkbox"
                checked={chosen.has(id)}
                onChange={(event) => choose(id, event.target.checked)}
              />
              <span>
                {name}
                {colour !== '' && <span className="quiet">, {colour}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <p role="status">{said}</p>
    </Sheet>
  );
}
