import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import type { FlowSources } from '../../../shared-core/flow/estimate.ts';
import {
  asPlanned,
  itemVariant,
  sideBySide,
  sizeVariants,
  type VariantResult,
} from '../../../shared-core/flow/variants.ts';
import {
  clothLot,
  item,
  layHere,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
} from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1400 });
const canvas = item('cloth', 'canvas', { widthMm: 1100 });
const twoSizes = plan({
  coatCount: 2,
  pieces: [piece('panel', rectangle(700, 1050))],
  sizes: [{ size: '44', coatCount: 1, pieces: [piece('panel', rectangle(830, 1050))] }],
});
const sources: FlowSources = {
  plan: twoSizes,
  shelf: [
    onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [9000], 18_000)),
    onShelf(canvas, clothLot('canvas', 'spring', 1100, [1500], 1500)),
  ],
  offers: [
    offer('canvas', 'by the 10 cm', { kind: 'by length', stepMm: 100, widthMm: 1100, leastMm: 0 }, 210),
  ],
  suppliers: [],
};

async function compare(variants: Parameters<typeof sideBySide>[1]): Promise<readonly VariantResult[]> {
  return sideBySide(sources, variants, layHere, solveHere, { signal: { aborted: false }, onDone: () => {} });
}

describe('the same coat side by side', () => {
  it('makes as many coats in each size as the plan makes in all', async () => {
    const [planned, own, larger] = await compare([asPlanned(twoSizes), ...sizeVariants(twoSizes)]);
    // Three panels one behind the other: 2 x 700 + 830, 3 x 700 and 3 x 830 mm.
    expect([planned?.usedMm, own?.usedMm, larger?.usedMm].map((mm) => Math.round(mm ?? 0))).toEqual([
      2230, 2100, 2490,
    ]);
    expect(own?.estimate.cost.perCoatMinor).toHaveLength(3);
    // At 20.00 a metre.
    expect(own?.coatMinor).toBe(1400);
    expect(larger?.coatMinor).toBe(1660);
    expect(own?.variant.name).toBe('size 40');
  });

  it('a size that waits without coats is compared too, and one size alone has nothing beside it', () => {
    const waiting = plan({ coatCount: 5, sizes: [{ size: '46', coatCount: 0, pieces: [] }] });
    expect(sizeVariants(waiting).map((variant) => [variant.name, variant.plan.coatCount])).toEqual([
      ['size 40', 5],
      ['size 46', 5],
    ]);
    expect(sizeVariants(plan())).toEqual([]);
  });

  it('another cloth is laid at its own width, from its own lots, and short of them at its offer', async () => {
    const [result] = await compare([itemVariant(twoSizes, 'shell', canvas)]);
    expect(result?.variant.name).toBe('shell: canvas');
    expect(result?.estimate.lays[0]?.job.lengths[0]?.widthMm).toBe(1100);
    // The two of 700 go on the 1500 mm on hand; the one of 830 is bought: 9 steps of 10 cm.
    expect(result?.toBuyMinor).toBe(9 * 210);
    expect(twoSizes.slots[0]?.itemId).toBe('shell item');
  });

  it('stopped half-way, it gives the variants that are whole and begins no other', async () => {
    const signal = { aborted: false };
    const done: string[] = [];
    const results = await sideBySide(
      sources,
      [asPlanned(twoSizes), ...sizeVariants(twoSizes)],
      layHere,
      solveHere,
      {
        signal,
        onDone: ({ variant }, doneCount) => {
          done.push(`${doneCount} ${variant.name}`);
          signal.aborted = doneCount === 2;
        },
      },
    );
    expect(done).toEqual(['1 as planned', '2 size 40']);
    expect(results).toHaveLength(2);
  });

  it('a variant that is stopped within is left out rather than shown half laid', async () => {
    const signal = { aborted: false };
    const results = await sideBySide(
      sources,
      [asPlanned(twoSizes)],
      async () => {
        signal.aborted = true;
        throw new Error('stopped before a first lay was found');
      },
      solveHere,
      { signal, onDone: () => {} },
    );
    expect(results).toEqual([]);
  });

  it('a lay that fails for another reason is told', async () => {
    const failing = sideBySide(
      sources,
      [asPlanned(twoSizes)],
      async () => {
        throw new Error('the shell is wider than the cloth');
      },
      solveHere,
      { signal: { aborted: false }, onDone: () => {} },
    );
    await expect(failing).rejects.toThrow('wider than the cloth');
  });
});
