/** The cost sheet as a table for paper and files: material by slot, and from there to the prices of one coat. */
import { say } from '../wording/say.ts';
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
    title: say('cost-table.cost', { planName: plan.name }),
    lead: say('cost-table.material-of-coats-lots-at-what', { count }),
    sectionHead: 'part',
    columns: [
      { head: say('common.slot'), fileHead: 'slot', kind: 'text' },
      { head: say('common.amount'), fileHead: 'amount', kind: 'number' },
      { head: say('common.from'), fileHead: 'lots', kind: 'text' },
      {
        head: say('common.of-it-waste'),
        fileHead: say('cost-table.of-it-waste', { currency: options.currency }),
        kind: 'number',
      },
      { head: say('common.cost'), fileHead: `cost (${options.currency})`, kind: 'number' },
    ],
    sections: [
      {
        title: say('cost-table.material-of-the-batch'),
        rows: cost.lines.map((line) => lineRow(sources, line, options)),
        total: [say('common.the-batch'), '', '', money(wasteMinor), money(cost.batchMinor)],
      },
      ...trimmingsSection(plan, cost, options),
      {
        title: say('cost-table.one-coat'),
        rows: [
          step(
            say('common.material'),
            count === 1 ? '' : say('cost-table.the-batch-by', { count }),
            coatMinor,
          ),
          ...(prices ? priceSteps(prices, step, options) : []),
        ],
      },
    ],
    notes: [
      ...(prices && !prices.wholesale ? [`${sentenceCase(noPriceWords())}.`] : []),
      ...(cost.isIncomplete ? [say('cost-table.not-the-whole-cost-some-slots')] : []),
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
      title: say('cost-table.of-it-trimmed-off-after-quilting'),
      rows: rows.map(({ name, trimmings }) => row(name, trimmings)),
      total: row(say('cost-table.all-trimmings'), sumOfTrimmings(rows.map(({ trimmings }) => trimmings))),
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
    step(say('cost-table.work'), workWords(sheet, system), coat.labourMinor),
    step(
      say('cost-table.overhead'),
      coat.overheadMinor > 0 ? '' : say('common.left-out'),
      coat.overheadMinor,
    ),
    step(say('common.cost'), '', coat.costMinor),
    ...(wholesale
      ? [step(say('common.wholesale'), additionWords('cost', wholesale.addition), wholesale.priceMinor)]
      : []),
    ...(retail
      ? [step(say('common.retail'), additionWords('wholesale', retail.addition), retail.priceMinor)]
      : []),
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
      ? say('cost-table.lot-of', {
          receivedOn: dayWords(lot.receivedOn),
          dyeLot: lot.dyeLot === '' ? '' : say('cost-table.dye-lot', { dyeLot: lot.dyeLot }),
        })
      : say('cost-table.a-lot-that-is-used-up');
    const source = part.isCut
      ? say('cost-table.cut-already', { ofLot })
      : part.lotId === null
        ? say('common.to-buy')
        : ofLot;
    return line.parts.length === 1 ? source : `${source}: ${words(part.amount)}`;
  });
  const isUnpriced = line.isIncomplete && line.costMinor === 0;
  return [
    { text: sentenceCase(slot.name), note: item?.name ?? say('common.nothing-chosen') },
    line.parts.length > 0 ? words(line.parts.reduce((sum, part) => sum + part.amount, 0)) : '',
    [...from, ...(line.isIncomplete ? [say('cost-table.no-price-yet')] : [])].join('; '),
    line.wasteMinor > 0 ? moneyCell(line.wasteMinor, options) : '',
    isUnpriced ? '' : moneyCell(line.costMinor, options),
  ];
}
