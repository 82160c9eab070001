/** The list of what to buy as text: by supplier, units said as the shop sells them. */
import { byName } from '../wording/in-order.ts';
import { say } from '../wording/say.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { slotById } from '../plan/model/coat-plan.ts';
import { itemKinds, kindRecords } from '../stash/kinds.ts';
import type { SellingUnit } from '../stash/offer.ts';
import type { ToBuy, ToBuyLine } from './to-buy.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import { conesOfSlots } from '../requirement/thread/thread-use.ts';
import type { ItemOnShelf } from '../stash/stash.ts';

export interface ListSources {
  readonly plan: CoatPlan;
  readonly shelf: readonly ItemOnShelf[];
}

export interface ListOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** "1.4 m of 1.47 m width", "3 sheets of 1.15 m x 1.5 m", "2 spools of 500 m", "one pack of 10". */
export function unitsWords(unit: SellingUnit, unitCount: number, system: MeasureSystem): string {
  const cloth = (mm: number) => showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' } });
  switch (unit.kind) {
    case 'by length':
      return say('shopping-list.of-width', {
        cloth: cloth(unitCount * unit.stepMm),
        widthMm: showQuantity('length', unit.widthMm, { system, unit: { metric: 'm', imperial: 'in' } }),
      });
    case 'sheet':
      return say('shopping-list.of-x', {
        many: say('shopping-list.sheets', { unitCount }),
        cloth: cloth(unit.widthMm),
        cloth2: cloth(unit.lengthMm),
      });
    case 'spool':
      return say('shopping-list.of', {
        many: say('shopping-list.spools', { unitCount }),
        threadM: showQuantity('threadLength', unit.threadM, { system }),
      });
    case 'by mass':
      return showQuantity('mass', unitCount * unit.stepG, { system });
    case 'pack':
      return say('shopping-list.of-2', {
        many: say('shopping-list.packs', { unitCount }),
        pieceCount: unit.pieceCount,
      });
    case 'each':
      return `${say('shopping-list.pieces', { unitCount })}${unit.lengthMm === null ? '' : ` ${say('shopping-list.of-3', { lengthMm: showQuantity('length', unit.lengthMm, { system }) })}`}`;
    default:
      return unit satisfies never;
  }
}

/** Lines by supplier in the order of their names; within one, in the order of the plan's slots. */
export function bySupplier(toBuy: ToBuy): readonly {
  readonly supplier: string;
  readonly lines: readonly ToBuyLine[];
  readonly totalMinor: number;
}[] {
  const groups = Map.groupBy(toBuy.lines, (line) => line.offer.supplier);
  return [...groups]
    .sort(([a], [b]) => byName(a, b))
    .map(([supplier, lines]) => ({
      supplier,
      lines,
      totalMinor: lines.reduce((sum, line) => sum + line.priceMinor, 0),
    }));
}

/** How a list is walked: supplier by supplier, or aisle by aisle (an aisle holds one kind of thing). */
export type Arrangement = 'supplier' | 'aisle';

/** The lines as they are walked; within a group in the order of the plan's slots. */
export function shoppingGroups(
  sources: ListSources,
  toBuy: ToBuy,
  arrangement: Arrangement,
): readonly { readonly title: string; readonly lines: readonly ToBuyLine[] }[] {
  if (arrangement === 'supplier') {
    return bySupplier(toBuy).map(({ supplier, lines }) => ({ title: supplier, lines }));
  }
  const kindOf = ({ itemId }: ToBuyLine) => sources.shelf.find(({ item }) => item.id === itemId)?.item.kind;
  return itemKinds.flatMap((kind) => {
    const lines = toBuy.lines.filter((line) => kindOf(line) === kind);
    return lines.length > 0 ? [{ title: kindRecords[kind].plural, lines }] : [];
  });
}

export function shoppingText(sources: ListSources, toBuy: ToBuy, { system, currency }: ListOptions): string {
  const money = (amountMinor: number) => showQuantity('money', amountMinor, { system, currency });
  if (toBuy.lines.length === 0 && toBuy.unbuyable.length === 0)
    return say('shopping-list.nothing-the-stash-covers-the-plan');
  const deliveryOf = (supplier: string) =>
    toBuy.deliveries.find((delivery) => delivery.supplier === supplier)?.deliveryMinor ?? 0;
  const blocks = bySupplier(toBuy).map(({ supplier, lines, totalMinor }) =>
    [
      supplier,
      ...lines.map(
        (line) =>
          `  ${itemName(sources, line.itemId)}: ${unitsWords(line.offer.unit, line.unitCount, system)}, ${money(line.priceMinor)} (${usedForWords(sources, line.slotIds)})`,
      ),
      ...(deliveryOf(supplier) > 0
        ? [`  ${say('shopping-list.delivery', { money: money(deliveryOf(supplier)) })}`]
        : []),
      `  ${say('shopping-list.together', { money: money(totalMinor + deliveryOf(supplier)) })}`,
    ].join('\n'),
  );
  const gaps = toBuy.unbuyable.map((gap) =>
    gap.why === 'no item chosen'
      ? say('shopping-list.still-to-be-chosen', { slotNames: slotNames(sources, gap.slotIds) })
      : say('shopping-list.no-offer-closes-the-gap-of', {
          itemName: itemName(sources, gap.itemId),
          slotNames: slotNames(sources, gap.slotIds),
        }),
  );
  return [...blocks, say('shopping-list.in-all', { money: money(toBuy.payMinor) }), ...gaps].join('\n');
}

function itemName(sources: ListSources, itemId: string | null): string {
  return sources.shelf.find((onShelf) => onShelf.item.id === itemId)?.item.name ?? '';
}

export function slotNames(sources: Pick<ListSources, 'plan'>, slotIds: readonly string[]): string {
  return slotIds.map((slotId) => slotById(sources.plan, slotId).name).join(', ');
}

/** "sewing thread, 3 cones on the machine at once": the slots, and what their machine asks for. */
export function usedForWords(sources: Pick<ListSources, 'plan'>, slotIds: readonly string[]): string {
  const names = slotNames(sources, slotIds);
  const coneCount = conesOfSlots(sources.plan, slotIds);
  return coneCount > 1 ? say('shopping-list.cones-on-the-machine-at-once', { names, coneCount }) : names;
}
