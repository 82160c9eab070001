/** What a coat has set aside, taken out of what is reserved. */
import type { SetAside } from './cutting.ts';
import { fromMilli, type ItemOnShelf, toMilli } from './stash.ts';

/** The shelf as the plan that set these aside sees it: only what others have set aside is reserved. */
export function withoutReserved(shelves: readonly ItemOnShelf[], own: readonly SetAside[]): ItemOnShelf[] {
  const less = new Map<string, number>();
  for (const { lotId, lengthId, amount } of own) {
    for (const key of [lotId, ...(lengthId === null ? [] : [lengthId])]) {
      less.set(key, (less.get(key) ?? 0) + toMilli(amount));
    }
  }
  const left = (reserved: number, key: string) => fromMilli(toMilli(reserved) - (less.get(key) ?? 0));
  return shelves.map(({ item, lots }) => ({
    item,
    lots: lots.map((lot) => ({
      ...lot,
      reserved: left(lot.reserved, lot.id),
      lengths: lot.lengths.map((length) => ({ ...length, reservedMm: left(length.reservedMm, length.id) })),
    })),
  }));
}
