/** A stash file, or pasted rows, as lines of named cells; anything that makes a line doubtful is a problem with its number. */
import type { InSteps } from '../../measure/in-steps.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { plainHeading, stashColumns } from './stash-columns.ts';
import { tableRows } from '../table-rows.ts';

export interface StashLine {
  /** As a spreadsheet counts its rows, the headings in line 1. */
  readonly line: number;
  /** By column key; columns that the file has not are not in it. */
  readonly cells: ReadonlyMap<string, string>;
}

export interface StashLimits {
  readonly letterCount: number;
  readonly lineCount: number;
}

export const defaultStashLimits: StashLimits = { letterCount: 16_000_000, lineCount: 50_000 };

/** Lines between two steps of a reader. */
export const linesAtOnce = 200;

/** Past these the rest is told when the first are mended. */
export const maxProblems = 40;
/** Past these a file is not looked at any further. */
export const enoughProblems = 5000;

/** A file or what was pasted. */
const inFile = 'The table';
const anotherTable = 'Choose another file, or copy the rows together with their headings.';

/** Refused where the headings are not those of a stash file, or where a line is broken off. */
export function* stashLines(
  text: string,
  currency: string,
  limits: StashLimits,
): InSteps<Result<StashLine[]>> {
  if (text.trim() === '') return err({ where: inFile, what: 'is empty', fix: anotherTable });
  if (text.length > limits.letterCount) return err(tooLarge(limits));
  if (text.includes('\0')) return err({ where: inFile, what: 'is not text', fix: 'Save it as CSV.' });
  const table = yield* tableRows(text, limits.lineCount, inFile);
  if (!table.ok) return table;
  const { headings, rows, problems } = table.value;
  const keys = headingKeys(headings, currency);
  if (!keys.ok) return keys;
  if (problems.length > 0) return err(...problems.slice(0, maxProblems));
  const lines: StashLine[] = [];
  for (const { line, cells } of rows) {
    lines.push({ line, cells: new Map(keys.value.map((key, at) => [key, cells[at]!])) });
    if (lines.length % linesAtOnce === 0) yield;
  }
  if (lines.length === 0)
    return err({
      where: inFile,
      what: 'has headings and no line below them',
      fix: anotherTable,
    });
  return ok(lines);
}

function headingKeys(headings: readonly string[], currency: string): Result<string[]> {
  const columns = stashColumns(currency);
  const keyOf = new Map(columns.map(({ key, heading }) => [plainHeading(heading), key]));
  const plain = headings.map(plainHeading);
  if (headings.length < 2 || !plain.includes('kind') || !plain.includes('name')) {
    return err({
      where: inFile,
      what: 'does not begin with the headings of a stash file',
      fix: 'Save the stash to a file first and fill that in, or copy the headings; cells are parted by commas, semicolons or tabs.',
    });
  }
  const problems: Problem[] = [];
  for (const [at, heading] of plain.entries()) {
    const where = `Line 1, column ${at + 1}`;
    const said = (headings[at] ?? '').slice(0, 60).trim();
    if (plain.indexOf(heading) < at)
      problems.push({
        where,
        what: `has the heading "${said}" a second time`,
        fix: 'Take one of the two out.',
      });
    else if (!keyOf.has(heading)) problems.push(unknownHeading(where, said, currency));
  }
  if (problems.length > 0) return err(...problems.slice(0, maxProblems));
  return ok(plain.map((heading) => keyOf.get(heading)!));
}

/** What became of columns that files from here once had. */
const formerHeadings: ReadonlyMap<string, string> = new Map([
  [
    'care',
    'Head it "wash", and where it says "dry clean" write "do not wash", with "dry clean P" in a column "dry clean".',
  ],
  [
    'separating (yes or no)',
    'Head it "how a zip opens", and write "separating", "two-way, separating" or "closed at the bottom".',
  ],
]);

function unknownHeading(where: string, said: string, currency: string): Problem {
  if (said === '') return { where, what: 'has no heading', fix: 'Give it one, or take the column out.' };
  if (/^price of the lot/i.test(said)) {
    return {
      where,
      what: `is "${said}", but this workshop counts in ${currency}`,
      fix: `Give the prices in ${currency} and head the column "price of the lot (${currency})".`,
    };
  }
  const now = formerHeadings.get(plainHeading(said));
  if (now) return { where, what: `is "${said}", which files had before`, fix: now };
  return {
    where,
    what: `is "${said}", which is no column of a stash file`,
    fix: 'Write the heading as in a file saved from here, or take the column out.',
  };
}

function tooLarge(limits: StashLimits): Problem {
  return {
    where: inFile,
    what: `is larger than ${limits.lineCount} lines or ${limits.letterCount / 1e6} million letters`,
    fix: 'Split it into several with the same headings, and bring them in one after the other.',
  };
}
