/** The shopping list as a table for paper and files: by supplier, or by kind of thing as it stands in a shop. */
import type { PaperCell, PaperRow, PaperTable } from '../paper/paper-table.ts';
import { showQuantity } from '../measure/show.ts';
import { slotById } from '../plan/coat-plan.ts';
import { unitPriceMinor } from '../stash/offer.ts';
import { bySupplier, type ListOptions, type ListSources, unitsWords } from './shopping-list.ts';
import type { ToBuy, ToBuyLine } from './to-buy.ts';

/** One row a line, with a box to tick. What no offer closes is said below. */
export function shoppingTable(sources: ListSources, toBuy: ToBuy, options: ListOptions): PaperTable {
  const { plan } = sources;
  const money = (amountMinor: number) => moneyCell(amountMinor, options);
  const row = (line: ToBuyLine): PaperRow => {
    const item = sources.shelf.find((onShelf) => onShelf.item.id === line.itemId)?.item;
    return [
      '',
      { text: item?.name ?? '', note: item?.colour ?? '' },
      unitsWords(line.offer.unit, line.unitCount, options.system),
      `${line.unitCount}`,
      slotWords(sources, line.slotIds),
      money(unitPriceMinor(line.offer, line.unitCount)),
      money(line.priceMinor),
      line.offer.pricedOn,
    ];
  };
  const sum = (title: string, amountMinor: number): PaperRow => [
    '',
    title,
    '',
    '',
    '',
    '',
    money(amountMinor),
    '',
  ];
  return {
    title: `${plan.name}: to buy`,
    lead: '',
    sectionHead: 'supplier',
    columns: [
      { head: '', kind: 'tick', only: 'paper' },
      { head: 'Item', fileHead: 'item', kind: 'text' },
      { head: 'Buy', fileHead: 'buy', kind: 'text' },
      { head: 'units', kind: 'number', only: 'file' },
      { head: 'For', fileHead: 'for slots', kind: 'text' },
      { head: `price each (${options.currency})`, kind: 'number', only: 'file' },
      { head: 'Price', fileHead: `price (${options.currency})`, kind: 'number' },
      { head: 'priced on', kind: 'text', only: 'file' },
    ],
    sections: bySupplier(toBuy).map(({ supplier, lines, totalMinor }) => {
      const delivery = toBuy.deliveries.find((candidate) => candidate.supplier === supplier);
      const deliveryMinor = delivery?.deliveryMinor ?? 0;
      return {
        title: supplier,
        rows: [...lines.map(row), ...(deliveryMinor > 0 ? [sum('Delivery', deliveryMinor)] : [])],
        total: sum('Together', totalMinor + deliveryMinor),
      };
    }),
    total: sum('In all', toBuy.payMinor),
    notes: toBuy.unbuyable.map((gap) =>
      gap.why === 'no item chosen'
        ? `Still to be chosen: ${slotWords(sources, gap.slotIds)}.`
        : `No offer closes the gap of ${sources.shelf.find(({ item }) => item.id === gap.itemId)?.item.name ?? ''} (${slotWords(sources, gap.slotIds)}).`,
    ),
  };
}

function moneyCell(amountMinor: number, { system, currency }: ListOptions): PaperCell {
  const text = showQuantity('money', amountMinor, { system, currency });
  return { text, fileText: (amountMinor / 100).toFixed(2) };
}

function slotWords({ plan }: ListSources, slotIds: readonly string[]): string {
  return slotIds.map((slotId) => slotById(plan, slotId).name).join(', ');
}
