/**
 * What can be done with a table as a whole: copied as text, saved as CSV or PDF, printed. One table gives all four.
 * While it is on the page, printing the window prints this table in place of the room.
 */
import { inEnglish, say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { type PaperTable, sheetFormat } from '../../../shared-core/paper/paper-table.ts';
import { tableCsv } from '../../../shared-core/paper/table-csv.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../forms/Button.tsx';
import { todayIso } from '../figures/calendar.ts';
import { PrintedTable, printAlone } from './PrintedTable.tsx';
import { fileName, saveFile } from './save-file.ts';
import { savePdf } from './save-pdf.ts';
import style from './TableActions.module.css';

export interface TableActionsProps {
  /** The table in the language spoken now: files for a spreadsheet ask for it in English. */
  readonly makeTable: () => PaperTable;
  /** What files are called, in words: "Fenwalk coat to buy". */
  readonly name: string;
}

export function TableActions({ makeTable, name }: TableActionsProps) {
  const table = makeTable();
  const system = useSystem();
  const [said, setSaid] = useState('');
  const day = dayWords(todayIso());

  const copy = async () => {
    try {
      await navigator.clipboard.writeText(tableText(table));
      setSaid(say('table-actions.copied'));
    } catch {
      setSaid(say('table-actions.it-could-not-be-copied-save'));
    }
  };
  const writePdf = async () => {
    setSaid(say('common.writing-the-pdf'));
    const unsaid = await savePdf(name, async (files) => {
      // Loaded when it is first wanted: no screen needs it.
      const { tablePdf } = await import('../../../shared-core/paper/table-pdf.ts');
      return tablePdf(table, { format: sheetFormat(system), day }, files);
    });
    setSaid(unsaid);
  };
  return (
    <div className={style.actions}>
      <span role="status" className={`quiet small ${style.said}`}>
        {said}
      </span>
      <Button onClick={() => void copy()}>{say('table-actions.copy-as-text')}</Button>
      <Button onClick={() => saveFile(fileName(name, 'csv'), 'text/csv', tableCsv(inEnglish(makeTable)))}>
        {say('table-actions.save-as-csv')}
      </Button>
      <Button onClick={() => void writePdf()}>{say('table-actions.save-as-pdf')}</Button>
      <Button onClick={() => printAlone(table, name)}>{say('common.print')}</Button>
      <PrintedTable table={table} day={day} format={sheetFormat(system)} />
    </div>
  );
}
