/** The backups as the window shows them: read, made, and one of them brought back. */
import { useCallback, useEffect, useState } from 'react';
import type { Backup, Backups, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { momentText } from '../../parts/figures/calendar.ts';

export interface BackupsSession {
  /** Null until they are read. */
  readonly backups: Backups | null;
  readonly problems: readonly Problem[];
  readonly isBusy: boolean;
  /** What was done last, as a sentence; '' at first. */
  readonly said: string;
  readonly backUp: () => Promise<void>;
  readonly restoreBackup: (row: Backup) => Promise<void>;
}

/** onBroughtBack is told what the workshop is now. */
export function useBackups(onBroughtBack: (facts: WorkshopFacts) => Promise<void>): BackupsSession {
  const [backups, setBackups] = useState<Backups | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isBusy, setIsBusy] = useState(false);
  const [said, setSaid] = useState('');

  const read = useCallback(async () => {
    const answer = await call('listBackups', 'own', {});
    if (answer.ok) setBackups(answer.value);
    else setProblems(answer.problems);
  }, []);
  useEffect(() => {
    void read();
  }, [read]);

  const backUp = async () => {
    setIsBusy(true);
    setSaid('');
    const answer = await call('backUp', 'own', {});
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) {
      setBackups(answer.value);
      setSaid('Backed up.');
    }
    setIsBusy(false);
  };
  const restoreBackup = async (row: Backup) => {
    setIsBusy(true);
    setSaid('');
    const answer = await call('restoreBackup', 'own', { name: row.name });
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) {
      await onBroughtBack(answer.value);
      setSaid(`The workshop is as it was on ${momentText(row.at)}. What stood here before is kept.`);
    }
    await read();
    setIsBusy(false);
  };
  return { backups, problems, isBusy, said, backUp, restoreBackup };
}
