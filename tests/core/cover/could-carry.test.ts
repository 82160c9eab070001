import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { couldCarry, placeOfBox } from '../../../shared-core/cover/could-carry.ts';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import type { Item, ItemOnShelf, LotOnShelf } from '../../../shared-core/stash/stash.ts';
import { clothLot, item, piece, plan, rectangle, slot } from '../../fixtures/small-workshop.ts';

const linen = item('cloth', 'linen', { widthMm: 1400, selvageMm: 10 });

function shelfOf(
  cloth: Item,
  lengthMm: number,
  widthMm: number,
  more: Partial<LotOnShelf['lengths'][0]> = {},
): ItemOnShelf {
  const lot = clothLot(cloth.id, 'lot', widthMm, [lengthMm], 4400, { form: 'remnant' });
  return { item: cloth, lots: [{ ...lot, lengths: lot.lengths.map((length) => ({ ...length, ...more })) }] };
}

const pieces = [
  piece('sleeve', rectangle(620, 430)),
  piece('pocket bag', rectangle(210, 180)),
  piece('facing', rectangle(180, 640), { cutFrom: [{ slotId: 'lining', plyCount: 1 }] }),
];
const coat = plan({ pieces, slots: [slot('shell', 'cloth', { itemId: 'linen' }), slot('lining', 'cloth')] });
const coats = [{ plan: coat, items: new Map() }];
const names = (shelf: ItemOnShelf) =>
  couldCarry(shelf, 'lot length 1', coats)?.pieces.map((each) => each.pieceName);

describe('a remnant', () => {
  test('still carries the pieces that lie within its width less the selvages, largest first', () => {
    // 2 x 10 mm of selvage: 660 wide carries a facing of 640, 659 does not.
    expect(names(shelfOf(linen, 620, 660))).toEqual(['sleeve', 'facing', 'pocket bag']);
    expect(names(shelfOf(linen, 620, 659))).toEqual(['sleeve', 'pocket bag']);
    expect(names(shelfOf(linen, 619, 660))).toEqual(['facing', 'pocket bag']);
    expect(names(shelfOf(linen, 150, 660))).toEqual([]);
  });

  test('says which coat and slot each is for, and whether that slot has this cloth', () => {
    const carried = couldCarry(shelfOf(linen, 700, 700), 'lot length 1', coats);
    expect(carried).toMatchObject({ lookedAt: 3, free: { lengthMm: 700, widthMm: 680 } });
    expect(carried?.pieces.map(({ uses: [use] }) => [use?.slot.name, use?.isOfItem])).toEqual([
      ['shell', true],
      ['lining', false],
      ['shell', true],
    ]);
  });

  test('names a piece once that two coats have alike', () => {
    const other = plan({ ...coat, id: 'other', name: 'Plover' });
    const both = [...coats, { plan: other, items: new Map() }];
    const carried = couldCarry(shelfOf(linen, 620, 659), 'lot length 1', both);
    expect(carried?.lookedAt).toBe(3);
    expect(carried?.pieces.map(({ uses }) => uses.map((use) => use.plan.name))).toEqual([
      ['Lapwing', 'Plover'],
      ['Lapwing', 'Plover'],
    ]);
  });

  test('carries no piece across its flaw, but one beside it', () => {
    const flaw = { x: 300, y: 0, widthX: 50, widthY: 660 };
    expect(names(shelfOf(linen, 700, 660, { flaws: [flaw] }))).toEqual(['facing', 'pocket bag']);
    expect(names(shelfOf(linen, 1000, 660, { flaws: [flaw] }))).toEqual(['sleeve', 'facing', 'pocket bag']);
  });

  test('has nothing to carry of what a coat has set aside', () => {
    expect(names(shelfOf(linen, 620, 660, { reservedMm: 120 }))).toEqual(['facing', 'pocket bag']);
    expect(couldCarry(shelfOf(linen, 620, 660, { reservedMm: 620 }), 'lot length 1', coats)).toBeNull();
  });

  test('is looked at as what its wash leaves of it', () => {
    const cotton = item('cloth', 'cotton', {
      widthMm: 1400,
      shrinkageAlongRatio: 0.1,
      shrinkageAcrossRatio: 0,
    });
    // 10 % of 680 mm is lost: 612 mm do not carry a sleeve of 620.
    expect(names(shelfOf(cotton, 680, 660))).toEqual(['facing', 'pocket bag']);
    expect(names(shelfOf(cotton, 700, 660))).toContain('sleeve');
    expect(names(shelfOf(cotton, 620, 660, { isWashed: true }))).toContain('sleeve');
  });

  test('turns a piece only as its grain lets it', () => {
    const free = plan({ ...coat, pieces: [piece('tab', rectangle(300, 90), { turns: 'free' })] });
    const grain = plan({ ...coat, pieces: [piece('tab', rectangle(300, 90))] });
    const shelf = shelfOf(linen, 100, 400);
    expect(couldCarry(shelf, 'lot length 1', [{ plan: grain, items: new Map() }])?.pieces).toEqual([]);
    const [tab] = couldCarry(shelf, 'lot length 1', [{ plan: free, items: new Map() }])!.pieces;
    expect(tab).toMatchObject({ alongMm: expect.closeTo(90, 6), acrossMm: expect.closeTo(300, 6) });
  });
});

test('whatever the flaws, a piece lies inside and clear of them, and is found wherever it fits', () => {
  const mm = fc.integer({ min: 1, max: 12 });
  const flaw = fc.record({ x: fc.nat({ max: 11 }), y: fc.nat({ max: 7 }), widthX: mm, widthY: mm });
  const isClear = (
    at: { x: number; y: number },
    size: { x: number; y: number },
    flaws: readonly { x: number; y: number; widthX: number; widthY: number }[],
  ) =>
    flaws.every(
      (each) =>
        each.x >= at.x + size.x ||
        each.x + each.widthX <= at.x ||
        each.y >= at.y + size.y ||
        each.y + each.widthY <= at.y,
    );
  fc.assert(
    fc.property(fc.array(flaw, { maxLength: 4 }), mm, fc.integer({ min: 1, max: 8 }), (flaws, x, y) => {
      const size = { x, y };
      const found = placeOfBox(size, { lengthMm: 12, widthMm: 8, flaws });
      // Every whole millimetre is tried: the flaws lie on whole ones.
      const places = Array.from({ length: 13 * 9 }, (_, index) => ({
        x: index % 13,
        y: Math.floor(index / 13),
      }));
      const fits = places.filter((at) => at.x + x <= 12 && at.y + y <= 8 && isClear(at, size, flaws));
      if (!found) return fits.length === 0;
      return found.x + x <= 12 && found.y + y <= 8 && isClear(found, size, flaws) && fits.length > 0;
    }),
    { numRuns: 2000, seed: 1413 },
  );
});

test('a piece is drawn where it lies: inside the remnant', () => {
  const carried = couldCarry(shelfOf(linen, 700, 700), 'lot length 1', coats)!;
  for (const { ring } of carried.pieces) {
    const box = ringBox(ring);
    expect([box.minX, box.minY]).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(box.maxX).toBeLessThanOrEqual(700);
    expect(box.maxY).toBeLessThanOrEqual(680);
  }
});
