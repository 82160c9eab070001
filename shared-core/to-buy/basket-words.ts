/** The basket in the maker's words: why it is the cheapest, what is next best, and what to mind. */
import { say } from '../wording/say.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { listed } from '../wording/listed.ts';
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
  const name = itemOf(why.itemId, context)?.name ?? say('basket-words.the-item');
  const money = moneyWords(context);
  switch (why.kind) {
    case 'instead': {
      const suppliers = new Set([...why.bought, ...why.instead].map(({ offer }) => offer.supplier));
      const units = (of: readonly Units[]) => unitsOf(of, suppliers.size > 1, context);
      const left = leftWords(why, context);
      const goods =
        why.goodsCheaperMinor < 0
          ? say('basket-words.though-by-itself-dearer-it-saves', { money: money(-why.goodsCheaperMinor) })
          : '';
      const price =
        why.cheaperMinor === 0
          ? say('basket-words.the-same-in-all')
          : say('basket-words.cheaper-in-all', { money: money(why.cheaperMinor), goods });
      return say('basket-words.instead-of', {
        name,
        units: units(why.bought),
        units2: units(why.instead),
        price,
        left,
      });
    }
    case 'more for less': {
      const units = (count: number) => unitsWords(why.offer.unit, count, context.system);
      const more = say('basket-words.where-would-do', {
        name,
        units: units(why.unitCount),
        units2: units(why.neededCount),
      });
      switch (why.through) {
        case 'least count':
          return say('basket-words.sells-no-less', { more, supplier: why.offer.supplier });
        case 'price break':
          return say('basket-words.so-many-have-a-lower-price', { more, money: money(why.cheaperMinor) });
        case 'free delivery':
          return say('basket-words.that-makes-the-delivery-of-free', {
            more,
            supplier: why.offer.supplier,
            money: money(why.cheaperMinor),
          });
        default:
          return why.through satisfies never;
      }
    }
    case 'one dye lot':
      return say('basket-words.all-of-it-from-since-it', {
        name,
        supplier: why.supplier,
        money: money(why.mixedCheaperMinor),
      });
    default:
      return why satisfies never;
  }
}

function unitsOf(units: readonly Units[], isNamed: boolean, { system }: BasketWordsContext): string {
  return listed(
    units.map(({ offer, unitCount }) => {
      const words = unitsWords(offer.unit, unitCount, system);
      return isNamed ? say('basket-words.from', { words, supplier: offer.supplier }) : words;
    }),
  );
}

function leftWords(why: Extract<Why, { kind: 'instead' }>, context: BasketWordsContext): string {
  const item = itemOf(why.itemId, context);
  const { system } = context;
  if (!item || why.left < 1e-6) return '';
  if (why.isLeftArea)
    return say('basket-words.left-over', { left: showQuantity('area', why.left, { system, digits: 1 }) });
  const left = leftAmount(kindRecords[item.kind].counted, why.left, system);
  return say('basket-words.left-over', { left });
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
  const from =
    names.length === 1
      ? say('basket-words.from-alone', { names: names[0] })
      : say('basket-words.from-2', { names: listed(names) });
  const dearer = other.payMinor - cheapest.payMinor;
  return `${from}: ${dearer === 0 ? say('basket-words.the-same-in-all') : say('basket-words.dearer-in-all', { value: moneyWords(context)(dearer) })}.`;
}

/** "Delivery 6.50 EUR", "Delivery free for so much", with the days it takes. */
export function deliveryWords(delivery: Delivery, context: BasketWordsContext): string {
  const days =
    delivery.leadDays === null ? '' : say('basket-words.days-on-the-way', { leadDays: delivery.leadDays });
  if (!delivery.isKnown) return say('basket-words.delivery-not-known-counted-as-nothing');
  if (delivery.isFree) return say('basket-words.delivery-free-for-so-much', { days });
  if (delivery.deliveryMinor === 0) return say('basket-words.no-charge-for-delivery', { days });
  return say('basket-words.delivery', { value: moneyWords(context)(delivery.deliveryMinor), days });
}

/** What the maker should mind before ordering: old prices, deliveries that nobody knows. today: ISO date. */
export function basketCautions(
  { lines, deliveries }: BoughtBasket,
  today: string,
  context: BasketWordsContext,
): string[] {
  const old = lines.filter(({ offer }) => isOldPrice(offer, today));
  const prices = old.map(({ itemId, offer }) => {
    const name = itemOf(itemId, context)?.name ?? say('basket-words.an-item');
    return say('basket-words.the-price-of-from-is-days', {
      name,
      supplier: offer.supplier,
      priceAgeDays: priceAgeDays(offer, today),
      oldPriceDays,
    });
  });
  const unknown = deliveries.filter(({ isKnown }) => !isKnown).map(({ supplier }) => supplier);
  return unknown.length === 0
    ? prices
    : [
        ...prices,
        say('basket-words.what-ask-for-delivery-is-not', {
          unknown: listed(unknown),
          unknownCount: unknown.length,
        }),
      ];
}

/** "All of it is here 12 days after it is ordered", or null where the days of a supplier are not known. */
export function leadSentence({ deliveries }: BoughtBasket): string | null {
  const days = deliveries.map(({ leadDays }) => leadDays);
  if (days.length === 0 || days.includes(null)) return null;
  const longest = Math.max(...days.map((each) => each ?? 0));
  return say('basket-words.all-of-it-can-be-here', { longest });
}

function itemOf(itemId: ItemId, { shelf }: BasketWordsContext) {
  return shelf.find(({ item }) => item.id === itemId)?.item;
}

function moneyWords({ system, currency }: BasketWordsContext): (amountMinor: number) => string {
  return (amountMinor) => showQuantity('money', amountMinor, { system, currency });
}
