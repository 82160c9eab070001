/** A table that a spreadsheet wrote, row by row; what makes a row doubtful is a problem with its number. */
import { say } from '../wording/say.ts';
import Papa from 'papaparse';
import type { InSteps } from '../measure/in-steps.ts';
import { ok, type Result, type Problem, err } from '../measure/problem.ts';
import { delimiterOf } from './table-delimiter.ts';

export interface TableRow {
  /** As a spreadsheet counts its rows: the headings are line 1. */
  readonly line: number;
  /** As many as there are headings. */
  readonly cells: readonly string[];
}

export interface Table {
  readonly headings: readonly string[];
  /** Blank rows and doubtful ones are left out. */
  readonly rows: readonly TableRow[];
  readonly problems: readonly Problem[];
}

/** Rows between two steps. */
const rowsAtOnce = 500;
/** No table that is read here has near as many. */
const maxColumns = 1000;
/** The library keeps a record of each; a table with so many is none. */
const maxLoneQuotes = 100_000;

/** Refused where it has more rows than maxRows below its headings. */
export function* tableRows(text: string, maxRows: number, inFile: string): InSteps<Result<Table>> {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (hasManyLoneQuotes(body))
    return err({
      where: inFile,
      what: say('table-rows.has-more-than-quotation-marks-in', { maxLoneQuotes }),
      fix: say('table-rows.save-it-from-the-spreadsheet-anew'),
    });
  const delimiter = delimiterOf(body);
  let newline: '\r' | '\n' | '\r\n' | undefined;
  let headings: readonly string[] = [];
  const rows: TableRow[] = [];
  const problems: Problem[] = [];
  let line = 0;
  for (let from = 0; from < body.length; yield) {
    const part = Papa.parse<string[]>(from === 0 ? body : body.slice(from), {
      delimiter,
      preview: rowsAtOnce,
      skipEmptyLines: false,
      // The quick way looks through all that is left for each part.
      fastMode: false,
      ...(newline === undefined ? {} : { newline }),
    });
    newline ??= part.meta.linebreak as '\r' | '\n' | '\r\n';
    const broken = new Set(part.errors.filter(({ type }) => type === 'Quotes').map(({ row }) => row));
    for (const [index, cells] of part.data.entries()) {
      line++;
      if (line === 1) {
        if (cells.length > maxColumns) return err(tooWide(inFile));
        headings = cells;
      }
      const isBlank = cells.every((cell) => cell.trim() === '');
      if (broken.has(index)) problems.push(brokenQuotes(line));
      else if (line === 1 || isBlank) continue;
      else if (cells.length !== headings.length)
        problems.push(wrongCount(line, cells.length, headings.length));
      else rows.push({ line, cells });
    }
    if (line - 1 > maxRows + 1 || rows.length > maxRows) {
      const what = say('table-rows.has-more-than-the-lines-that', { maxRows });
      return err({ where: inFile, what, fix: say('table-rows.split-it-into-parts-with-the') });
    }
    if (!part.meta.truncated) break;
    from += part.meta.cursor;
  }
  return ok({ headings, rows, problems });
}

/** Quotation marks that neither begin nor end a cell, nor stand for themselves as two. */
function hasManyLoneQuotes(text: string): boolean {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) {
    const isLone = !/[",;\t\r\n]/.test(text[at - 1] ?? ',') && !/[",;\t\r\n]/.test(text[at + 1] ?? ',');
    if (isLone && ++count > maxLoneQuotes) return true;
  }
  return false;
}

function tooWide(where: string): Problem {
  return {
    where,
    what: say('table-rows.has-more-than-columns', { maxColumns }),
    fix: say('table-rows.take-out-those-that-nobody-needs'),
  };
}

function brokenQuotes(line: number): Problem {
  return {
    where: say('table-rows.line', { line }),
    what: say('table-rows.has-a-quotation-mark-that-is'),
    fix: say('table-rows.see-whether-it-is-broken-off'),
  };
}

function wrongCount(line: number, cells: number, headings: number): Problem {
  return {
    where: say('table-rows.line', { line }),
    what: say('table-rows.has-of-cells', { cells, headings }),
    fix:
      cells < headings
        ? say('table-rows.see-whether-it-is-broken-off')
        : say('table-rows.put-cells-that-hold-the-separating'),
  };
}
