/** Where the maker is, as the part of the address behind #. One value, so that back and forward work. */
import { say } from '../../shared-core/wording/say.ts';
import { parse } from 'regexparam';
import { useMemo } from 'react';
import { matchRoute } from 'wouter';
import { navigate, useHashLocation } from 'wouter/use-hash-location';

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
  plan: say('route.plan'),
  quilting: say('route.quilting'),
  needs: say('route.needs'),
  lay: say('route.lay'),
  cover: say('common.cover'),
  'to-buy': say('common.to-buy-2'),
  cost: say('common.cost'),
  cutting: say('route.cutting'),
  finished: say('route.finished'),
  table: say('route.pattern-table'),
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

type Kind = Route['kind'];
type RouteOf<One extends Kind> = Extract<Route, { kind: One }>;
/** Parts of an address by their names in the pattern, as they stand in it. */
type Named = Readonly<Record<string, string | undefined>>;

interface Place<One extends Kind> {
  /** What stands behind # at this place. What follows it is no matter. */
  readonly pattern: string;
  readonly read: (named: Named) => RouteOf<One>;
  /** The parts of its address, not yet encoded. */
  readonly parts: (route: RouteOf<One>) => readonly string[];
}

/** Every place there is; of two that fit, the first is meant. */
const places: { readonly [One in Kind]: Place<One> } = {
  stash: {
    pattern: '/stash/:itemId?/*?',
    read: ({ itemId }) => ({ kind: 'stash', itemId: itemId === undefined ? null : decoded(itemId) }),
    parts: ({ itemId }) => ['stash', ...(itemId ? [itemId] : [])],
  },
  coat: {
    pattern: '/coats/:planId/:step?/:slotId?/*?',
    read: ({ planId = '', step, slotId }) => ({
      kind: 'coat',
      planId: decoded(planId),
      step: steps.find((known) => known === step) ?? 'plan',
      ...(slotId !== undefined && { slotId: decoded(slotId) }),
    }),
    parts: ({ planId, step, slotId }) => ['coats', planId, step, ...(slotId ? [slotId] : [])],
  },
  coats: plain('coats'),
  draft: plain('draft'),
  season: plain('season'),
  suppliers: plain('suppliers'),
  account: plain('account'),
  settings: plain('settings'),
  welcome: { pattern: '*', read: () => ({ kind: 'welcome' }), parts: () => [] },
};

/** A room with nothing further in its address. */
function plain<One extends 'coats' | 'draft' | 'season' | 'suppliers' | 'account' | 'settings'>(kind: One) {
  return { pattern: `/${kind}/*?`, read: () => ({ kind }) as RouteOf<One>, parts: () => [kind] };
}

/** The room that an address names; one that names none is the welcome. hash: with or without its #, of any content. */
export function readRoute(hash: string): Route {
  const path = `/${hash.replace(/^#?\/?/, '')}`;
  for (const { pattern, read } of Object.values(places)) {
    const [isHere, named] = matchRoute(parse, pattern, path);
    if (isHere) return read(named);
  }
  return { kind: 'welcome' };
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
  return `#/${partsOf(route.kind, route).map(encodeURIComponent).join('/')}`;
}

function partsOf<One extends Kind>(kind: One, route: RouteOf<One>): readonly string[] {
  return places[kind].parts(route);
}

/** The slot that the address names now, or null. */
export function slotInAddress(): string | null {
  const route = readRoute(window.location.hash);
  return route.kind === 'coat' ? (route.slotId ?? null) : null;
}

/** The place that the address names, for as long as it does. */
export function useRoute(): Route {
  const [path] = useHashLocation();
  return useMemo(() => readRoute(path), [path]);
}

/** leavesNoTrail: back then leads to where the maker was before this place. */
export function goTo(route: Route, { leavesNoTrail = false } = {}): void {
  const hash = routeHash(route);
  if (hash !== window.location.hash) navigate(hash, { replace: leavesNoTrail });
}
