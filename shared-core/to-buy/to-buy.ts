/** Shortage + offers -> sellable units at least cost, one line for each item that is short. */
import type { CoverInput, SlotCover } from '../cover/cover.ts';
import { stepsUp } from '../measure/round-up.ts';
import { layJob, type RunLay, usableWidthMm } from '../lay/plan-lay.ts';
import type { LayLength } from '../lay/job.ts';
import { slotById } from '../plan/coat-plan.ts';
import type { ShapesNeed } from '../requirement/need.ts';
import type { Offer } from '../stash/offer.ts';
import type { Item, ItemId } from '../stash/stash.ts';

/** What to buy of one item, and what that covers. */
export interface ToBuyLine {
  readonly itemId: ItemId;
  readonly slotIds: readonly string[];
  readonly offer: Offer;
  /** Steps, sheets, spools, packs or pieces. */
  readonly unitCount: number;
  /** What the units hold, and what of it the plan uses up, in the kind's unit (for sheets: mm of sheet length). */
  readonly boughtAmount: number;
  readonly usedAmount: number;
  readonly priceMinor: number;
  /** Dearer ways to close the same gap. */
  readonly alternatives: readonly {
    readonly offer: Offer;
    readonly unitCount: number;
    readonly priceMinor: number;
  }[];
}

/** A gap that no offer closes, and why. */
export interface Unbuyable {
  readonly slotIds: readonly string[];
  readonly itemId: ItemId | null;
  readonly why: 'no item chosen' | 'no offer';
}

export interface ToBuy {
  readonly lines: readonly ToBuyLine[];
  readonly unbuyable: readonly Unbuyable[];
  readonly totalMinor: number;
}

/** The list for all short slots of a plan, in the order of the slots. */
export async function toBuy(input: CoverInput, covers: readonly SlotCover[], runLay: RunLay): Promise<ToBuy> {
  const lines: ToBuyLine[] = [];
  const unbuyable: Unbuyable[] = [];
  const openSlots = covers
    .filter((slotCover) => slotCover.state === 'open')
    .map((slotCover) => slotCover.slotId);
  if (openSlots.length > 0) unbuyable.push({ slotIds: openSlots, itemId: null, why: 'no item chosen' });
  const short = new Map<ItemId, SlotCover[]>();
  for (const slotCover of covers) {
    if (slotCover.shortage && slotCover.itemId)
      short.set(slotCover.itemId, [...(short.get(slotCover.itemId) ?? []), slotCover]);
  }
  for (const [itemId, gaps] of short) {
    const item = input.shelf.find((candidate) => candidate.item.id === itemId)!.item;
    const quotes: Quote[] = [];
    for (const offer of input.offers.filter((candidate) => candidate.itemId === itemId)) {
      const quote = await quoteFor(input, item, offer, gaps, runLay);
      if (quote) quotes.push(quote);
    }
    quotes.sort(
      (a, b) =>
        a.priceMinor - b.priceMinor || a.unitCount - b.unitCount || a.offer.id.localeCompare(b.offer.id),
    );
    const [best, ...dearer] = quotes;
    const slotIds = gaps.map((gap) => gap.slotId);
    if (best) {
      const alternatives = dearer.map(({ offer, unitCount, priceMinor }) => ({
        offer,
        unitCount,
        priceMinor,
      }));
      lines.push({ itemId, slotIds, ...best, alternatives });
    } else {
      unbuyable.push({ slotIds, itemId, why: 'no offer' });
    }
  }
  return { lines, unbuyable, totalMinor: lines.reduce((sum, line) => sum + line.priceMinor, 0) };
}

type Quote = Pick<ToBuyLine, 'offer' | 'unitCount' | 'boughtAmount' | 'usedAmount' | 'priceMinor'>;

/** What closing the gaps with one offer takes, or null where it cannot close them. */
async function quoteFor(
  input: CoverInput,
  item: Item,
  offer: Offer,
  gaps: readonly SlotCover[],
  runLay: RunLay,
): Promise<Quote | null> {
  const quote = (unitCount: number, boughtAmount: number, usedAmount: number): Quote => ({
    offer,
    unitCount,
    boughtAmount,
    usedAmount,
    priceMinor: unitCount * offer.priceMinor,
  });
  const missing = gaps.reduce((sum, gap) => sum + (gap.shortage?.amount ?? 0), 0);
  switch (offer.unit.kind) {
    case 'by length': {
      let usedMm = 0;
      for (const gap of gaps) {
        const isSameWidth = offer.unit.widthMm === gap.shortage?.widthMm;
        usedMm += isSameWidth
          ? gap.shortage.amount
          : await usedOn(input, item, gap, [buyable(offer.unit.widthMm, null, item)], runLay);
      }
      if (!Number.isFinite(usedMm)) return null;
      const steps = wholeUnits(Math.max(usedMm - layDustMm, offer.unit.leastMm), offer.unit.stepMm);
      return quote(steps, steps * offer.unit.stepMm, usedMm);
    }
    case 'sheet': {
      let sheetCount = 0;
      for (const gap of gaps) {
        const count = await sheetsFor(input, item, gap, offer.unit, runLay);
        if (count === null) return null;
        sheetCount += count;
      }
      return quote(sheetCount, sheetCount * offer.unit.lengthMm, sheetCount * offer.unit.lengthMm);
    }
    case 'spool': {
      const spools = wholeUnits(missing, offer.unit.threadM);
      return quote(spools, spools * offer.unit.threadM, missing);
    }
    case 'by mass': {
      const steps = wholeUnits(Math.max(missing, offer.unit.leastG), offer.unit.stepG);
      return quote(steps, steps * offer.unit.stepG, missing);
    }
    case 'pack': {
      const packs = wholeUnits(missing, offer.unit.pieceCount);
      return quote(packs, packs * offer.unit.pieceCount, missing);
    }
    case 'each': {
      const wantedMm = Math.max(...gaps.map((gap) => gap.shortage?.wantedLengthMm ?? 0));
      const soldMm = offer.unit.lengthMm;
      if (soldMm !== null && soldMm < wantedMm) return null;
      return quote(wholeUnits(missing, 1), wholeUnits(missing, 1), missing);
    }
    default:
      return offer.unit satisfies never;
  }
}

/** Neither a lay nor a pair of shears is true to a millimetre; that much over a step buys no further one. */
const layDustMm = 1;

/** Units that hold an amount: at least one, since a gap is never nothing. */
function wholeUnits(amount: number, perUnit: number): number {
  return Math.max(1, stepsUp(Math.max(0, amount), perUnit));
}

function buyable(widthMm: number, lengthMm: number | null, item: Item): LayLength {
  return { id: 'to buy', widthMm: usableWidthMm(widthMm, item), lengthMm, flaws: [] };
}

/** Length used of bought cloth when a slot is laid on what is free of the stash and then on it; Infinity where it does not fit. */
async function usedOn(
  input: CoverInput,
  item: Item,
  gap: SlotCover,
  bought: readonly LayLength[],
  runLay: RunLay,
): Promise<number> {
  const need = input.needs.find((candidate) => candidate.slotId === gap.slotId) as ShapesNeed;
  const onStash = gap.lay?.job.lengths.filter((length) => length.lengthMm !== null) ?? [];
  const job = layJob(need, [...onStash, ...bought], input.plan.clearanceMm, item, 1);
  const isTooNarrow = need.shapes.some((shape) => !fitsAcross(shape.ring, shape.turnsDeg, job.lengths));
  if (isTooNarrow) return Infinity;
  const result = await runLay(
    job,
    `${slotById(input.plan, gap.slotId).name} on ${bought[0]?.widthMm ?? 0} mm to buy`,
  );
  if (result.unplaced.length > 0) return Infinity;
  return result.usedLengthMm.slice(onStash.length).reduce((sum, used) => sum + used, 0);
}

/** Whether a shape goes across at least one of the lengths in one of its turns by quarter turns. */
function fitsAcross(ring: Float64Array, turnsDeg: readonly number[], lengths: readonly LayLength[]): boolean {
  let minX = Infinity;
  let maxX = -Infinity;
  let minY = Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    minX = Math.min(minX, ring[i]!);
    maxX = Math.max(maxX, ring[i]!);
    minY = Math.min(minY, ring[i + 1]!);
    maxY = Math.max(maxY, ring[i + 1]!);
  }
  return lengths.some((length) =>
    turnsDeg.some((turn) => {
      const across = turn % 180 === 0 ? maxY - minY : maxX - minX;
      const along = turn % 180 === 0 ? maxX - minX : maxY - minY;
      return across <= length.widthMm && (length.lengthMm === null || along <= length.lengthMm);
    }),
  );
}

/** No coat takes more sheets than this; beyond, the shapes do not fit a sheet at all. */
const mostSheets = 60;

/** Fewest sheets on which a lay places all that the stash has no room for; null where a piece is larger than a sheet. */
async function sheetsFor(
  input: CoverInput,
  item: Item,
  gap: SlotCover,
  sheet: { readonly widthMm: number; readonly lengthMm: number },
  runLay: RunLay,
): Promise<number | null> {
  const need = input.needs.find((candidate) => candidate.slotId === gap.slotId) as ShapesNeed;
  const one = buyable(sheet.widthMm, sheet.lengthMm, item);
  const onStash = gap.lay?.job.lengths.filter((length) => length.lengthMm !== null) ?? [];
  const openAreaMm2 =
    need.areaMm2 - onStash.reduce((sum, length) => sum + length.widthMm * (length.lengthMm ?? 0), 0);
  let count = Math.max(1, Math.ceil(openAreaMm2 / (one.widthMm * sheet.lengthMm)));
  for (; count <= mostSheets; count++) {
    const sheets = Array.from({ length: count }, (_, index) => ({ ...one, id: `sheet ${index + 1}` }));
    const usedMm = await usedOn(input, item, gap, sheets, runLay);
    if (Number.isFinite(usedMm)) return count;
    if (need.shapes.some((shape) => !fitsAcross(shape.ring, shape.turnsDeg, [...onStash, one]))) return null;
  }
  return null;
}
