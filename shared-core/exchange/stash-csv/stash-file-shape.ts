/** What a stash file is read against, and an item as its lines speak of it. */
import type { Item, ItemOnShelf } from '../../stash/stash.ts';
import type { ChangedFact } from './stash-change.ts';
import type { StashLine } from './stash-lines.ts';

/** The stash as it stands, and what only the program around it knows. */
export interface StashNow {
  /** Every item that is not archived, with every lot it ever had. */
  readonly shelves: readonly ItemOnShelf[];
  /** Of archived items, of their lots and of their lengths. */
  readonly archivedIds: ReadonlySet<string>;
  readonly currency: string;
  readonly newId: () => string;
}

export interface FileItem {
  readonly lines: readonly StashLine[];
  /** null for a new item. */
  readonly shelf: ItemOnShelf | null;
  readonly item: Item;
  readonly changed: readonly ChangedFact[];
}
