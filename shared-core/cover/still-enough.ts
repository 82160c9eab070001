/** After cutting began: whether what is left of the very lots that a slot was begun from carries the rest. */
import { say } from '../wording/say.ts';
import { slotById } from '../plan/model/coat-plan.ts';
import { listed } from '../wording/listed.ts';
import type { Need } from '../requirement/need.ts';
import type { Cutting } from '../stash/cutting.ts';
import type { LotId } from '../stash/stash.ts';
import { begunLots } from './begun-lots.ts';
import { amountWords, type WordsContext } from './cover-words.ts';
import type { SlotCover } from './slot-cover.ts';

export interface StillEnough {
  readonly slotId: string;
  readonly state: 'all cut' | 'enough' | 'another lot' | 'short';
  /** As noted for the lots it was begun from; those without one are left out. */
  readonly dyeLots: readonly string[];
  /** What is still to be cut, of it from the lots it was begun from, and left of those before. In the kind's unit. */
  readonly needed: number;
  readonly fromBegun: number;
  readonly leftOfBegun: number;
}

/** One entry for each slot that cutting has begun with, in the order of the covers. */
export function stillEnough(
  needs: readonly Need[],
  covers: readonly SlotCover[],
  cuttings: readonly Cutting[],
  shelf: WordsContext['shelf'],
): StillEnough[] {
  const lots = shelf.flatMap((onShelf) => onShelf.lots);
  return covers.flatMap((slotCover): StillEnough[] => {
    const { slotId } = slotCover;
    const begun = begunLots(slotId, cuttings);
    if (begun.lotIds.size === 0) return [];
    const isBegun = (lotId: LotId) =>
      begun.lotIds.has(lotId) ||
      lots.some((lot) => lot.id === lotId && lot.dyeLot !== '' && begun.dyeLots.has(lot.dyeLot));
    const fromBegun = sum(slotCover.uses.filter((use) => isBegun(use.lotId)).map((use) => use.amount));
    const used = sum(slotCover.uses.map((use) => use.amount));
    const short = slotCover.shortage?.amount ?? 0;
    const need = needs.find((candidate) => candidate.slotId === slotId);
    const isAllCut = need?.kind === 'shapes' ? need.shapes.length === 0 : (need?.amount ?? 0) < 1e-9;
    return [
      {
        slotId,
        state: isAllCut
          ? 'all cut'
          : short > 0
            ? 'short'
            : used - fromBegun > 1e-6
              ? 'another lot'
              : 'enough',
        dyeLots: [...begun.dyeLots],
        needed: used + short,
        fromBegun,
        leftOfBegun: sum(lots.filter((lot) => isBegun(lot.id)).map((lot) => lot.onHand - lot.reserved)),
      },
    ];
  });
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, amount) => total + amount, 0);
}

export function stillEnoughSentence(still: StillEnough, context: WordsContext): string {
  const { name } = slotById(context.plan, still.slotId);
  const amount = (value: number) => amountWords(still, value, context);
  const lot =
    still.dyeLots.length > 0
      ? say('still-enough.dye-lot-from-which-the-was', { dyeLots: listed(still.dyeLots), name })
      : say('still-enough.the-lot-from-which-the-was', { name });
  switch (still.state) {
    case 'all cut':
      return say('still-enough.all-of-the-is-cut', { name });
    case 'enough':
      return say('still-enough.what-is-left-is-still-enough', {
        amount: amount(still.needed),
        amount2: amount(still.leftOfBegun),
        lot,
      });
    case 'another lot':
      return say('still-enough.what-is-left-of-is-no', {
        lot,
        amount: amount(still.needed - still.fromBegun),
      });
    case 'short':
      return say('still-enough.what-is-left-is-no-longer', {
        amount: amount(still.needed),
        amount2: amount(still.leftOfBegun),
        lot,
      });
    default:
      return still.state satisfies never;
  }
}
