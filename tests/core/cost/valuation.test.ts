import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accountSum,
  booked,
  emptyAccount,
  imbalanceMinor,
  movementValues,
  type PricedMovement,
} from '../../../shared-core/cost/valuation.ts';
import type { MovementKind } from '../../../shared-core/stash/stash.ts';

const lot = { id: 'spring', receivedMilli: 3000, priceMinor: 1000 };
let nextRow = 1;
function move(kind: MovementKind, onHandMilli: number, more: Partial<PricedMovement> = {}): PricedMovement {
  return { id: `row ${nextRow++}`, kind, lotId: 'spring', lengthId: null, onHandMilli, ...more };
}

/** Price x left / received in whole numbers, half rounded up: what a maker would work out for what lies there. */
function exactWorthMinor(priceMinor: number, leftMilli: number, receivedMilli: number): number {
  const doubled = 2n * BigInt(priceMinor) * BigInt(leftMilli) + BigInt(receivedMilli);
  return Number(doubled / (2n * BigInt(receivedMilli)));
}

describe('what a movement of the ledger is worth', () => {
  it('shares ten for three metres so that the metres add up to ten', () => {
    expect(
      movementValues(
        [lot],
        [move('received', 3000), move('cut', -1000), move('cut', -1000), move('cut', -1000)],
      ),
    ).toEqual([1000, -333, -334, -333]);
  });

  it('gives back what a cutting took when it is taken back at once', () => {
    const values = movementValues([lot], [move('received', 3000), move('cut', -700), move('returned', 700)]);
    expect(values[1]).toBe(-233);
    expect(values[2]).toBe(233);
  });

  it('counts a narrow remnant by its share of the width', () => {
    const narrow = { lengthId: 'strip', worthRatio: 0.3 };
    expect(
      movementValues(
        [lot],
        [
          move('received', 3000),
          move('cut', -2000),
          move('returned', 2000, narrow),
          move('cut', -500, narrow),
        ],
      ),
    ).toEqual([1000, -667, 200, -50]);
  });

  it('takes a reversed cut out of the ledger, so that later cuts are worth what they would be without it', () => {
    const rows = [move('received', 3000), move('cut', -1000), move('cut', -1000)];
    const taken = rows[1];
    const back = move('reversed', 1000, { reverses: taken?.id ?? '' });
    // Alone the second cut is the first of the lot: 3.33, where after another it was 3.34.
    expect(movementValues([lot], rows)).toEqual([1000, -333, -334]);
    expect(movementValues([lot], [...rows, back])).toEqual([1000, 0, -333, 0]);
  });

  it('setting aside is worth nothing', () => {
    expect(movementValues([lot], [move('received', 3000), move('reserved', 0)])).toEqual([1000, 0]);
  });

  it('a movement of a lot that was not handed over is a mistake of the program', () => {
    expect(() => movementValues([lot], [{ ...move('cut', -1), lotId: 'autumn' }])).toThrow('no lot autumn');
  });

  it('received and found is consumed, written off and on hand, for any history whatever', () => {
    const step = fc.tuple(
      fc.constantFrom<MovementKind>('cut', 'returned', 'written off', 'corrected'),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            receivedMilli: fc.integer({ min: 1, max: 40_000_000 }),
            priceMinor: fc.integer({ min: 0, max: 9_999_999 }),
            steps: fc.array(step, { maxLength: 25 }),
          }),
          { minLength: 1, maxLength: 5 },
        ),
        (histories) => {
          const accounts = histories.map(({ receivedMilli, priceMinor, steps }) => {
            let onHandMilli = receivedMilli;
            const movements = [move('received', receivedMilli)];
            for (const [kind, share] of steps) {
              const isIn = kind === 'returned' || (kind === 'corrected' && share > 0.6);
              const changeMilli = Math.round((isIn ? receivedMilli / 3 : -onHandMilli) * share);
              if (changeMilli === 0) continue;
              onHandMilli += changeMilli;
              movements.push(move(kind, changeMilli));
            }
            const values = movementValues([{ id: 'spring', receivedMilli, priceMinor }], movements);
            const account = movements.reduce(
              (sum, { kind }, index) => booked(sum, kind, values[index] ?? Number.NaN),
              { ...emptyAccount, onHandMinor: exactWorthMinor(priceMinor, onHandMilli, receivedMilli) },
            );
            expect(account.receivedMinor).toBe(priceMinor);
            return account;
          });
          for (const account of [...accounts, accountSum(accounts)]) {
            expect(imbalanceMinor(account)).toBe(0);
            expect(Object.values(account).every(Number.isSafeInteger)).toBe(true);
          }
        },
      ),
      { seed: 31 },
    );
  });
});
