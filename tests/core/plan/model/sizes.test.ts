import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../../main/services/threads/solver.ts';
import { estimate } from '../../../../shared-core/flow/estimate.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import {
  addSize,
  chooseSize,
  coatTotal,
  plansBySize,
  removeSize,
  setSizeCount,
  sizedPieceName,
} from '../../../../shared-core/plan/model/sizes.ts';
import type { Edited } from '../../../../shared-core/plan/edits/edited.ts';
import type { Result } from '../../../../shared-core/measure/problem.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import {
  clothLot,
  item,
  layHere,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../../fixtures/small-workshop.ts';

const forty = plan({
  coatCount: 3,
  slots: [slot('shell', 'cloth'), slot('snaps', 'fastening', { amountPerCoat: 7 })],
  pieces: [piece('back', rectangle(700, 520))],
});
const fortyTwo = { ...forty, size: '42', name: 'Lapwing 42', pieces: [piece('back', rectangle(730, 545))] };

function done(outcome: Result<Edited>) {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ where, what }) => `${where} ${what}`).join());
  return outcome.value.plan;
}

const both = done(addSize(forty, fortyTwo, 2));

describe('a style in several sizes', () => {
  it('is laid and counted in all its sizes at once', async () => {
    expect(coatTotal(both)).toBe(5);
    const [shell, snaps] = requirement(both, new Map());
    expect(shell?.kind === 'shapes' && shell.shapes.map(({ name, count }) => [name, count])).toEqual([
      ['back', 3],
      ['back, 42', 2],
    ]);
    expect(shell?.kind === 'shapes' && shell.areaMm2).toBeCloseTo(3 * 700 * 520 + 2 * 730 * 545, 3);
    expect(snaps?.kind === 'amount' && snaps.amount).toBe(35);
    const shelf = [
      onShelf(
        item('cloth', 'shell item', { widthMm: 1400 }),
        clothLot('shell item', 'autumn', 1400, [9000], 9000),
      ),
    ];
    const result = await estimate({ plan: both, shelf, offers: [], suppliers: [] }, layHere, solveHere);
    expect(result.lays[0]?.result.placements).toHaveLength(5);
    expect(result.cost.perCoatMinor).toHaveLength(5);
    expect(result.lays[0]?.job.shapes.map((shape) => sizedPieceName(both, shape.id))).toEqual([
      'back',
      'back, 42',
    ]);
  });

  it('leaves a size that is not made out of the batch, and keeps it', () => {
    const none = done(setSizeCount(both, '42', 0));
    expect(coatTotal(none)).toBe(3);
    expect(plansBySize(none).map((each) => each.size)).toEqual(['40']);
    expect(none.sizes).toHaveLength(1);
  });

  it('keeps what was measured with the size that it was measured on', () => {
    const weighed = { ...both, measured: { massG: 1180, packedCm3: null, clo: null } };
    const turned = done(chooseSize(weighed, '42'));
    expect(turned.measured).toBeUndefined();
    expect(plansBySize(turned).map(({ size, measured }) => [size, measured?.massG])).toEqual([
      ['42', undefined],
      ['40', 1180],
    ]);
    expect(done(chooseSize(turned, '40'))).toEqual(weighed);
  });

  it('brings a size to hand and back without a change', () => {
    const turned = done(chooseSize(both, '42'));
    expect(turned.size).toBe('42');
    expect(turned.pieces).toEqual(fortyTwo.pieces);
    expect(coatTotal(turned)).toBe(5);
    expect(done(chooseSize(turned, '40'))).toEqual(both);
  });

  it('makes a size that was only kept in place of the one at hand, and back', () => {
    const kept = done(setSizeCount(both, '42', 0));
    const outcome = chooseSize(kept, '42');
    expect(outcome.ok && outcome.value.said).toBe('Size 42 is made in place of size 40.');
    const turned = done(outcome);
    expect([turned.size, turned.coatCount, turned.sizes?.[0]?.coatCount]).toEqual(['42', kept.coatCount, 0]);
    expect(done(chooseSize(turned, '40'))).toEqual(kept);
  });

  it('takes a size out', () => {
    expect(done(removeSize(both, '42')).sizes).toEqual([]);
  });

  it.each([
    ['a size twice', () => addSize(both, fortyTwo, 1), 'is in the plan already'],
    ['a size without a name', () => addSize(forty, { ...fortyTwo, size: ' ' }, 1), 'names no size'],
    ['no coats of a new size', () => addSize(forty, fortyTwo, 0), 'is 0'],
    ['a size that is not there', () => chooseSize(both, '48'), 'is not in the plan'],
    ['half a coat', () => setSizeCount(both, '42', 0.5), 'is 0.5'],
    [
      'a size of another style',
      () =>
        addSize(
          forty,
          {
            ...fortyTwo,
            pieces: [piece('yoke', rectangle(90, 80), { cutFrom: [{ slotId: 'velvet', plyCount: 1 }] })],
          },
          1,
        ),
      'velvet',
    ],
  ])('refuses %s', (_, change, what) => {
    const outcome = change();
    expect(outcome.ok).toBe(false);
    expect(outcome.ok ? '' : outcome.problems[0]?.what).toContain(what);
  });

  it('names the size in which a piece is wrong', () => {
    expect(planProblems(both)).toEqual([]);
    const wrong = {
      ...both,
      sizes: [
        {
          size: '42',
          coatCount: 1,
          pieces: [piece('back', rectangle(730, 545), { cutCount: 3, isMirrored: true })],
        },
      ],
    };
    expect(planProblems(wrong)[0]?.where).toMatch(/^Size 42: /);
    expect(planProblems({ ...both, sizes: [{ size: '40', coatCount: 1, pieces: [] }] })[0]?.what).toBe(
      'is in the plan twice',
    );
  });
});
