/** The items that the lines of a stash file speak of: each with what it was, what it becomes, and its lines. */
import { nounInSentence } from '../../wording/in-sentence.ts';
import { inEnglish, say } from '../../wording/say.ts';
import { folded } from '../../measure/text/folded-text.ts';
import type { InSteps } from '../../measure/in-steps.ts';
import { oneLine, withoutControls } from '../../measure/text/plain-signs.ts';
import {
  emptyFacts,
  factFields,
  factProblems,
  type ItemKind,
  itemKinds,
  kindRecords,
} from '../../stash/kinds.ts';
import type { Item, ItemOnShelf } from '../../stash/stash.ts';
import { readText } from '../../measure/text/cell-text.ts';
import { factCell, readFact, readKind, shortened } from './stash-cells.ts';
import type { ChangedFact } from './stash-change.ts';
import { amountUnits, factColumns, factHeading } from './stash-columns.ts';
import { cellOf, type FileProblems, isSameNumber, oneEnding } from './stash-file-place.ts';
import { isMark, noMark } from './stash-file-marks.ts';
import { enoughProblems, linesAtOnce, type StashLine } from './stash-lines.ts';
import type { StashNow, FileItem } from './stash-file-shape.ts';

/** Texts of an item with the most letters each may have. */
const texts = [
  ['name', 120],
  ['colour', 500],
  ['place', 500],
  ['notes', 20_000],
] as const;
const itemKeys: readonly string[] = ['kind', 'unit', ...texts.map(([key]) => key), ...factColumns.keys()];

export function* fileItems(
  lines: readonly StashLine[],
  now: StashNow,
  problems: FileProblems,
): InSteps<FileItem[]> {
  const byId = new Map<string, ItemOnShelf>(now.shelves.map((shelf) => [shelf.item.id, shelf]));
  const byName = new Map<string, string>();
  for (const [index, { item }] of now.shelves.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    byName.set(nameOf(item), item.id);
  }
  const groups = new Map<string, StashLine[]>();
  const kinds = new Map<string, ItemKind>();
  for (const [index, line] of lines.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    if (problems.list.length > enoughProblems) return [];
    const kind = kindOf(line, problems);
    const name = oneLine(readText(cellOf(line, 'name')));
    if (name === '')
      problems.add(line.line, 'name', say('common.is-empty'), say('stash-file-items.give-the-item-a-name'));
    if (kind === null || name === '') continue;
    const mark = readText(cellOf(line, 'itemId'));
    const spoken = nameOf({ kind, name, colour: oneLine(readText(cellOf(line, 'colour'))) });
    const id = mark === '' ? (byName.get(spoken) ?? now.newId()) : mark;
    // Lines without a mark that speak of one new thing are one item.
    if (mark === '') byName.set(spoken, id);
    if (!isMark(id)) problems.add(line.line, 'itemId', ...noMark());
    const group = groups.get(id);
    if (group) group.push(line);
    else groups.set(id, [line]);
    if (!kinds.has(id)) kinds.set(id, kind);
  }
  const items: FileItem[] = [];
  let lineCount = 0;
  for (const [id, own] of groups) {
    if (problems.list.length > enoughProblems) return [];
    lineCount += own.length;
    if (lineCount >= linesAtOnce) yield;
    lineCount %= linesAtOnce;
    if (now.archivedIds.has(id)) {
      problems.add(
        own[0]!.line,
        'itemId',
        say('stash-file-items.is-an-item-that-was-put'),
        say('stash-file-items.bring-it-back-to-the-shelf'),
      );
      continue;
    }
    const item = fileItem(id, kinds.get(id)!, own, byId.get(id) ?? null, problems);
    if (item) items.push(item);
  }
  yield* twins(items, now, problems);
  return items;
}

function kindOf(line: StashLine, problems: FileProblems): ItemKind | null {
  const word = cellOf(line, 'kind').toLowerCase();
  const kind = readKind(word);
  if (kind) return kind;
  const labels = inEnglish(() => itemKinds.map((each) => kindRecords[each].label).join(', '));
  problems.add(
    line.line,
    'kind',
    word === ''
      ? say('common.is-empty')
      : say('stash-file-items.says-which-is-no-kind-of', { shortened: shortened(word) }),
    say('stash-file-items.write-one-of', { labels }),
  );
  return null;
}

function nameOf(item: Pick<Item, 'kind' | 'name' | 'colour'>): string {
  return [item.kind, folded(item.name), folded(item.colour)].join('\n');
}

function fileItem(
  id: string,
  kind: ItemKind,
  lines: readonly StashLine[],
  shelf: ItemOnShelf | null,
  problems: FileProblems,
): FileItem | null {
  const before = problems.list.length;
  const first = lines[0]!;
  if (shelf && shelf.item.kind !== kind) {
    const label = nounInSentence(kindRecords[shelf.item.kind].label);
    problems.add(
      first.line,
      'kind',
      say('stash-file-items.is-another-than-before-it-is', { label }),
      say('stash-file-items.write-again-or-empty-the-marks', { label }),
    );
    return null;
  }
  for (const line of lines.slice(1)) agree(first, line, problems);
  const unit = cellOf(first, 'unit');
  const rightUnit = amountUnits[kindRecords[kind].counted];
  if (unit !== '' && unit.toLowerCase() !== rightUnit) {
    const label = nounInSentence(kindRecords[kind].label);
    problems.add(
      first.line,
      'unit',
      `says "${shortened(unit)}"`,
      say('stash-file-items.amounts-of-are-in', { label, rightUnit }),
    );
  }
  const words = wordsOf(first, shelf, problems);
  const { facts, typed, changed } = factsOf(kind, first, shelf, problems);
  if (problems.list.length > before) return null;
  for (const problem of factProblems(kind, facts, words.name)) {
    const fact = factFields(kind).find(([, field]) =>
      problem.where.startsWith(say('kinds.of-2', { fieldLabel: field.label, name: '' })),
    );
    problems.add(first.line, fact?.[0] ?? null, problem.what, problem.fix);
  }
  if (problems.list.length > before) return null;
  const old = shelf?.item;
  const changedWords = old
    ? texts.flatMap(([key]) =>
        oneEnding(old[key]) === words[key] ? [] : [{ label: key, from: old[key], to: words[key] }],
      )
    : [];
  // The facts were checked against the kind's own fields just above.
  const item = { id, kind, ...words, facts, typed } as Item;
  return { lines, shelf, item, changed: [...changedWords, ...changed] };
}

/** The same item says the same in each of its lines. */
function agree(first: StashLine, line: StashLine, problems: FileProblems): void {
  for (const key of itemKeys) {
    if (cellOf(first, key) === cellOf(line, key)) continue;
    problems.add(
      line.line,
      key,
      say('stash-file-items.is-another-than-in-line-which', { line: first.line }),
      say('stash-file-items.make-both-the-same-or-give'),
    );
  }
}

function wordsOf(line: StashLine, shelf: ItemOnShelf | null, problems: FileProblems) {
  const words = { name: '', colour: '', place: '', notes: '' };
  for (const [key, max] of texts) {
    const cell = line.cells.get(key);
    const old = shelf?.item[key] ?? '';
    const read = cell === undefined ? old : oneEnding(readText(cell));
    // A blank at the end that was there before is no change.
    const fresh = key === 'notes' ? withoutControls(read) : oneLine(read);
    words[key] = read === oneEnding(old) ? read : fresh;
    if (words[key].length > max)
      problems.add(
        line.line,
        key,
        say('common.is-too-long'),
        say('stash-file-items.write-at-most-letters', { max }),
      );
  }
  return words;
}

function factsOf(kind: ItemKind, line: StashLine, shelf: ItemOnShelf | null, problems: FileProblems) {
  const old = (shelf?.item.facts ?? {}) as Readonly<Record<string, number | string | boolean | null>>;
  const facts: Record<string, number | string | boolean | null> = { ...emptyFacts(kind), ...old };
  const typed: Record<string, string> = { ...shelf?.item.typed };
  const changed: ChangedFact[] = [];
  const fields = new Map(factFields(kind));
  for (const key of factColumns.keys()) {
    if (fields.has(key) || cellOf(line, key) === '') continue;
    const label = nounInSentence(kindRecords[kind].label);
    problems.add(
      line.line,
      key,
      say('stash-file-items.is-not-a-fact-of', { label }),
      say('stash-file-items.leave-it-empty-in-this-line'),
    );
  }
  for (const [key, field] of fields) {
    const cell = line.cells.get(key);
    if (cell === undefined) continue;
    const read = problems.take(line.line, key, readFact(field, cell));
    if (!read) continue;
    const value = typeof read.value === 'string' ? withoutControls(oneEnding(read.value)) : read.value;
    const was = old[key] ?? null;
    if (isSameFact(was, value)) continue;
    facts[key] = value;
    if (read.typed === undefined) delete typed[key];
    else typed[key] = read.typed;
    changed.push({
      label: factHeading(key, field),
      from: factCell(field, was),
      to: factCell(field, value),
    });
  }
  return { facts, typed, changed };
}

function isSameFact(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return isSameNumber(a, b);
  // An empty text is a fact that is not known.
  return (typeof a === 'string' ? oneEnding(a) : a) === b || ((a ?? '') === '' && (b ?? '') === '');
}

/** Two items of one kind that a maker could not tell apart, once the file is in. */
function* twins(items: readonly FileItem[], now: StashNow, problems: FileProblems): InSteps<void> {
  const inFile = new Set<string>(items.map(({ item }) => item.id));
  const taken = new Map<string, string>();
  for (const [index, { item }] of now.shelves.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    if (!inFile.has(item.id)) taken.set(nameOf(item), 'in the stash');
  }
  for (const [index, { item, lines }] of items.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    const key = nameOf(item);
    const other = taken.get(key);
    if (other) {
      const label = nounInSentence(kindRecords[item.kind].label);
      problems.add(
        lines[0]!.line,
        'name',
        say('stash-file-items.is-already-that-of-another-of', { label, other }),
        say('stash-file-items.give-it-another-name-or-colour'),
      );
    } else taken.set(key, `in line ${lines[0]!.line}`);
  }
}
