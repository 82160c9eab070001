/** Labels for the shelf as PDF: for which of the listed items, and where on the sheet they begin. */
import { say } from '../../../../shared-core/wording/say.ts';
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
    setSaid(say('common.writing-the-pdf'));
    const itemIds = ids.filter((id) => chosen.has(id));
    const answer = await ask(workshop, 'readShelf', { itemIds });
    setProblems(answer.ok ? [] : answer.problems);
    if (!answer.ok) return setSaid('');
    const labels = labelsOfShelf(answer.value.shelves, {
      system,
      amountText: (kind, amount) => amountText(kind, amount, system),
    });
    const unsaid = await savePdf(say('label-sheet.shelf-labels', { workshopName }), async (files) => {
      // Loaded when it is first wanted: no screen needs it.
      const { labelsPdf } = await import('../../../../shared-core/paper/labels-pdf.ts');
      return labelsPdf(labels, { format, usedCount }, files);
    });
    const saved = say('label-sheet.saved-labels', { labelsCount: labels.length });
    setSaid(unsaid === '' ? saved : unsaid);
  };
  return (
    <Sheet
      title={say('common.shelf-labels')}
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button onClick={onClose}>{say('common.close')}</Button>
          <Button look="main" disabled={chosen.size === 0} onClick={() => void save()}>
            {say('label-sheet.save-pdf')}
          </Button>
        </>
      }
    >
      <p className="quiet">
        {say('label-sheet.one-label-for-each-lot-of', {
          columnCount: grid.columnCount,
          rowCount: grid.rowCount,
          ifFormat: format === 'A4' ? 'yes' : 'no',
          labelWidthMm: grid.labelWidthMm,
          labelHeightMm: grid.labelHeightMm,
        })}
      </p>
      <SettledField
        label={say('label-sheet.labels-already-used-on-the-first')}
        quantity="count"
        value={usedCount}
        min={0}
        max={labelsOnSheet(grid) - 1}
        hint={say('label-sheet.from-the-upper-left-row-by')}
        onSet={setUsedCount}
      />
      <ReadProblems read={read} />
      <Problems problems={problems} />
      <div className={style.head}>
        <h3>{say('label-sheet.of-items', { chosenCount: chosen.size, rowsCount: rows.length })}</h3>
        <Button look="quiet" onClick={() => setChosen(new Set(ids))}>
          {say('label-sheet.all')}
        </Button>
        <Button look="quiet" onClick={() => setChosen(new Set())}>
          {say('label-sheet.none')}
        </Button>
      </div>
      {total > maxItems && (
        <p className="quiet small">
          {say('label-sheet.the-first-of-listed-narrow-the', { maxItems, total })}
        </p>
      )}
      <ul className={style.items} aria-label={say('label-sheet.items-with-a-label')}>
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
