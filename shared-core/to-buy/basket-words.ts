/** The basket in the maker's words: why it is the cheapest, what is next best, and what to mind. */
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { listed } from '../plan/edits/edited.ts';
import { kindRecords } from '../stash/kinds.ts';
import { isOldPrice, oldPriceDays, priceAgeDays } from '../stash/offer.ts';
import type { ItemId, ItemOnShelf } from '../stash/stash.ts';
import type { Delivery } from './basket-sums.ts';
import { unitsWords } from './shopping-list.ts';
import type { BoughtBasket } from './to-buy.ts';
import type { Units, Why } from './whys.ts';

export interface BasketWordsContext {
  readonly shelf: readonly ItemOnShelf[];
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** "Fleecewell 120: 1 sheet of 2.3 m x 2.5 m instead of 2 sheets of 1.5 m x 2 m: 3.10 EUR cheaper; 0.4 m² left over." */
export function whySentence(why: Why, context: BasketWordsContext): string {
  const name = itemOf(why.itemId, context)?.name ?? 'The item';
  const money = moneyWords(context);
  switch (why.kind) {
    case 'instead': {
      const suppliers = new Set([...why.bought, ...why.instead].map(({ offer }) => offer.supplier));
      const units = (of: readonly Units[]) => unitsOf(of, suppliers.size > 1, context);
      const left = leftWords(why, context);
      const goods =
        why.goodsCheaperMinor < 0
          ? `, though by itself ${money(-why.goodsCheaperMinor)} dearer: it saves a delivery`
          : '';
      const price =
        why.cheaperMinor === 0 ? 'the same in all' : `${money(why.cheaperMinor)} cheaper in all${goods}`;
      return `${name}: ${units(why.bought)} instead of ${units(why.instead)}: ${price}${left}.`;
    }
    case 'more for less': {
      const units = (count: number) => unitsWords(why.offer.unit, count, context.system);
      const more = `${name}: ${units(why.unitCount)} where ${units(why.neededCount)} would do`;
      switch (why.through) {
        case 'least count':
          return `${more}: ${why.offer.supplier} sells no less.`;
        case 'price break':
          return `${more}: so many have a lower price, ${money(why.cheaperMinor)} cheaper in all.`;
        case 'free delivery':
          return `${more}: that makes the delivery of ${why.offer.supplier} free, ${money(why.cheaperMinor)} cheaper in all.`;
        default:
          return why.through satisfies never;
      }
    }
    case 'one dye lot':
      return `${name}: all of it from ${why.supplier}, since it is seen and wants one dye lot; from several offers it would be ${money(why.mixedCheaperMinor)} cheaper.`;
    default:
      return why satisfies never;
  }
}

function unitsOf(units: readonly Units[], isNamed: boolean, { system }: BasketWordsContext): string {
  return listed(
    units.map(({ offer, unitCount }) => {
      const words = unitsWords(offer.unit, unitCount, system);
      return isNamed ? `${words} from ${offer.supplier}` : words;
    }),
  );
}

function leftWords(why: Extract<Why, { kind: 'instead' }>, context: BasketWordsContext): string {
  const item = itemOf(why.itemId, context);
  const { system } = context;
  if (!item || why.left < 1e-6) return '';
  if (why.isLeftArea) return `; ${showQuantity('area', why.left, { system, digits: 1 })} left over`;
  const left = leftAmount(kindRecords[item.kind].counted, why.left, system);
  return `; ${left} left over`;
}

function leftAmount(
  counted: (typeof kindRecords)[keyof typeof kindRecords]['counted'],
  amount: number,
  system: MeasureSystem,
): string {
  switch (counted) {
    case 'length':
      return showQuantity('length', amount, { system, unit: { metric: 'm', imperial: 'yd' } });
    case 'mass':
      return showQuantity('mass', amount, { system });
    case 'thread':
      return showQuantity('threadLength', amount, { system });
    case 'pieces':
      return String(Math.floor(amount));
    default:
      return counted satisfies never;
  }
}

/** "From Marl & Wick alone: 4.10 EUR dearer in all." */
export function fewerSentence(
  cheapest: BoughtBasket,
  other: BoughtBasket,
  context: BasketWordsContext,
): string {
  const names = other.deliveries.map(({ supplier }) => supplier);
  const from = names.length === 1 ? `From ${names[0]} alone` : `From ${listed(names)}`;
  const dearer = other.payMinor - cheapest.payMinor;
  return `${from}: ${dearer === 0 ? 'the same in all' : `${moneyWords(context)(dearer)} dearer in all`}.`;
}

/** "Delivery 6.50 EUR", "Delivery free for so much", with the days it takes. */
export function deliveryWords(delivery: Delivery, context: BasketWordsContext): string {
  const days =
    delivery.leadDays === null
      ? ''
      : `, ${delivery.leadDays === 1 ? '1 day' : `${delivery.leadDays} days`} on the way`;
  if (!delivery.isKnown) return 'Delivery not known, counted as nothing';
  if (delivery.isFree) return `Delivery free for so much${days}`;
  if (delivery.deliveryMinor === 0) return `No charge for delivery${days}`;
  return `Delivery ${moneyWords(context)(delivery.deliveryMinor)}${days}`;
}

/** What the maker should mind before ordering: old prices, deliveries that nobody knows. today: ISO date. */
export function basketCautions(
  { lines, deliveries }: BoughtBasket,
  today: string,
  context: BasketWordsContext,
): string[] {
  const old = lines.filter(({ offer }) => isOldPrice(offer, today));
  const prices = old.map(({ itemId, offer }) => {
    const name = itemOf(itemId, context)?.name ?? 'an item';
    return `The price of ${name} from ${offer.supplier} is ${priceAgeDays(offer, today)} days old, and after ${oldPriceDays} days prices have often moved: ask before you order.`;
  });
  const unknown = deliveries.filter(({ isKnown }) => !isKnown).map(({ supplier }) => supplier);
  return unknown.length === 0
    ? prices
    : [
        ...prices,
        `What ${listed(unknown)} ${unknown.length === 1 ? 'asks' : 'ask'} for delivery is not noted and counts as nothing here.`,
      ];
}

/** "All of it is here 12 days after it is ordered", or null where the days of a supplier are not known. */
export function leadSentence({ deliveries }: BoughtBasket): string | null {
  const days = deliveries.map(({ leadDays }) => leadDays);
  if (days.length === 0 || days.includes(null)) return null;
  const longest = Math.max(...days.map((each) => each ?? 0));
  return `All of it can be here ${longest === 1 ? '1 day' : `${longest} days`} after it is ordered.`;
}

function itemOf(itemId: ItemId, { shelf }: BasketWordsContext) {
  return shelf.find(({ item }) => item.id === itemId)?.item;
}

function moneyWords({ system, currency }: BasketWordsContext): (amountMinor: number) => string {
  return (amountMinor) => showQuantity('money', amountMinor, { system, currency });
}
