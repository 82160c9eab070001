/** What a supplier asks for bringing the goods, and how long it takes. */
import { folded } from '../measure/text/folded-text.ts';

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
  return folded(name) || name;
}

/**
 * One for each key, in the order and by the name of the first. What was written down twice, before the two names
 * counted as one, is believed where it is dearer and slower, so that no estimate promises too little.
 */
export function eachOnce(suppliers: readonly Supplier[]): Supplier[] {
  const byKey = Map.groupBy(suppliers, ({ name }) => supplierKey(name));
  return [...byKey.values()].map((same) => same.reduce(dearer));
}

function dearer(a: Supplier, b: Supplier): Supplier {
  const isNeverFree = a.freeFromMinor === null || b.freeFromMinor === null;
  const isNotKnown = a.leadDays === null && b.leadDays === null;
  return {
    name: a.name,
    deliveryMinor: Math.max(a.deliveryMinor, b.deliveryMinor),
    freeFromMinor: isNeverFree ? null : Math.max(a.freeFromMinor ?? 0, b.freeFromMinor ?? 0),
    leadDays: isNotKnown ? null : Math.max(a.leadDays ?? 0, b.leadDays ?? 0),
  };
}

/** What a delivery of goods for this sum costs; 0 where nothing is known of the supplier. */
export function deliveryMinor(supplier: Supplier | undefined, goodsMinor: number): number {
  if (!supplier) return 0;
  return supplier.freeFromMinor !== null && goodsMinor >= supplier.freeFromMinor ? 0 : supplier.deliveryMinor;
}
