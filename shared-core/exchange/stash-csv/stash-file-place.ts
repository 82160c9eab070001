/** Where in a stash file something stands, and the problems found in it. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { Cell } from './stash-cells.ts';
import { stashColumns } from './stash-columns.ts';
import type { StashLine } from './stash-lines.ts';

export interface FileProblems {
  readonly list: Problem[];
  /** Adds a problem at a cell, or at the line as a whole where no column is named. */
  add(line: number, key: string | null, what: string, fix: string): void;
  /** The value of a cell, or null and a problem. */
  take<Value>(line: number, key: string, cell: Cell<Value>): { value: Value; typed?: string } | null;
}

export function openFileProblems(currency: string): FileProblems {
  const headings = new Map(stashColumns(currency).map(({ key, heading }) => [key, heading]));
  const list: Problem[] = [];
  const add = (line: number, key: string | null, what: string, fix: string) => {
    const where =
      key === null
        ? say('stash-file-place.line', { line })
        : say('stash-file-place.line-column', { line, get: headings.get(key) ?? key });
    list.push({ where, what, fix });
  };
  return {
    list,
    add,
    take(line, key, cell) {
      if (!('what' in cell)) return cell;
      add(line, key, cell.what, cell.fix);
      return null;
    },
  };
}

/** The cell's text, '' where it is empty or the file has no such column. */
export function cellOf(line: StashLine, key: string): string {
  return line.cells.get(key)?.trim() ?? '';
}

/** Line ends of any kind are one; what else stands in a text stays. */
export function oneEnding(text: string): string {
  return text.replace(/\r\n?/g, '\n');
}

/** A spreadsheet may round the last figures away. */
export function isSameNumber(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6 * Math.max(Math.abs(a), Math.abs(b));
}

/** null where the cell is empty or cannot be read; then there is a problem. */
export function optional<Value>(
  line: StashLine,
  key: string,
  read: (cell: string) => { readonly value: Value } | { readonly what: string; readonly fix: string },
  problems: FileProblems,
): Value | null {
  const cell = cellOf(line, key);
  if (cell === '') return key === 'flaws' ? (problems.take(line.line, key, read(cell))?.value ?? null) : null;
  return problems.take(line.line, key, read(cell))?.value ?? null;
}
