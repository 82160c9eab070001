/** What lies on the demo workshop's shelves, and the ledger that says how it came to be so. */
import { type Length, type Lot, type Movement, toMilli } from '../stash/stash.ts';
import { clothLots } from './cloth-lots.ts';
import type { GivenLot } from './given-lot.ts';
import { otherLots } from './other-lots.ts';

const givenLots: readonly GivenLot[] = [...clothLots, ...otherLots];

function receivedOf(given: GivenLot): number {
  return given.lengths?.reduce((sum, length) => sum + length.receivedMm, 0) ?? given.received ?? 0;
}

export function demoLots(): Lot[] {
  return givenLots.map((given) => ({
    id: given.id,
    itemId: given.itemId,
    receivedOn: given.receivedOn,
    supplier: given.supplier,
    dyeLot: given.dyeLot ?? '',
    receivedMilli: toMilli(receivedOf(given)),
    priceMinor: given.priceMinor,
  }));
}

export function demoLengths(): Length[] {
  return givenLots.flatMap((given) =>
    (given.lengths ?? []).map(({ id, widthMm, form, flaws = [] }) => ({
      id,
      lotId: given.id,
      widthMm,
      flaws,
      form,
    })),
  );
}

/** Rows in the order they were written. */
export function demoMovements(): Movement[] {
  const rows = givenLots.flatMap((given) =>
    given.lengths
      ? given.lengths.flatMap((length) =>
          history(given, length.id, length.receivedMm, length.cutMm ?? 0, length.cutOn ?? given.receivedOn),
        )
      : history(given, null, given.received ?? 0, given.used ?? 0, given.usedOn ?? given.receivedOn),
  );
  return rows
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map((row, index) => ({ ...row, id: `movement-${String(index + 1).padStart(3, '0')}` }));
}

function history(
  given: GivenLot,
  lengthId: string | null,
  received: number,
  used: number,
  usedOn: string,
): Omit<Movement, 'id'>[] {
  const row = { lotId: given.id, lengthId, reservedMilli: 0, planId: null };
  const rows: Omit<Movement, 'id'>[] = [
    {
      ...row,
      at: `${given.receivedOn}T10:20:00.000Z`,
      kind: 'received',
      onHandMilli: toMilli(received),
      reason: `bought from ${given.supplier}`,
    },
  ];
  if (used > 0) {
    rows.push({
      ...row,
      at: `${usedOn}T15:45:00.000Z`,
      kind: 'cut',
      onHandMilli: -toMilli(used),
      reason: 'used for an earlier coat',
    });
  }
  return rows;
}
