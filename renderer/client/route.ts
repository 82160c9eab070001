/** Where the maker is, as the part of the address behind #. One value, so that back and forward work. */
export const steps = [
  'plan',
  'quilting',
  'needs',
  'lay',
  'cover',
  'to-buy',
  'cost',
  'cutting',
  'finished',
  'table',
] as const;
export type Step = (typeof steps)[number];

export const stepNames: Record<Step, string> = {
  plan: 'Plan',
  quilting: 'Quilting',
  needs: 'Needs',
  lay: 'Lay',
  cover: 'Cover',
  'to-buy': 'To buy',
  cost: 'Cost',
  cutting: 'Cutting',
  finished: 'Finished',
  table: 'Pattern table',
};

export type Route =
  | { readonly kind: 'welcome' }
  | { readonly kind: 'stash'; readonly itemId: string | null }
  | { readonly kind: 'coats' }
  /** A new coat drafted from measures. */
  | { readonly kind: 'draft' }
  | {
      readonly kind: 'coat';
      readonly planId: string;
      readonly step: Step;
      /** The slot that the maker came for, where the step shows several. */
      readonly slotId?: string;
    }
  | { readonly kind: 'season' }
  | { readonly kind: 'suppliers' }
  | { readonly kind: 'account' }
  | { readonly kind: 'settings' };

/** The room that an address names; one that names none is the welcome. hash: with or without its #, of any content. */
export function readRoute(hash: string): Route {
  const [room, id, step, slotId] = hash.replace(/^#\/?/, '').split('/').map(decoded);
  switch (room) {
    case 'stash':
      return { kind: 'stash', itemId: id || null };
    case 'coats':
      return id
        ? {
            kind: 'coat',
            planId: id,
            step: steps.find((known) => known === step) ?? 'plan',
            ...(slotId && { slotId }),
          }
        : { kind: 'coats' };
    case 'draft':
      return { kind: 'draft' };
    case 'season':
      return { kind: 'season' };
    case 'suppliers':
      return { kind: 'suppliers' };
    case 'account':
      return { kind: 'account' };
    case 'settings':
      return { kind: 'settings' };
    default:
      return { kind: 'welcome' };
  }
}

/** A part that was damaged on its way is taken as it stands. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
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
      return `#/coats/${encodeURIComponent(route.planId)}/${route.step}${route.slotId ? `/${encodeURIComponent(route.slotId)}` : ''}`;
    case 'draft':
      return '#/draft';
    case 'season':
      return '#/season';
    case 'suppliers':
      return '#/suppliers';
    case 'account':
      return '#/account';
    case 'settings':
      return '#/settings';
    default:
      return route satisfies never;
  }
}

/** The slot that the address names now, or null. */
export function slotInAddress(): string | null {
  const route = readRoute(window.location.hash);
  return route.kind === 'coat' ? (route.slotId ?? null) : null;
}

export function goTo(route: Route): void {
  window.location.hash = routeHash(route);
}
