/** The places that the search leads to: rooms of the workshop, steps of the open coat, and what the workshop holds. */
import { nounInSentence } from '../../shared-core/wording/in-sentence.ts';
import { say } from '../../shared-core/wording/say.ts';
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
  { name: say('common.stash'), route: { kind: 'stash', itemId: null } },
  { name: say('common.coats'), route: { kind: 'coats' } },
  { name: say('find-places.draft-a-coat-from-measures'), route: { kind: 'draft' } },
  { name: say('common.season'), route: { kind: 'season' } },
  { name: say('common.suppliers'), route: { kind: 'suppliers' } },
  { name: say('common.account'), route: { kind: 'account' } },
  { name: say('common.settings'), route: { kind: 'settings' } },
  { name: say('find-places.welcome'), route: { kind: 'welcome' } },
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
      : steps.map(({ step, name }) =>
          placeOf(name, { kind: 'coat', planId: openPlanId, step }, say('find-places.this-coat')),
        );
  return [...ofCoat, ...rooms.map(({ name, route }) => placeOf(name, route, 'room'))].filter(({ name }) =>
    isNamed(name),
  );
}

/** Where a find is looked at. */
export function placeOfFind(find: Find): FindPlace {
  switch (find.kind) {
    case 'item': {
      const detail = [
        nounInSentence(kindRecords[find.itemKind].label),
        find.colour,
        find.isPutAway ? say('find-places.put-away') : '',
      ].filter(Boolean);
      return placeOf(find.name, { kind: 'stash', itemId: find.itemId }, detail.join(', '));
    }
    case 'coat':
      return placeOf(
        find.name,
        { kind: 'coat', planId: find.planId, step: 'plan' },
        find.size === '' ? 'coat' : say('find-places.coat-size', { findCount: find.size }),
      );
    case 'supplier':
      return placeOf(find.name, { kind: 'suppliers' }, 'supplier');
    case 'offer':
      return placeOf(
        find.name,
        { kind: 'stash', itemId: find.itemId },
        say('find-places.offer-by', { supplier: find.supplier }),
      );
    default:
      return find satisfies never;
  }
}

function placeOf(name: string, route: Route, detail: string): FindPlace {
  const hash = routeHash(route);
  return { route, hash, id: `${detail} ${name} ${hash}`, name, detail };
}
