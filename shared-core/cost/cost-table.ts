/** The cost sheet as a table for paper and files: material by slot, and from there to the prices of one coat. */
import { sentenceCase } from '../measure/text/sentence-case.ts';
import { amountWords } from '../cover/cover-words.ts';
import { dayWords } from '../measure/calendar-date.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { moneyCell } from '../paper/money-cell.ts';
import type { PaperRow, PaperTable } from '../paper/paper-table.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { coatTotal } from '../plan/model/sizes.ts';
import type { ItemOnShelf } from '../stash/stash.ts';
import { trimmingsWords } from '../requirement/cut/trimmings.ts';
import { type CostLine, type CostOfTrimmings, type CostSheet, sumOfTrimmings } from './cost.ts';
import type { PriceSheet } from './price.ts';
import { additionWords, noPriceWords, workWords } from './price-words.ts';

export interface CostTableSources {
  readonly plan: CoatPlan;
  readonly shelf: readonly ItemOnShelf[];
}

export interface CostTableOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** prices: null where only the material is wanted. */
export function costTable(
  sources: CostTableSources,
  cost: CostSheet,
  prices: PriceSheet | null,
  options: CostTableOptions,
): PaperTable {
  const { plan } = sources;
  const money = (amountMinor: number) => moneyCell(amountMinor, options);
  const wasteMinor = cost.lines.reduce((sum, line) => sum + line.wasteMinor, 0);
  const count = coatTotal(plan);
  const coatMinor = cost.perCoatMinor[0] ?? 0;
  const step = (name: string, how: string, amountMinor: number): PaperRow => [
    name,
    '',
    how,
    '',
    money(amountMinor),
  ];
  return {
    title: `${plan.name}: cost`,
    lead: `Material of ${count === 1 ? 'one coat' : `${count} coats`}: lots at what was paid, oldest first, and what is missing at its offer.`,
    sectionHead: 'part',
    columns: [
      { head: 'Slot', fileHead: 'slot', kind: 'text' },
      { head: 'Amount', fileHead: 'amount', kind: 'number' },
      { head: 'From', fileHead: 'lots', kind: 'text' },
      { head: 'Of it waste', fileHead: `of it waste (${options.currency})`, kind: 'number' },
      { head: 'Cost', fileHead: `cost (${options.currency})`, kind: 'number' },
    ],
    sections: [
      {
        title: 'Material of the batch',
        rows: cost.lines.map((line) => lineRow(sources, line, options)),
        total: ['The batch', '', '', money(wasteMinor), money(cost.batchMinor)],
      },
      ...trimmingsSection(plan, cost, options),
      {
        title: 'One coat',
        rows: [
          step('Material', count === 1 ? '' : `the batch by ${count}`, coatMinor),
          ...(prices ? priceSteps(prices, step, options) : []),
        ],
      },
    ],
    notes: [
      ...(prices && !prices.wholesale ? [`${sentenceCase(noPriceWords)}.`] : []),
      ...(cost.isIncomplete
        ? ['Not the whole cost: some slots have nothing chosen, or no offer for what is missing.']
        : []),
    ],
  };
}

/** What is trimmed off quilted pieces, slot by slot: in the cost of the batch, and in none of its coats. */
function trimmingsSection(
  plan: CoatPlan,
  cost: CostSheet,
  options: CostTableOptions,
): PaperTable['sections'][number][] {
  const rows = cost.lines.flatMap(({ slotId, trimmings }) =>
    trimmings ? [{ name: sentenceCase(slotById(plan, slotId).name), trimmings }] : [],
  );
  if (rows.length === 0) return [];
  const row = (name: string, trimmings: CostOfTrimmings): PaperRow => [
    name,
    trimmingsWords(trimmings, options.system),
    '',
    '',
    moneyCell(trimmings.costMinor, options),
  ];
  return [
    {
      title: 'Of it trimmed off after quilting',
      rows: rows.map(({ name, trimmings }) => row(name, trimmings)),
      total: row('All trimmings', sumOfTrimmings(rows.map(({ trimmings }) => trimmings))),
    },
  ];
}

function priceSteps(
  sheet: PriceSheet,
  step: (name: string, how: string, amountMinor: number) => PaperRow,
  { system }: CostTableOptions,
): readonly PaperRow[] {
  const { coat, wholesale, retail } = sheet;
  return [
    step('Work', workWords(sheet, system), coat.labourMinor),
    step('Overhead', coat.overheadMinor > 0 ? '' : 'left out', coat.overheadMinor),
    step('Cost', '', coat.costMinor),
    ...(wholesale
      ? [step('Wholesale', additionWords('cost', wholesale.addition), wholesale.priceMinor)]
      : []),
    ...(retail ? [step('Retail', additionWords('wholesale', retail.addition), retail.priceMinor)] : []),
  ];
}

function lineRow({ plan, shelf }: CostTableSources, line: CostLine, options: CostTableOptions): PaperRow {
  const slot = slotById(plan, line.slotId);
  const item = shelf.find((onShelf) => onShelf.item.id === slot.itemId)?.item;
  const words = (amount: number) => amountWords(line, amount, { plan, shelf, system: options.system });
  const lots = new Map(shelf.flatMap((onShelf) => onShelf.lots).map((lot) => [lot.id, lot]));
  const from = line.parts.map((part) => {
    const lot = part.lotId === null ? undefined : lots.get(part.lotId);
    const ofLot = lot
      ? `lot of ${dayWords(lot.receivedOn)}${lot.dyeLot === '' ? '' : `, dye lot ${lot.dyeLot}`}`
      : 'a lot that is used up';
    const source = part.isCut ? `cut already, ${ofLot}` : part.lotId === null ? 'to buy' : ofLot;
    return line.parts.length === 1 ? source : `${source}: ${words(part.amount)}`;
  });
  const isUnpriced = line.isIncomplete && line.costMinor === 0;
  return [
    { text: sentenceCase(slot.name), note: item?.name ?? 'nothing chosen' },
    line.parts.length > 0 ? words(line.parts.reduce((sum, part) => sum + part.amount, 0)) : '',
    [...from, ...(line.isIncomplete ? ['no price yet'] : [])].join('; '),
    line.wasteMinor > 0 ? moneyCell(line.wasteMinor, options) : '',
    isUnpriced ? '' : moneyCell(line.costMinor, options),
  ];
}
