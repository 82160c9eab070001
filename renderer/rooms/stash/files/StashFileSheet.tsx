/** A stash file is chosen or rows are pasted, and what they would change is read before anything is written. */
import { say } from '../../../../shared-core/wording/say.ts';
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
          where: say('stash-file-sheet.a-file-without-problems'),
          what: say('stash-file-sheet.is-not-chosen-yet-and-no'),
          fix: say('stash-file-sheet.give-one-or-the-other-above'),
        },
      ];
    const answer = await bringIn({ text: looked.text });
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet
      title={say('stash-file-sheet.stash-from-a-file-or-pasted')}
      saveLabel={say('stash-file-sheet.bring-it-in')}
      onClose={onClose}
      onSave={save}
    >
      <p className="quiet">{say('stash-file-sheet.what-the-rows-do-not-name')}</p>
      <FileChoice
        label={say('stash-file-sheet.stash-file')}
        hint={say('stash-file-sheet.csv-with-the-headings-of-a')}
        accept=".csv,.txt,.tsv,text/csv"
        chosen={file}
        maxBytes={maxStashBytes}
        onChoose={choose}
      />
      <TextField
        label={say('stash-file-sheet.or-rows-from-a-spreadsheet')}
        value={pasted}
        onChange={paste}
        isLong
        hint={say('stash-file-sheet.copy-them-there-together-with-the')}
      />
      <CopyHeadings />
      {isLooking && <Waiting>{say('stash-file-sheet.reading-the-rows')}</Waiting>}
      {looked && looked.problems.length > 0 && (
        <>
          <p role="status">
            {say('stash-file-sheet.nothing-was-changed-mend-these-then', { ifFile: file ? 'yes' : 'no' })}
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
      setSaid(say('stash-file-sheet.copied-paste-them-into-the-first'));
    } catch {
      setSaid(say('stash-file-sheet.they-could-not-be-copied-save'));
    }
  };
  return (
    <div className={style.headings}>
      <Button look="quiet" onClick={() => void copy()}>
        {say('stash-file-sheet.copy-the-headings')}
      </Button>
      <span role="status" className="quiet small">
        {said}
      </span>
    </div>
  );
}
