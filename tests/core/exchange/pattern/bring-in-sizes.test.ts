import { describe, expect, it } from 'vitest';
import type { BroughtPiece } from '../../../../shared-core/exchange/pattern/bring-in.ts';
import { bringInSizes, type FoundSize } from '../../../../shared-core/exchange/pattern/bring-in-sizes.ts';
import type { FoundPiece } from '../../../../shared-core/exchange/pattern/pattern.ts';
import { ringBox } from '../../../../shared-core/geometry/ring.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import type { CoatPlan, Piece } from '../../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { line, metric, patternText, polyline, wellRead, words } from '../dxf-text.ts';

/** Two sizes of a yoke and of a tab, and a loop for both. */
const file = wellRead(
  patternText({
    blocks: {
      ...Object.fromEntries(
        [
          ['36', 'Yoke', 410],
          ['36', 'Tab', 130],
          ['40', 'Yoke', 452],
          ['40', 'Tab', 141],
          ['', 'Loop', 95],
        ].map(([size, name, longMm]) => [
          `${name}${size}`,
          [
            ...words(1, `Piece Name: ${name}`),
            ...(size === '' ? [] : words(1, `Size: ${size}`)),
            ...polyline(1, [
              [0, 0],
              [Number(longMm), 0],
              [Number(longMm), 60],
              [0, 60],
            ]),
            ...line(7, [9, 9], [70, 9]),
          ],
        ]),
      ),
    },
    entities: metric,
  }),
);
const ofSize = (size: string): FoundSize => ({
  size,
  pieces: file.pieces.filter((piece) => piece.size === '' || piece.size === size),
});
const brought = (found: FoundPiece): BroughtPiece => ({
  found,
  name: found.name,
  replacesId: null,
  slotIds: ['shell'],
});
const longMm = (pieces: readonly Piece[], name: string) => {
  const box = ringBox(seamRing(pieces.find((piece) => piece.name === name)!.outline));
  return box.maxX - box.minX;
};

function edited(
  plan: CoatPlan,
  ...more: Parameters<typeof bringInSizes> extends [unknown, ...infer R] ? R : never
) {
  const outcome = bringInSizes(plan, ...more);
  if (!outcome.ok) throw new Error(outcome.problems.map(problemSentence).join(' '));
  return outcome.value;
}

describe('a file of two sizes', () => {
  const empty = newPlan('plan', 'Ember waistcoat', '');
  const own = ofSize('36').pieces.map(brought);
  const first = edited(empty, '36', own, [ofSize('40')]);

  it('brings one to hand and keeps the other beside it until its number is said', () => {
    const { plan, said } = first;
    expect(said).toBe('Yoke, Tab and Loop brought in. Size 40 of the file stands beside it.');
    expect([plan.size, plan.sizes?.map(({ size, coatCount }) => [size, coatCount])]).toEqual([
      '36',
      [['40', 0]],
    ]);
    expect(longMm(plan.pieces, 'Yoke')).toBeCloseTo(410, 6);
    expect(longMm(plan.sizes![0]!.pieces, 'Yoke')).toBeCloseTo(452, 6);
    expect(longMm(plan.sizes![0]!.pieces, 'Tab')).toBeCloseTo(141, 6);
    expect(plan.sizes![0]!.pieces.map(({ id }) => id)).toEqual(plan.pieces.map(({ id }) => id));
    expect(planProblems(plan)).toEqual([]);
  });

  it('replaces a piece in both, and leaves what the file does not have', () => {
    const made: CoatPlan = {
      ...first.plan,
      sizes: first.plan.sizes!.map((size) => ({ ...size, coatCount: 3 })),
    };
    const yoke = { ...brought(ofSize('40').pieces.find(({ name }) => name === 'Yoke')!), replacesId: 'yoke' };
    const { plan } = edited(made, '40', [yoke], [ofSize('36'), ofSize('40')]);
    // The file's 40 comes to hand in a plan of size 36, and its own size 40 takes the same yoke.
    expect(longMm(plan.pieces, 'Yoke')).toBeCloseTo(452, 6);
    expect(longMm(plan.pieces, 'Tab')).toBeCloseTo(130, 6);
    expect(plan.sizes?.map(({ size, coatCount }) => [size, coatCount])).toEqual([['40', 3]]);
    expect(longMm(plan.sizes![0]!.pieces, 'Yoke')).toBeCloseTo(452, 6);
    expect(longMm(plan.sizes![0]!.pieces, 'Tab')).toBeCloseTo(141, 6);
  });

  it('is refused whole where one size cannot take a piece, and says which', () => {
    const lacking = {
      ...first.plan,
      sizes: [{ ...first.plan.sizes![0]!, pieces: first.plan.pieces.filter(({ id }) => id !== 'tab') }],
    };
    const tab = { ...brought(own[1]!.found), replacesId: 'tab' };
    const outcome = bringInSizes(lacking, '36', [tab], [ofSize('40')]);
    expect(outcome.ok ? [] : outcome.problems.map(problemSentence)).toEqual([
      'Size 40: The piece tab is not in the plan. Choose a piece of the plan.',
    ]);
  });

  it('of which no piece has the name of one at hand brings no size', () => {
    const { plan, said } = edited(empty, '36', own, [{ size: '44', pieces: [] }]);
    expect(plan.sizes).toBeUndefined();
    expect(said).toBe('Yoke, Tab and Loop brought in.');
  });
});
