/** The stash's way out to a spreadsheet and back in. */
import { useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { call } from '../../../client/api.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { fileName, saveFile } from '../../../parts/tables/save-file.ts';
import { StashFileSheet } from './StashFileSheet.tsx';

export interface StashFilesProps {
  /** Nothing to save yet. */
  readonly isEmpty: boolean;
  readonly onProblems: (problems: readonly Problem[]) => void;
  readonly onChanged: () => Promise<void>;
}

export function StashFiles({ isEmpty, onProblems, onChanged }: StashFilesProps) {
  const { workshop, facts } = useWorkshop();
  const [isOpen, setIsOpen] = useState(false);
  const save = async () => {
    const answer = await call('stashFile', workshop, {});
    onProblems(answer.ok ? [] : answer.problems);
    if (answer.ok)
      saveFile(fileName(`${facts.settings.workshopName} stash`, 'csv'), 'text/csv', answer.value.text);
  };
  return (
    <>
      {!isEmpty && (
        <Button look="quiet" onClick={() => void save()}>
          Stash to a file
        </Button>
      )}
      <Button look="quiet" onClick={() => setIsOpen(true)}>
        Stash from a file
      </Button>
      {isOpen && <StashFileSheet onClose={() => setIsOpen(false)} onChanged={onChanged} />}
    </>
  );
}
