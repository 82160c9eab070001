/** Zips, cords, elastic and tapes that run along edges: how long each is in each size, and what to cut it from. */
import { speaksOf } from '../../wording/words-in-names.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { type CoatPlan, type Slot, slotById } from '../../plan/model/coat-plan.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import type { Offer } from '../../stash/offer.ts';
import type { Item } from '../../stash/stash.ts';
import { fasteningLengthMm, defaultSeparatingZipsMm, zipToBuy } from '../fastenings.ts';
import type { SlotItems } from '../need.ts';

export interface CutLength {
  readonly size: string;
  readonly pieceCount: number;
  /** Of one piece, finished. */
  readonly lengthMm: number;
  /** The shortest that is sold and long enough; null where none is, or none is known. */
  readonly soldMm: number | null;
  /** What to shorten it to; null where it is right as it is sold. */
  readonly shortenToMm: number | null;
}

export interface CutLengths {
  readonly isZip: boolean;
  /** One entry for each size that is made; empty for what runs along no edge. */
  readonly bySize: readonly CutLength[];
  /** Lengths that were chosen from, mm, rising. */
  readonly soldMm: readonly number[];
  /** True where no offer and no item says what is sold: then the usual steps of separating zips stand in. */
  readonly isUsual: boolean;
}

/** Lengths of a fastening's slot, from the offers of its item and the item itself. system: of the shops' usual steps. */
export function cutLengths(
  plan: CoatPlan,
  slotId: string,
  items: SlotItems,
  offers: readonly Offer[],
  system: MeasureSystem,
): CutLengths {
  const slot = slotById(plan, slotId);
  const item = items.get(slotId);
  const isZip = isZipSlot(slot, item);
  const known = soldLengths(item, offers);
  const isUsual = known.length === 0 && isZip;
  const soldMm = isUsual ? defaultSeparatingZipsMm[system] : known;
  const bySize = plansBySize(plan).flatMap((each): CutLength[] => {
    const lengthMm = fasteningLengthMm(each, slot);
    if (lengthMm === null) return [];
    const bought = soldMm.length > 0 ? zipToBuy(lengthMm, soldMm) : null;
    return [
      {
        size: each.size,
        pieceCount: Math.max(0, Math.ceil((slot.amountPerCoat ?? 1) * each.coatCount - 1e-9)),
        lengthMm,
        soldMm: bought?.ok ? bought.value.soldMm : null,
        shortenToMm: bought?.ok ? bought.value.shortenToMm : null,
      },
    ];
  });
  return { isZip, bySize, soldMm, isUsual };
}

function isZipSlot(slot: Slot, item: Item | undefined): boolean {
  return item?.kind === 'fastening' ? item.facts.form === 'zip' : speaksOf('zip', slot.name);
}

function soldLengths(item: Item | undefined, offers: readonly Offer[]): readonly number[] {
  if (item?.kind !== 'fastening') return [];
  const offered = offers.flatMap(({ itemId, unit }) =>
    itemId === item.id && unit.kind === 'each' && unit.lengthMm !== null ? [unit.lengthMm] : [],
  );
  const own = item.facts.lengthMm === null ? [] : [item.facts.lengthMm];
  return [...new Set([...own, ...offered])].sort((a, b) => a - b);
}
