/** Copies of the data file: made, listed and brought back. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Backup, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import { isSharedWorkshop, useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './BackupsGroup.module.css';
import { BackupTable, sizeText } from './BackupTable.tsx';
import { useBackups } from './backups-session.ts';
import { Group } from './Group.tsx';

/** onBroughtBack is told what the workshop is now. */
export function BackupsGroup({ onBroughtBack }: { onBroughtBack: (facts: WorkshopFacts) => void }) {
  const { facts } = useWorkshop();
  const session = useBackups(onBroughtBack);
  const { read, problems, isBusy, said, backUp } = session;
  const backups = read.data;
  return (
    <Group
      title={say('backups-group.backups')}
      about={say(
        isSharedWorkshop(facts)
          ? 'backups-group.whole-copies-of-the-shared'
          : 'backups-group.whole-copies-of-the-data-file',
      )}
    >
      <section className={style.backups} aria-label={say('backups-group.backups')}>
        {backups?.lastProblem && <Problems problems={[backups.lastProblem]} />}
        <ReadProblems read={read} />
        <Problems problems={problems} />
        <div className={style.head}>
          <Button disabled={isBusy} onClick={() => void backUp()}>
            {say('backups-group.back-up-now')}
          </Button>
          <p className="quiet small" role="status">
            {said}
          </p>
        </div>
        <BackupTable session={session} question={say('backups-group.what-is-here-now-is-kept')} />
        {backups && <p className="quiet small">{allText(backups.rows)}</p>}
        {backups && <code className={style.folder}>{backups.folder}</code>}
      </section>
    </Group>
  );
}

function allText(rows: readonly Backup[]): string {
  if (rows.length === 0) return say('backups-group.there-is-none-yet');
  const bytes = rows.reduce((sum, row) => sum + row.sizeBytes, 0);
  return say('backups-group.backups-in-all', { rowsCount: rows.length, sizeText: sizeText(bytes) });
}
