/** A stash file is chosen or rows are pasted, and what they would change is read before anything is written. */
import { useEffect, useRef, useState } from 'react';
import type { StashFileChanges } from '../../../../shared-core/contract/stash-file-calls.ts';
import { maxStashBytes, stashFileText } from '../../../../shared-core/exchange/stash-csv/stash-file-bytes.ts';
import type { Result, Problem } from '../../../../shared-core/measure/problem.ts';
import { stashColumns } from '../../../../shared-core/exchange/stash-csv/stash-columns.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { ask } from '../../../client/queries/reads.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { TextField } from '../../../parts/forms/Field.tsx';
import { type ChosenFile, FileChoice } from '../../../parts/forms/FileChoice.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { Waiting } from '../../../parts/layout/Waiting.tsx';
import { StashFilePreview } from './StashFilePreview.tsx';
import style from './StashFileSheet.module.css';

const typingPauseMs = 300;

interface Looked {
  readonly text: string;
  readonly changes: StashFileChanges | null;
  readonly problems: readonly Problem[];
}

export function StashFileSheet({ onClose }: { onClose: () => void }) {
  const { workshop } = useWorkshop();
  const { make: bringIn } = useChange('bringInStashFile');
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [pasted, setPasted] = useState('');
  const [looked, setLooked] = useState<Looked | null>(null);
  const [isLooking, setIsLooking] = useState(false);
  // Only the answer to what was given last is shown.
  const lookCount = useRef(0);
  const pause = useRef(0);
  useEffect(() => () => window.clearTimeout(pause.current), []);

  const look = async (text: Result<string>) => {
    const own = ++lookCount.current;
    setIsLooking(true);
    const answer = text.ok ? await ask(workshop, 'lookAtStashFile', { text: text.value }) : text;
    if (own !== lookCount.current) return;
    setIsLooking(false);
    setLooked({
      text: text.ok ? text.value : '',
      changes: answer.ok ? answer.value : null,
      problems: answer.ok ? [] : answer.problems,
    });
  };
  const begin = () => {
    window.clearTimeout(pause.current);
    lookCount.current++;
    setIsLooking(false);
    setLooked(null);
  };
  const choose = (chosen: ChosenFile) => {
    begin();
    setFile(chosen);
    setPasted('');
    void look(stashFileText(chosen.bytes));
  };
  const paste = (text: string) => {
    begin();
    setFile(null);
    setPasted(text);
    if (text.trim() === '') return;
    pause.current = window.setTimeout(() => void look({ ok: true, value: text }), typingPauseMs);
  };
  const save = async (): Promise<readonly Problem[]> => {
    if (!looked?.changes)
      return [
        {
          where: 'A file without problems',
          what: 'is not chosen yet, and no such rows are pasted',
          fix: 'Give one or the other above.',
        },
      ];
    const answer = await bringIn({ text: looked.text });
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet
      title="Stash from a file or pasted rows"
      saveLabel="Bring it in"
      onClose={onClose}
      onSave={save}
    >
      <p className="quiet">
        What the rows do not name stays as it is. An amount that differs from what is booked needs a reason in
        its line, and becomes a correction in the ledger.
      </p>
      <FileChoice
        label="Stash file"
        hint="CSV with the headings of a file saved from here"
        accept=".csv,.txt,.tsv,text/csv"
        chosen={file}
        maxBytes={maxStashBytes}
        onChoose={choose}
      />
      <TextField
        label="Or rows from a spreadsheet"
        value={pasted}
        onChange={paste}
        isLong
        hint="Copy them there together with the line of headings, and paste them here. “kind” and “name” are needed; of the other columns, those you have."
      />
      <CopyHeadings />
      {isLooking && <Waiting>Reading the rows…</Waiting>}
      {looked && looked.problems.length > 0 && (
        <>
          <p role="status">
            Nothing was changed.{' '}
            {file
              ? 'Mend these in the file, then choose it again.'
              : 'Mend these, then paste the rows again.'}
          </p>
          <Problems problems={looked.problems} />
        </>
      )}
      {looked?.changes && <StashFilePreview changes={looked.changes} />}
    </FormSheet>
  );
}

/** The headings for an empty spreadsheet, parted as it pastes them: each into a cell of its own. */
function CopyHeadings() {
  const { currency } = useWorkshop().facts.settings;
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      const headings = stashColumns(currency).map(({ heading }) => heading);
      await navigator.clipboard.writeText(headings.join('\t'));
      setSaid('Copied. Paste them into the first line of an empty sheet.');
    } catch {
      setSaid('They could not be copied. Save the stash to a file instead: it has them all.');
    }
  };
  return (
    <div className={style.headings}>
      <Button look="quiet" onClick={() => void copy()}>
        Copy the headings
      </Button>
      <span role="status" className="quiet small">
        {said}
      </span>
    </div>
  );
}
