/** How a slot stands, in the maker's words: the same sentences on the screen and in the headless command. */
import { dayWords } from '../measure/calendar-date.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { listed } from '../plan/edits/edited.ts';
import { kindRecords } from '../stash/kinds.ts';
import type { ItemOnShelf } from '../stash/stash.ts';
import type { Shortage, SlotCover, Use } from './slot-cover.ts';
import { shortOf } from './held-back.ts';

export interface WordsContext {
  readonly plan: CoatPlan;
  readonly shelf: readonly ItemOnShelf[];
  readonly system: MeasureSystem;
}

/** Cloth is spoken of in metres or yards, whatever its length. */
const clothUnit = { metric: 'm', imperial: 'yd' } as const;

/** Sentences on one slot: what is covered or missing first, then remnants and cares. */
export function coverSentences(slotCover: SlotCover, context: WordsContext): string[] {
  const slot = slotById(context.plan, slotCover.slotId);
  if (slotCover.state === 'open') return [`Nothing is chosen for the ${slot.name} yet.`];
  const itemName = itemOf(slotCover, context)?.name ?? 'its item';
  const sentences: string[] = [];
  if (slotCover.shortage) sentences.push(shortageSentence(slotCover, slotCover.shortage, context));
  else if (slotCover.uses.length === 0) sentences.push(`Nothing is cut from the ${slot.name} yet.`);
  else
    sentences.push(
      `The ${slot.name} ${isOrAre(slot.name)} covered by ${itemName}: ${usesWords(slotCover, context)}.`,
    );
  for (const remnant of slotCover.remnants) {
    const lengthWords = showQuantity('length', remnant.lengthMm, { system: context.system, unit: clothUnit });
    sentences.push(
      `The remnant of ${lengthWords} can carry ${listed(remnant.pieceNames.map((name) => `the ${lower(name)}`))}.`,
    );
  }
  for (const care of slotCover.warnings) sentences.push(`${care[0]?.toUpperCase()}${care.slice(1)}.`);
  return sentences;
}

function shortageSentence(slotCover: SlotCover, shortage: Shortage, context: WordsContext): string {
  const slot = slotById(context.plan, slotCover.slotId);
  const item = itemOf(slotCover, context);
  const { system } = context;
  if (shortage.widthMm !== null && item) {
    const amount = showQuantity('length', shortOf(shortage), { system, unit: clothUnit });
    const width = showQuantity('length', shortage.widthMm, { system, unit: { metric: 'm', imperial: 'in' } });
    return `The ${slot.name} ${isOrAre(slot.name)} short by ${amount} of ${width} ${kindRecords[item.kind].label.toLowerCase()} (${item.name}): ${missingWords(shortage, system)}.`;
  }
  const length =
    shortage.wantedLengthMm === null
      ? ''
      : ` of at least ${showQuantity('length', shortage.wantedLengthMm, { system })}`;
  const cones = shortage.missingConeCount ?? 0;
  if (cones > 0 && shortOf(shortage) === 0) {
    return `The ${slot.name} ${isOrAre(slot.name)} short by ${count(cones, 'cone', 'cones')} (${item?.name ?? slot.name}): there is thread enough, but an overlock runs off several cones at once.`;
  }
  const margin = marginMissing(shortage, (amount) => amountWords(slotCover, amount, context));
  return `The ${slot.name} ${isOrAre(slot.name)} short by ${amountWords(slotCover, shortOf(shortage), context)}${length} (${item?.name ?? slot.name})${margin}.`;
}

/** "3 pieces have no room", and how much of what is missing is margin. */
function missingWords({ missingPieceCount, marginAmount = 0 }: Shortage, system: MeasureSystem): string {
  const margin = showQuantity('length', marginAmount, { system, unit: clothUnit });
  if (missingPieceCount === 0) return 'every piece has room, but not the margin for safety';
  const pieces = `${count(missingPieceCount, 'piece has', 'pieces have')} no room`;
  return marginAmount > 0 ? `${pieces}, and ${margin} of it is margin` : pieces;
}

/** ", including 3 g of margin for safety" for what is counted or weighed; empty where no margin is missing. */
function marginMissing(shortage: Shortage, words: (amount: number) => string): string {
  if (!shortage.marginAmount) return '';
  return shortage.amount > 0
    ? `, including ${words(shortage.marginAmount)} of margin for safety`
    : ': the coats are covered, but not the margin for safety';
}

/** "3.2 m of the 4.1 m free in dye lot P-2207", lots joined by "and". */
function usesWords(slotCover: SlotCover, context: WordsContext): string {
  const lots = new Map(context.shelf.flatMap(({ lots: all }) => all.map((lot) => [lot.id, lot] as const)));
  const one = (use: Use): string => {
    const lot = lots.get(use.lotId);
    const from = lot?.dyeLot ? `dye lot ${lot.dyeLot}` : `the lot of ${dayWords(lot?.receivedOn ?? '')}`;
    const parts = [
      ...(use.amount > 0 ? [amountWords(slotCover, use.amount, context)] : []),
      ...(use.marginAmount
        ? [`${amountWords(slotCover, use.marginAmount, context)} held back as margin`]
        : []),
    ];
    return `${parts.join(' and ')} of the ${amountWords(slotCover, use.free, context)} free in ${from}`;
  };
  return listed(slotCover.uses.map(one));
}

/** An amount of a slot's kind with its unit: "1.20 m", "340 g", "1,200 m of thread", "6 pieces". */
export function amountWords(
  slotCover: Pick<SlotCover, 'slotId'>,
  amount: number,
  context: WordsContext,
): string {
  const { kind } = slotById(context.plan, slotCover.slotId);
  const { system } = context;
  const { counted } = kindRecords[kind];
  switch (counted) {
    case 'length':
      return showQuantity('length', amount, { system, unit: clothUnit });
    case 'mass':
      return showQuantity('mass', amount, { system });
    case 'thread':
      return showQuantity('threadLength', Math.ceil(amount), { system });
    case 'pieces':
      return count(Math.ceil(amount - 1e-9), 'piece', 'pieces');
    default:
      return counted satisfies never;
  }
}

/** First of all: how many slots are short, in one line. */
export function coverHeadline(covers: readonly SlotCover[]): string {
  const short = covers.filter((slotCover) => slotCover.state === 'short').length;
  const open = covers.filter((slotCover) => slotCover.state === 'open').length;
  if (covers.length === 0) return 'The plan has no slots yet.';
  if (short === 0 && open === 0) return 'The stash covers the whole plan.';
  // Words up to twenty, figures beyond; never both in one line.
  const spelled = (value: number) => (covers.length < small.length && small[value]) || String(value);
  const parts: string[] = [];
  if (short > 0)
    parts.push(`${spelled(short)} of ${spelled(covers.length)} slots ${short === 1 ? 'is' : 'are'} short`);
  if (open > 0)
    parts.push(
      short > 0
        ? `${spelled(open)} still to be chosen`
        : `${spelled(open)} of ${spelled(covers.length)} slots still to be chosen`,
    );
  const sentence = parts.join(', ');
  return `${sentence[0]?.toUpperCase()}${sentence.slice(1)}.`;
}

const small =
  'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  );

/** Slots are named by makers, in English: "snaps are", "shell is", "cross is". */
function isOrAre(slotName: string): string {
  return /[^s]s$/i.test(slotName) ? 'are' : 'is';
}

function itemOf(slotCover: SlotCover, { shelf }: WordsContext) {
  return shelf.find((onShelf) => onShelf.item.id === slotCover.itemId)?.item;
}

function count(value: number, one: string, many: string): string {
  return `${value} ${value === 1 ? one : many}`;
}

function lower(name: string): string {
  return `${name[0]?.toLowerCase() ?? ''}${name.slice(1)}`;
}
