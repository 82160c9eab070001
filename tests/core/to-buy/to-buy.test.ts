import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import type { ToBuy } from '../../../shared-core/to-buy/to-buy.ts';
import {
  clothLot,
  item,
  layHere,
  lot,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1400 });
const threePanels = plan({ pieces: [piece('panel', rectangle(700, 1300), { cutCount: 3 })] });

async function listFor(sources: Partial<FlowSources>): Promise<ToBuy> {
  return (
    await estimate(
      { plan: threePanels, shelf: [], offers: [], suppliers: [], ...sources },
      layHere,
      solveHere,
    )
  ).toBuy;
}

describe('what to buy', () => {
  it('rounds the missing cloth up to the step that the shop cuts', async () => {
    const list = await listFor({
      shelf: [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [800], 3000))],
      offers: [
        offer('shell item', 'by metre', { kind: 'by length', stepMm: 250, widthMm: 1400, leastMm: 0 }, 475),
      ],
    });
    // One panel lies on the 800; two are missing: 1400 mm, six quarters of a metre.
    expect(
      list.lines.map(({ unitCount, boughtAmount, priceMinor }) => ({ unitCount, boughtAmount, priceMinor })),
    ).toEqual([{ unitCount: 6, boughtAmount: 1500, priceMinor: 2850 }]);
    expect(list.totalMinor).toBe(2850);
  });

  it('buys no less than the shop sells', async () => {
    const list = await listFor({
      shelf: [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [1500], 3000))],
      offers: [
        offer(
          'shell item',
          'by metre',
          { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 1000 },
          190,
        ),
      ],
    });
    expect(list.lines[0]).toMatchObject({ unitCount: 10, priceMinor: 1900 });
  });

  it('lays the missing pieces anew on cloth of another width, and takes it where it is cheaper', async () => {
    const list = await listFor({
      shelf: [onShelf(taffeta)],
      offers: [
        offer('shell item', 'narrow', { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 }, 190),
        // Two panels lie side by side here, so 1400 mm do.
        offer(
          'shell item',
          'wide',
          { kind: 'by length', stepMm: 100, widthMm: 2650, leastMm: 0 },
          260,
          'Oxbow Mill',
        ),
      ],
    });
    expect(list.lines[0]?.offer.id).toBe('wide');
    expect(list.lines[0]).toMatchObject({ unitCount: 14, priceMinor: 3640 });
    expect(list.lines[0]?.alternatives).toMatchObject([{ unitCount: 21, priceMinor: 3990 }]);
  });

  it('buys whole sheets of batting, as many as a real lay fills', async () => {
    const quilted = plan({
      slots: [slot('batting', 'batting')],
      pieces: [
        piece('panel', rectangle(700, 800), { cutCount: 5, cutFrom: [{ slotId: 'batting', plyCount: 1 }] }),
      ],
    });
    const list = await listFor({
      plan: quilted,
      shelf: [onShelf(item('batting', 'batting item', { widthMm: 1150 }))],
      // By area 5 x 0.56 m2 would go on two sheets of 1.73 m2; a panel and a half across says three.
      offers: [offer('batting item', 'sheet', { kind: 'sheet', widthMm: 1150, lengthMm: 1500 }, 2250)],
    });
    expect(list.lines[0]).toMatchObject({ unitCount: 3, priceMinor: 6750 });
  });

  it('does not offer a sheet on which a piece has no room', async () => {
    const list = await listFor({
      plan: plan({
        slots: [slot('batting', 'batting')],
        pieces: [piece('back', rectangle(1900, 800), { cutFrom: [{ slotId: 'batting', plyCount: 1 }] })],
      }),
      shelf: [onShelf(item('batting', 'batting item', { widthMm: 1150 }))],
      offers: [offer('batting item', 'sheet', { kind: 'sheet', widthMm: 1150, lengthMm: 1500 }, 2250)],
    });
    expect(list.lines).toEqual([]);
    expect(list.unbuyable).toEqual([{ slotIds: ['batting'], itemId: 'batting item', why: 'no offer' }]);
  });

  it('buys packs, spools and single pieces whole', async () => {
    const small = plan({
      coatCount: 3,
      pieces: [],
      slots: [
        slot('snaps', 'fastening', { amountPerCoat: 7 }),
        slot('thread', 'thread', { amountPerCoat: 410 }),
        slot('zip', 'fastening', { amountPerCoat: 1 }),
      ],
    });
    const list = await listFor({
      plan: small,
      shelf: [
        onShelf(item('fastening', 'snaps item', { form: 'snap' }), lot('snaps item', 'tin', 4, 4, 200)),
        onShelf(item('thread', 'thread item')),
        onShelf(item('fastening', 'zip item', { form: 'zip', lengthMm: 700 })),
      ],
      offers: [
        offer('snaps item', 'pack', { kind: 'pack', pieceCount: 10 }, 350),
        offer('thread item', 'spool', { kind: 'spool', threadM: 500 }, 420),
        offer('zip item', 'zip', { kind: 'each', lengthMm: 700 }, 540),
      ],
    });
    const byItem = Object.fromEntries(list.lines.map((line) => [line.itemId, line.unitCount]));
    expect(byItem).toEqual({ 'snaps item': 2, 'thread item': 3, 'zip item': 3 });
  });

  it('does not offer a zip that is too short', async () => {
    const zipped = plan({
      slots: [
        slot('zip', 'fastening', { amountPerCoat: 1, alongEdges: [{ pieceId: 'front', edge: 'front' }] }),
      ],
      pieces: [piece('front', rectangle(730, 300), { cutFrom: [] })],
    });
    const list = await listFor({
      plan: zipped,
      shelf: [onShelf(item('fastening', 'zip item', { form: 'zip' }))],
      offers: [
        offer('zip item', 'short', { kind: 'each', lengthMm: 600 }, 410),
        offer('zip item', 'long', { kind: 'each', lengthMm: 800 }, 560),
      ],
    });
    expect(list.lines[0]?.offer.id).toBe('long');
    expect(list.lines[0]?.alternatives).toEqual([]);
  });

  it('says which slots have no item chosen, and which gap no offer closes', async () => {
    const list = await listFor({
      plan: plan({ slots: [slot('shell', 'cloth'), slot('lining', 'cloth', { itemId: null })] }),
      shelf: [onShelf(taffeta)],
    });
    expect(list.unbuyable.map((gap) => gap.why)).toEqual(['no item chosen', 'no offer']);
  });
});
