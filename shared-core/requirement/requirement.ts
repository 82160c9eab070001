/** Plan -> needs by slot. Each estimate is one line of the list, in the order shown. */
import type { CoatPlan, Slot } from '../plan/coat-plan.ts';
import { fasteningNeed } from './fastenings.ts';
import { fillNeed } from './fill.ts';
import type { Need, SlotItems } from './need.ts';
import { needleNeed } from './needles.ts';
import { shapesNeed } from './shapes.ts';
import { threadNeed } from './thread.ts';

/** What every slot of the plan needs for the whole batch, in the order of the plan's slots. */
export function requirement(plan: CoatPlan, items: SlotItems): readonly Need[] {
  return plan.slots.map((slot) => slotNeed(plan, slot, items));
}

function slotNeed(plan: CoatPlan, slot: Slot, items: SlotItems): Need {
  switch (slot.kind) {
    case 'cloth':
    case 'batting':
      return shapesNeed(plan, slot, items);
    case 'fill':
      return fillNeed(plan, slot, items);
    case 'thread':
      return threadNeed(plan, slot, items);
    case 'needle':
      return needleNeed(plan, slot, items);
    case 'fastening':
      return fasteningNeed(plan, slot, items);
    default:
      return slot.kind satisfies never;
  }
}
