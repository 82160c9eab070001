import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotById } from '../../../../shared-core/plan/model/coat-plan.ts';
import { threadNeed } from '../../../../shared-core/requirement/thread/thread.ts';
import { threadByColour, threadUse } from '../../../../shared-core/requirement/thread/thread-use.ts';
import {
  spoolCount,
  stitchThreads,
  threadRatioByGeometry,
  threadSplit,
} from '../../../../shared-core/requirement/thread/thread-ratios.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import {
  back,
  filled,
  front,
  nothingChosen,
  quiltedCoat,
  sideSeam,
  smallCoat,
  stuffedCoat,
} from '../small-coat.ts';

const threadM = (coat: ReturnType<typeof smallCoat>, items = nothingChosen) =>
  threadNeed(coat, slotById(coat, 'thread'), items).amount;

const thinShell = item('cloth', 'taffeta', { thicknessMm: 0.5 });
const padded = (arealMassGPerM2: number) =>
  filled({ shell: thinShell, batting: item('batting', 'fleece', { arealMassGPerM2 }) });

describe('thread for seams', () => {
  it('a side seam is sewn once, though both front and back have its edge', () => {
    expect(threadM(smallCoat())).toBeCloseTo(1.4 * 2.5, 9);
  });
  it('seven coats take seven times the thread of one', () => {
    expect(threadM(smallCoat({ coatCount: 7 }))).toBeCloseTo(7 * 1.4 * 2.5, 9);
  });
  it('a lining cut from the same pieces is sewn on its own', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'lining', plyCount: 1 },
    ];
    const coat = smallCoat({
      slots: [slot('shell', 'cloth'), slot('lining', 'cloth'), slot('thread', 'thread')],
      pieces: [back({ cutFrom }), front({ cutFrom })],
    });
    expect(threadM(coat)).toBeCloseTo(2 * 1.4 * 2.5, 9);
  });
  it('shell and batting that are quilted together are one sewing', () => {
    const need = threadNeed(quiltedCoat(), slotById(quiltedCoat(), 'thread'), nothingChosen);
    expect(need.parts.find((part) => part.what.startsWith('Side'))?.amount).toBeCloseTo(1.4 * 2.5, 9);
  });
  it('the two cloths of a stuffed coat are one sewing, as their channels join them', () => {
    const need = threadNeed(stuffedCoat(), slotById(stuffedCoat(), 'thread'), nothingChosen);
    expect(need.parts.find((part) => part.what.startsWith('Side'))?.amount).toBeCloseTo(1.4 * 2.5, 9);
  });
  it('a seam on a hem by itself is as long as the edge', () => {
    const hem = { ...sideSeam, id: 'hem seam', firstSide: [{ pieceId: 'front', edge: 'hem' }] };
    const outline = front().outline;
    const hemmed = {
      ...outline,
      edges: outline.edges.map((edge) => (edge.name === 'hem' ? { ...edge, seam: 'hem seam' } : edge)),
    };
    const coat = smallCoat({ pieces: [front({ outline: hemmed })], seams: [hem] });
    expect(threadM(coat)).toBeCloseTo(2 * 0.24 * 2.5, 9);
  });
  it('two rows of topstitching are two more seams on the outside only', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'lining', plyCount: 1 },
    ];
    const coat = smallCoat({
      slots: [slot('shell', 'cloth'), slot('lining', 'cloth'), slot('thread', 'thread')],
      pieces: [back({ cutFrom }), front({ cutFrom })],
      seams: [{ ...sideSeam, topstitchRowCount: 2 }],
    });
    expect(threadM(coat)).toBeCloseTo((2 + 2) * 1.4 * 2.5, 9);
  });
  it('overcasting runs along every raw edge', () => {
    const coat = smallCoat({ seams: [{ ...sideSeam, overcast: '504' }] });
    expect(threadM(coat)).toBeCloseTo(1.4 * 2.5 + 2.8 * 14, 9);
  });
  it('basting runs once round every quilted piece, by hand, from the thread that was chosen', () => {
    const plain = quiltedCoat({ coatCount: 3 });
    const basted = { ...plain, bastingThreadSlotId: 'thread' };
    const aroundM = 2 * (0.7 + 0.52) + 2 * 2 * (0.7 + 0.24);
    expect(threadM(basted) - threadM(plain)).toBeCloseTo(3 * aroundM * 2, 9);
    expect(threadM({ ...plain, bastingThreadSlotId: 'silk' })).toBe(threadM(plain));
  });
  it('wastage comes on top and is said', () => {
    const coat = smallCoat({ threadWastageRatio: 0.15 });
    const need = threadNeed(coat, slotById(coat, 'thread'), nothingChosen);
    expect(need.amount).toBeCloseTo(1.4 * 2.5 * 1.15, 9);
    expect(need.parts.at(-1)).toEqual({ what: 'wastage 15 %', amount: expect.closeTo(1.4 * 2.5 * 0.15, 9) });
  });
  it('a seam sewn from another thread is not in this one', () => {
    expect(threadM(smallCoat({ seams: [{ ...sideSeam, threadSlotId: 'silk' }] }))).toBe(0);
  });
  it('a padded seam goes by its thickness: batting pressed flat by its weight, and cloth, both sides', () => {
    const need = threadNeed(quiltedCoat(), slotById(quiltedCoat(), 'thread'), padded(350));
    const ratio = 2 + (2 * 2 * (0.5 + 0.35 / 0.175)) / 2.5;
    expect(need.parts.find((part) => part.what.startsWith('Side'))).toEqual({
      what: 'Side: stitch 301 of 2.5 mm, x 6.00 at least',
      amount: expect.closeTo(1.4 * ratio, 9),
    });
    expect(need.basis.map(({ kind }) => kind)).toEqual(['computed', 'rule of thumb']);
    expect(need.isFloor).toBe(true);
  });
  it('how high the batting stands does not matter, as the foot presses it flat', () => {
    const high = filled({
      shell: thinShell,
      batting: item('batting', 'fleece', { arealMassGPerM2: 350, loftMm: 40 }),
    });
    expect(threadM(quiltedCoat(), high)).toBe(threadM(quiltedCoat(), padded(350)));
  });
  it('a side seam through four layers of 120 g/m² takes three and a half to four times its length', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 2 },
    ];
    const coat = quiltedCoat({
      pieces: [back({ quilted: 'across', cutFrom }), front({ quilted: 'across', cutFrom })],
    });
    const items = filled({
      shell: item('cloth', 'taffeta', { thicknessMm: 0.1 }),
      batting: item('batting', 'fleece', { arealMassGPerM2: 120 }),
    });
    const side = threadNeed(coat, slotById(coat, 'thread'), items).parts[0]!.amount;
    expect(side / 1.4).toBeGreaterThan(3.5);
    expect(side / 1.4).toBeLessThan(4.5);
  });
  it('seams have a stitch length of their own, whatever the quilting has', () => {
    const side = (coat: ReturnType<typeof quiltedCoat>) =>
      threadNeed(coat, slotById(coat, 'thread'), padded(350)).parts[0]!.amount;
    const { quilting } = quiltedCoat();
    expect(side(quiltedCoat({ quilting: { ...quilting!, stitchLengthMm: 9 } }))).toBe(side(quiltedCoat()));
    const short = quiltedCoat({ seams: [{ ...sideSeam, stitchLengthMm: 2 }] });
    expect(side(short)).toBeCloseTo(1.4 * (2 + (2 * 5) / 2), 9);
  });
  it('a seam that is padded but not quilted is as thick', () => {
    const unquilted = quiltedCoat({ quilting: null });
    expect(threadM(unquilted, padded(350))).toBeCloseTo(1.4 * 6, 9);
  });
  it('a thin seam takes what an unravelled one took, and no less', () => {
    const thin = filled({ shell: item('cloth', 'taffeta', { thicknessMm: 0.1 }) });
    const need = threadNeed(smallCoat(), slotById(smallCoat(), 'thread'), thin);
    expect(need.parts[0]!.what).toBe('Side: stitch 301, x 2.50');
    expect(need.isFloor).toBeUndefined();
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 3, noNaN: true }), (thicknessMm) => {
        const items = filled({ shell: item('cloth', 'cloth', { thicknessMm }) });
        expect(threadM(smallCoat(), items)).toBeGreaterThanOrEqual(1.4 * 2.5);
      }),
    );
  });
  it('a cloth without a thickness is guessed from its weight', () => {
    const shell = item('cloth', 'taffeta', { arealMassGPerM2: 200 });
    const byWeight = filled({ shell, batting: item('batting', 'fleece', { arealMassGPerM2: 350 }) });
    expect(threadM(quiltedCoat(), byWeight)).toBeCloseTo(threadM(quiltedCoat(), padded(350)), 9);
  });
});

describe('thread for quilting', () => {
  it('six lines on a back of 520 and two fronts of 240 mm are 6 m', () => {
    const need = threadNeed(quiltedCoat(), slotById(quiltedCoat(), 'thread'), nothingChosen);
    const quilting = need.parts.filter((part) => part.what.startsWith('quilting'));
    expect(quilting.map(({ amount }) => amount)).toEqual([
      expect.closeTo(6 * 0.52 * 2.5, 6),
      expect.closeTo(6 * 0.24 * 2 * 2.5, 6),
    ]);
  });
  it('shorter stitches take more thread, never less', () => {
    const withStitch = (stitchLengthMm: number) =>
      threadM(quiltedCoat({ quilting: { ...quiltedCoat().quilting!, stitchLengthMm } }), padded(455));
    const length = fc.double({ min: 0.8, max: 6, noNaN: true });
    fc.assert(
      fc.property(length, length, (a, b) => {
        expect(withStitch(Math.min(a, b))).toBeGreaterThanOrEqual(withStitch(Math.max(a, b)) - 1e-9);
      }),
    );
    expect(withStitch(2)).toBeGreaterThan(withStitch(3) + 1);
  });
});

describe('what the maker measured', () => {
  it('a typed amount for one coat wins over the estimate', () => {
    const typed = slot('thread', 'thread', { amountPerCoat: 180 });
    const coat = smallCoat({
      coatCount: 3,
      threadWastageRatio: 0.15,
      slots: [slot('shell', 'cloth'), typed],
    });
    const need = threadNeed(coat, typed, nothingChosen);
    expect([need.amount, need.basis[0]?.kind]).toEqual([540, 'measured']);
  });
});

describe('ratios, split and spools', () => {
  it('the formula of each type takes thickness and stitch length the right way round', () => {
    expect(threadRatioByGeometry('301', 3, 2, 0)).toBeCloseTo(5, 12);
    expect(threadRatioByGeometry('401', 3, 2, 0)).toBeCloseTo(7, 12);
    expect(threadRatioByGeometry('504', 1, 2, 5)).toBeCloseTo(3 + 4 * 3, 12);
    expect(threadRatioByGeometry('516', 1, 2, 5)).toBeCloseTo(9 + 2 * (5 + 1.5), 12);
    expect(threadRatioByGeometry('605', 1, 2, 5)).toBeCloseTo(10 + 2 * (5 + 1.5), 12);
    expect(threadRatioByGeometry('503', 1, 2, 5)).toBeNull();
  });
  it('a stitch of no length is refused', () => {
    expect(() => threadRatioByGeometry('301', 1, 0, 0)).toThrow(RangeError);
  });
  it('needle and looper share adds up to the thread for every stitch', () => {
    for (const stitch of Object.keys(stitchThreads) as (keyof typeof stitchThreads)[]) {
      const { needleM, underM } = threadSplit(stitch, 137);
      expect(needleM + underM).toBeCloseTo(137, 9);
      expect(underM === 0).toBe(stitchThreads[stitch].under === 'none');
    }
  });
  it('the split of a slot is all of its thread, wastage with it', () => {
    const coat = smallCoat({ threadWastageRatio: 0.2, seams: [{ ...sideSeam, stitch: '401' }] });
    const split = threadUse(coat, slotById(coat, 'thread'), nothingChosen);
    expect(split.needleM + split.underM).toBeCloseTo(threadM(coat), 9);
    expect(split.needleM).toBeCloseTo(1.4 * 5.5 * 1.2 * 0.25, 9);
  });
  it('the maker’s own metres are split as the estimate would be', () => {
    const own = { ...slotById(smallCoat(), 'thread'), amountPerCoat: 300 };
    const coat = smallCoat({
      coatCount: 4,
      threadWastageRatio: 0.2,
      seams: [{ ...sideSeam, stitch: '401' }],
      slots: [smallCoat().slots[0]!, own],
    });
    const items = filled({ thread: item('thread', 'spun', { spoolM: 250 }) });
    const use = threadUse(coat, own, items);
    expect([use.totalM, use.needleM, use.underM]).toEqual([
      1200,
      expect.closeTo(300, 9),
      expect.closeTo(900, 9),
    ]);
    expect(use.spoolCount).toBe(5);
  });
  it('every size of the batch is in the split', () => {
    const coat = smallCoat({ size: '40', sizes: [{ size: '46', coatCount: 3, pieces: smallCoat().pieces }] });
    expect(threadUse(coat, slotById(coat, 'thread'), nothingChosen).totalM).toBeCloseTo(4 * 1.4 * 2.5, 9);
  });
  it('two slots of one thread are one colour, and may share a spool', () => {
    const spun = item('thread', 'spun', { spoolM: 60 });
    const coat = smallCoat({
      slots: [
        slot('shell', 'cloth'),
        slot('thread', 'thread', { amountPerCoat: 40 }),
        slot('basting', 'thread', { amountPerCoat: 35 }),
        slot('silk', 'thread', { amountPerCoat: 12 }),
      ],
    });
    const colours = threadByColour(coat, filled({ thread: spun, basting: spun }));
    expect(colours.map(({ slotNames, totalM, spoolCount: spools }) => [slotNames, totalM, spools])).toEqual([
      [['thread', 'basting'], 75, 2],
      [['silk'], 12, null],
    ]);
  });
  it('a three-thread overlock runs off three cones at once, however little it takes', () => {
    const spun = item('thread', 'spun', { spoolM: 1000 });
    const overcast = smallCoat({ seams: [{ ...sideSeam, overcast: '504' }] });
    const [use] = threadByColour(overcast, filled({ thread: spun }));
    expect([use!.totalM < 60, use!.coneCount, use!.spoolCount]).toEqual([true, 3, 3]);
    const plain = threadByColour(smallCoat(), filled({ thread: spun }))[0]!;
    expect([plain.coneCount, plain.spoolCount]).toEqual([1, 1]);
    const need = threadNeed(overcast, slotById(overcast, 'thread'), nothingChosen);
    expect(need.coneCount).toBe(3);
    expect(spoolCount(0, 1000, 3)).toBe(0);
  });
  it('spools hold the thread, and one fewer would not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9000 }),
        fc.constantFrom(100, 250, 1000, 4500),
        (needM, spoolM) => {
          const count = spoolCount(needM, spoolM);
          expect(count * spoolM).toBeGreaterThanOrEqual(needM);
          expect((count - 1) * spoolM).toBeLessThan(needM);
        },
      ),
    );
    expect(spoolCount(0, 250)).toBe(0);
  });
});
