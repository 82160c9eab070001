/** A coat whose fronts are cut from quilted panels, with sums one can do by hand. */
import { flowNeeds, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import type { CoatPlan, PanelOrder, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { toOutline } from '../../../shared-core/plan/model/quilting-order.ts';
import type { ShapesNeed } from '../../../shared-core/requirement/need.ts';
import {
  clothLot,
  item,
  layHere,
  measured,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

export const panel: PanelOrder = { kind: 'panel', marginMm: 25, widthMm: null, coats: 'each' };
export const plies = (count: number) => [
  { slotId: 'shell', plyCount: 1 },
  { slotId: 'batting', plyCount: count },
];

/** Two fronts of 390 x 480 side by side, on 1000 mm of quilted width: 1100 less its edges, taken up by 5 %. */
export function coat(
  order: PanelOrder | typeof toOutline,
  pieces?: readonly Piece[],
  more: Partial<CoatPlan> = {},
): CoatPlan {
  return plan({
    coatCount: 3,
    clearanceMm: 0,
    slots: [
      slot('shell', 'cloth', { isQuilted: true }),
      slot('batting', 'batting'),
      slot('thread', 'thread'),
    ],
    pieces: pieces ?? [
      piece('front', rectangle(390, 480), {
        cutCount: 2,
        isMirrored: true,
        quilted: 'across',
        cutFrom: plies(2),
      }),
    ],
    quilting: {
      spacingMm: 100,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'thread',
      order,
      ...measured(null, 2, { overLinesRatio: 0.1, alongLinesRatio: 0.05 }),
    },
    ...more,
  });
}

export const taffeta = item('cloth', 'shell item', { widthMm: 1100, arealMassGPerM2: 50 });
export const fleece = item('batting', 'batting item', { widthMm: 1500, arealMassGPerM2: 120, loftMm: 4 });

export function sources(of: CoatPlan, more: Partial<FlowSources> = {}): FlowSources & { today: string } {
  return {
    plan: of,
    shelf: [
      onShelf(taffeta, clothLot('shell item', 'autumn', 1100, [9000], 9000)),
      onShelf(fleece, clothLot('batting item', 'winter', 1500, [9000], 9000)),
    ],
    offers: [],
    suppliers: [],
    today: '2026-11-25',
    ...more,
  };
}

export async function shapesOf(of: FlowSources, slotId: string): Promise<ShapesNeed> {
  const need = (await flowNeeds(of, layHere)).needs.find((each) => each.slotId === slotId);
  if (need?.kind !== 'shapes') throw new Error(`${slotId} is not cut`);
  return need;
}

export const allOf = ({ shapes }: ShapesNeed) =>
  shapes.map(({ name, ring, count }) => {
    const box = ringBox(ring);
    return [name, count, box.maxX - box.minX, box.maxY - box.minY];
  });
