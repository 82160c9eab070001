/** Undoing in the book: the last change is struck out, where nothing that followed stands on it. */
import { type Book, reserve, reservedAt } from './model.ts';

/** Strikes the last change out of the book; false where what followed stands on it. */
export function undo(book: Book): boolean {
  if (book.last === null) return false;
  const { from, to, known, lost } = book.last;
  const own = book.entries.slice(from, to);
  const later = book.entries
    .slice(to)
    .filter(({ cutting, isStruck }) => !isStruck && (cutting === null || !book.cuttings[cutting]!.isStruck));
  const isStoodOn = own.some(({ kind, place: at, milli }) => {
    const place = book.places[at]!;
    const since = later.some((each) =>
      kind === 'received'
        ? book.places[each.place]!.lot === place.lot
        : each.place === at && each.kind !== 'writtenOff',
    );
    return since || reservedAt(place) > place.hand - milli;
  });
  const isAnew = lost.some(({ plan, place }) =>
    book.reservations
      .slice(known)
      .some((each) => each.plan === plan && each.item === book.lots[book.places[place]!.lot]!.item),
  );
  if (isStoodOn || isAnew) return false;
  for (const entry of own) {
    entry.isStruck = true;
    if (entry.kind === 'received') book.lots[book.places[entry.place]!.lot]!.isStruck = true;
    book.places[entry.place]!.hand -= entry.milli;
  }
  for (const { plan, place, milli } of [...lost].reverse()) reserve(book, book.places[place]!, plan, milli);
  book.last = null;
  return true;
}
