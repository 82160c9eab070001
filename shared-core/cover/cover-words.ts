/** How a slot stands, in the maker's words: the same sentences on the screen and in the headless command. */
import { nounInSentence } from '../wording/in-sentence.ts';
import { say, spokenLanguage } from '../wording/say.ts';
import { dayWords } from '../measure/calendar-date.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { listed } from '../wording/listed.ts';
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
  if (slotCover.state === 'open')
    return [say('cover-words.nothing-is-chosen-for-the-yet', { slotName: slot.name })];
  const itemName = itemOf(slotCover, context)?.name ?? say('cover-words.its-item');
  const sentences: string[] = [];
  if (slotCover.shortage) sentences.push(shortageSentence(slotCover, slotCover.shortage, context));
  else if (slotCover.uses.length === 0)
    sentences.push(say('cover-words.nothing-is-cut-from-the-yet', { slotName: slot.name }));
  else
    sentences.push(
      say('cover-words.the-covered-by', {
        slotName: slot.name,
        isOrAre: isOrAre(slot.name),
        itemName,
        usesWords: usesWords(slotCover, context),
      }),
    );
  for (const remnant of slotCover.remnants) {
    const lengthWords = showQuantity('length', remnant.lengthMm, { system: context.system, unit: clothUnit });
    sentences.push(
      say('cover-words.the-remnant-of-can-carry', {
        lengthWords,
        pieceNames: listed(
          remnant.pieceNames.map((name) => say('cover-words.the', { lower: pieceInSentence(name) })),
        ),
      }),
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
    return say('cover-words.the-short-by-of', {
      slotName: slot.name,
      isOrAre: isOrAre(slot.name),
      amount,
      width,
      kindRecordsLabel: nounInSentence(kindRecords[item.kind].label),
      itemName: item.name,
      missingWords: missingWords(shortage, system),
    });
  }
  const length =
    shortage.wantedLengthMm === null
      ? ''
      : ` ${say('cover-words.of-at-least', { wantedLengthMm: showQuantity('length', shortage.wantedLengthMm, { system }) })}`;
  const cones = shortage.missingConeCount ?? 0;
  if (cones > 0 && shortOf(shortage) === 0) {
    return say('cover-words.the-short-by-there-is-thread', {
      slotName: slot.name,
      isOrAre: isOrAre(slot.name),
      count: say('cover-words.cones', { cones }),
      itemName: item?.name ?? slot.name,
    });
  }
  const margin = marginMissing(shortage, (amount) => amountWords(slotCover, amount, context));
  return say('cover-words.the-short-by', {
    slotName: slot.name,
    isOrAre: isOrAre(slot.name),
    amountWords: amountWords(slotCover, shortOf(shortage), context),
    length,
    itemName: item?.name ?? slot.name,
    margin,
  });
}

/** "3 pieces have no room", and how much of what is missing is margin. */
function missingWords({ missingPieceCount, marginAmount = 0 }: Shortage, system: MeasureSystem): string {
  const margin = showQuantity('length', marginAmount, { system, unit: clothUnit });
  if (missingPieceCount === 0) return say('cover-words.every-piece-has-room-but-not');
  const pieces = say('cover-words.no-room', { count: say('cover-words.pieces-have', { missingPieceCount }) });
  return marginAmount > 0 ? say('cover-words.and-of-it-is-margin', { pieces, margin }) : pieces;
}

/** ", including 3 g of margin for safety" for what is counted or weighed; empty where no margin is missing. */
function marginMissing(shortage: Shortage, words: (amount: number) => string): string {
  if (!shortage.marginAmount) return '';
  return shortage.amount > 0
    ? say('cover-words.including-of-margin-for-safety', { words: words(shortage.marginAmount) })
    : say('cover-words.the-coats-are-covered-but-not');
}

/** "3.2 m of the 4.1 m free in dye lot P-2207", lots joined by "and". */
function usesWords(slotCover: SlotCover, context: WordsContext): string {
  const lots = new Map(context.shelf.flatMap(({ lots: all }) => all.map((lot) => [lot.id, lot] as const)));
  const one = (use: Use): string => {
    const lot = lots.get(use.lotId);
    const from = lot?.dyeLot
      ? say('cover-words.dye-lot', { dyeLot: lot.dyeLot })
      : say('cover-words.the-lot-of', { receivedOn: dayWords(lot?.receivedOn ?? '') });
    const parts = [
      ...(use.amount > 0 ? [amountWords(slotCover, use.amount, context)] : []),
      ...(use.marginAmount
        ? [
            say('cover-words.held-back-as-margin', {
              amountWords: amountWords(slotCover, use.marginAmount, context),
            }),
          ]
        : []),
    ];
    return say('cover-words.of-the-free-in', {
      parts: listed(parts),
      amountWords: amountWords(slotCover, use.free, context),
      from,
    });
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
      return say('cover-words.pieces', { amount: Math.ceil(amount - 1e-9) });
    default:
      return counted satisfies never;
  }
}

/** First of all: how many slots are short, in one line. */
export function coverHeadline(covers: readonly SlotCover[]): string {
  const short = covers.filter((slotCover) => slotCover.state === 'short').length;
  const open = covers.filter((slotCover) => slotCover.state === 'open').length;
  if (covers.length === 0) return say('cover-words.the-plan-has-no-slots-yet');
  if (short === 0 && open === 0) return say('cover-words.the-stash-covers-the-whole-plan');
  // Words up to twenty, figures beyond; never both in one line.
  const small = say('cover-words.small-numbers').split(' ');
  const spelled = (value: number) => (covers.length < small.length && small[value]) || String(value);
  const parts: string[] = [];
  if (short > 0)
    parts.push(
      say('cover-words.of-slots-are-short', {
        spelled: spelled(short),
        spelled2: spelled(covers.length),
        short,
      }),
    );
  if (open > 0)
    parts.push(
      short > 0
        ? say('cover-words.still-to-be-chosen', { spelled: spelled(open) })
        : say('cover-words.of-slots-still-to-be-chosen', {
            spelled: spelled(open),
            spelled2: spelled(covers.length),
          }),
    );
  const sentence = parts.join(', ');
  return `${sentence[0]?.toUpperCase()}${sentence.slice(1)}.`;
}

/** Slots are named by makers, in English: "snaps are", "shell is", "cross is". */
function isOrAre(slotName: string): string {
  return /[^s]s$/i.test(slotName) ? 'are' : 'is';
}

function itemOf(slotCover: SlotCover, { shelf }: WordsContext) {
  return shelf.find((onShelf) => onShelf.item.id === slotCover.itemId)?.item;
}

/** As it stands inside a sentence. */
function pieceInSentence(name: string): string {
  return spokenLanguage() === 'de' ? name : `${name[0]?.toLowerCase() ?? ''}${name.slice(1)}`;
}
