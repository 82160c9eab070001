/** A lot that is new here, from the lines that share its mark: what was bought and what is on hand of it. */
import { say } from '../../wording/say.ts';
import { oneLine, withoutControls } from '../../measure/text/plain-signs.ts';
import { kindRecords } from '../../stash/kinds.ts';
import { type Length, toMilli } from '../../stash/stash.ts';
import { readText } from '../../measure/text/cell-text.ts';
import {
  readAmount,
  readChoice,
  readCostShare,
  readDays,
  readFlag,
  readFlaws,
  readMoneyCell,
  readQuantityCell,
  shortened,
} from './stash-cells.ts';
import type { NewLength, NewLot } from './stash-change.ts';
import type { FileItem, StashNow } from './stash-file-shape.ts';
import {
  isMark,
  isPutAway,
  isUsedTwice,
  type KnownMarks,
  lotKeys,
  noLengthCells,
  noMark,
} from './stash-file-marks.ts';
import { cellOf, type FileProblems, isSameNumber, optional } from './stash-file-place.ts';
import type { StashLine } from './stash-lines.ts';

const forms = ['roll', 'cut', 'remnant', 'sheet'] as const;

export function newLot(
  file: FileItem,
  lines: readonly StashLine[],
  known: KnownMarks,
  now: StashNow,
  problems: FileProblems,
): NewLot | null {
  const before = problems.list.length;
  const [first, ...others] = lines as readonly [StashLine, ...StashLine[]];
  for (const line of others) {
    for (const key of lotKeys) {
      if (cellOf(line, key) === cellOf(first, key)) continue;
      const fix = say('stash-file-new-lot.make-both-the-same-or-give');
      problems.add(
        line.line,
        key,
        say('stash-file-new-lot.is-another-than-in-line-which', { line: first.line }),
        fix,
      );
    }
  }
  const { hasLengths } = kindRecords[file.item.kind];
  if (!hasLengths && others.length > 0) {
    const fix = say('stash-file-new-lot.give-the-line-a-lot-mark');
    problems.add(
      others[0]!.line,
      'lotId',
      say('stash-file-new-lot.is-the-lot-of-line-again', { line: first.line }),
      fix,
    );
  }
  const receivedOn = newDay(first, problems);
  const price = optional(first, 'price', (cell) => readMoneyCell(cell, now.currency), problems);
  if (cellOf(first, 'price') === '')
    problems.add(
      first.line,
      'price',
      say('common.is-empty'),
      say('stash-file-new-lot.write-what-was-paid-for-the'),
    );
  const received = optional(first, 'received', readAmount, problems);
  const words = {
    supplier: oneLine(readText(cellOf(first, 'supplier'))),
    dyeLot: oneLine(readText(cellOf(first, 'dyeLot'))),
  };
  for (const key of ['supplier', 'dyeLot'] as const)
    if (words[key].length > 500)
      problems.add(
        first.line,
        key,
        say('common.is-too-long'),
        say('stash-file-new-lot.write-at-most-500-letters'),
      );
  const id = readText(cellOf(first, 'lotId')) || now.newId();
  const lengths: NewLength[] = [];
  let amountMilli = 0;
  for (const line of lines) {
    const amount = newAmount(line, lines.length === 1, problems);
    amountMilli += amount ?? 0;
    if (hasLengths) {
      const length = newLength(file, line, id, known, now, problems);
      if (length && amount !== null) {
        outsideFlaws(line, length, amount, problems);
        lengths.push({ ...length, amountMilli: amount });
      }
    } else noLengthCells(file, line, problems);
  }
  if (!Number.isSafeInteger(amountMilli))
    problems.add(
      first.line,
      'onHand',
      say('common.is-too-large-to-be-true'),
      say('common.check-the-number-and-its-unit'),
    );
  if (problems.list.length > before || receivedOn === null || price === null) return null;
  const statedMilli = received === null ? amountMilli : toMilli(received);
  const isMore = statedMilli < amountMilli && !isSameNumber(statedMilli, amountMilli);
  const reason =
    lines.map((line) => withoutControls(readText(cellOf(line, 'reason')))).find((text) => text !== '') ?? '';
  if (reason.length > 500) {
    problems.add(
      first.line,
      'reason',
      say('common.is-too-long'),
      say('stash-file-new-lot.write-at-most-500-letters'),
    );
    return null;
  }
  if (isMore && reason === '') {
    const fix = say('stash-file-new-lot.write-the-whole-of-what-was');
    problems.add(first.line, 'received', say('stash-file-new-lot.is-less-than-what-is-on'), fix);
    return null;
  }
  return {
    id,
    itemId: file.item.id,
    receivedOn,
    ...words,
    priceMinor: price,
    receivedMilli: isMore ? statedMilli : Math.max(statedMilli, amountMilli),
    reason: isMore ? reason : '',
    amountMilli,
    lengths,
  };
}

function newDay(line: StashLine, problems: FileProblems): string | null {
  const cell = cellOf(line, 'receivedOn');
  const days = readDays(cell);
  if (days.length === 1) return days[0]!;
  const what =
    cell === ''
      ? say('common.is-empty')
      : days.length === 2
        ? say('stash-file-new-lot.says-which-may-be-two-days', { shortened: shortened(cell) })
        : say('stash-file-new-lot.says-which-is-no-day', { shortened: shortened(cell) });
  problems.add(line.line, 'receivedOn', what, say('stash-file-new-lot.write-year-month-and-day-such'));
  return null;
}

/** In thousandths. What is on hand may be left out where the lot is one line that says what was received. */
function newAmount(line: StashLine, isAlone: boolean, problems: FileProblems): number | null {
  const key = cellOf(line, 'onHand') === '' && isAlone ? 'received' : 'onHand';
  if (cellOf(line, key) === '') {
    problems.add(
      line.line,
      'onHand',
      say('common.is-empty'),
      say('stash-file-new-lot.write-how-much-of-it-is'),
    );
    return null;
  }
  const amount = problems.take(line.line, key, readAmount(cellOf(line, key)))?.value ?? null;
  if (amount === null) return null;
  if (amount > 1e9 || Math.round(amount * 1000) <= 0) {
    const what = amount > 1e9 ? say('common.is-too-large-to-be-true') : say('stash-file-new-lot.is-nothing');
    problems.add(line.line, key, what, say('stash-file-new-lot.check-the-number-and-its-unit'));
    return null;
  }
  return toMilli(amount);
}

function newLength(
  { item }: FileItem,
  line: StashLine,
  lotId: string,
  known: KnownMarks,
  now: StashNow,
  problems: FileProblems,
): Length | null {
  const ofItem = item.kind === 'cloth' || item.kind === 'batting' ? item.facts.widthMm : null;
  const widthMm =
    optional(line, 'lengthWidth', (cell) => readQuantityCell('length', cell), problems) ?? ofItem;
  if (widthMm !== null && (widthMm < 1 || widthMm > 1e5)) {
    problems.add(
      line.line,
      'lengthWidth',
      say('stash-file-new-lot.cannot-be-true'),
      say('common.check-the-number-and-its-unit'),
    );
    return null;
  }
  const form = optional(line, 'lengthForm', (cell) => readChoice(cell, forms), problems) ?? 'cut';
  const worthRatio = optional(line, 'worthRatio', readCostShare, problems) ?? 1;
  const isWashed = optional(line, 'washed', readFlag, problems) ?? false;
  const flaws = optional(line, 'flaws', readFlaws, problems) ?? [];
  const mark = readText(cellOf(line, 'lengthId'));
  if (known.lengths.has(mark)) {
    problems.add(
      line.line,
      'lengthId',
      say('stash-file-new-lot.is-a-length-of-another-lot'),
      say('stash-file-new-lot.leave-it-empty'),
    );
    return null;
  }
  if (!isMark(mark)) problems.add(line.line, 'lengthId', ...noMark());
  if (isPutAway(line, 'lengthId', mark, now, problems)) return null;
  if (mark !== '' && isUsedTwice(line, 'lengthId', mark, known, problems)) return null;
  if (widthMm === null) return null;
  const length = { id: mark || now.newId(), lotId, widthMm, form: form as Length['form'], flaws };
  return { ...length, ...(worthRatio !== 1 && { worthRatio }), ...(isWashed && { isWashed }) };
}

function outsideFlaws(line: StashLine, length: Length, amountMilli: number, problems: FileProblems): void {
  const isOutside = length.flaws.some(
    (flaw) => flaw.x + flaw.widthX > amountMilli / 1000 || flaw.y + flaw.widthY > length.widthMm,
  );
  if (isOutside)
    problems.add(
      line.line,
      'flaws',
      say('stash-file-new-lot.reach-beyond-the-length'),
      say('stash-file-new-lot.measure-them-from-the-start-of'),
    );
}
