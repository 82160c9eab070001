/**
 * Which lengths of the stash carry what, and what is missing.
 * A shapes slot is laid on what is free of its item; an amount slot takes its lots oldest first.
 */
import { say } from '../wording/say.ts';
import type { RunLay, SlotLay } from '../lay/plan-lay.ts';
import type { LayResult } from '../lay/job.ts';
import { takenMm } from '../lay/washed.ts';
import { type Slot, slotById } from '../plan/model/coat-plan.ts';
import type { AmountNeed, Need, ShapesNeed } from '../requirement/need.ts';
import { trimmingsOf } from '../requirement/cut/trimmings.ts';
import type { Offer } from '../stash/offer.ts';
import type { Item, ItemOnShelf, LotOnShelf } from '../stash/stash.ts';
import { dyeLotOf, type FreeLength, freeLengths } from './free-lengths.ts';
import { bestAssignment } from './best-assignment.ts';
import { conesMissing } from './cones.ts';
import { heldOnLengths, keptOf, marginOf, withAmountHeld } from './held-back.ts';
import { substitutes } from './substitutes.ts';
import type { Use, Shortage, SlotCover, CoverInput } from './slot-cover.ts';

/** Less than this share left over asks for care: one slip of the blade and it is short. */
export const narrowMarginRatio = 0.03;

/** Cover of every slot, in the order of the needs. */
export async function cover(input: CoverInput, runLay: RunLay): Promise<readonly SlotCover[]> {
  // What an earlier slot took of a length is not there for a later one bound to the same item.
  const taken = new Map<string, number>();
  const take = (uses: readonly Use[], amountOf: (use: Use) => number) => {
    for (const use of uses) {
      const key = use.lengthId ?? use.lotId;
      taken.set(key, (taken.get(key) ?? 0) + amountOf(use));
    }
  };
  const shelfOf = ({ slotId }: Need) =>
    input.shelf.find(({ item }) => item.id === slotById(input.plan, slotId).itemId);
  const met: { readonly need: Need; readonly slotCover: SlotCover }[] = [];
  // What is seen chooses first; what is hidden makes do with the rests.
  const isSeen = ({ slotId }: Need) => Number(slotById(input.plan, slotId).isSeen);
  for (const need of [...input.needs].sort((a, b) => isSeen(b) - isSeen(a))) {
    const slot = slotById(input.plan, need.slotId);
    const shelf = shelfOf(need);
    const slotCover = !shelf
      ? openCover(slot)
      : need.kind === 'shapes'
        ? await shapesCover(input, need, slot, shelf, taken, runLay)
        : amountCover(need, slot, shelf, taken);
    take(slotCover.uses, keptOf);
    met.push({ need, slotCover });
  }
  // What is weighed or counted may lie in any lot, so what all slots take goes before any margin.
  const covers = met.map(({ need, slotCover }): SlotCover => {
    const shelf = shelfOf(need);
    const held =
      need.kind === 'amount' && shelf
        ? withAmountHeld(slotCover, need, usableLots(need, shelf), (lot) => freeOfLot(lot, taken))
        : slotCover;
    if (need.kind === 'amount') take(held.uses, ({ marginAmount = 0 }) => marginAmount);
    return {
      ...held,
      substitutes:
        held.state === 'covered'
          ? []
          : substitutes(slotById(input.plan, need.slotId), shelf?.item, input.shelf, need),
    };
  });
  const places = new Map(input.needs.map((need, index) => [need.slotId, index]));
  return covers.sort((a, b) => (places.get(a.slotId) ?? 0) - (places.get(b.slotId) ?? 0));
}

function openCover(slot: Slot): SlotCover {
  return {
    slotId: slot.id,
    itemId: null,
    state: 'open',
    uses: [],
    shortage: null,
    lay: null,
    warnings: [],
    remnants: [],
    substitutes: [],
  };
}

async function shapesCover(
  input: CoverInput,
  need: ShapesNeed,
  slot: Slot,
  shelf: ItemOnShelf,
  taken: ReadonlyMap<string, number>,
  runLay: RunLay,
): Promise<SlotCover> {
  const { item } = shelf;
  const base = { slotId: slot.id, itemId: item.id, substitutes: [] };
  if (need.shapes.length === 0)
    return { ...base, state: 'covered', uses: [], shortage: null, lay: null, warnings: [], remnants: [] };
  const widthMm = boughtWidthMm(item, input.offers);
  const free = freeLengths(shelf, slot, taken);
  const { used, lay } = await bestAssignment(input, need, slot, item, free, widthMm, runLay);

  const uses: Use[] = [];
  used.forEach((candidate, index) => {
    const usedMm = Math.min(candidate.freeMm, takenMm(lay, index));
    if (usedMm <= 0) return;
    uses.push({
      lotId: candidate.lot.id,
      lengthId: candidate.length.id,
      amount: usedMm,
      free: candidate.freeMm,
      layLength: index,
    });
  });
  const piecesShortMm = takenMm(lay, used.length);
  const held = heldOnLengths(uses, marginOf(need, lay));
  // A hair of margin that finds no room is no reason to go to the shop.
  const marginShortMm = held.openMm > 1 ? held.openMm : 0;
  const missingPieceCount = lay.result.placements.filter(
    (placement) => placement.length === used.length,
  ).length;
  const shortage: Shortage | null =
    piecesShortMm + marginShortMm > 0
      ? {
          amount: piecesShortMm,
          widthMm,
          wantedLengthMm: null,
          missingPieceCount,
          ...(marginShortMm > 0 && { marginAmount: marginShortMm }),
        }
      : null;
  const warnings = shortage ? [] : shapesCares(slot, uses, shelf);
  const trimmings = trimmingsOf(need, item);
  return {
    ...base,
    ...(trimmings && { trimmings }),
    state: shortage ? 'short' : warnings.length > 0 ? 'covered with care' : 'covered',
    uses: held.uses,
    shortage,
    lay,
    warnings,
    remnants: carriedByRemnants(need, used, lay),
  };
}

/** The width in which more of an item would be bought: an offer's by length, else the item's own. */
export function boughtWidthMm(item: Item, offers: readonly Offer[]): number {
  for (const offer of offers) {
    if (offer.itemId === item.id && offer.unit.kind === 'by length') return offer.unit.widthMm;
  }
  return item.kind === 'cloth' || item.kind === 'batting' ? (item.facts.widthMm ?? 0) : 0;
}

function shapesCares(slot: Slot, uses: readonly Use[], shelf: ItemOnShelf): string[] {
  const warnings: string[] = [];
  const lots = new Map(shelf.lots.map((lot) => [lot.id, lot]));
  const dyeLots = new Set(uses.map((use) => dyeLotOf(lots.get(use.lotId)!)));
  if (slot.isSeen && dyeLots.size > 1)
    warnings.push(say('cover.cut-from-dye-lots-compare-them', { dyeLotsCount: dyeLots.size }));
  const last = uses.at(-1);
  const usedAll = uses.reduce((sum, use) => sum + use.amount, 0);
  if (last && (last.free - last.amount) / usedAll < narrowMarginRatio) {
    warnings.push(say('cover.hardly-anything-is-left-over-cut'));
  }
  return warnings;
}

function carriedByRemnants(need: ShapesNeed, used: readonly FreeLength[], lay: SlotLay) {
  return used.flatMap((candidate, index) => {
    if (candidate.length.form !== 'remnant') return [];
    const names = piecesOn(need, lay.result, index);
    return names.length > 0
      ? [{ lengthId: candidate.length.id, lengthMm: candidate.freeMm, pieceNames: names }]
      : [];
  });
}

/** Names of the pieces that a lay puts on one length, each once, in the order of the need. */
function piecesOn(need: ShapesNeed, result: LayResult, lengthIndex: number): string[] {
  const shapes = new Set(
    result.placements
      .filter((placement) => placement.length === lengthIndex)
      .map((placement) => placement.shape),
  );
  return need.shapes.filter((_, index) => shapes.has(index)).map((shape) => shape.name);
}

function amountCover(
  need: AmountNeed,
  slot: Slot,
  shelf: ItemOnShelf,
  taken: ReadonlyMap<string, number>,
): SlotCover {
  const uses: Use[] = [];
  let open = need.amount;
  for (const lot of usableLots(need, shelf)) {
    const free = freeOfLot(lot, taken);
    const amount = Math.min(open, free);
    if (!(amount > 0)) continue;
    uses.push({ lotId: lot.id, lengthId: null, amount, free, layLength: null });
    open -= amount;
  }
  const coneGap = conesMissing(need, shelf);
  const isShort = open > 1e-9 || coneGap > 0;
  return {
    slotId: slot.id,
    itemId: shelf.item.id,
    state: isShort ? 'short' : 'covered',
    uses,
    shortage: isShort
      ? {
          amount: Math.max(0, open),
          widthMm: null,
          wantedLengthMm: need.wantedLengthMm,
          missingPieceCount: need.counted === 'pieces' ? Math.ceil(open) : 0,
          ...(coneGap > 0 && { missingConeCount: coneGap }),
        }
      : null,
    lay: null,
    warnings: [],
    remnants: [],
    substitutes: [],
  };
}

/** Lots of what is long enough for the need. */
function usableLots(need: AmountNeed, { item, lots }: ItemOnShelf): readonly LotOnShelf[] {
  const isTooShort =
    item.kind === 'fastening' &&
    need.wantedLengthMm !== null &&
    item.facts.lengthMm !== null &&
    item.facts.lengthMm < need.wantedLengthMm;
  return isTooShort ? [] : lots;
}

function freeOfLot(lot: LotOnShelf, taken: ReadonlyMap<string, number>): number {
  return lot.onHand - lot.reserved - (taken.get(lot.id) ?? 0);
}
