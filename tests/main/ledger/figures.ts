/** What the book says things are worth, cost and still want: worked out from its lines, struck ones left out. */
import { type Book, type Cutting, reservedAt } from './model.ts';

const total = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);

/** a x b / c, half rounded up, by whole numbers. */
function share(a: number, b: number, c: number): number {
  return Number((2n * BigInt(a) * BigInt(b) + BigInt(c)) / (2n * BigInt(c)));
}

export interface LineValue {
  readonly kind: 'received' | 'consumed' | 'writtenOff' | 'corrected';
  readonly lot: number;
  readonly cutting: number | null;
  readonly minor: number;
}

/** What each line changed of what its lot is worth; lines of struck cuttings are not there. */
export function lineValues(book: Book): LineValue[] {
  const held = book.places.map(() => 0);
  const worth = (lot: number) =>
    total(book.places.map((place, at) => (place.lot === lot ? Math.round(place.ratio * held[at]!) : 0)));
  const value = (lot: number) => share(book.lots[lot]!.priceMinor, worth(lot), book.lots[lot]!.received);
  return book.entries.flatMap(({ kind, place, milli, cutting, isStruck }) => {
    if (isStruck) return [];
    if (cutting !== null && book.cuttings[cutting]!.isStruck) return [];
    const { lot } = book.places[place]!;
    const before = value(lot);
    held[place] = held[place]! + milli;
    return [{ kind, lot, cutting, minor: value(lot) - before }];
  });
}

export interface Account {
  readonly received: number;
  readonly consumed: number;
  readonly writtenOff: number;
  readonly corrected: number;
  readonly onHand: number;
}

export function itemAccount(book: Book, item: number, values: readonly LineValue[]): Account {
  const sum = (kind: LineValue['kind']) =>
    total(
      values
        .filter((line) => line.kind === kind && book.lots[line.lot]!.item === item)
        .map(({ minor }) => minor),
    );
  const lots = book.lots.flatMap((lot, at) => (lot.item === item ? [at] : []));
  const worth = (lot: number) =>
    total(
      book.places.filter((place) => place.lot === lot).map(({ ratio, hand }) => Math.round(ratio * hand)),
    );
  return {
    received: sum('received'),
    consumed: -sum('consumed') + 0,
    writtenOff: -sum('writtenOff') + 0,
    corrected: sum('corrected'),
    onHand: total(lots.map((lot) => share(book.lots[lot]!.priceMinor, worth(lot), book.lots[lot]!.received))),
  };
}

const standing = (book: Book, plan: number) =>
  book.cuttings.flatMap((cutting, id) =>
    cutting.plan === plan && !cutting.isStruck ? [{ cutting, id }] : [],
  );

/** Coats, or backs, of each size that are cut. */
export function cutBySize(book: Book, plan: number, what: 'coats' | 'backs'): number[] {
  return [0, 1].map((size) => total(standing(book, plan).map(({ cutting }) => cutting[what][size] ?? 0)));
}

/** What was used up of a slot that is not cut to shape, thousandths. */
export function usedUp(book: Book, plan: number, slot: number): number {
  return total(
    standing(book, plan).flatMap(({ cutting }) => linesOf(cutting, slot).map(({ milli }) => milli)),
  );
}

const linesOf = (cutting: Cutting, slot: number) =>
  cutting.slots.filter((each) => each.slot === slot).flatMap((each) => each.lines);

/** The cost as cut: what the book lost of each lot, shared over the slots by what they used of it. */
export function cutCosts(book: Book, plan: number, values: readonly LineValue[]) {
  const slots = new Map<number, { costMinor: number; wasteMinor: number }>();
  for (const { cutting, id } of standing(book, plan)) {
    const lines = cutting.slots.flatMap(({ slot, lines }) => lines.map((line) => ({ slot, line })));
    for (const lot of new Set(lines.map(({ line }) => book.places[line.place]!.lot))) {
      const lost = -total(
        values.filter((each) => each.cutting === id && each.lot === lot).map(({ minor }) => minor),
      );
      const ofLot = lines.filter(({ line }) => book.places[line.place]!.lot === lot);
      const costs = shared(
        lost,
        ofLot.map(({ line }) => usedMilli(book, line)),
      );
      ofLot.forEach(({ slot, line }, at) => {
        const now = slots.get(slot) ?? { costMinor: 0, wasteMinor: 0 };
        now.costMinor += costs[at]!;
        now.wasteMinor += wasteMinor(book, line, costs[at]!);
        slots.set(slot, now);
      });
    }
  }
  return slots;
}

type Line = Cutting['slots'][number]['lines'][number];

function usedMilli(book: Book, { place: at, milli, kept }: Line): number {
  const place = book.places[at]!;
  const keptMm =
    place.widthMm === null ? 0 : total(kept.map(([length, width]) => width * length)) / place.widthMm;
  return Math.max(0, Math.round((milli / 1000 - keptMm) * place.ratio * 1000));
}

function wasteMinor(book: Book, { place, milli, pieceMm2, kept }: Line, costMinor: number): number {
  const { widthMm } = book.places[place]!;
  if (widthMm === null || pieceMm2 === null) return 0;
  const keptMm2 = total(kept.map(([length, width]) => width * length));
  const waste = Math.max(0, (milli / 1000) * widthMm - keptMm2 - pieceMm2);
  const paid = pieceMm2 + waste;
  return paid > 0 ? Math.round((costMinor * waste) / paid) : 0;
}

/** The largest remainders get what is left over; where nothing was used, the first bears it. */
function shared(minor: number, weights: readonly number[]): number[] {
  const all = total(weights);
  if (all === 0) return weights.map((_, at) => (at === 0 ? minor : 0));
  const exact = weights.map((weight) => (minor * weight) / all);
  const parts = exact.map(Math.floor);
  const order = exact
    .map((_, at) => at)
    .sort((a, b) => exact[b]! - parts[b]! - (exact[a]! - parts[a]!) || a - b);
  for (let left = minor - total(parts), next = 0; left > 0; left--, next++)
    parts[order[next % order.length]!]! += 1;
  return parts;
}

/** More set aside than there is, anywhere: never. */
export function isSound(book: Book): boolean {
  return book.places.every((place) => place.hand >= 0 && reservedAt(place) <= place.hand);
}
