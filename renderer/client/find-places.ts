/** The places that the search leads to: rooms of the workshop, steps of the open coat, and what the workshop holds. */
import type { Find } from '../../shared-core/contract/find-calls.ts';
import { folded } from '../../shared-core/measure/text/folded-text.ts';
import { kindRecords } from '../../shared-core/stash/kinds.ts';
import { type Route, routeHash, type Step } from './route.ts';

export interface FindPlace {
  readonly route: Route;
  readonly hash: string;
  /** Unique among all. */
  readonly id: string;
  readonly name: string;
  /** "cloth, fawn", "supplier". */
  readonly detail: string;
}

const rooms: readonly { readonly name: string; readonly route: Route }[] = [
  { name: 'Stash', route: { kind: 'stash', itemId: null } },
  { name: 'Coats', route: { kind: 'coats' } },
  { name: 'Draft a coat from measures', route: { kind: 'draft' } },
  { name: 'Season', route: { kind: 'season' } },
  { name: 'Suppliers', route: { kind: 'suppliers' } },
  { name: 'Account', route: { kind: 'account' } },
  { name: 'Settings', route: { kind: 'settings' } },
  { name: 'Welcome', route: { kind: 'welcome' } },
];

/** Rooms, and steps of the coat that is open, in whose names every typed word stands; all rooms where nothing is typed. */
export function placesByName(
  text: string,
  openPlanId: string | null,
  steps: readonly { readonly step: Step; readonly name: string }[],
): readonly FindPlace[] {
  const words = folded(text).split(' ');
  const isNamed = (name: string) => words.every((word) => folded(name).includes(word));
  const ofCoat =
    openPlanId === null
      ? []
      : steps.map(({ step, name }) => placeOf(name, { kind: 'coat', planId: openPlanId, step }, 'this coat'));
  return [...ofCoat, ...rooms.map(({ name, route }) => placeOf(name, route, 'room'))].filter(({ name }) =>
    isNamed(name),
  );
}

/** Where a find is looked at. */
export function placeOfFind(find: Find): FindPlace {
  switch (find.kind) {
    case 'item': {
      const detail = [
        kindRecords[find.itemKind].label.toLowerCase(),
        find.colour,
        find.isPutAway ? 'put away' : '',
      ].filter(Boolean);
      return placeOf(find.name, { kind: 'stash', itemId: find.itemId }, detail.join(', '));
    }
    case 'coat':
      return placeOf(
        find.name,
        { kind: 'coat', planId: find.planId, step: 'plan' },
        find.size === '' ? 'coat' : `coat, size ${find.size}`,
      );
    case 'supplier':
      return placeOf(find.name, { kind: 'suppliers' }, 'supplier');
    case 'offer':
      return placeOf(find.name, { kind: 'stash', itemId: find.itemId }, `offer by ${find.supplier}`);
    default:
      return find satisfies never;
  }
}

function placeOf(name: string, route: Route, detail: string): FindPlace {
  const hash = routeHash(route);
  return { route, hash, id: `${detail} ${name} ${hash}`, name, detail };
}
