/** A stash file, or pasted rows, as lines of named cells; anything that makes a line doubtful is a problem with its number. */
import { type MessageId, say } from '../../wording/say.ts';
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
const inFile = () => say('common.the-table');
const anotherTable = () => say('stash-lines.choose-another-file-or-copy-the');

/** Refused where the headings are not those of a stash file, or where a line is broken off. */
export function* stashLines(
  text: string,
  currency: string,
  limits: StashLimits,
): InSteps<Result<StashLine[]>> {
  if (text.trim() === '') return err({ where: inFile(), what: say('common.is-empty'), fix: anotherTable() });
  if (text.length > limits.letterCount) return err(tooLarge(limits));
  if (text.includes('\0'))
    return err({ where: inFile(), what: say('common.is-not-text'), fix: say('stash-lines.save-it-as-csv') });
  const table = yield* tableRows(text, limits.lineCount, inFile());
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
      where: inFile(),
      what: say('stash-lines.has-headings-and-no-line-below'),
      fix: anotherTable(),
    });
  return ok(lines);
}

function headingKeys(headings: readonly string[], currency: string): Result<string[]> {
  const columns = stashColumns(currency);
  const keyOf = new Map(columns.map(({ key, heading }) => [plainHeading(heading), key]));
  const plain = headings.map(plainHeading);
  if (headings.length < 2 || !plain.includes('kind') || !plain.includes('name')) {
    return err({
      where: inFile(),
      what: say('stash-lines.does-not-begin-with-the-headings'),
      fix: say('stash-lines.save-the-stash-to-a-file'),
    });
  }
  const problems: Problem[] = [];
  for (const [at, heading] of plain.entries()) {
    const where = say('stash-lines.line-1-column', { at: at + 1 });
    const said = (headings[at] ?? '').slice(0, 60).trim();
    if (plain.indexOf(heading) < at)
      problems.push({
        where,
        what: say('stash-lines.has-the-heading-a-second-time', { said }),
        fix: say('stash-lines.take-one-of-the-two-out'),
      });
    else if (!keyOf.has(heading)) problems.push(unknownHeading(where, said, currency));
  }
  if (problems.length > 0) return err(...problems.slice(0, maxProblems));
  return ok(plain.map((heading) => keyOf.get(heading)!));
}

/** What became of columns that files from here once had. */
const formerHeadings: ReadonlyMap<string, MessageId> = new Map<string, MessageId>([
  ['care', 'stash-lines.head-it-wash-and-where-it'],
  ['separating (yes or no)', 'stash-lines.head-it-how-a-zip-opens'],
]);

function unknownHeading(where: string, said: string, currency: string): Problem {
  if (said === '')
    return {
      where,
      what: say('stash-lines.has-no-heading'),
      fix: say('stash-lines.give-it-one-or-take-the'),
    };
  if (/^price of the lot/i.test(said)) {
    return {
      where,
      what: say('stash-lines.is-but-this-workshop-counts-in', { said, currency }),
      fix: say('stash-lines.give-the-prices-in-and-head', { currency }),
    };
  }
  const now = formerHeadings.get(plainHeading(said));
  if (now) return { where, what: say('stash-lines.is-which-files-had-before', { said }), fix: say(now) };
  return {
    where,
    what: say('stash-lines.is-which-is-no-column-of', { said }),
    fix: say('stash-lines.write-the-heading-as-in-a'),
  };
}

function tooLarge(limits: StashLimits): Problem {
  return {
    where: inFile(),
    what: say('stash-lines.is-larger-than-lines-or-million', {
      lineCount: limits.lineCount,
      letterCount: limits.letterCount / 1e6,
    }),
    fix: say('stash-lines.split-it-into-several-with-the'),
  };
}
