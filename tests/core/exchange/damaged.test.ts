import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fenwalkCoat } from '../../../shared-core/demo/coat.ts';
import { patternFormats, readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import { defaultChoices, defaultLimits } from '../../../shared-core/exchange/pattern/pattern.ts';
import { pieceProblems } from '../../../shared-core/plan/validation/outline-problems.ts';
import { pieceOf } from '../../../shared-core/exchange/pattern/found-piece.ts';
import { bytesOf } from './dxf-text.ts';

const coat = fenwalkCoat({});
const plan = {
  ...coat,
  pieces: [
    coat.pieces.find(({ foldEdge }) => foldEdge !== null)!,
    coat.pieces.find(({ name }) => name === 'Cuff')!,
  ],
};
const limits = { ...defaultLimits, entityCount: 3000, pointCount: 9000 };

/** One slip of a disk or a hand: at this share of the file, that many letters become others. */
const slip = fc.record({
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  goneCount: fc.integer({ min: 0, max: 40 }),
  instead: fc.oneof(
    fc.constantFrom(
      '',
      '0\n',
      'NaN',
      '-',
      '1e308',
      '\n\n',
      '<g>',
      '</g>',
      '"',
      '&',
      'A',
      '0\nENDSEC\n',
      '\u0000',
      '\ud83e\udea1',
      '999999999',
    ),
    fc.string({ maxLength: 12 }),
  ),
});

it.each(patternFormats.map((format) => [format.name, format] as const))(
  'a damaged %s never stops the work: it says what is wrong, and what is left of it is sound',
  (_, format) => {
    const whole = format.write(plan);
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 4 }), (slips) => {
        let text = whole;
        for (const { share, goneCount, instead } of slips) {
          const at = Math.floor(share * text.length);
          text = text.slice(0, at) + instead + text.slice(at + goneCount);
        }
        const { found, problems } = readPattern(bytesOf(text), `x${format.ending}`, limits, defaultChoices);
        if (found === null) expect(problems.length).toBeGreaterThan(0);
        for (const problem of problems)
          expect(Object.values(problem).every((words) => words.trim() !== '')).toBe(true);
        for (const piece of found?.pieces ?? [])
          expect(
            pieceProblems(
              pieceOf(piece, { id: 'p', name: piece.name, cutFrom: [], turns: 'grain', quilted: null }),
            ),
          ).toEqual([]);
      }),
      { numRuns: 150, seed: 1889 },
    );
  },
);

it('bytes of any kind never stop the work', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), fc.constantFrom('a.dxf', 'a.svg', 'a'), (bytes, name) => {
      const { found, problems } = readPattern(bytes, name, limits, defaultChoices);
      expect(found).toBeNull();
      expect(problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 200, seed: 1889 },
  );
});
