import { describe, expect, it } from 'vitest';
import type { Slot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import { stillToCut } from '../../../../shared-core/requirement/cut/still-to-cut.ts';
import type { Cutting } from '../../../../shared-core/stash/cutting.ts';
import { item, piece, plan, rectangle, slot } from '../../../fixtures/small-workshop.ts';

const flannel = item('cloth', 'shell item', {
  widthMm: 1400,
  shrinkageAlongRatio: 0.05,
  shrinkageAcrossRatio: 0.05,
});

describe('pieces that are cut already', () => {
  const cut = (isWashed: boolean, along: number, across: number): Cutting => ({
    id: 'c',
    planId: 'plan',
    revision: 1,
    at: '2026-10-01T08:00:00.000Z',
    coats: [],
    note: '',
    undoes: null,
    undoneBy: null,
    movements: [],
    slots: [
      {
        slotId: 'shell',
        slotName: 'shell',
        kind: 'cloth',
        lines: [],
        met: {
          kind: 'shapes',
          shapes: [
            {
              pieceId: 'panel 1',
              size: '40',
              name: 'panel 1',
              ring: [0, 0, along, 0, along, across, 0, across],
              count: 1,
              mirroredCount: 0,
              ...(isWashed && { isWashed }),
            },
          ],
        },
      },
    ],
  });
  const left = (more: Partial<Slot>, cutting: Cutting) => {
    const slots = [slot('shell', 'cloth', more)];
    const coat = plan({ slots, pieces: [piece('panel 1', rectangle(950, 1300))] });
    const [need] = stillToCut(coat, requirement(coat, new Map([['shell', flannel]])), [cutting]);
    return need?.kind === 'shapes' ? need.shapes.length : null;
  };

  it('serve, whether they were cut washed or larger, however the rest is cut', () => {
    const larger = [950 / 0.95, 1300 / 0.95] as const;
    for (const more of [{}, { isCutUnwashed: true } as const]) {
      expect(left(more, cut(true, 950, 1300))).toBe(0);
      expect(left(more, cut(false, ...larger))).toBe(0);
    }
  });

  it('are too small where they were cut in their true size and are still to be washed', () => {
    expect(left({}, cut(false, 950, 1300))).toBe(1);
    expect(left({ isCutUnwashed: true }, cut(false, 950, 1300))).toBe(1);
  });
});
