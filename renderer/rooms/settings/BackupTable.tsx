import { useState } from 'react';
import type { Backup } from '../../../shared-core/contract/contract.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { momentText } from '../../parts/figures/calendar.ts';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './BackupsGroup.module.css';
import type { BackupsSession } from './backups-session.ts';

const reasons: Readonly<Record<Backup['kind'], string>> = {
  automatic: 'at the start',
  'by hand': 'made by hand',
  'before bringing back': 'before another was brought back',
  rescued: 'when the file was gone or replaced',
  'put here': 'put in the folder',
};

/** Each backup, to be brought back after a question. question: what becomes of what is there now. */
export function BackupTable({ session, question }: { session: BackupsSession; question: string }) {
  const { read, isBusy, restoreBackup } = session;
  const [asked, setAsked] = useState<string | null>(null);
  const rows = read.data?.rows ?? [];
  if (rows.length === 0) return null;
  return (
    <div className={style.rows}>
      <DataTable
        rows={rows}
        keyOf={({ name }) => name}
        columns={[
          {
            head: 'From',
            cell: (row) => (
              <div title={row.name}>
                <span className="number">{momentText(row.at)}</span>
                <span className={style.reason}>{reasons[row.kind]}</span>
              </div>
            ),
          },
          { head: 'Size', align: 'end', isNumber: true, cell: ({ sizeBytes }) => sizeText(sizeBytes) },
          {
            head: 'Bring back',
            isHeadHidden: true,
            cellClass: style.actions,
            cell: (row) =>
              asked === row.name ? (
                <div className={style.question}>
                  <p>Everything goes back to how it was then. {question}</p>
                  <Button
                    look="main"
                    disabled={isBusy}
                    onClick={() => void restoreBackup(row).then(() => setAsked(null))}
                  >
                    Yes, bring it back
                  </Button>
                  <Button disabled={isBusy} onClick={() => setAsked(null)}>
                    Leave it as it is
                  </Button>
                </div>
              ) : (
                <Button
                  look="quiet"
                  disabled={isBusy}
                  aria-label={`Bring back the one from ${momentText(row.at)}`}
                  onClick={() => setAsked(row.name)}
                >
                  Bring this one back
                </Button>
              ),
          },
        ]}
      />
    </div>
  );
}

export function sizeText(bytes: number): string {
  return bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
