/**
 * The stash: items, the lots they were bought in, the physical lengths on the shelf, and the ledger of movements.
 * Amounts are integer thousandths of the kind's unit (mm, g, m of thread, pieces), so sums are exact.
 */
import { say } from '../wording/say.ts';
import { codeWords } from '../wording/code-words.ts';
import type { FactsOf, ItemKind } from './kinds.ts';

declare const brand: unique symbol;
type Id<Name extends string> = string & { readonly [brand]?: Name };
export type ItemId = Id<'item'>;
export type LotId = Id<'lot'>;
export type LengthId = Id<'length'>;
export type OfferId = Id<'offer'>;
export type PlanId = Id<'plan'>;

interface ItemBase {
  readonly id: ItemId;
  readonly name: string;
  readonly colour: string;
  /** Where it lies in the workshop: "shelf B, left". */
  readonly place: string;
  readonly notes: string;
  /** What the maker typed for a fact, by fact name, so that it is shown back as typed. */
  readonly typed: Readonly<Record<string, string>>;
}

/** A thing the maker knows by name, of one kind. */
export type Item = {
  [Kind in ItemKind]: ItemBase & { readonly kind: Kind; readonly facts: FactsOf<Kind> };
}[ItemKind];
export type ItemOf<Kind extends ItemKind> = Extract<Item, { kind: Kind }>;

/** One purchase of an item. */
export interface Lot {
  readonly id: LotId;
  readonly itemId: ItemId;
  /** ISO date. */
  readonly receivedOn: string;
  readonly supplier: string;
  readonly dyeLot: string;
  /** What was received, thousandths of the kind's unit, above 0. */
  readonly receivedMilli: number;
  /** What was paid for all of it. */
  readonly priceMinor: number;
}

export interface Flaw {
  readonly x: number;
  readonly y: number;
  readonly widthX: number;
  readonly widthY: number;
}

/** One physical continuous piece of a lot on the shelf. Its length is what its movements add up to. */
export interface Length {
  readonly id: LengthId;
  readonly lotId: LotId;
  readonly widthMm: number;
  readonly flaws: readonly Flaw[];
  /** "roll", "cut", "remnant", "sheet": what the maker calls it. */
  readonly form: 'roll' | 'cut' | 'remnant' | 'sheet';
  /** The share of its lot's price that a millimetre carries, where that is less than 1: a remnant narrower than its cloth. */
  readonly worthRatio?: number;
  /** Its first wash is over: it is as long and wide as it says, and shrinks no more. */
  readonly isWashed?: true;
}

export type MovementKind =
  | 'received'
  | 'reserved'
  | 'released'
  | 'cut'
  | 'returned'
  /** Takes one row back, of a cutting or of a change that is undone: as if that had never been. */
  | 'reversed'
  | 'corrected'
  | 'written off';

/** An immutable row of the ledger. On hand and reserved are sums over these, never stored. */
export interface Movement {
  readonly id: string;
  readonly at: string;
  readonly kind: MovementKind;
  readonly lotId: LotId;
  /** Set for kinds that lie on the shelf as lengths. */
  readonly lengthId: LengthId | null;
  /** Change of what is on hand, thousandths; 0 for reserved and released. */
  readonly onHandMilli: number;
  /** Change of what is reserved, thousandths; 0 for all but reserved, released and a cut that uses a reservation. */
  readonly reservedMilli: number;
  readonly planId: PlanId | null;
  readonly reason: string;
  /** The cutting that it is a part of; absent where it is none. */
  readonly cuttingId?: string;
  /** The movement that a reversed one takes back; absent for all others. */
  readonly reverses?: string;
}

/** "remnant", "washed remnant". */
export function lengthName({ form, isWashed }: Pick<Length, 'form' | 'isWashed'>): string {
  return isWashed ? say('stash.washed-form', { form: codeWords(form) }) : codeWords(form);
}

export const milli = 1000;

/** Thousandths as a number of the kind's unit. */
export function fromMilli(amountMilli: number): number {
  return amountMilli / milli;
}

/** A number of the kind's unit as thousandths, rounded once. Throws when it is not finite or too large. */
export function toMilli(amount: number): number {
  const rounded = Math.round(amount * milli);
  if (!Number.isSafeInteger(rounded)) throw new RangeError(`not an amount: ${amount}`);
  return rounded;
}

export function onHandMilli(movements: readonly Movement[]): number {
  return movements.reduce((sum, movement) => sum + movement.onHandMilli, 0);
}

export function reservedMilli(movements: readonly Movement[]): number {
  return movements.reduce((sum, movement) => sum + movement.reservedMilli, 0);
}

/** A length with what is on it, in mm. */
export interface LengthOnShelf extends Length {
  readonly onHandMm: number;
  readonly reservedMm: number;
}

/** A lot with what is left of it, in the kind's unit, and its physical lengths where the kind has them. */
export interface LotOnShelf extends Lot {
  readonly onHand: number;
  readonly reserved: number;
  readonly lengths: readonly LengthOnShelf[];
}

/** An item with all that is on the shelf of it, oldest lot first. */
export interface ItemOnShelf {
  readonly item: Item;
  readonly lots: readonly LotOnShelf[];
}

export function itemOnHand(shelf: ItemOnShelf): number {
  return shelf.lots.reduce((sum, lot) => sum + lot.onHand, 0);
}

/** What is left of a lot as its price is shared: its amount, narrow remnants counted by their share. */
export function lotWorth(lot: LotOnShelf): number {
  const lessMm = lot.lengths.reduce(
    (sum, length) => sum + length.onHandMm * (1 - (length.worthRatio ?? 1)),
    0,
  );
  return lot.onHand - lessMm;
}

export function itemFree(shelf: ItemOnShelf): number {
  return shelf.lots.reduce((sum, lot) => sum + Math.max(0, lot.onHand - lot.reserved), 0);
}
