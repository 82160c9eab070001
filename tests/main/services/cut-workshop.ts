/** A workshop with a cloth, a fill and a plan of six coats, and a cutting of it. */
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { type Asking, openAsking, receivedCloth, receivedFill } from '../asking.ts';

/** A plan of six coats with a shell of the given cloth and a fill. */
export async function savedPlan(asking: Asking, clothId: string, fillId: string, name = 'Fen coat') {
  const plan = {
    id: 'new',
    name,
    size: 'EU 42',
    coatCount: 6,
    slots: [
      { ...emptySlot('shell', 'shell', 'cloth'), itemId: clothId },
      { ...emptySlot('fill', 'fill', 'fill'), itemId: fillId },
    ],
    pieces: [],
    seams: [],
    quilting: null,
    clearanceMm: 2,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: 540,
    notes: '',
  };
  return (await asking.get('savePlan', { plan, basedOn: null, said: '' })).planId;
}

export async function workshop() {
  const asking = openAsking();
  const cloth = await receivedCloth(asking);
  const fill = await receivedFill(asking, 640);
  const planId = await savedPlan(asking, cloth.itemId, fill.itemId);
  return { asking, cloth, fill, planId };
}

export const ring = [0, 0, 700, 0, 700, 500, 0, 500];

export function cutting(
  planId: string,
  cloth: { lotId: string; cutId: string },
  more: Partial<CallInput<'recordCutting'>> = {},
): CallInput<'recordCutting'> {
  return {
    planId,
    basedOn: 1,
    coats: [{ size: 'EU 42', coatCount: 2 }],
    note: 'a rainy day',
    releasesRest: false,
    slots: [
      {
        slotId: 'shell',
        met: {
          kind: 'shapes',
          shapes: [{ pieceId: 'back', size: 'EU 42', name: 'Back', ring, count: 2, mirroredCount: 0 }],
        },
        lines: [
          {
            lotId: cloth.lotId,
            lengthId: cloth.cutId,
            amount: 2100.5,
            pieceAreaMm2: 700_000,
            kept: [{ x: 700, y: 0, lengthMm: 1400, widthMm: 490 }],
          },
        ],
      },
    ],
    ...more,
  };
}
