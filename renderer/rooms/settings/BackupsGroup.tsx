/** Copies of the data file: made, listed and brought back. */
import { useCallback, useEffect, useState } from 'react';
import type { Backup, Backups, WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { Button } from '../../parts/Button.tsx';
import { momentText } from '../../parts/calendar.ts';
import { Problems } from '../../parts/Problems.tsx';
import table from '../../parts/table.module.css';
import style from './BackupsGroup.module.css';
import { Group } from './Group.tsx';

const reasons: Readonly<Record<Backup['kind'], string>> = {
  automatic: 'at the start',
  'by hand': 'made by hand',
  'before bringing back': 'before another was brought back',
  rescued: 'when the file was gone',
  'put here': 'put in the folder',
};

/** onBroughtBack is told what the workshop is now. */
export function BackupsGroup({ onBroughtBack }: { onBroughtBack: (facts: WorkshopFacts) => Promise<void> }) {
  const [backups, setBackups] = useState<Backups | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [asked, setAsked] = useState<string | null>(null);
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
  const bringBack = async (row: Backup) => {
    setIsBusy(true);
    setSaid('');
    const answer = await call('bringBack', 'own', { name: row.name });
    setAsked(null);
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) {
      await onBroughtBack(answer.value);
      setSaid(`The workshop is as it was on ${momentText(row.at)}. What stood here before is in the list.`);
    }
    await read();
    setIsBusy(false);
  };

  const rows = backups?.rows ?? [];
  return (
    <Group
      title="Backups"
      about="Whole copies of the data file. One is made at each start when something has changed since the last; ten of those are kept. Those you make yourself stay until you delete them from the folder."
    >
      <section className={style.backups} aria-label="Backups">
        {backups?.lastProblem && <Problems problems={[backups.lastProblem]} />}
        <Problems problems={problems} />
        <div className={style.head}>
          <Button disabled={isBusy} onClick={() => void backUp()}>
            Back up now
          </Button>
          <p className="quiet small" role="status">
            {said}
          </p>
        </div>
        {rows.length > 0 && (
          <div className={style.rows}>
            <table className={table.table}>
              <thead>
                <tr>
                  <th scope="col">From</th>
                  <th scope="col" className={table.amount}>
                    Size
                  </th>
                  <th scope="col">
                    <span className="only-read-aloud">Bring back</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.name}>
                    <td title={row.name}>
                      <span className="number">{momentText(row.at)}</span>
                      <span className={style.reason}>{reasons[row.kind]}</span>
                    </td>
                    <td className={`${table.amount} number`}>{sizeText(row.sizeBytes)}</td>
                    <td className={style.actions}>
                      {asked !== row.name && (
                        <Button
                          look="quiet"
                          disabled={isBusy}
                          aria-label={`Bring back the one from ${momentText(row.at)}`}
                          onClick={() => setAsked(row.name)}
                        >
                          Bring this one back
                        </Button>
                      )}
                      {asked === row.name && (
                        <div className={style.question}>
                          <p>
                            Everything goes back to how it was then. What is here now is kept as a backup
                            first.
                          </p>
                          <Button look="main" disabled={isBusy} onClick={() => void bringBack(row)}>
                            Yes, bring it back
                          </Button>
                          <Button disabled={isBusy} onClick={() => setAsked(null)}>
                            Leave it as it is
                          </Button>
                        </div>
                      )}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
        {backups && rows.length === 0 && <p className="quiet">There is none yet.</p>}
        {backups && <code className={style.folder}>{backups.folder}</code>}
      </section>
    </Group>
  );
}

function sizeText(bytes: number): string {
  return bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
