/** The shopping list as a table for paper and files: by supplier, or by kind of thing as it stands in a shop. */
import { say } from '../wording/say.ts';
import { moneyCell } from '../paper/money-cell.ts';
import { noTick, type PaperRow, type PaperSection, type PaperTable } from '../paper/paper-table.ts';
import { unitPriceMinor } from '../stash/offer.ts';
import type { OfferId } from '../stash/stash.ts';
import {
  type Arrangement,
  type ListOptions,
  type ListSources,
  shoppingGroups,
  slotNames,
  unitsWords,
  usedForWords,
} from './shopping-list.ts';
import type { ToBuy, ToBuyLine } from './to-buy.ts';

/** How the list is walked, and what is ticked on it. */
export interface ListView {
  readonly arrangement: Arrangement;
  readonly ticked: ReadonlySet<OfferId>;
}

const wholeList: ListView = { arrangement: 'supplier', ticked: new Set() };

/** One row a line, with a box to tick. What no offer closes is said below. */
export function shoppingTable(
  sources: ListSources,
  toBuy: ToBuy,
  options: ListOptions,
  { arrangement, ticked }: ListView = wholeList,
): PaperTable {
  const { plan } = sources;
  const isByAisle = arrangement === 'aisle';
  const money = (amountMinor: number) => moneyCell(amountMinor, options);
  const row = (line: ToBuyLine): PaperRow => {
    const item = sources.shelf.find((onShelf) => onShelf.item.id === line.itemId)?.item;
    return [
      ticked.has(line.offer.id) ? 'ticked' : '',
      { text: item?.name ?? '', note: item?.colour ?? '' },
      unitsWords(line.offer.unit, line.unitCount, options.system),
      `${line.unitCount}`,
      usedForWords(sources, line.slotIds),
      ...(isByAisle ? [line.offer.supplier] : []),
      money(unitPriceMinor(line.offer, line.unitCount)),
      money(line.priceMinor),
      line.offer.pricedOn,
    ];
  };
  const sum = (title: string, amountMinor: number): PaperRow => [
    noTick(),
    title,
    '',
    '',
    '',
    '',
    ...(isByAisle ? [''] : []),
    money(amountMinor),
    '',
  ];
  return {
    title: say('shopping-table.to-buy', { planName: plan.name }),
    lead: '',
    sectionHead: arrangement,
    columns: [
      { head: '', kind: 'tick', only: 'paper' },
      { head: say('common.item'), fileHead: 'item', kind: 'text' },
      { head: say('common.buy'), fileHead: 'buy', kind: 'text' },
      { head: 'units', kind: 'number', only: 'file' },
      { head: say('common.for'), fileHead: say('shopping-table.for-slots'), kind: 'text' },
      ...(isByAisle ? [{ head: say('common.supplier'), fileHead: 'supplier', kind: 'text' } as const] : []),
      {
        head: say('shopping-table.price-each', { currency: options.currency }),
        kind: 'number',
        only: 'file',
      },
      { head: say('common.price'), fileHead: `price (${options.currency})`, kind: 'number' },
      { head: say('shopping-table.priced-on'), kind: 'text', only: 'file' },
    ],
    sections: [
      ...shoppingGroups(sources, toBuy, arrangement).map(({ title, lines }) => {
        const goodsMinor = lines.reduce((minor, line) => minor + line.priceMinor, 0);
        const delivery = !isByAisle
          ? toBuy.deliveries.find((candidate) => candidate.supplier === title)
          : undefined;
        const deliveryMinor = delivery?.deliveryMinor ?? 0;
        return {
          title,
          rows: [
            ...lines.map(row),
            ...(deliveryMinor > 0 ? [sum(say('common.delivery'), deliveryMinor)] : []),
          ],
          total: sum(say('common.together'), goodsMinor + deliveryMinor),
        };
      }),
      ...(isByAisle && toBuy.deliveryMinor > 0 ? [deliveries(toBuy, sum)] : []),
    ],
    total: sum(say('common.in-all'), toBuy.payMinor),
    notes: toBuy.unbuyable.map((gap) =>
      gap.why === 'no item chosen'
        ? say('shopping-table.still-to-be-chosen', { slotNames: slotNames(sources, gap.slotIds) })
        : say('shopping-table.no-offer-closes-the-gap-of', {
            itemName: sources.shelf.find(({ item }) => item.id === gap.itemId)?.item.name ?? '',
            slotNames: slotNames(sources, gap.slotIds),
          }),
    ),
  };
}

function deliveries(toBuy: ToBuy, sum: (title: string, amountMinor: number) => PaperRow): PaperSection {
  const asked = toBuy.deliveries.filter(({ deliveryMinor }) => deliveryMinor > 0);
  return {
    title: say('common.deliveries'),
    rows: asked.map(({ supplier, deliveryMinor }) => sum(supplier, deliveryMinor)),
    total: sum(say('common.together'), toBuy.deliveryMinor),
  };
}
