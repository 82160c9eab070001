/** The stash's way out to a spreadsheet and back in. */
import { say } from '../../../../shared-core/wording/say.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { ask } from '../../../client/queries/reads.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { fileName, saveFile } from '../../../parts/tables/save-file.ts';

export interface StashFilesProps {
  /** Nothing to save yet. */
  readonly isEmpty: boolean;
  readonly onProblems: (problems: readonly Problem[]) => void;
  /** The way in is asked for; the room opens it, and keeps it open whatever else it then shows. */
  readonly onBringIn: () => void;
}

export function StashFiles({ isEmpty, onProblems, onBringIn }: StashFilesProps) {
  const { workshop, facts } = useWorkshop();
  const save = async () => {
    const answer = await ask(workshop, 'stashFile', {});
    onProblems(answer.ok ? [] : answer.problems);
    if (answer.ok)
      saveFile(
        fileName(say('stash-files.stash', { workshopName: facts.settings.workshopName }), 'csv'),
        'text/csv',
        answer.value.text,
      );
  };
  return (
    <>
      {!isEmpty && (
        <Button look="quiet" onClick={() => void save()}>
          {say('stash-files.stash-to-a-file')}
        </Button>
      )}
      <Button look={isEmpty ? 'plain' : 'quiet'} onClick={onBringIn}>
        {say('stash-files.stash-from-a-file-or-pasted')}
      </Button>
    </>
  );
}
