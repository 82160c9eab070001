import { describe, expect, it } from 'vitest';
import { learnedOffers } from '../../../shared-core/stash/learned-offer.ts';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import { clothLot, item, lot, offer, onShelf } from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1470 });
const byTenth: SellingUnit = { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 300 };

describe('a lot that was received', () => {
  it('suggests an offer of its supplier with what a step of it cost', () => {
    const shelf = onShelf(taffeta, clothLot('shell item', 'autumn', 1470, [4300, 2000], 7245));
    expect(learnedOffers(shelf, [])).toEqual([
      {
        lotId: 'autumn',
        supplier: 'Fennmoor Textiles',
        unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 0 },
        priceMinor: 115,
        pricedOn: '2026-09-14',
        replaces: null,
      },
    ]);
  });

  it('brings the supplier’s older offer up to date, in its own unit', () => {
    const older = { ...offer('shell item', 'o1', byTenth, 98, 'FENNMOOR textiles'), pricedOn: '2026-02-01' };
    const shelf = onShelf(taffeta, clothLot('shell item', 'autumn', 1470, [6300], 7245));
    expect(learnedOffers(shelf, [older])).toMatchObject([
      { priceMinor: 115, unit: byTenth, replaces: older, supplier: 'FENNMOOR textiles' },
    ]);
  });

  it('teaches nothing where an offer is newer, or the price is the same', () => {
    const shelf = onShelf(taffeta, clothLot('shell item', 'autumn', 1470, [6300], 7245));
    const newer = { ...offer('shell item', 'o1', byTenth, 98), pricedOn: '2026-10-02' };
    const same = { ...offer('shell item', 'o1', byTenth, 115), pricedOn: '2026-02-01' };
    expect([learnedOffers(shelf, [newer]), learnedOffers(shelf, [same])]).toEqual([[], []]);
  });

  it('counts only the latest of a supplier, in each unit', () => {
    const shelf = onShelf(
      item('thread', 't', { spoolM: 500 }),
      lot('t', 'spring', 2000, 0, 1360, '2026-03-01'),
      lot('t', 'autumn', 1000, 1000, 720, '2026-09-14'),
    );
    expect(learnedOffers(shelf, []).map(({ lotId, priceMinor }) => [lotId, priceMinor])).toEqual([
      ['autumn', 360],
    ]);
  });

  it('is of another unit where its packs do not add up to it', () => {
    const pack: SellingUnit = { kind: 'pack', pieceCount: 12 };
    const older = { ...offer('n', 'o1', pack, 300), pricedOn: '2026-02-01' };
    const shelf = onShelf(item('needle', 'n'), lot('n', 'autumn', 10, 10, 270));
    expect(learnedOffers(shelf, [older])).toMatchObject([
      { unit: { kind: 'pack', pieceCount: 10 }, priceMinor: 270, replaces: null },
    ]);
  });

  it('without supplier or price teaches nothing', () => {
    const gift = clothLot('shell item', 'gift', 1470, [6300], 0);
    const unnamed = { ...clothLot('shell item', 'fair', 1470, [6300], 700), supplier: ' ' };
    expect(learnedOffers(onShelf(taffeta, gift, unnamed), [])).toEqual([]);
  });
});
