/** Copies of the data file: made, listed and brought back. */
import type { Backup, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './BackupsGroup.module.css';
import { BackupTable, sizeText } from './BackupTable.tsx';
import { useBackups } from './backups-session.ts';
import { Group } from './Group.tsx';

/** onBroughtBack is told what the workshop is now. */
export function BackupsGroup({ onBroughtBack }: { onBroughtBack: (facts: WorkshopFacts) => void }) {
  const session = useBackups(onBroughtBack);
  const { read, problems, isBusy, said, backUp } = session;
  const backups = read.data;
  return (
    <Group
      title="Backups"
      about="Whole copies of the data file. One is made at each start when something has changed since the last. Ten of those are kept, and ten of those from before another was brought back. Those you make yourself stay until you delete them from the folder."
    >
      <section className={style.backups} aria-label="Backups">
        {backups?.lastProblem && <Problems problems={[backups.lastProblem]} />}
        <ReadProblems read={read} />
        <Problems problems={problems} />
        <div className={style.head}>
          <Button disabled={isBusy} onClick={() => void backUp()}>
            Back up now
          </Button>
          <p className="quiet small" role="status">
            {said}
          </p>
        </div>
        <BackupTable session={session} question="What is here now is kept as a backup first." />
        {backups && <p className="quiet small">{allText(backups.rows)}</p>}
        {backups && <code className={style.folder}>{backups.folder}</code>}
      </section>
    </Group>
  );
}

function allText(rows: readonly Backup[]): string {
  if (rows.length === 0) return 'There is none yet.';
  const bytes = rows.reduce((sum, row) => sum + row.sizeBytes, 0);
  return `${rows.length === 1 ? '1 backup' : `${rows.length} backups`}, ${sizeText(bytes)} in all.`;
}
