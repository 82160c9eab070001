/** A stash file is chosen, and what it would change is read before anything is written. */
import { useState } from 'react';
import type { StashFileChanges } from '../../../../shared-core/contract/stash-file-calls.ts';
import {
  mostStashBytes,
  stashFileText,
} from '../../../../shared-core/exchange/stash-csv/stash-file-bytes.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { call } from '../../../client/api.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { type ChosenFile, FileChoice } from '../../../parts/forms/FileChoice.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { Waiting } from '../../../parts/layout/Waiting.tsx';
import style from './StashFileSheet.module.css';

export interface StashFileSheetProps {
  readonly onClose: () => void;
  readonly onChanged: () => Promise<void>;
}

interface Looked {
  readonly text: string;
  readonly changes: StashFileChanges | null;
  readonly problems: readonly Problem[];
}

export function StashFileSheet({ onClose, onChanged }: StashFileSheetProps) {
  const { workshop } = useWorkshop();
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [looked, setLooked] = useState<Looked | null>(null);

  const choose = async (chosen: ChosenFile) => {
    setFile(chosen);
    setLooked(null);
    const text = stashFileText(chosen.bytes);
    if (!text.ok) return setLooked({ text: '', changes: null, problems: text.problems });
    const answer = await call('lookAtStashFile', workshop, { text: text.value });
    setLooked({
      text: text.value,
      changes: answer.ok ? answer.value : null,
      problems: answer.ok ? [] : answer.problems,
    });
  };
  const save = async (): Promise<readonly Problem[]> => {
    if (!looked?.changes)
      return [{ where: 'A file', what: 'without problems is not chosen yet', mend: 'Choose one above.' }];
    const answer = await call('bringInStashFile', workshop, { text: looked.text });
    if (!answer.ok) return answer.problems;
    await onChanged();
    return [];
  };
  return (
    <FormSheet title="Stash from a file" saveLabel="Bring it in" onClose={onClose} onSave={save}>
      <p className="quiet">
        Save the stash to a file first, change it in a spreadsheet and choose it here. What the file does not
        name stays as it is. An amount that differs from what is booked needs a reason in its line, and
        becomes a correction in the ledger.
      </p>
      <FileChoice
        label="Stash file"
        hint="CSV with the headings of a file saved from here"
        accept=".csv,.txt,.tsv,text/csv"
        chosen={file}
        mostBytes={mostStashBytes}
        onChoose={(chosen) => void choose(chosen)}
      />
      {file && !looked && <Waiting>Reading the file…</Waiting>}
      {looked && looked.problems.length > 0 && (
        <>
          <p role="status">Nothing was changed. Mend these in the file, then choose it again.</p>
          <Problems problems={looked.problems} />
        </>
      )}
      {looked?.changes && <Preview changes={looked.changes} />}
    </FormSheet>
  );
}

function Preview({ changes }: { changes: StashFileChanges }) {
  const { newItemCount, changedItemCount, newLotCount, correctionCount, lineCount } = changes;
  const all = newItemCount + changedItemCount + newLotCount + correctionCount;
  const rest = all - changes.changes.length;
  const counts = [
    counted(newItemCount, 'new item', 'new items'),
    counted(changedItemCount, 'changed item', 'changed items'),
    counted(newLotCount, 'new lot', 'new lots'),
    counted(correctionCount, 'correction', 'corrections'),
  ].filter((text) => text !== null);
  return (
    <section className={style.preview} aria-label="What would change">
      <p className={style.counts} role="status">
        {all === 0
          ? `${counted(lineCount, 'line', 'lines')} read: nothing would change.`
          : `Would bring ${counts.join(', ')}.`}
      </p>
      {all > 0 && (
        <ul className={style.changes}>
          {changes.changes.map((change) => (
            <li key={`${change.line} ${change.kind}`} className={style.change}>
              <span className={`${style.line} number`}>line {change.line}</span>
              <span>
                <strong>{change.itemName}</strong> {change.text}
              </span>
            </li>
          ))}
        </ul>
      )}
      {rest > 0 && <p className="quiet">And {rest} more.</p>}
    </section>
  );
}

function counted(count: number, one: string, many: string): string | null {
  return count === 0 ? null : `${count} ${count === 1 ? one : many}`;
}
