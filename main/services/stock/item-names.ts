/** Items that a maker could not tell apart. */
import { folded } from '../../../shared-core/measure/text/folded-text.ts';
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import type { Queries } from '../../database/store.ts';
import { sortKey } from '../../database/schema/search-text.ts';

export interface NamedItem {
  /** Null: it is not in the stash yet. */
  readonly itemId: string | null;
  readonly kind: ItemKind;
  readonly name: string;
  readonly colour: string;
}

/** Whether another item of its kind that is not put away has its name and colour. */
export async function isNameTaken(
  queries: Queries,
  { itemId, kind, name, colour }: NamedItem,
): Promise<boolean> {
  const alike = await queries
    .selectFrom('item')
    .select(['id', 'name', 'colour'])
    .where('kind', '=', kind)
    .where('archived', '=', 0)
    .where('name_key', '=', sortKey(name))
    .execute();
  return alike.some(
    (item) =>
      item.id !== itemId && folded(item.name) === folded(name) && folded(item.colour) === folded(colour),
  );
}
