/**
 * What each row of the ledger is worth, so that money adds up to the last minor unit however a lot is cut about.
 *
 * The rule: what is left of a lot is worth price x left / received, rounded once, half away from zero. A movement is
 * worth what its lot was worth after it less what it was worth before it. The roundings of one lot thus cancel out:
 * whatever happened in between, all its movements together are worth what is on hand, and
 *
 *   received + found by counting = consumed + written off + lost by counting + on hand
 *
 * holds exactly, for a lot, for an item and for the whole stash. Lots are never mixed: what was cut from a lot is
 * worth what that lot cost, and cover takes lots oldest first. A movement that was reversed is worth nothing, and so is
 * the one that reverses it: all others are worth what they would be had it never been.
 *
 * "Left" counts a narrow remnant by its share (worthRatio), as the stash's own figures do.
 */
import { wholeShareMinor } from '../measure/money/money.ts';
import type { LengthId, LotId, MovementKind } from '../stash/stash.ts';

export interface PricedLot {
  readonly id: LotId;
  readonly receivedMilli: number;
  readonly priceMinor: number;
}

/** A row of the ledger as far as it is worth anything. */
export interface PricedMovement {
  readonly id: string;
  readonly kind: MovementKind;
  readonly lotId: LotId;
  readonly lengthId: LengthId | null;
  readonly onHandMilli: number;
  /** The movement that it takes back; absent: none. */
  readonly reverses?: string;
  /** Of its length, where a millimetre of that carries less than its share of the lot's price; absent: 1. */
  readonly worthRatio?: number;
}

/**
 * The change of value that each movement made, in minor units, in the order given. movements: whole histories of
 * their lots, in the order they were written. Throws for a movement of a lot that is not among the lots.
 */
export function movementValues(
  lots: readonly PricedLot[],
  movements: readonly PricedMovement[],
): readonly number[] {
  const states = new Map(lots.map((lot) => [lot.id, { lot, worthMilli: 0, valueMinor: 0 }]));
  const lengthsMilli = new Map<LengthId, number>();
  const reversed = new Set(movements.flatMap(({ reverses }) => reverses ?? []));
  return movements.map((movement) => {
    if (movement.reverses !== undefined || reversed.has(movement.id)) return 0;
    const state = states.get(movement.lotId);
    if (!state) throw new RangeError(`no lot ${movement.lotId} to value a movement by`);
    state.worthMilli += worthChangeMilli(movement, lengthsMilli);
    const beforeMinor = state.valueMinor;
    state.valueMinor = wholeShareMinor(state.lot.priceMinor, state.worthMilli, state.lot.receivedMilli);
    return state.valueMinor - beforeMinor;
  });
}

function worthChangeMilli(movement: PricedMovement, lengthsMilli: Map<LengthId, number>): number {
  const { lengthId, onHandMilli, worthRatio = 1 } = movement;
  if (lengthId === null || worthRatio === 1) return onHandMilli;
  const beforeMilli = lengthsMilli.get(lengthId) ?? 0;
  const afterMilli = beforeMilli + onHandMilli;
  lengthsMilli.set(lengthId, afterMilli);
  return Math.round(worthRatio * afterMilli) - Math.round(worthRatio * beforeMilli);
}

/** Where the money of some lots went. received + corrected = consumed + writtenOff + onHand wherever all is well. */
export interface Account {
  readonly receivedMinor: number;
  /** Cut for coats, less what came back. */
  readonly consumedMinor: number;
  readonly writtenOffMinor: number;
  /** Found by counting, less what was lost. */
  readonly correctedMinor: number;
  /** What lies on the shelf is worth: by what is there, not by what happened. */
  readonly onHandMinor: number;
}

export const emptyAccount: Account = {
  receivedMinor: 0,
  consumedMinor: 0,
  writtenOffMinor: 0,
  correctedMinor: 0,
  onHandMinor: 0,
};

/** The account with one movement more; what lies on the shelf is not told by movements and stays. */
export function booked(account: Account, kind: MovementKind, valueMinor: number): Account {
  switch (kind) {
    case 'received':
      return { ...account, receivedMinor: account.receivedMinor + valueMinor };
    case 'cut':
    case 'returned':
      return { ...account, consumedMinor: account.consumedMinor - valueMinor };
    case 'written off':
      return { ...account, writtenOffMinor: account.writtenOffMinor - valueMinor };
    case 'corrected':
      return { ...account, correctedMinor: account.correctedMinor + valueMinor };
    case 'reversed':
    case 'reserved':
    case 'released':
      return account;
    default:
      return kind satisfies never;
  }
}

export function accountSum(accounts: readonly Account[]): Account {
  return accounts.reduce(
    (sum, account) => ({
      receivedMinor: sum.receivedMinor + account.receivedMinor,
      consumedMinor: sum.consumedMinor + account.consumedMinor,
      writtenOffMinor: sum.writtenOffMinor + account.writtenOffMinor,
      correctedMinor: sum.correctedMinor + account.correctedMinor,
      onHandMinor: sum.onHandMinor + account.onHandMinor,
    }),
    emptyAccount,
  );
}

/** What does not add up between the ledger and the shelf, in minor units: 0 where all is well. */
export function imbalanceMinor(account: Account): number {
  const { receivedMinor, consumedMinor, writtenOffMinor, correctedMinor, onHandMinor } = account;
  return receivedMinor + correctedMinor - consumedMinor - writtenOffMinor - onHandMinor;
}
