/**
 * What can be done with a table as a whole: copied as text, saved as CSV or PDF, printed. One table gives all four.
 * While it is on the page, printing the window prints this table in place of the room.
 */
import { useState } from 'react';
import { dayWords } from '../../shared-core/measure/calendar-date.ts';
import { type PaperTable, sheetFormat } from '../../shared-core/paper/paper-table.ts';
import { tableCsv } from '../../shared-core/paper/table-csv.ts';
import { tableText } from '../../shared-core/paper/table-text.ts';
import { logSaysWhere, noteFailure } from '../client/note-failure.ts';
import { useSystem } from '../client/workshop.ts';
import { Button } from './Button.tsx';
import { todayIso } from './calendar.ts';
import { PrintedTable, printAlone } from './PrintedTable.tsx';
import { fileName, saveFile } from './save-file.ts';
import style from './TableActions.module.css';

export interface TableActionsProps {
  readonly table: PaperTable;
  /** What files are called, in words: "Fenwalk coat to buy". */
  readonly name: string;
}

export function TableActions({ table, name }: TableActionsProps) {
  const system = useSystem();
  const [said, setSaid] = useState('');
  const day = dayWords(todayIso());

  const copy = async () => {
    try {
      await navigator.clipboard.writeText(tableText(table));
      setSaid('Copied.');
    } catch {
      setSaid('It could not be copied. Save it as CSV instead.');
    }
  };
  const savePdf = async () => {
    setSaid('Writing the PDF.');
    try {
      // Loaded when it is first wanted: no screen needs it.
      const { tablePdf } = await import('../../shared-core/paper/table-pdf.ts');
      const { bytes, changedLetters } = await tablePdf(table, { format: sheetFormat(system), day });
      saveFile(fileName(name, 'pdf'), 'application/pdf', bytes);
      setSaid(
        changedLetters.length === 0
          ? ''
          : `The PDF’s typeface lacks ${lettersWords(changedLetters)}; Print has every letter.`,
      );
    } catch (error) {
      noteFailure('pdf', error);
      setSaid(`The PDF could not be written. Print it instead. ${logSaysWhere}`);
    }
  };
  return (
    <div className={style.actions}>
      <span role="status" className={`quiet small ${style.said}`}>
        {said}
      </span>
      <Button onClick={() => void copy()}>Copy as text</Button>
      <Button onClick={() => saveFile(fileName(name, 'csv'), 'text/csv', tableCsv(table))}>
        Save as CSV
      </Button>
      <Button onClick={() => void savePdf()}>Save as PDF</Button>
      <Button onClick={() => printAlone(table, name)}>Print</Button>
      <PrintedTable table={table} day={day} format={sheetFormat(system)} />
    </div>
  );
}

/** "“ą” and “絹”", the first few of them. */
function lettersWords(letters: readonly string[]): string {
  const shown = letters.slice(0, 4).map((letter) => `“${letter}”`);
  return letters.length > shown.length ? `${shown.join(', ')} and others` : shown.join(', ');
}
