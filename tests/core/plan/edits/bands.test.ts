import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { howText } from '../../../../shared-core/measure/basis.ts';
import {
  addBand,
  bandCut,
  bandWords,
  biasSquareMm,
  withBandsRenewed,
} from '../../../../shared-core/plan/edits/bands.ts';
import type { Band } from '../../../../shared-core/plan/model/coat-plan.ts';
import { shapesNeed } from '../../../../shared-core/requirement/cut/cut-shapes.ts';
import { slot } from '../../../fixtures/small-workshop.ts';
import { front, nothingChosen, smallCoat } from '../../requirement/small-coat.ts';
import { edited, refusal } from '../edit-outcomes.ts';

const trim = slot('trim', 'cloth');
const coat = smallCoat({ slots: [...smallCoat().slots, trim] });
const hem = [
  { pieceId: 'back', edge: 'hem' },
  { pieceId: 'front', edge: 'hem' },
];
const band = (more: Partial<Band> = {}): Band => ({
  kind: 'straight binding',
  edges: hem,
  isEach: false,
  cutWidthMm: 42,
  lengthRatio: 1,
  endsMm: 30,
  stripMm: null,
  ...more,
});
const added = (more: Partial<Band> = {}) =>
  edited(addBand(coat, { name: 'Hem binding', slotId: 'trim', band: band(more) })).plan;
const cut = (more: Partial<Band> = {}) => bandCut(coat.pieces, band(more))!;

describe('a straight binding', () => {
  it('is as long as the hem of back and both fronts, and its ends', () => {
    expect(cut()).toMatchObject({ edgesMm: 1000, bandMm: 1030, stripCount: 1, stripMm: 1030 });
  });
  it('that is longer than the cloth is wide is joined on the diagonal, each join as long as the strip is wide', () => {
    const found = cut({ stripMm: 560 });
    expect(found.stripCount).toBe(2);
    expect(found.stripMm).toBeCloseTo((1030 + 42) / 2, 9);
    expect(bandWords(added({ stripMm: 560 }).pieces.at(-1)!, coat.pieces)).toContain('from 2 strips of');
  });
  it('comes from the fewest strips that reach, for any measures', () => {
    const mm = fc.double({ min: 60, max: 2000, noNaN: true });
    fc.assert(
      fc.property(mm, fc.double({ min: 10, max: 55, noNaN: true }), (stripMm, cutWidthMm) => {
        const { stripCount, stripMm: eachMm } = cut({ stripMm, cutWidthMm });
        expect(eachMm).toBeLessThanOrEqual(Math.max(stripMm, 0) + 1e-6);
        expect(stripCount * eachMm - (stripCount - 1) * cutWidthMm).toBeCloseTo(1030, 6);
        if (stripCount > 1)
          expect((stripCount - 1) * stripMm - (stripCount - 2) * cutWidthMm).toBeLessThan(1030 + 1e-6);
      }),
    );
  });
});

describe('a bias binding', () => {
  it('comes from a square as large as the binding and two seams', () => {
    expect(cut({ kind: 'bias binding' }).squareMm).toBe(225);
    expect(biasSquareMm(1030, 42)).toBeGreaterThanOrEqual(Math.sqrt(1030 * 42) + 12.7);
    expect(() => biasSquareMm(0, 42)).toThrow(RangeError);
  });
  it('for two cuffs comes from one square', () => {
    const found = cut({ kind: 'bias binding', isEach: true, edges: [{ pieceId: 'front', edge: 'side' }] });
    expect([found.bandCount, found.bandMm]).toEqual([2, 730]);
    expect(found.squareMm).toBe(Math.ceil((Math.sqrt(2 * 730 * 42) + 12.7) / 5) * 5);
  });
});

describe('a rib', () => {
  const rib = { kind: 'rib', lengthRatio: 0.8, endsMm: 16, cutWidthMm: 136 } as const;
  it('is shorter than its edge and stretched on, its length across the cloth', () => {
    expect(cut(rib).bandMm).toBeCloseTo(0.8 * 1000 + 16, 9);
    const piece = added(rib).pieces.at(-1)!;
    expect(piece.turns).toBe('grain');
    expect(howText(bandWords(piece, coat.pieces)!, 'metric')).toBe(
      'One band, 816 mm long and 136 mm wide as cut: 80 % of the 1 m that it is stretched on to.',
    );
  });
});

describe('a band of the plan', () => {
  it('is cut from its slot like any piece', () => {
    const need = shapesNeed(added({ stripMm: 560 }), trim, nothingChosen);
    expect(need.shapes.map(({ name, count }) => [name, count])).toEqual([['Hem binding', 2]]);
    expect(need.areaMm2).toBeCloseTo(2 * 536 * 42, 3);
  });
  it('follows its edges when they become longer', () => {
    const wide = { ...added(), pieces: added().pieces.map((each) => (each.id === 'front' ? wider() : each)) };
    const anew = withBandsRenewed(wide).pieces.at(-1)!;
    expect(bandCut(wide.pieces, anew.band!)?.bandMm).toBeCloseTo(1030 + 2 * 25, 6);
    expect(withBandsRenewed(withBandsRenewed(wide))).toEqual(withBandsRenewed(wide));
  });
  it('is refused without edges, from a batting, or of no width', () => {
    const add = (more: Partial<Band>, slotId = 'trim') =>
      refusal(addBand(coat, { name: 'Hem binding', slotId, band: band(more) }));
    expect(add({ edges: [] })).toContain('are missing');
    expect(add({}, 'thread')).toContain('is no cloth');
    expect(add({ cutWidthMm: 0 })).toContain('nothing that can be cut');
  });
});

/** The front 25 mm wider at its hem. */
function wider() {
  const { outline } = front();
  return {
    ...front(),
    outline: {
      ...outline,
      edges: outline.edges.map((edge) => ({
        ...edge,
        segments: edge.segments.map((segment) => ({
          ...segment,
          to: { x: segment.to.x, y: segment.to.y > 0 ? segment.to.y + 25 : segment.to.y },
        })),
      })),
    },
  };
}
