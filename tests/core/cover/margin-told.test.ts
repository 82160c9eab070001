import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { estimateJson } from '../../../shared-core/flow/output/estimate-json.ts';
import { estimateText } from '../../../shared-core/flow/output/estimate-text.ts';
import { defaultPriceRules } from '../../../shared-core/cost/price.ts';
import {
  clothLot,
  item,
  layHere,
  lot,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const coat = plan({
  coatCount: 3,
  slots: [
    slot('shell', 'cloth', { margin: { kind: 'length', lengthMm: 400 } }),
    slot('snaps', 'fastening', { amountPerCoat: 7, margin: { kind: 'share', ratio: 0.1 } }),
    slot('down', 'fill', { amountPerCoat: 90 }),
  ],
  pieces: [piece('panel', rectangle(700, 1300))],
});
const sources = {
  plan: coat,
  shelf: [
    onShelf(
      item('cloth', 'shell item', { widthMm: 1400 }),
      clothLot('shell item', 'roll', 1400, [2250], 4_500),
    ),
    onShelf(item('fastening', 'snaps item'), lot('snaps item', 'tin', 40, 40, 800)),
    onShelf(item('fill', 'down item'), lot('down item', 'sack', 300, 300, 4_000)),
  ],
  offers: [],
  suppliers: [],
  today: '2026-11-25',
};
const options = { system: 'metric', currency: 'EUR', pricing: defaultPriceRules } as const;

describe('a margin for safety in the estimate for scripts', () => {
  it('stands beside what each slot needs, in the text', async () => {
    const text = estimateText(sources, await estimate(sources, layHere, solveHere), options);
    expect(text).toMatch(/shell .*; beside it 0\.4 m as margin for safety\n/);
    expect(text).toMatch(/snaps +21 pieces; beside it 3 pieces as margin for safety\n/);
    expect(text).toMatch(/down +270 g\n/);
    expect(text).toContain('short by 0.25 m');
  });

  it('is a field of its own, in the JSON', async () => {
    const json = estimateJson(sources, await estimate(sources, layHere, solveHere), options);
    expect(json.requirement).toMatchObject([
      { slot: 'shell', marginAmount: 400, margin: { kind: 'length', lengthMm: 400 } },
      { slot: 'snaps', amount: 21, marginAmount: 3, margin: { kind: 'share', ratio: 0.1 } },
      { slot: 'down', amount: 270, marginAmount: 0 },
    ]);
    const near = (value: number) => expect.closeTo(value, 2) as unknown as number;
    expect(json.cover).toMatchObject([
      {
        uses: [{ amount: near(2100), marginAmount: near(150) }],
        shortage: { amount: 0, marginAmount: near(250) },
      },
      { uses: [{ amount: 21, marginAmount: 3 }], shortage: null },
      { uses: [{ amount: 270 }], shortage: null },
    ]);
  });
});
