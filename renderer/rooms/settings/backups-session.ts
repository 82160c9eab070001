/** The backups as the window shows them: read, made, and one of them brought back. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Backup, Backups, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChangeIn } from '../../client/queries/changes.ts';
import { type Read, useReadIn } from '../../client/queries/reads.ts';
import { momentText } from '../../parts/figures/calendar.ts';

export interface BackupsSession {
  readonly read: Read<Backups>;
  readonly problems: readonly Problem[];
  readonly isBusy: boolean;
  /** What was done last, as a sentence; '' at first. */
  readonly said: string;
  readonly backUp: () => Promise<void>;
  readonly restoreBackup: (row: Backup) => Promise<void>;
}

/** onBroughtBack is told what the workshop is now. */
export function useBackups(onBroughtBack?: (facts: WorkshopFacts) => void): BackupsSession {
  const read = useReadIn('own', 'listBackups', {});
  const { make: backUpNow, isUnderWay: isBackingUp } = useChangeIn('own', 'backUp');
  const { make: restore, isUnderWay: isRestoring } = useChangeIn('own', 'restoreBackup');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');

  const backUp = async () => {
    setSaid('');
    const answer = await backUpNow({});
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) setSaid(say('backups-session.backed-up'));
  };
  const restoreBackup = async (row: Backup) => {
    setSaid('');
    const answer = await restore({ name: row.name });
    setProblems(answer.ok ? [] : answer.problems);
    // What is there now may have been kept as a backup before the other was refused.
    if (!answer.ok) return read.again();
    onBroughtBack?.(answer.value);
    setSaid(say('backups-session.the-workshop-is-as-it-was', { momentText: momentText(row.at) }));
  };
  return { read, problems, isBusy: isBackingUp || isRestoring, said, backUp, restoreBackup };
}
