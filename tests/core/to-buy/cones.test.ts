import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { coverSentences } from '../../../shared-core/cover/cover-words.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { shoppingText } from '../../../shared-core/to-buy/shopping-list.ts';
import type { Seam } from '../../../shared-core/plan/model/outline.ts';
import { item, layHere, lot, offer, onShelf, slot } from '../../fixtures/small-workshop.ts';
import { sideSeam, smallCoat } from '../requirement/small-coat.ts';

const spun = item('thread', 'thread item', { spoolM: 1000 });
const offers = [
  offer('thread item', 'spool', { kind: 'spool', threadM: 1000 }, 585),
  offer('thread item', 'cone', { kind: 'spool', threadM: 5000 }, 1400),
];

/** What of its thread a coat with one side seam is short of and buys; onHandM: on one lot. */
async function bought(overcast: Seam['overcast'], onHandM: number) {
  const sewn = smallCoat({
    slots: [slot('shell', 'cloth', { itemId: null }), slot('thread', 'thread')],
    seams: [{ ...sideSeam, overcast }],
  });
  const shelf = [onShelf(spun, lot('thread item', 'autumn', 3000, onHandM, 1755))];
  const sources = { plan: sewn, shelf, offers, suppliers: [] };
  const { cover, toBuy } = await estimate(sources, layHere, solveHere);
  const slotCover = cover.find(({ slotId }) => slotId === 'thread')!;
  return {
    says: coverSentences(slotCover, { plan: sewn, shelf, system: 'metric' })[0],
    counts: toBuy.lines.map(({ offer: of, unitCount }) => [of.id, unitCount]),
    text: shoppingText(sources, toBuy, { system: 'metric', currency: 'EUR' }),
  };
}

describe('thread for an overlock that runs off three cones at once', () => {
  it('buys as many cones as stand on the machine, though one would hold it all', async () => {
    const { counts, text } = await bought('504', 0);
    expect(counts).toEqual([['spool', 3]]);
    expect(text).toContain('3 spools of 1000 m, 17.55 EUR (thread, 3 cones on the machine at once)');
  });
  it('counts the spools on the shelf, begun ones with them', async () => {
    const { counts, says } = await bought('504', 1300);
    expect(counts).toEqual([['spool', 1]]);
    expect(says).toBe(
      'The thread is short by 1 cone (thread item): there is thread enough, but an overlock runs off several cones at once.',
    );
    expect((await bought('504', 2300)).counts).toEqual([]);
  });
  it('a lockstitch sews off one spool', async () => {
    const { counts, text } = await bought(null, 0);
    expect(counts).toEqual([['spool', 1]]);
    expect(text).toContain('(thread)');
  });
});
