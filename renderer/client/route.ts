/** Where the maker is, as the part of the address behind #. One value, so that back and forward work. */
export const steps = ['plan', 'needs', 'lay', 'cover', 'to-buy', 'cost'] as const;
export type Step = (typeof steps)[number];

export type Route =
  | { readonly kind: 'welcome' }
  | { readonly kind: 'stash'; readonly itemId: string | null }
  | { readonly kind: 'coats' }
  | { readonly kind: 'coat'; readonly planId: string; readonly step: Step }
  | { readonly kind: 'settings' };

export function readRoute(hash: string): Route {
  const [room, id, step] = hash.replace(/^#\/?/, '').split('/').map(decodeURIComponent);
  switch (room) {
    case 'stash':
      return { kind: 'stash', itemId: id || null };
    case 'coats':
      return id
        ? { kind: 'coat', planId: id, step: steps.find((known) => known === step) ?? 'plan' }
        : { kind: 'coats' };
    case 'settings':
      return { kind: 'settings' };
    default:
      return { kind: 'welcome' };
  }
}

export function routeHash(route: Route): string {
  switch (route.kind) {
    case 'welcome':
      return '#/';
    case 'stash':
      return route.itemId ? `#/stash/${encodeURIComponent(route.itemId)}` : '#/stash';
    case 'coats':
      return '#/coats';
    case 'coat':
      return `#/coats/${encodeURIComponent(route.planId)}/${route.step}`;
    case 'settings':
      return '#/settings';
    default:
      return route satisfies never;
  }
}

export function goTo(route: Route): void {
  window.location.hash = routeHash(route);
}
