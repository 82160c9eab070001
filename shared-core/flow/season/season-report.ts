/** A season told: sentences by plan, one shopping list, and the same as JSON for scripts. */
import { byName } from '../../wording/in-order.ts';
import { say } from '../../wording/say.ts';
import { coverHeadline, coverSentences } from '../../cover/cover-words.ts';
import type { PlanInSeason, SeasonBasket } from './season.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import { moneyCell } from '../../paper/money-cell.ts';
import type { PaperRow, PaperTable } from '../../paper/paper-table.ts';
import { tableText } from '../../paper/table-text.ts';
import { coatTotal } from '../../plan/model/sizes.ts';
import type { ItemOnShelf } from '../../stash/stash.ts';
import type { Buy } from '../../to-buy/basket-sums.ts';
import type { Gap } from '../../to-buy/gaps.ts';
import { unitsWords } from '../../to-buy/shopping-list.ts';

export interface SeasonSaid {
  readonly plans: readonly PlanInSeason[];
  readonly bought: SeasonBasket;
  /** The shelf as it lies now: for names. */
  readonly shelf: readonly ItemOnShelf[];
}

export interface SeasonOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** What of a plan is not covered: one sentence for each slot that is short or open. */
export function shortSentences({ plan, shelf, estimate }: PlanInSeason, system: MeasureSystem): string[] {
  return estimate.cover
    .filter(({ state }) => state === 'short' || state === 'open')
    .flatMap((slotCover) => coverSentences(slotCover, { plan, shelf, system }).slice(0, 1));
}

/** Material of all plans together. */
export function seasonCostMinor(plans: readonly PlanInSeason[]): number {
  return plans.reduce((sum, { estimate }) => sum + estimate.cost.batchMinor, 0);
}

/** Which plans' slots a purchase is for: "Lapwing: shell; Plover: shell, facing". */
export function gapWords(gaps: readonly Gap[], plans: readonly PlanInSeason[]): string {
  const byPlan = Map.groupBy(gaps, (gap) => gap.planId);
  return [...byPlan]
    .map(([planId, ofPlan]) => {
      const name = plans.find(({ plan }) => plan.id === planId)?.plan.name ?? '';
      return `${name}: ${ofPlan.map(({ slotName }) => slotName).join(', ')}`;
    })
    .join('; ');
}

/** The one list of the season, by supplier. */
export function seasonTable({ plans, bought, shelf }: SeasonSaid, options: SeasonOptions): PaperTable {
  const { basket, unbuyable } = bought;
  const money = (amountMinor: number) => moneyCell(amountMinor, options);
  const itemName = (itemId: string) => shelf.find(({ item }) => item.id === itemId)?.item.name ?? '';
  const row = (buy: Buy): PaperRow => [
    '',
    itemName(buy.itemId),
    unitsWords(buy.offer.unit, buy.unitCount, options.system),
    gapWords(buy.gaps, plans),
    money(buy.priceMinor),
  ];
  const bySupplier = Map.groupBy(basket.buys, (buy) => buy.offer.supplier);
  const open = plans.flatMap(({ plan, estimate }) =>
    estimate.cover.some(({ state }) => state === 'open') ? [plan.name] : [],
  );
  return {
    title: say('season-report.to-buy-for-the-season'),
    lead: '',
    sectionHead: 'supplier',
    columns: [
      { head: '', kind: 'tick', only: 'paper' },
      { head: say('common.item'), fileHead: 'item', kind: 'text' },
      { head: say('common.buy'), fileHead: 'buy', kind: 'text' },
      { head: say('common.for'), fileHead: 'for', kind: 'text' },
      { head: say('common.price'), fileHead: `price (${options.currency})`, kind: 'number' },
    ],
    sections: [...bySupplier]
      .sort(([a], [b]) => byName(a, b))
      .map(([supplier, buys]) => ({
        title: supplier,
        rows: buys.map(row),
        total: [
          '',
          say('common.together'),
          '',
          '',
          money(buys.reduce((sum, buy) => sum + buy.priceMinor, 0)),
        ],
      })),
    total: ['', say('season-report.in-all-deliveries-with-it'), '', '', money(basket.totalMinor)],
    notes: [
      ...unbuyable.map((gap) =>
        say('season-report.no-offer-closes-the-gap-of', {
          itemName: itemName(gap.itemId),
          gapWords: gapWords([gap], plans),
        }),
      ),
      ...open.map((name) => say('season-report.still-to-be-chosen-slots-of', { name })),
    ],
  };
}

export function seasonText(said: SeasonSaid, options: SeasonOptions): string {
  const money = (amountMinor: number) => showQuantity('money', amountMinor, options);
  const { plans, bought } = said;
  const blocks = plans.map((each, index) => {
    const count = coatTotal(each.plan);
    return [
      `${index + 1}. ${each.plan.name}, ${say('season-report.coats', { count })}: ${coverHeadline(each.estimate.cover)}`,
      ...shortSentences(each, options.system).map((sentence) => `   ${sentence}`),
      `   ${say('season-report.material', { money: money(each.estimate.cost.batchMinor) })}`,
    ].join('\n');
  });
  const list =
    bought.basket.buys.length + bought.unbuyable.length === 0
      ? say('season-report.nothing-is-to-be-bought')
      : tableText(seasonTable(said, options));
  return [
    ...blocks,
    say('season-report.material-of-the-season', { money: money(seasonCostMinor(plans)) }),
    list,
  ].join('\n\n');
}

/** Keys: plans, toBuy, costMinor, currency. Amounts in the kind's unit, money in minor units. */
export function seasonJson({ plans, bought, shelf }: SeasonSaid, { system, currency }: SeasonOptions) {
  const itemName = (itemId: string | null) => shelf.find(({ item }) => item.id === itemId)?.item.name ?? null;
  return {
    plans: plans.map((each) => ({
      planId: each.plan.id,
      name: each.plan.name,
      coatCount: coatTotal(each.plan),
      isCovered: shortSentences(each, system).length === 0,
      short: each.estimate.cover
        .filter(({ state }) => state === 'short' || state === 'open')
        .map(({ slotId, itemId, shortage }) => ({ slotId, itemId, item: itemName(itemId), shortage })),
      said: shortSentences(each, system),
      cost: each.estimate.cost,
    })),
    toBuy: {
      lines: bought.basket.buys.map(({ gaps, alternatives: _, ...buy }) => ({
        ...buy,
        item: itemName(buy.itemId),
        for: gaps.map(({ planId, slotId }) => ({ planId, slotId })),
      })),
      deliveries: bought.basket.deliveries,
      totalMinor: bought.basket.totalMinor,
      unbuyable: bought.unbuyable.map(({ planId, slotId, itemId }) => ({ planId, slotId, itemId })),
    },
    costMinor: seasonCostMinor(plans),
    currency,
  };
}
