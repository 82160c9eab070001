/** What the batch consumes, valued by lot, oldest first; what is bought is valued at its offer. */
import { roundMinor, shareMinor, splitMinor } from '../measure/money/money.ts';
import type { SlotCover } from '../cover/slot-cover.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import { coatTotal } from '../plan/model/sizes.ts';
import type { CutLine, Cutting } from '../stash/cutting.ts';
import type { ItemOnShelf, LotId } from '../stash/stash.ts';
import { fromMilli } from '../stash/stash.ts';
import type { ToBuy } from '../to-buy/to-buy.ts';

/** A part of a slot's cost: from one lot, or from what is bought (lotId null); cut already, or still to be cut. */
export interface CostPart {
  readonly lotId: LotId | null;
  readonly isCut?: true;
  readonly amount: number;
  readonly costMinor: number;
}

export interface CostLine {
  readonly slotId: string;
  readonly parts: readonly CostPart[];
  readonly costMinor: number;
  /** Of that: the share that falls between the pieces. 0 for what is not cut. */
  readonly wasteMinor: number;
  /** What is trimmed off quilted pieces, in the cost and not in what falls between them; null where nothing is. */
  readonly trimmings: CostOfTrimmings | null;
  /** True when a part of the slot has no price: nothing chosen, or no offer closes the gap. */
  readonly isIncomplete: boolean;
}

export interface CostOfTrimmings {
  readonly areaMm2: number;
  /** Null where the weight of the item is not known. */
  readonly massG: number | null;
  readonly costMinor: number;
}

export interface CostSheet {
  readonly lines: readonly CostLine[];
  readonly batchMinor: number;
  /** One figure for each coat; they add up to the batch exactly, so the first may cost a minor unit more. */
  readonly perCoatMinor: readonly number[];
  readonly isIncomplete: boolean;
}

/**
 * Cost of the material that the whole batch uses up, by slot, batch and coat: what the cuttings took, and for what is
 * still to be cut what the covers say. A margin for safety is no part of it, held back or bought.
 */
export function cost(
  plan: CoatPlan,
  covers: readonly SlotCover[],
  bought: ToBuy,
  shelf: readonly ItemOnShelf[],
  cuttings: readonly Cutting[] = [],
): CostSheet {
  const lots = new Map(shelf.flatMap((onShelf) => onShelf.lots.map((lot) => [lot.id, lot] as const)));
  const lines = covers.map((slotCover): CostLine => {
    const taken = slotCover.uses.filter(({ amount }) => amount > 0);
    const parts: CostPart[] = taken.map((use) => {
      const lot = lots.get(use.lotId);
      if (!lot) throw new RangeError(`no lot ${use.lotId} on the shelf`);
      const ratio = lot.lengths.find((length) => length.id === use.lengthId)?.worthRatio ?? 1;
      const amount = Math.min(use.amount * ratio, fromMilli(lot.receivedMilli));
      return {
        lotId: lot.id,
        amount: use.amount,
        costMinor: shareMinor(lot.priceMinor, amount, fromMilli(lot.receivedMilli)),
      };
    });
    const boughtLines = bought.lines.filter((line) => line.slotIds.includes(slotCover.slotId));
    const isLacking = (slotCover.shortage?.amount ?? 0) > 0;
    const isBought = boughtLines.length > 0 && isLacking;
    if (isBought) parts.push(boughtPart(boughtLines, slotCover, covers));
    const restMinor = parts.reduce((sum, part) => sum + part.costMinor, 0);
    const cut = cutLines(cuttings, slotCover.slotId);
    const cutMinor = cut.reduce((sum, each) => sum + each.costMinor, 0);
    return {
      slotId: slotCover.slotId,
      parts: [...cutParts(cut), ...parts],
      costMinor: cutMinor + restMinor,
      wasteMinor:
        cut.reduce((sum, { area }) => sum + (area?.wasteMinor ?? 0), 0) +
        (slotCover.lay ? roundMinor(restMinor * (1 - slotCover.lay.result.utilisation)) : 0),
      trimmings: trimmingsCost(slotCover, restMinor, cut),
      isIncomplete: slotCover.state === 'open' || (isLacking && !isBought),
    };
  });
  const batchMinor = lines.reduce((sum, line) => sum + line.costMinor, 0);
  return {
    lines,
    batchMinor,
    perCoatMinor: splitMinor(
      batchMinor,
      Array.from({ length: coatTotal(plan) }, () => 1),
    ).sort((a, b) => b - a),
    isIncomplete: lines.some((line) => line.isIncomplete),
  };
}

function cutLines(cuttings: readonly Cutting[], slotId: string): CutLine[] {
  return cuttings.flatMap(({ slots }) => slots.flatMap((slot) => (slot.slotId === slotId ? slot.lines : [])));
}

/** Of what was cut, and of what is still to be cut for restMinor. */
function trimmingsCost(
  { trimmings, lay }: SlotCover,
  restMinor: number,
  cut: readonly CutLine[],
): CostOfTrimmings | null {
  const parts = cut.flatMap(({ area }) =>
    area?.trimmedMm2
      ? [{ areaMm2: area.trimmedMm2, massG: area.trimmedG ?? null, costMinor: area.trimmedMinor ?? 0 }]
      : [],
  );
  if (trimmings && lay) {
    const costMinor = roundMinor(restMinor * lay.result.utilisation * trimmings.laidRatio);
    parts.push({ areaMm2: trimmings.areaMm2, massG: trimmings.massG, costMinor });
  }
  return parts.length === 0 ? null : sumOfTrimmings(parts);
}

/** All of them together; the mass is not known where one is not. */
export function sumOfTrimmings(parts: readonly CostOfTrimmings[]): CostOfTrimmings {
  return {
    areaMm2: parts.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
    massG: parts.reduce<number | null>(
      (sum, { massG }) => (sum === null || massG === null ? null : sum + massG),
      0,
    ),
    costMinor: parts.reduce((sum, { costMinor }) => sum + costMinor, 0),
  };
}

/** One part for each lot that was cut. */
function cutParts(lines: readonly CutLine[]): CostPart[] {
  return [...Map.groupBy(lines, (line) => line.lotId)].map(([lotId, ofLot]) => ({
    lotId,
    isCut: true,
    amount: ofLot.reduce((sum, line) => sum + fromMilli(line.usedMilli), 0),
    costMinor: ofLot.reduce((sum, line) => sum + line.costMinor, 0),
  }));
}

/** A slot's share of what is bought and used up; what is left of the purchase goes to the stash and is no cost of this batch. */
function boughtPart(lines: ToBuy['lines'], slotCover: SlotCover, covers: readonly SlotCover[]): CostPart {
  const gap = slotCover.shortage?.amount ?? 0;
  const allGaps = covers
    .filter((candidate) => lines[0]?.slotIds.includes(candidate.slotId))
    .reduce((sum, candidate) => sum + (candidate.shortage?.amount ?? 0), 0);
  const usedMinor = lines.reduce(
    (sum, line) => sum + shareMinor(line.priceMinor, line.usedAmount, line.boughtAmount),
    0,
  );
  return { lotId: null, amount: gap, costMinor: shareMinor(usedMinor, gap, allGaps) };
}
