/** The demo workshop, whole: an invented pair of makers, their stash, their suppliers' offers and a coat of their own. */
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { Offer } from '../stash/offer.ts';
import type { Item, Length, Lot, Movement } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { fenwalkCoat, type SlotChoices } from './coat.ts';
import { demoItems } from './items.ts';
import { demoOffers, demoSuppliers } from './offers.ts';
import { demoLengths, demoLots, demoMovements } from './shelf.ts';

export interface DemoWorkshop {
  readonly workshop: {
    readonly name: string;
    readonly makers: readonly string[];
    readonly currency: string;
    /** How they make their prices; all of it invented. */
    readonly pricing: {
      readonly hourlyRateMinor: number;
      readonly overhead: { readonly kind: 'share'; readonly ratio: number };
      readonly wholesale: { readonly kind: 'margin'; readonly ratio: number };
      readonly retail: { readonly kind: 'mark-up'; readonly ratio: number };
    };
  };
  readonly items: readonly Item[];
  readonly lots: readonly Lot[];
  readonly lengths: readonly Length[];
  readonly movements: readonly Movement[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
  readonly plans: readonly CoatPlan[];
  /** In the order of their priority; null: as many as the plan says. */
  readonly season: readonly { readonly planId: string; readonly coatCount: number | null }[];
}

/** The same workshop each time: fixed ids, dates and prices. */
export function demoWorkshop(): DemoWorkshop {
  return {
    workshop: {
      name: 'Lantern Moth Coats',
      makers: ['Ottilie Brandreth', 'Saul Penhallick'],
      currency: 'EUR',
      pricing: {
        hourlyRateMinor: 2250,
        overhead: { kind: 'share', ratio: 0.14 },
        wholesale: { kind: 'margin', ratio: 0.35 },
        retail: { kind: 'mark-up', ratio: 0.9 },
      },
    },
    items: demoItems(),
    lots: demoLots(),
    lengths: demoLengths(),
    movements: demoMovements(),
    offers: demoOffers(),
    suppliers: demoSuppliers(),
    plans: [
      fenwalkCoat(fenwalkChoices),
      {
        ...fenwalkCoat({ ...fenwalkChoices, shell: 'item-slatewater' }),
        id: 'plan-fenwalk-slate',
        name: 'Fenwalk coat in slate',
        coatCount: 2,
      },
    ],
    season: [
      { planId: 'plan-fenwalk-40', coatCount: 4 },
      { planId: 'plan-fenwalk-slate', coatCount: null },
    ],
  };
}

const fenwalkChoices: SlotChoices = {
  shell: 'item-peatwater',
  'body-lining': 'item-emberday',
  'sleeve-lining': 'item-otterslip',
  batting: 'item-fleecewell',
  pocketing: 'item-thimblefold',
  trim: 'item-rowanberry',
  'sewing-thread': 'item-spun-olive',
  'quilting-thread': 'item-core-olive',
  needles: 'item-sharp-75',
  zip: 'item-zip-long',
  snaps: 'item-snap-12',
  cord: 'item-cord',
  toggles: 'item-toggle',
  label: 'item-label',
  'hang-loop': 'item-hang-loop',
};
