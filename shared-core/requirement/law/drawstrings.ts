/** What the US and the EU say of cords on children's coats, for a coat that has a cord, or a hood that may get one. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { say } from '../../wording/say.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { Caution } from './caution.ts';
import { isForChild } from './child-size.ts';
import type { SlotItems } from '../need.ts';

/** In force in the US: 16 CFR 1120 by way of ASTM F1816. */
const us = () => say('drawstrings.at-hood-or-neck-us-sizes');

/** EN 14682, the standard that the EU's rules on safe products point to. */
const eu = () => say('drawstrings.at-hood-or-neck-up-to');

/** One caution for each market; none for a coat without cords that is for grown people or has no hood. */
export function drawstringCautions(plan: CoatPlan, items: SlotItems, defersTo: string): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => {
      if (slot.kind !== 'fastening') return false;
      const item = items.get(slot.id);
      const isCord = item?.kind === 'fastening' && item.facts.form === 'cord';
      return isCord || speaksOf('cord', slot.name);
    })
    .map((slot) => slot.id);
  const isChilds = isForChild(plan);
  const hasHood = plan.pieces.some((piece) => speaksOf('hood', piece.name));
  if (slotIds.length === 0 && !(isChilds && hasHood)) return [];
  const opening = isChilds
    ? say('drawstrings.this-coat-is-for-a-child')
    : say('drawstrings.if-it-is-for-a-child');
  return [
    {
      kind: 'drawstrings, US',
      slotIds,
      says: `${opening} ${us()}`,
      defersTo,
      source: say('drawstrings.16-cfr-1120-and-astm-f1816'),
    },
    {
      kind: 'drawstrings, EU',
      slotIds,
      says: `${isChilds ? say('drawstrings.in-the-eu-no-cord') : say('drawstrings.in-the-eu-no-cord-on')} ${eu()}`,
      defersTo,
      source: say('drawstrings.en-14682-hood-and-neck-as'),
    },
  ];
}
