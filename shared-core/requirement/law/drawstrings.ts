/** What the US and the EU say of cords on children's coats, for a coat that has a cord, or a hood that may get one. */
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { Caution } from './caution.ts';
import { isForChild } from './child-size.ts';
import type { SlotItems } from '../need.ts';

/** In force in the US: 16 CFR 1120 by way of ASTM F1816. */
const us =
  'at hood or neck (US sizes 2T to 12); at waist and hem (2T to 16) at most 3 in (76 mm) outside the channel at full width, no toggle or knot at a free end, and a string in one piece is bar-tacked.';

/** EN 14682, the standard that the EU's rules on safe products point to. */
const eu =
  'at hood or neck up to 7 years (134 cm); from 7 to 14 none there with free ends. At waist and hem no end hangs out by more than 14 cm, and none hangs below the hem of a long coat.';

/** One caution for each market; none for a coat without cords that is for grown people or has no hood. */
export function drawstringCautions(plan: CoatPlan, items: SlotItems, defersTo: string): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => {
      if (slot.kind !== 'fastening') return false;
      const item = items.get(slot.id);
      const isCord = item?.kind === 'fastening' && item.facts.form === 'cord';
      return isCord || /\b(cord|drawstring|drawcord)\b/i.test(slot.name);
    })
    .map((slot) => slot.id);
  const isChilds = isForChild(plan);
  const hasHood = plan.pieces.some((piece) => /\bhood\b/i.test(piece.name));
  if (slotIds.length === 0 && !(isChilds && hasHood)) return [];
  const opening = isChilds
    ? 'This coat is for a child: no drawstring'
    : 'If it is for a child: no drawstring';
  return [
    {
      kind: 'drawstrings, US',
      slotIds,
      says: `${opening} ${us}`,
      defersTo,
      source: '16 CFR 1120 and ASTM F1816, as told by the US consumer product safety commission',
    },
    {
      kind: 'drawstrings, EU',
      slotIds,
      says: `${isChilds ? 'In the EU no cord' : 'In the EU no cord on a child’s coat'} ${eu}`,
      defersTo,
      source:
        'EN 14682: hood and neck as told by the Finnish safety agency, the rest by a digest of the edition of 2007',
    },
  ];
}
