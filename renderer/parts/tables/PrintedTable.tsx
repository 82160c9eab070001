/** A table as it is printed: it stands beside the room for as long as the window prints, and then in its place. */
import { say } from '../../../shared-core/wording/say.ts';
import { useEffect, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import {
  asCell,
  columnsOn,
  noTick,
  type PaperRow,
  type PaperTable,
} from '../../../shared-core/paper/paper-table.ts';
import style from './PrintedTable.module.css';

export interface PrintedTableProps {
  readonly table: PaperTable;
  readonly day: string;
  readonly format: 'A4' | 'letter';
}

/** The one table that is to be printed of a room that has several; null: all of them. */
let chosen: PaperTable | null = null;

/** Prints this table and no other of the room. The window's title meanwhile names the file of a print to PDF. */
export function printAlone(table: PaperTable, name: string): void {
  const title = document.title;
  chosen = table;
  document.title = name;
  const restore = () => {
    chosen = null;
    document.title = title;
  };
  window.addEventListener('afterprint', restore, { once: true });
  window.print();
}

export function PrintedTable(props: PrintedTableProps) {
  const { table } = props;
  const [isPrinting, setIsPrinting] = useState(false);
  useEffect(() => {
    // The window is printed as it stands when the event has been handled.
    const begin = () => flushSync(() => setIsPrinting(chosen === null || chosen === table));
    const end = () => setIsPrinting(false);
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
    };
  }, [table]);
  return isPrinting ? createPortal(<Paper {...props} />, document.body) : null;
}

function Paper({ table, day, format }: PrintedTableProps) {
  const columns = columnsOn(table, 'paper');
  const cells = (row: PaperRow, isTotal: boolean) =>
    columns.map(({ column, index }) => {
      const { text, note } = asCell(row[index]);
      if (column.kind === 'tick') {
        return (
          <td key={index} className={style.tickCell}>
            {!isTotal && text !== noTick() && <span className={style.tick}>{text === '' ? '' : '✓'}</span>}
          </td>
        );
      }
      return (
        <td key={index} className={column.kind === 'number' ? style.number : undefined}>
          {text}
          {note && <span className={style.note}>{note}</span>}
        </td>
      );
    });
  return (
    <section className={style.paper} data-paper={format} aria-label={say('printed-table.on-paper')}>
      <h1>{table.title}</h1>
      {table.lead !== '' && <p className={style.lead}>{table.lead}</p>}
      {table.sections.map((section) => (
        <div key={section.title} className={style.section}>
          {section.title !== '' && <h2>{section.title}</h2>}
          <table className={style.table}>
            <thead>
              <tr>
                {columns.map(({ column, index }) => (
                  <th key={index} className={column.kind === 'number' ? style.number : undefined}>
                    {column.kind === 'tick' ? '' : column.head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {section.rows.map((row, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows of a printed table never move
                <tr key={index}>{cells(row, false)}</tr>
              ))}
              {section.total && <tr className={style.total}>{cells(section.total, true)}</tr>}
            </tbody>
          </table>
        </div>
      ))}
      {table.total && (
        <table className={`${style.table} ${style.whole}`}>
          <tbody>
            <tr className={style.total}>{cells(table.total, true)}</tr>
          </tbody>
        </table>
      )}
      {table.notes.map((note) => (
        <p key={note} className={style.below}>
          {note}
        </p>
      ))}
      <p className={style.below}>{day}</p>
    </section>
  );
}
