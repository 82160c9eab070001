/**
 * What the lines of an item say of its lots. What is booked stays as it was: a line may only say another amount, and
 * then why.
 */
import { say } from '../../wording/say.ts';
import type { InSteps } from '../../measure/in-steps.ts';
import { plainMoney } from '../../measure/money/money.ts';
import { withoutControls } from '../../measure/text/plain-signs.ts';
import { kindRecords } from '../../stash/kinds.ts';
import { type LengthOnShelf, type LotOnShelf, toMilli } from '../../stash/stash.ts';
import { readText } from '../../measure/text/cell-text.ts';
import {
  readAmount,
  readCostShare,
  readDays,
  readFlag,
  readFlaws,
  readMoneyCell,
  readQuantityCell,
  shortened,
} from './stash-cells.ts';
import type { StashChange } from './stash-change.ts';
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
import { newLot } from './stash-file-new-lot.ts';
import { cellOf, type FileProblems, isSameNumber, oneEnding, optional } from './stash-file-place.ts';
import { enoughProblems, linesAtOnce, type StashLine } from './stash-lines.ts';

const placeKeys = [
  'onHand',
  'lengthWidth',
  'lengthForm',
  'worthRatio',
  'washed',
  'flaws',
  'lengthId',
  'lotId',
] as const;

export function* lotChanges(
  file: FileItem,
  known: KnownMarks,
  now: StashNow,
  problems: FileProblems,
): InSteps<StashChange[]> {
  const changes: StashChange[] = [];
  const fresh = new Map<string, StashLine[]>();
  for (const [index, line] of file.lines.entries()) {
    if (index % linesAtOnce === linesAtOnce - 1) yield;
    if (problems.list.length > enoughProblems) return [];
    if (![...lotKeys, ...placeKeys].some((key) => cellOf(line, key) !== '')) continue;
    const mark = readText(cellOf(line, 'lotId'));
    const booked = known.lots.get(mark);
    if (booked && booked.itemId !== file.item.id) {
      problems.add(
        line.line,
        'lotId',
        say('stash-file-lots.is-a-lot-of-another-item'),
        say('stash-file-lots.leave-it-empty-for-a-lot'),
      );
    } else if (booked) changes.push(...bookedLine(file, booked.lot, line, known, now, problems));
    else if (!isPutAway(line, 'lotId', mark, now, problems)) {
      if (mark !== '' && !isMark(mark)) problems.add(line.line, 'lotId', ...noMark());
      const key =
        mark === ''
          ? say('stash-file-lots.line', { line: line.line })
          : say('stash-file-lots.mark', { mark });
      const same = fresh.get(key);
      if (same) same.push(line);
      else fresh.set(key, [line]);
    }
  }
  let freshCount = 0;
  for (const lines of fresh.values()) {
    freshCount += lines.length;
    if (freshCount >= linesAtOnce) yield;
    freshCount %= linesAtOnce;
    const lot = newLot(file, lines, known, now, problems);
    if (lot) changes.push({ kind: 'new lot', line: lines[0]!.line, ...spokenOf(file), lot });
  }
  return changes;
}

function spokenOf({ item }: FileItem) {
  return { itemKind: item.kind, itemName: item.name };
}

function bookedLine(
  file: FileItem,
  lot: LotOnShelf,
  line: StashLine,
  known: KnownMarks,
  now: StashNow,
  problems: FileProblems,
): StashChange[] {
  const stays = (key: string, booked: string) =>
    problems.add(
      line.line,
      key,
      say('stash-file-lots.is-another-than-was-booked', {
        booked: booked === '' ? say('stash-file-lots.nothing') : shortened(booked),
      }),
      say('stash-file-lots.put-it-back-as-it-was'),
    );
  const text = (key: 'supplier' | 'dyeLot') => {
    const cell = line.cells.get(key);
    if (cell !== undefined && oneEnding(readText(cell)).trim() !== lot[key].trim()) stays(key, lot[key]);
  };
  const day = cellOf(line, 'receivedOn');
  if (day !== '' && !readDays(day).includes(lot.receivedOn)) stays('receivedOn', lot.receivedOn);
  text('supplier');
  text('dyeLot');
  const price = optional(line, 'price', (cell) => readMoneyCell(cell, now.currency), problems);
  if (price !== null && price !== lot.priceMinor) stays('price', plainMoney(lot.priceMinor, now.currency));
  const received = optional(line, 'received', readAmount, problems);
  if (received !== null && !isSameNumber(received, lot.receivedMilli / 1000))
    stays('received', String(lot.receivedMilli / 1000));

  let length: LengthOnShelf | null = null;
  if (kindRecords[file.item.kind].hasLengths) {
    const mark = readText(cellOf(line, 'lengthId'));
    length = known.lengths.get(mark) ?? null;
    if (length?.lotId !== lot.id) length = null;
    if (!length) {
      const what =
        mark === ''
          ? say('stash-file-lots.is-empty-though-the-lot-is')
          : say('stash-file-lots.is-no-length-of-this-lot');
      problems.add(line.line, 'lengthId', what, say('stash-file-lots.put-its-mark-back-or-empty'));
      return [];
    }
    const width = optional(line, 'lengthWidth', (cell) => readQuantityCell('length', cell), problems);
    if (width !== null && !isSameNumber(width, length.widthMm)) stays('lengthWidth', String(length.widthMm));
    const form = cellOf(line, 'lengthForm');
    if (form !== '' && form.toLowerCase() !== length.form) stays('lengthForm', length.form);
    const share = optional(line, 'worthRatio', readCostShare, problems);
    if (share !== null && !isSameNumber(share, length.worthRatio ?? 1))
      stays('worthRatio', String(length.worthRatio ?? 1));
    const isWashed = optional(line, 'washed', readFlag, problems);
    if (isWashed !== null && isWashed !== (length.isWashed ?? false))
      stays('washed', length.isWashed ? 'yes' : 'no');
    const flaws = line.cells.has('flaws') ? optional(line, 'flaws', readFlaws, problems) : null;
    if (flaws !== null && JSON.stringify(flaws) !== JSON.stringify(length.flaws)) {
      stays('flaws', say('stash-file-lots.of-them', { flawsCount: length.flaws.length }));
    }
  } else noLengthCells(file, line, problems);
  if (isUsedTwice(line, length ? 'lengthId' : 'lotId', length?.id ?? lot.id, known, problems)) return [];

  const onHand = optional(line, 'onHand', readAmount, problems);
  const fromMilli = toMilli(length ? length.onHandMm : lot.onHand);
  if (onHand === null || isSameNumber(onHand, fromMilli / 1000)) return [];
  const reason = withoutControls(readText(cellOf(line, 'reason')));
  if (reason === '') {
    problems.add(
      line.line,
      'onHand',
      say('stash-file-lots.is-another-than-is-booked', { fromMilli: fromMilli / 1000 }),
      say('stash-file-lots.put-it-back-or-say-in'),
    );
    return [];
  }
  if (reason.length > 500 || onHand > 1e9) {
    problems.add(
      line.line,
      'onHand',
      say('stash-file-lots.is-too-large-or-its-reason'),
      say('common.check-the-number-and-its-unit'),
    );
    return [];
  }
  return [
    {
      kind: 'correction',
      line: line.line,
      ...spokenOf(file),
      lotId: lot.id,
      lengthId: length?.id ?? null,
      fromMilli,
      toMilli: toMilli(onHand),
      reason,
    },
  ];
}
