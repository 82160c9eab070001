/** When two offers are one, and when they say the same, for lists whose last figures a spreadsheet may have rounded. */
import type { Offer, SellingUnit } from '../../stash/offer.ts';
import { supplierKey } from '../../stash/supplier.ts';
import { isSameNumber } from '../stash-csv/stash-file-place.ts';

/** Offers that may be one have one key; isSameOffer tells the rest by their sizes. */
export function offerKey({ itemId, supplier, unit }: Pick<Offer, 'itemId' | 'supplier' | 'unit'>): string {
  return JSON.stringify([itemId, supplierKey(supplier), unit.kind]);
}

/** One offer of a supplier for an item is told from another by its unit, whatever its least. */
export function isSameOffer(a: Offer, b: Offer): boolean {
  return (
    a.itemId === b.itemId && isSameUnit(a.unit, b.unit) && supplierKey(a.supplier) === supplierKey(b.supplier)
  );
}

/** The same but for its least, as spreadsheets round. */
export function isSameUnit(a: SellingUnit, b: SellingUnit): boolean {
  switch (a.kind) {
    case 'by length':
      return b.kind === a.kind && isSameNumber(a.stepMm, b.stepMm) && isSameNumber(a.widthMm, b.widthMm);
    case 'sheet':
      return b.kind === a.kind && isSameNumber(a.widthMm, b.widthMm) && isSameNumber(a.lengthMm, b.lengthMm);
    case 'spool':
      return b.kind === a.kind && isSameNumber(a.threadM, b.threadM);
    case 'by mass':
      return b.kind === a.kind && isSameNumber(a.stepG, b.stepG);
    case 'pack':
      return b.kind === a.kind && isSameNumber(a.pieceCount, b.pieceCount);
    case 'each':
      return b.kind === a.kind && isSameLength(a.lengthMm, b.lengthMm);
    default:
      return a satisfies never;
  }
}

function isSameLength(a: number | null, b: number | null): boolean {
  return a === null || b === null ? a === b : isSameNumber(a, b);
}

/** What a buyer would not tell apart; the unit is the same already. */
export function saysTheSame(a: Offer, b: Offer): boolean {
  const said = ({ priceMinor, pricedOn, breaks = [] }: Offer) =>
    JSON.stringify([priceMinor, pricedOn, breaks]);
  return said(a) === said(b) && isSameNumber(minAmount(a), minAmount(b));
}

/** What one unit is of what its least is measured in: mm, g, or 1. */
export function unitAmount(unit: SellingUnit): number {
  return unit.kind === 'by length' ? unit.stepMm : unit.kind === 'by mass' ? unit.stepG : 1;
}

/** The least that is sold, at least one unit, in mm, g or units. */
export function minAmount({ unit, leastCount = 1 }: Offer): number {
  const inUnit = unit.kind === 'by length' ? unit.leastMm : unit.kind === 'by mass' ? unit.leastG : 1;
  return Math.max(inUnit, leastCount * unitAmount(unit));
}
