/** What a purchase tells about its supplier's price: a lot that was received suggests an offer. */
import { stepsUp } from '../measure/round-up.ts';
import { roundMinor } from '../measure/money/money.ts';
import type { Offer, SellingUnit } from './offer.ts';
import { offerPriceMinor } from './offer.ts';
import { fromMilli, type Item, type ItemOnShelf, type LotOnShelf } from './stash.ts';
import { supplierKey } from './supplier.ts';

/** An offer to be, from a lot. */
export interface LearnedOffer {
  readonly lotId: string;
  readonly supplier: string;
  readonly unit: SellingUnit;
  readonly priceMinor: number;
  readonly pricedOn: string;
  /** The supplier's older offer in the same unit, which it would bring up to date; null: a new one. */
  readonly replaces: Offer | null;
}

/** Steps in which cloth is cut where nothing else is known, mm (common practice, no source). */
const defaultStepMm = 100;

/**
 * One suggestion for each supplier and unit, from its latest lot; none where an offer is as new, or says the same.
 * A lot without a supplier or a price teaches nothing.
 */
export function learnedOffers(
  { item, lots }: ItemOnShelf,
  offers: readonly Offer[],
): readonly LearnedOffer[] {
  const latest = new Map<string, LearnedOffer>();
  for (const lot of lots) {
    if (lot.supplier.trim() === '' || lot.priceMinor <= 0) continue;
    const own = offers.filter((offer) => supplierKey(offer.supplier) === supplierKey(lot.supplier));
    const like = own.find((offer) => isLike(offer.unit, lot, item)) ?? null;
    const unit = like?.unit ?? defaultUnit(item, lot);
    const unitCount = unit && unitsOf(unit, lot);
    if (!unit || !unitCount) continue;
    const learned: LearnedOffer = {
      lotId: lot.id,
      supplier: like?.supplier ?? lot.supplier,
      unit,
      priceMinor: roundMinor(lot.priceMinor / unitCount),
      pricedOn: lot.receivedOn,
      replaces: like,
    };
    const isNews =
      !like || (like.pricedOn < lot.receivedOn && offerPriceMinor(like, unitCount) !== lot.priceMinor);
    const key = `${supplierKey(lot.supplier)} ${JSON.stringify(unit)}`;
    const before = latest.get(key);
    if (before && before.pricedOn > learned.pricedOn) continue;
    if (isNews) latest.set(key, learned);
    else latest.delete(key);
  }
  return [...latest.values()];
}

/** Whether a lot may have been bought in this unit: of its width, its sheet, or a whole number of its packs. */
function isLike(unit: SellingUnit, lot: LotOnShelf, item: Item): boolean {
  switch (unit.kind) {
    case 'by length':
      return lot.lengths.every((length) => length.widthMm === unit.widthMm && length.form !== 'sheet');
    case 'sheet':
      return lot.lengths.length > 0 && lot.lengths.every((length) => length.form === 'sheet');
    case 'by mass':
      return true;
    case 'spool':
    case 'pack': {
      const count = unitsOf(unit, lot) ?? 0;
      return count >= 1 && Math.abs(count - Math.round(count)) < 1e-9;
    }
    case 'each':
      return item.kind !== 'fastening' || unit.lengthMm === item.facts.lengthMm || unit.lengthMm === null;
    default:
      return unit satisfies never;
  }
}

/** How the kind is usually sold, as far as the item and the lot say so; null where they do not. */
function defaultUnit(item: Item, lot: LotOnShelf): SellingUnit | null {
  switch (item.kind) {
    case 'cloth':
    case 'batting': {
      const widthMm = lot.lengths[0]?.widthMm ?? item.facts.widthMm;
      if (widthMm === null) return null;
      if (lot.lengths.length > 0 && lot.lengths.every((length) => length.form === 'sheet')) {
        const lengthMm = item.kind === 'batting' ? item.facts.sheetLengthMm : null;
        return lengthMm === null ? null : { kind: 'sheet', widthMm, lengthMm };
      }
      return { kind: 'by length', stepMm: defaultStepMm, widthMm, leastMm: 0 };
    }
    case 'fill':
      return { kind: 'by mass', stepG: 100, leastG: 0 };
    case 'thread':
      return item.facts.spoolM === null ? null : { kind: 'spool', threadM: item.facts.spoolM };
    case 'needle':
      return { kind: 'pack', pieceCount: Math.round(fromMilli(lot.receivedMilli)) };
    case 'fastening':
      return { kind: 'each', lengthMm: item.facts.lengthMm };
    default:
      return item satisfies never;
  }
}

/** How many units a lot was; null where that cannot be told. What was cut in steps was paid by whole steps. */
function unitsOf(unit: SellingUnit, lot: LotOnShelf): number | null {
  const received = fromMilli(lot.receivedMilli);
  switch (unit.kind) {
    case 'by length':
      return stepsUp(received, unit.stepMm);
    case 'sheet':
      return lot.lengths.length === 0 ? null : Math.max(1, Math.round(received / unit.lengthMm));
    case 'by mass':
      return stepsUp(received, unit.stepG);
    case 'spool':
      return received / unit.threadM;
    case 'pack':
      return received / unit.pieceCount;
    case 'each':
      return received;
    default:
      return unit satisfies never;
  }
}
