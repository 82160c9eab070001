/** A table of rooms: what each column is called, what stands in it of a row, and where figures are added up below. */
import { type ComponentProps, Fragment, type Key, type ReactNode } from 'react';
import style from './table.module.css';

export interface Column<Row> {
  readonly head: ReactNode;
  /** By which it is known among the columns; its head, where that is text. */
  readonly key?: string;
  /** Where its cells say to the eye what they are, the head is only read aloud. */
  readonly isHeadHidden?: boolean;
  readonly headClass?: string | undefined;
  /** Figures stand at the end, one below the other. */
  readonly align?: 'end';
  /** In figures of one width. */
  readonly isNumber?: boolean;
  /** Names its row. */
  readonly isRowHead?: boolean;
  readonly cell: (row: Row, index: number) => ReactNode;
  readonly cellClass?: string | ((row: Row) => string | undefined) | undefined;
  /** How many columns its cell takes in a row: those that follow it are then left out there. */
  readonly span?: (row: Row) => number;
}

/** A row below the line. The label takes the columns that have no cell. */
export interface FootRow {
  readonly label: string;
  /** Of the last columns. */
  readonly cells: readonly ReactNode[];
}

export interface DataTableProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row, index: number) => Key;
  /** What the table shows, where nothing beside it says so. */
  readonly label?: string;
  readonly foot?: readonly FootRow[];
  readonly className?: string | undefined;
  /** False where what stands in the columns is plain without a head. */
  readonly hasHead?: boolean;
  /** What a row is beside its cells: chosen, the one that the maker came for. */
  readonly rowProps?: (row: Row, index: number) => Omit<ComponentProps<'tr'>, 'children'> & DataAttributes;
}

type DataAttributes = Readonly<Record<`data-${string}`, string | number | boolean | undefined>>;

export function DataTable<Row>(props: DataTableProps<Row>) {
  const { columns, rows, keyOf, label, foot = [], className, hasHead = true, rowProps } = props;
  return (
    <table className={joined(style.table, className)} aria-label={label}>
      {hasHead && (
        <thead>
          <tr>
            {columns.map((column) => (
              <th
                key={nameOf(column)}
                scope="col"
                className={joined(column.align && style.amount, column.headClass)}
              >
                {column.isHeadHidden ? <span className="only-read-aloud">{column.head}</span> : column.head}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map((row, index) => (
          <tr key={keyOf(row, index)} {...rowProps?.(row, index)}>
            <Cells columns={columns} row={row} index={index} />
          </tr>
        ))}
      </tbody>
      {foot.length > 0 && (
        <tfoot>
          {foot.map(({ label: name, cells }) => (
            <tr key={name}>
              <td colSpan={columns.length - cells.length}>{name}</td>
              {columns.slice(columns.length - cells.length).map((column, index) => (
                <td key={nameOf(column)} className={cellClass(column)}>
                  {cells[index]}
                </td>
              ))}
            </tr>
          ))}
        </tfoot>
      )}
    </table>
  );
}

function Cells<Row>({
  columns,
  row,
  index,
}: Pick<DataTableProps<Row>, 'columns'> & { row: Row; index: number }) {
  let covered = 0;
  return columns.map((column) => {
    if (covered > 0) {
      covered -= 1;
      return <Fragment key={nameOf(column)} />;
    }
    const span = column.span?.(row) ?? 1;
    covered = span - 1;
    const own = typeof column.cellClass === 'function' ? column.cellClass(row) : column.cellClass;
    const className = joined(cellClass(column), own);
    if (column.isRowHead) {
      return (
        <th key={nameOf(column)} scope="row" className={className}>
          {column.cell(row, index)}
        </th>
      );
    }
    return (
      <td key={nameOf(column)} className={className} colSpan={span > 1 ? span : undefined}>
        {column.cell(row, index)}
      </td>
    );
  });
}

function nameOf<Row>({ key, head }: Column<Row>): string {
  return key ?? String(head);
}

function cellClass<Row>({ align, isNumber }: Column<Row>): string | undefined {
  return joined(align && style.amount, isNumber && 'number');
}

function joined(...names: readonly (string | false | undefined)[]): string | undefined {
  return names.filter(Boolean).join(' ') || undefined;
}
