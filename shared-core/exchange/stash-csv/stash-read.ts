/** A stash file against the stash as it stands: what it would change, or what is wrong with it. Changes nothing. */
import { say } from '../../wording/say.ts';
import { finished, type InSteps } from '../../measure/in-steps.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { StashChange } from './stash-change.ts';
import { fileItems } from './stash-file-items.ts';
import type { FileItem, StashNow } from './stash-file-shape.ts';
import { lotChanges } from './stash-file-lots.ts';
import { knownMarks } from './stash-file-marks.ts';
import { openFileProblems } from './stash-file-place.ts';
import {
  enoughProblems,
  linesAtOnce,
  maxProblems,
  type StashLimits,
  stashLines,
  defaultStashLimits,
} from './stash-lines.ts';

export interface StashChanges {
  readonly lineCount: number;
  readonly changes: readonly StashChange[];
}

/** As stashSteps, in one go. */
export function readStash(
  text: string,
  now: StashNow,
  limits: StashLimits = defaultStashLimits,
): Result<StashChanges> {
  return finished(stashSteps(text, now, limits));
}

/**
 * The changes in the order of their lines, each item before its lots. Items, lots and lengths that the file does not
 * name stay as they are. Any doubt refuses the file whole, with the first of its problems.
 */
export function* stashSteps(
  text: string,
  now: StashNow,
  limits: StashLimits = defaultStashLimits,
): InSteps<Result<StashChanges>> {
  const lines = yield* stashLines(text, now.currency, limits);
  if (!lines.ok) return lines;
  const problems = openFileProblems(now.currency);
  const items = yield* fileItems(lines.value, now, problems);
  const known = knownMarks(now);
  const changes: StashChange[] = [];
  let lineCount = 0;
  for (const file of items) {
    changes.push(...itemChange(file));
    for (const change of yield* lotChanges(file, known, now, problems)) changes.push(change);
    lineCount += file.lines.length;
    if (lineCount >= linesAtOnce) yield;
    lineCount %= linesAtOnce;
  }
  const { list } = problems;
  if (list.length === 0) return ok({ lineCount: lines.value.length, changes });
  const rest = list.length - maxProblems;
  const more = list.length > enoughProblems ? say('stash-read.more-than', { rest }) : rest;
  const further = {
    where: say('common.the-table'),
    what: say('stash-read.has-more-problems-like-these', { more, rest }),
    fix: say('stash-read.mend-those-above-first'),
  };
  return err(...list.slice(0, maxProblems), ...(rest > 0 ? [further] : []));
}

function itemChange({ lines, shelf, item, changed }: FileItem): StashChange[] {
  const of = { line: lines[0]!.line, itemKind: item.kind, itemName: item.name };
  if (!shelf) return [{ kind: 'new item', ...of, item }];
  return changed.length === 0 ? [] : [{ kind: 'changed item', ...of, item, changed }];
}
