/**
 * What the coats really took, by the ledger: slot by slot and lot by lot, for the cuttings that stand. A cutting's
 * movements of a lot are valued by the one rule (valuation.ts) and split over its slots by what each used, so that the
 * slots add up to what the ledger lost by it, to the last minor unit.
 */
import { shareMinor, splitMinor } from '../measure/money/money.ts';
import { coatsCut, type CutCoats, cutItemNames, type CutLine, type Cutting } from '../stash/cutting.ts';
import type { ItemKind } from '../stash/kinds.ts';
import type { Lot, LotId } from '../stash/stash.ts';
import { type CostOfTrimmings, sumOfTrimmings } from './cost.ts';

export interface CutLotPart {
  readonly lot: Lot;
  /** Thousandths of the kind's unit, kept remnants taken off. */
  readonly usedMilli: number;
  readonly costMinor: number;
}

export interface CutSlotCost {
  readonly slotId: string;
  readonly slotName: string;
  /** What it was cut from: one item, as a rule. */
  readonly itemNames: readonly string[];
  readonly kind: ItemKind;
  readonly usedMilli: number;
  readonly costMinor: number;
  /** Of that: what fell between the pieces. */
  readonly wasteMinor: number;
  /** And what was trimmed off quilted ones; null where nothing was. */
  readonly trimmings: CostOfTrimmings | null;
  /** Oldest lot first. */
  readonly lots: readonly CutLotPart[];
}

export interface CutSheet {
  readonly slots: readonly CutSlotCost[];
  readonly batchMinor: number;
  readonly wasteMinor: number;
  /** Coats cut by all of them, size by size. */
  readonly coats: readonly CutCoats[];
  readonly coatCount: number;
  /** The batch over its coats, adding up to it exactly, the dearest first; none where no coat was counted. */
  readonly perCoatMinor: readonly number[];
  /** Oldest first. */
  readonly cuttings: readonly {
    readonly cuttingId: string;
    readonly at: string;
    readonly coatCount: number;
    readonly costMinor: number;
  }[];
}

/** cuttings: those that stand, oldest first. valueMinor: what a movement of theirs was worth, by its id. */
export function cutSheet(
  cuttings: readonly Cutting[],
  lots: readonly Lot[],
  valueMinor: (movementId: string) => number,
): CutSheet {
  const priced = cuttings.map((cutting) => ({ cutting, lines: pricedLines(cutting, valueMinor) }));
  const slots = slotCosts(
    priced.flatMap(({ lines }) => lines),
    lots,
  );
  const coats = coatsCut(cuttings);
  const coatCount = countOf(coats);
  const batchMinor = slots.reduce((sum, slot) => sum + slot.costMinor, 0);
  return {
    slots,
    batchMinor,
    wasteMinor: slots.reduce((sum, slot) => sum + slot.wasteMinor, 0),
    coats,
    coatCount,
    perCoatMinor:
      coatCount === 0
        ? []
        : splitMinor(
            batchMinor,
            Array.from({ length: coatCount }, () => 1),
          ).sort((a, b) => b - a),
    cuttings: priced.map(({ cutting, lines }) => ({
      cuttingId: cutting.id,
      at: cutting.at,
      coatCount: countOf(cutting.coats),
      costMinor: lines.reduce((sum, { costMinor }) => sum + costMinor, 0),
    })),
  };
}

function countOf(coats: readonly CutCoats[]): number {
  return coats.reduce((sum, { coatCount }) => sum + coatCount, 0);
}

interface PricedLine {
  readonly slot: Cutting['slots'][number];
  readonly line: CutLine;
  readonly costMinor: number;
}

/** The lines of a cutting with their share of what the ledger lost of each lot; what nobody used goes to the first. */
function pricedLines(cutting: Cutting, valueMinor: (movementId: string) => number): PricedLine[] {
  const lines = cutting.slots.flatMap((slot) => slot.lines.map((line) => ({ slot, line })));
  const lostMinor = new Map<LotId, number>();
  for (const { id, lotId } of cutting.movements) {
    lostMinor.set(lotId, (lostMinor.get(lotId) ?? 0) - valueMinor(id));
  }
  return [...Map.groupBy(lines, ({ line }) => line.lotId)].flatMap(([lotId, ofLot]) => {
    const weights = ofLot.map(({ line }) => line.usedMilli);
    const isUsed = weights.some((weight) => weight > 0);
    const parts = splitMinor(
      lostMinor.get(lotId) ?? 0,
      isUsed ? weights : weights.map((_, i) => (i === 0 ? 1 : 0)),
    );
    return ofLot.map((each, index) => ({ ...each, costMinor: parts[index] ?? 0 }));
  });
}

function slotCosts(lines: readonly PricedLine[], lots: readonly Lot[]): CutSlotCost[] {
  const byId = new Map(lots.map((lot) => [lot.id, lot]));
  return [...Map.groupBy(lines, ({ slot }) => slot.slotId)].map(([slotId, ofSlot]) => {
    const parts = [...Map.groupBy(ofSlot, ({ line }) => line.lotId)].map(([lotId, ofLot]): CutLotPart => {
      const lot = byId.get(lotId);
      if (!lot) throw new RangeError(`no lot ${lotId} for what was cut`);
      return {
        lot,
        usedMilli: ofLot.reduce((sum, { line }) => sum + line.usedMilli, 0),
        costMinor: ofLot.reduce((sum, { costMinor }) => sum + costMinor, 0),
      };
    });
    const { slotName, kind } = ofSlot.at(-1)?.slot ?? { slotName: '', kind: 'cloth' };
    return {
      slotId,
      slotName,
      itemNames: cutItemNames({ lines: ofSlot.map(({ line }) => line) }),
      kind,
      usedMilli: parts.reduce((sum, part) => sum + part.usedMilli, 0),
      costMinor: parts.reduce((sum, part) => sum + part.costMinor, 0),
      wasteMinor: ofSlot.reduce((sum, { line, costMinor }) => sum + wasteOf(line, costMinor, 'wasteMm2'), 0),
      trimmings: trimmingsOf(ofSlot),
      lots: parts.sort((a, b) => a.lot.receivedOn.localeCompare(b.lot.receivedOn)),
    };
  });
}

function wasteOf({ area }: CutLine, costMinor: number, part: 'wasteMm2' | 'trimmedMm2'): number {
  if (!area) return 0;
  const { pieceMm2, wasteMm2, trimmedMm2 = 0 } = area;
  const paidMm2 = pieceMm2 + trimmedMm2 + wasteMm2;
  return paidMm2 > 0 ? shareMinor(costMinor, area[part] ?? 0, paidMm2) : 0;
}

function trimmingsOf(lines: readonly PricedLine[]): CostOfTrimmings | null {
  const parts = lines.flatMap(({ line, costMinor }) =>
    line.area?.trimmedMm2
      ? [
          {
            areaMm2: line.area.trimmedMm2,
            massG: line.area.trimmedG ?? null,
            costMinor: wasteOf(line, costMinor, 'trimmedMm2'),
          },
        ]
      : [],
  );
  return parts.length === 0 ? null : sumOfTrimmings(parts);
}
