/** Words on a coat's slots and items that several of its rooms say. */
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';

export function slotName(input: FlowInput, slotId: string): string {
  return input.plan.slots.find((slot) => slot.id === slotId)?.name ?? slotId;
}

export function itemById(input: FlowInput, itemId: string | null): Item | null {
  return input.shelf.find((onShelf) => onShelf.item.id === itemId)?.item ?? null;
}

/** "shell, body lining" of some slots. */
export function slotNames(input: FlowInput, slotIds: readonly string[]): string {
  return slotIds.map((slotId) => slotName(input, slotId)).join(', ');
}
