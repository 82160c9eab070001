/** When two offers are one, and when they say the same, for lists whose last figures a spreadsheet may have rounded. */
import type { Offer, SellingUnit } from '../stash/offer.ts';
import { supplierKey } from '../stash/supplier.ts';
import { isSameNumber } from './stash-file-place.ts';

/** Offers that may be one have one key; isSameOffer tells the rest by their sizes. */
export function offerKey({ itemId, supplier, unit }: Pick<Offer, 'itemId' | 'supplier' | 'unit'>): string {
  return JSON.stringify([itemId, supplierKey(supplier), unit.kind]);
}

/** One offer of a supplier for an item is told from another by its unit, whatever its least. */
export function isSameOffer(a: Offer, b: Offer): boolean {
  return (
    a.itemId === b.itemId &&
    supplierKey(a.supplier) === supplierKey(b.supplier) &&
    a.unit.kind === b.unit.kind &&
    unitSizes(a.unit).every((size, index) => isSameSize(size, unitSizes(b.unit)[index]))
  );
}

function isSameSize(a: number | null, b: number | null | undefined): boolean {
  return typeof a === 'number' && typeof b === 'number' ? isSameNumber(a, b) : a === b;
}

function unitSizes(unit: SellingUnit): readonly (number | null)[] {
  switch (unit.kind) {
    case 'by length':
      return [unit.stepMm, unit.widthMm];
    case 'sheet':
      return [unit.widthMm, unit.lengthMm];
    case 'spool':
      return [unit.threadM];
    case 'by mass':
      return [unit.stepG];
    case 'pack':
      return [unit.pieceCount];
    case 'each':
      return [unit.lengthMm];
    default:
      return unit satisfies never;
  }
}

/** What a buyer would not tell apart; the unit is the same already. */
export function saysTheSame(a: Offer, b: Offer): boolean {
  const said = ({ priceMinor, pricedOn, breaks = [] }: Offer) =>
    JSON.stringify([priceMinor, pricedOn, breaks]);
  return said(a) === said(b) && isSameNumber(leastAmount(a), leastAmount(b));
}

/** What one unit is of what its least is measured in: mm, g, or 1. */
export function unitAmount(unit: SellingUnit): number {
  return unit.kind === 'by length' ? unit.stepMm : unit.kind === 'by mass' ? unit.stepG : 1;
}

/** The least that is sold, at least one unit, in mm, g or units. */
export function leastAmount({ unit, leastCount = 1 }: Offer): number {
  const inUnit = unit.kind === 'by length' ? unit.leastMm : unit.kind === 'by mass' ? unit.leastG : 1;
  return Math.max(inUnit, leastCount * unitAmount(unit));
}
