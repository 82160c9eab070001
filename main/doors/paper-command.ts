/** What a maker takes to the table and to the shop, as PDF, without a window. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FlowInput } from '../../shared-core/contract/contract.ts';
import { costTable } from '../../shared-core/cost/cost-table.ts';
import { priceSheet } from '../../shared-core/cost/price.ts';
import { type Estimate, slotItems } from '../../shared-core/flow/estimate.ts';
import { cuttingSheet, laysToCut } from '../../shared-core/flow/output/lay-sheets.ts';
import { dayWords } from '../../shared-core/measure/calendar-date.ts';
import { ok, type Result, err } from '../../shared-core/measure/problem.ts';
import { cuttingPdf } from '../../shared-core/paper/cutting-pdf.ts';
import { type PaperTable, sheetFormat } from '../../shared-core/paper/paper-table.ts';
import { tablePdf } from '../../shared-core/paper/table-pdf.ts';
import type { TypefaceFiles } from '../../shared-core/paper/typeface.ts';
import { fillSlots } from '../../shared-core/plan/model/stuffing.ts';
import { fillingList } from '../../shared-core/requirement/fill/fill.ts';
import { fillingTable } from '../../shared-core/requirement/fill/filling-table.ts';
import { shoppingTable } from '../../shared-core/to-buy/shopping-table.ts';

const typefaceFolder = join(import.meta.dirname, '..', '..', 'resources', 'typeface');

function typeface(): TypefaceFiles {
  const read = (name: string) => new Uint8Array(readFileSync(join(typefaceFolder, name)));
  return { regular: read('noto-sans-regular.ttf'), bold: read('noto-sans-bold.ttf') };
}

/** Writes into dir what there is: cutting-sheet.pdf, to-buy.pdf, cost.pdf, and a filling-list.pdf for each loose fill. */
export async function writePapers(dir: string, sources: FlowInput, result: Estimate): Promise<Result<null>> {
  const { plan, shelf, settings, today } = sources;
  const options = { format: sheetFormat(settings.system), day: dayWords(today) };
  const files = typeface();
  const cutting = cuttingSheet(
    { plan, shelf, needs: result.requirement, lays: laysToCut(result) },
    settings.system,
  );
  const prices = settings.pricing ? priceSheet(plan, result.cost, settings.pricing) : null;
  const tables: (readonly [string, PaperTable])[] = [
    ['cost', costTable(sources, result.cost, prices, settings)],
    ...(result.toBuy.lines.length > 0
      ? [['to-buy', shoppingTable(sources, result.toBuy, settings)] as const]
      : []),
    ...fillingTables(sources, result),
  ];
  try {
    mkdirSync(dir, { recursive: true });
    if (cutting.parts.length > 0) {
      writeFileSync(join(dir, 'cutting-sheet.pdf'), (await cuttingPdf(cutting, options, files)).bytes);
    }
    for (const [name, table] of tables) {
      writeFileSync(join(dir, `${name}.pdf`), (await tablePdf(table, options, files)).bytes);
    }
    return ok(null);
  } catch (error) {
    return err({
      where: `The folder ${dir}`,
      what: `cannot be written to (${(error as Error).message})`,
      fix: 'Name another folder with --pdf.',
    });
  }
}

function fillingTables(sources: FlowInput, { finished }: Estimate): (readonly [string, PaperTable])[] {
  const { plan, shelf, settings } = sources;
  const cautions = finished.cautions.filter(({ kind }) => kind === 'down dust').map(({ says }) => says);
  return fillSlots(plan)
    .map((slot) => ({ slot, list: fillingList(plan, slot, slotItems(sources)) }))
    .filter(({ list }) => list.chambers.length > 0)
    .map(({ slot, list }, index) => {
      const item = shelf.find((onShelf) => onShelf.item.id === slot.itemId)?.item;
      const title = `${plan.name}: ${item?.name ?? slot.name}`;
      return [
        index === 0 ? 'filling-list' : `filling-list-${index + 1}`,
        fillingTable(list, { system: settings.system, title, cautions }),
      ];
    });
}
