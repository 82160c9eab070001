import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Backup } from '../../../shared-core/contract/contract.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { momentText } from '../../parts/figures/calendar.ts';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './BackupsGroup.module.css';
import type { BackupsSession } from './backups-session.ts';

const reasons: Readonly<Record<Backup['kind'], string>> = {
  automatic: say('backup-table.at-the-start'),
  'by hand': say('backup-table.made-by-hand'),
  'before bringing back': say('backup-table.before-another-was-brought-back'),
  rescued: say('backup-table.when-the-file-was-gone-or'),
  'put here': say('backup-table.put-in-the-folder'),
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
            head: say('common.from'),
            cell: (row) => (
              <div title={row.name}>
                <span className="number">{momentText(row.at)}</span>
                <span className={style.reason}>{reasons[row.kind]}</span>
              </div>
            ),
          },
          {
            head: say('common.size'),
            align: 'end',
            isNumber: true,
            cell: ({ sizeBytes }) => sizeText(sizeBytes),
          },
          {
            head: say('backup-table.bring-back'),
            isHeadHidden: true,
            cellClass: style.actions,
            cell: (row) =>
              asked === row.name ? (
                <div className={style.question}>
                  <p>{say('backup-table.everything-goes-back-to-how-it', { question })}</p>
                  <Button
                    look="main"
                    disabled={isBusy}
                    onClick={() => void restoreBackup(row).then(() => setAsked(null))}
                  >
                    {say('backup-table.yes-bring-it-back')}
                  </Button>
                  <Button disabled={isBusy} onClick={() => setAsked(null)}>
                    {say('backup-table.leave-it-as-it-is')}
                  </Button>
                </div>
              ) : (
                <Button
                  look="quiet"
                  disabled={isBusy}
                  aria-label={say('backup-table.bring-back-the-one-from', { momentText: momentText(row.at) })}
                  onClick={() => setAsked(row.name)}
                >
                  {say('backup-table.bring-this-one-back')}
                </Button>
              ),
          },
        ]}
      />
    </div>
  );
}

export function sizeText(bytes: number): string {
  return bytes < 1e6
    ? say('backup-table.kb', { value: Math.max(1, Math.round(bytes / 1e3)) })
    : say('backup-table.mb', { bytes: (bytes / 1e6).toFixed(1) });
}
