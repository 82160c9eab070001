/**
 * What a careful bookkeeper would write down about the shelf, without a database: the tests hold the program against
 * it. Nothing here is taken from the program. Amounts are whole thousandths, money whole minor units.
 *
 * A cutting that was taken back is struck out of the book: what is left reads as if it had never been.
 */

/** A place on the shelf: a length, or a whole lot of what does not lie as lengths. */
export interface Place {
  readonly lot: number;
  /** mm; null for what does not lie as lengths. */
  readonly widthMm: number | null;
  /** The share of the lot's price that a thousandth carries. */
  readonly ratio: number;
  /** Along the length, from and to, in thousandths; null: no flaw. */
  readonly flaw: readonly [number, number] | null;
  hand: number;
  /** What plans have set aside of it, the one that set aside last at the end. */
  reserved: { plan: number; milli: number }[];
}

export interface Lot {
  readonly item: number;
  readonly received: number;
  readonly priceMinor: number;
  /** Its receipt was undone: there is no such lot. */
  isStruck?: true;
}

type Kind = 'received' | 'consumed' | 'writtenOff' | 'corrected';

/** A line of the book. */
interface Entry {
  readonly kind: Kind;
  readonly place: number;
  readonly milli: number;
  readonly cutting: number | null;
  /** Undone: what is left reads as if the line had never been written. */
  isStruck?: true;
}

/** What was received, written off or counted last, as long as it can be undone. */
export interface LastChange {
  readonly from: number;
  readonly to: number;
  /** How many reservations the book knew before it. */
  readonly known: number;
  /** What plans lost by a count. */
  readonly lost: readonly { readonly plan: number; readonly place: number; readonly milli: number }[];
}

export interface CutLine {
  readonly place: number;
  readonly milli: number;
  readonly pieceMm2: number | null;
  /** Remnants kept: length and width in mm. */
  readonly kept: readonly (readonly [number, number])[];
}

export interface Cutting {
  readonly plan: number;
  /** Coats and backs cut by it, by size. */
  readonly coats: readonly number[];
  readonly backs: readonly number[];
  readonly slots: readonly { readonly slot: number; readonly lines: readonly CutLine[] }[];
  readonly changes: { plan: number; place: number; milli: number }[];
  /** Places that it brought into being, with what they began with. */
  readonly made: { place: number; milli: number }[];
  isStruck: boolean;
}

export interface Book {
  readonly lots: Lot[];
  readonly places: Place[];
  readonly entries: Entry[];
  readonly cuttings: Cutting[];
  last: LastChange | null;
  /** Each time that something was set aside or let go of. */
  readonly reservations: { readonly plan: number; readonly item: number }[];
}

export const emptyBook = (): Book => ({
  lots: [],
  places: [],
  entries: [],
  cuttings: [],
  last: null,
  reservations: [],
});

const total = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);
export const reservedAt = (place: Place) => total(place.reserved.map(({ milli }) => milli));
const ownAt = (place: Place, plan: number) => place.reserved.find((each) => each.plan === plan)?.milli ?? 0;

/** Changes what a plan has set aside; more of it stands behind what others set aside before. */
export function reserve(book: Book, place: Place, plan: number, milli: number): void {
  book.reservations.push({ plan, item: book.lots[place.lot]!.item });
  const now = ownAt(place, plan) + milli;
  const at = place.reserved.findIndex((each) => each.plan === plan);
  if (milli < 0 && now > 0) place.reserved[at] = { plan, milli: now };
  else {
    if (at >= 0) place.reserved.splice(at, 1);
    if (now > 0) place.reserved.push({ plan, milli: now });
  }
}

function write(book: Book, kind: Kind, place: number, milli: number, cutting: number | null = null): void {
  book.places[place]!.hand += milli;
  book.entries.push({ kind, place, milli, cutting });
}

export function receive(
  book: Book,
  lot: Lot,
  places: readonly Pick<Place, 'widthMm' | 'flaw' | 'hand'>[],
): void {
  const from = book.entries.length;
  book.lots.push(lot);
  for (const { hand, ...place } of places) {
    book.places.push({ ...place, lot: book.lots.length - 1, ratio: 1, hand: 0, reserved: [] });
    write(book, 'received', book.places.length - 1, hand);
  }
  keepChange(book, from);
}

/** All that a plan sets aside; false where it is not free, and then nothing has changed. */
export function setAside(
  book: Book,
  plan: number,
  uses: readonly { place: number; milli: number }[],
): boolean {
  const wanted = book.places.map((_, at) =>
    total(uses.filter(({ place }) => place === at).map((use) => use.milli)),
  );
  const others = (place: Place) => reservedAt(place) - ownAt(place, plan);
  if (
    book.places.some(
      (place, at) => (wanted[at] ?? 0) > Math.max(ownAt(place, plan), place.hand - others(place)),
    )
  )
    return false;
  for (const use of new Set(uses.map(({ place }) => place).concat(book.places.map((_, at) => at)))) {
    const place = book.places[use]!;
    const change = (wanted[use] ?? 0) - ownAt(place, plan);
    if (change !== 0) reserve(book, place, plan, change);
  }
  return true;
}

export function writeOff(book: Book, at: number, milli: number): boolean {
  const place = book.places[at]!;
  if (milli > place.hand - reservedAt(place)) return false;
  write(book, 'writtenOff', at, -milli);
  keepChange(book, book.entries.length - 1);
  return true;
}

/** The shelf is right: whoever set aside last loses what is not there. */
export function count(book: Book, at: number, milli: number): boolean {
  const place = book.places[at]!;
  if (book.lots[place.lot]!.isStruck) return false;
  const lost: { plan: number; place: number; milli: number }[] = [];
  for (const { plan, milli: own } of [...place.reserved].reverse()) {
    const excess = reservedAt(place) - milli;
    if (excess <= 0) continue;
    const less = Math.min(own, excess);
    reserve(book, place, plan, -less);
    lost.push({ plan, place: at, milli: less });
  }
  if (milli === place.hand) return true;
  write(book, 'corrected', at, milli - place.hand);
  keepChange(book, book.entries.length - 1, lost);
  return true;
}

function keepChange(book: Book, from: number, lost: LastChange['lost'] = []): void {
  book.last = { from, to: book.entries.length, known: book.reservations.length, lost };
}

export function cut(
  book: Book,
  { plan, coats, backs, slots }: Pick<Cutting, 'plan' | 'coats' | 'backs' | 'slots'>,
  releasesRest: boolean,
): boolean {
  const lines = slots.flatMap((slot) => slot.lines);
  const used = new Map<number, number>();
  for (const { place: at, milli, pieceMm2, kept } of lines) {
    const place = book.places[at]!;
    const before = used.get(at) ?? 0;
    if (milli > place.hand - reservedAt(place) + ownAt(place, plan) - before) return false;
    const keptMm2 = total(kept.map(([length, width]) => length * width));
    const room = (milli / 1000) * (place.widthMm ?? 0);
    if (kept.length > 0 && keptMm2 + (pieceMm2 ?? 0) > room + 1) return false;
    used.set(at, before + milli);
  }
  const id = book.cuttings.length;
  const cutting: Cutting = { plan, coats, backs, slots, changes: [], made: [], isStruck: false };
  book.cuttings.push(cutting);
  const change = (at: number, who: number, milli: number) => {
    if (milli !== 0) reserve(book, book.places[at]!, who, milli);
    const known = cutting.changes.find((each) => each.plan === who && each.place === at);
    if (known) known.milli += milli;
    else cutting.changes.push({ plan: who, place: at, milli });
  };
  const make = (place: Place, milli: number) => {
    book.places.push(place);
    cutting.made.push({ place: book.places.length - 1, milli });
    write(book, 'consumed', book.places.length - 1, milli, id);
  };
  for (const { place: at, milli } of lines) {
    change(at, plan, -Math.min(milli, ownAt(book.places[at]!, plan)));
    write(book, 'consumed', at, -milli, id);
  }
  for (const { place: at, kept } of lines) {
    const place = book.places[at]!;
    for (const [lengthMm, widthMm] of kept) {
      const ratio = Math.min(1, (place.ratio * widthMm) / (place.widthMm ?? widthMm));
      make(
        { lot: place.lot, widthMm, ratio, flaw: null, hand: 0, reserved: [] },
        Math.round(lengthMm * 1000),
      );
    }
  }
  for (const [at, milli] of used) {
    const { flaw, hand, reserved, ...place } = book.places[at]!;
    if (flaw === null || hand === 0) continue;
    const rest = flaw[1] > milli ? ([Math.max(0, flaw[0] - milli), flaw[1] - milli] as const) : null;
    const moved = [...reserved];
    for (const own of moved) change(at, own.plan, -own.milli);
    write(book, 'consumed', at, -hand, id);
    make({ ...place, flaw: rest, hand: 0, reserved: [] }, hand);
    for (const own of moved) change(book.places.length - 1, own.plan, own.milli);
  }
  const items = new Set(lines.map(({ place }) => book.lots[book.places[place]!.lot]!.item));
  book.places.forEach((place, at) => {
    if (releasesRest && items.has(book.lots[place.lot]!.item)) change(at, plan, -ownAt(place, plan));
  });
  return true;
}

/** Strikes a cutting out of the book; false where what it brought into being is no longer there whole and free. */
export function takeBack(book: Book, id: number): boolean {
  const cutting = book.cuttings[id]!;
  // What the cutting itself moved to a place goes back with it, as far as its plan still has it there.
  const staying = (at: number) =>
    book.places[at]!.reserved.map(({ plan, milli }) => {
      const moved = cutting.changes.find((each) => each.place === at && each.plan === plan)?.milli ?? 0;
      return Math.max(0, milli - Math.max(0, moved));
    });
  const isGone = cutting.made.some(({ place: at, milli }) => {
    const { hand } = book.places[at]!;
    return hand < milli || total(staying(at)) > hand - milli;
  });
  if (cutting.isStruck || isGone) return false;
  cutting.isStruck = true;
  const letGo = new Map<number, number>();
  for (const { plan, place: at, milli } of cutting.changes.filter((each) => each.milli > 0)) {
    const released = Math.min(milli, ownAt(book.places[at]!, plan));
    reserve(book, book.places[at]!, plan, -released);
    letGo.set(plan, (letGo.get(plan) ?? 0) + milli - released);
  }
  for (const { cutting: of, place, milli } of book.entries) if (of === id) book.places[place]!.hand -= milli;
  for (const { plan, place: at, milli } of cutting.changes.filter((each) => each.milli < 0)) {
    const place = book.places[at]!;
    const less = Math.min(-milli, letGo.get(plan) ?? 0);
    letGo.set(plan, (letGo.get(plan) ?? 0) - less);
    const again = Math.min(-milli - less, place.hand - reservedAt(place));
    if (again > 0) reserve(book, place, plan, again);
  }
  return true;
}
