/**
 * The text in the square code of a shelf label. It names an item of this workshop and nothing else: no address, no
 * name, nothing that a phone could open by itself. Typed or scanned into Find, it leads to the item.
 */
import type { ItemId } from './stash.ts';

const start = 'boltbaffle:item/';

export function itemCode(itemId: ItemId): string {
  return `${start}${itemId}`;
}

/** What is left of a code whatever a scanner that is set to another keyboard makes of its signs. */
function bare(text: string): string {
  return text.replace(/[^a-z0-9]/gi, '').toLowerCase();
}

const bareStart = bare(start);

/** Whether a text is such a code, of whatever item. */
export function isItemCode(text: string): boolean {
  return bare(text).startsWith(bareStart) && bare(text).length > bareStart.length;
}

/** Whether a text is the code of that item; large and small letters and signs make no difference. */
export function isCodeOf(text: string, itemId: ItemId): boolean {
  return bare(text) === bareStart + bare(itemId);
}
