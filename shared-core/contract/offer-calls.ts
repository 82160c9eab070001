/** The calls about what suppliers sell, and about suppliers themselves. */
import { z } from 'zod';
import type { Supplier } from '../stash/supplier.ts';
import { id, isoDate, name, priceBreak, priceMinor, sellingUnit, unitCount } from './schemas.ts';

const priceListText = z.string().min(1).max(4_000_000);

export const offerCalls = {
  saveOffer: {
    changes: true,
    input: z.strictObject({
      offerId: id.nullable(),
      itemId: id,
      supplier: name,
      unit: sellingUnit,
      priceMinor,
      pricedOn: isoDate,
      breaks: z.array(priceBreak).max(20).exactOptional(),
      leastCount: unitCount.exactOptional(),
    }),
  },
  removeOffer: { changes: true, input: z.strictObject({ offerId: id }) },
  /** Every supplier that has facts or offers. */
  listSuppliers: { changes: false, input: z.strictObject({}) },
  /** Writes down what a supplier asks for a delivery; the name, however typed, finds the one that is there. */
  saveSupplier: {
    changes: true,
    input: z.strictObject({
      name,
      deliveryMinor: priceMinor,
      freeFromMinor: priceMinor.min(1).nullable(),
      leadDays: z.number().int().min(0).max(1000).nullable(),
    }),
  },
  /** What a price list (exchange/price-list/price-list.ts) would do, and what is amiss in it; nothing is changed. */
  checkPriceList: { changes: false, input: z.strictObject({ text: priceListText }) },
  /** Brings a whole list in, or nothing of it. */
  bringInPriceList: { changes: true, input: z.strictObject({ text: priceListText }) },
  /** All offers of the workshop as a price list. */
  priceList: { changes: false, input: z.strictObject({}) },
} as const;

export interface SupplierRow {
  readonly name: string;
  /** Null: nothing is known of its delivery. */
  readonly facts: Supplier | null;
  readonly offerCount: number;
}
