/** What a supplier asks for bringing the goods, and how long it takes. */

export interface Supplier {
  readonly name: string;
  /** For one delivery, whatever is in it; 0 where it is fetched. */
  readonly deliveryMinor: number;
  /** From this sum of goods on the delivery is free; null: never. */
  readonly freeFromMinor: number | null;
  /** Days from order to shelf; null: not known. */
  readonly leadDays: number | null;
}

/** Under which a supplier's offers and facts are found, however the name was typed. */
export function supplierKey(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** What a delivery of goods for this sum costs; 0 where nothing is known of the supplier. */
export function deliveryMinor(supplier: Supplier | undefined, goodsMinor: number): number {
  if (!supplier) return 0;
  return supplier.freeFromMinor !== null && goodsMinor >= supplier.freeFromMinor ? 0 : supplier.deliveryMinor;
}
