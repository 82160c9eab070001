import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fasteningLengthMm,
  fasteningNeed,
  defaultSeparatingZipsMm,
  zipToBuy,
} from '../../../shared-core/requirement/fastenings.ts';
import { slot } from '../../fixtures/small-workshop.ts';
import { nothingChosen, smallCoat } from './small-coat.ts';

describe('fastenings', () => {
  it('a front zip is as long as the front edge, less what it stays short of it', () => {
    const zip = slot('zip', 'fastening', {
      alongEdges: [{ pieceId: 'front', edge: 'front edge' }],
      shorterByMm: 35,
    });
    const need = fasteningNeed(smallCoat({ coatCount: 4 }), zip, nothingChosen);
    expect([need.amount, need.wantedLengthMm]).toEqual([4, 665]);
    expect(need.basis.map(({ kind }) => kind)).toEqual(['rule of thumb', 'computed']);
  });
  it('a cord through the whole hem runs over the fold of the back and along both fronts', () => {
    const front = { pieceId: 'front', edge: 'hem' };
    const cord = slot('cord', 'fastening', { alongEdges: [front, { pieceId: 'back', edge: 'hem' }, front] });
    expect(fasteningLengthMm(smallCoat(), cord)).toBeCloseTo(520 + 2 * 240, 6);
  });
  it('a cord on left and right alike counts both fronts, and its ends stick out', () => {
    const cord = slot('cord', 'fastening', {
      alongEdges: [
        { pieceId: 'front', edge: 'hem' },
        { pieceId: 'back', edge: 'hem' },
      ],
      alongEveryCopy: true,
      shorterByMm: -310,
    });
    expect(fasteningLengthMm(smallCoat(), cord)).toBeCloseTo(520 + 2 * 240 + 310, 6);
    const need = fasteningNeed(smallCoat(), cord, nothingChosen);
    expect(need.basis.at(-1)?.how).toBe('length of the edges it runs along, and {length 310} for the ends');
  });
  it('an elastic is cut to its share of what it gathers', () => {
    const elastic = slot('elastic', 'fastening', {
      alongEdges: [{ pieceId: 'back', edge: 'hem' }],
      lengthRatio: 0.8,
      shorterByMm: -20,
    });
    expect(fasteningLengthMm(smallCoat(), elastic)).toBeCloseTo(0.8 * 520 + 20, 6);
    expect(fasteningNeed(smallCoat(), elastic, nothingChosen).basis.at(-1)?.how).toBe(
      '80 % of the length of the edges it runs along, and {length 20} for the ends',
    );
  });
  it('in a size without the piece its length is not known', () => {
    const zip = slot('zip', 'fastening', { alongEdges: [{ pieceId: 'front', edge: 'front edge' }] });
    expect(fasteningLengthMm(smallCoat({ pieces: [] }), zip)).toBeNull();
  });
  it('an edge away from the fold counts once', () => {
    const tape = slot('tape', 'fastening', { alongEdges: [{ pieceId: 'back', edge: 'side' }] });
    expect(fasteningLengthMm(smallCoat(), tape)).toBeCloseTo(700, 6);
  });
  it('nine snaps for each of three coats are 27, of no length', () => {
    const need = fasteningNeed(
      smallCoat({ coatCount: 3 }),
      slot('snaps', 'fastening', { amountPerCoat: 9 }),
      nothingChosen,
    );
    expect([need.amount, need.wantedLengthMm, need.basis[0]?.kind]).toEqual([27, null, 'measured']);
  });
});

describe('which zip to buy', () => {
  it('takes the shortest that is long enough and says what to shorten it to', () => {
    expect(zipToBuy(665, [610, 711, 762])).toEqual({ ok: true, value: { soldMm: 711, shortenToMm: 665 } });
  });
  it('leaves a zip of the right length as it is', () => {
    expect(zipToBuy(610, [610, 711])).toEqual({ ok: true, value: { soldMm: 610, shortenToMm: null } });
  });
  it('says so when no zip is long enough', () => {
    const found = zipToBuy(983, [610, 711]);
    expect(found.ok ? '' : found.problems[0]?.what).toBe('of 983 mm is longer than any that is sold');
  });
  it('a child’s front takes a zip of 10 in or 25 cm, and a maker in centimetres one of the 5 cm steps', () => {
    const bought = (wantedMm: number, system: 'metric' | 'imperial') => {
      const found = zipToBuy(wantedMm, defaultSeparatingZipsMm[system]);
      return found.ok ? found.value.soldMm : found.problems;
    };
    expect([bought(243, 'imperial'), bought(243, 'metric')]).toEqual([254, 250]);
    expect([bought(631, 'imperial'), bought(631, 'metric')]).toEqual([26 * 25.4, 650]);
  });
  it('never buys one that is too short, nor one longer than another that would do', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 914, noNaN: true }), (wantedMm) => {
        for (const defaultMm of Object.values(defaultSeparatingZipsMm)) {
          const found = zipToBuy(wantedMm, defaultMm);
          if (!found.ok) throw new Error('a usual zip is 914.4 mm long and more');
          expect(found.value.soldMm).toBeGreaterThanOrEqual(wantedMm - 1);
          for (const soldMm of defaultMm) {
            expect(soldMm < wantedMm - 1 || soldMm >= found.value.soldMm).toBe(true);
          }
        }
      }),
    );
  });
});
