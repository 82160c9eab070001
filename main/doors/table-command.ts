/** The table of requirements for the headless command. */
import type { FlowInput } from '../../shared-core/contract/contract.ts';
import {
  filledCells,
  runTable,
  tableCells,
  tableSlots,
} from '../../shared-core/flow/requirements-table/requirements-table.ts';
import {
  type NapAsked,
  napsOf,
  readWidths,
  tooManyCells,
} from '../../shared-core/flow/requirements-table/table-asked.ts';
import { requirementsTable, tableJson } from '../../shared-core/flow/requirements-table/table-words.ts';
import type { RunLay } from '../../shared-core/lay/plan-lay.ts';
import { ok, type Result, err } from '../../shared-core/measure/problem.ts';
import { tableText } from '../../shared-core/paper/table-text.ts';

export interface TableWords {
  /** As typed: "115 cm; 140 cm". */
  readonly widths: string;
  readonly nap: NapAsked;
  readonly isJson: boolean;
}

export function readNap(text: string | undefined): Result<NapAsked> {
  const nap = text ?? 'both';
  if (nap === 'with' || nap === 'without' || nap === 'both') return ok(nap);
  return err({ where: '--nap', what: `is ${nap}`, fix: 'Give with, without or both.' });
}

/** What the command prints: the table for every slot that is cut, as text or as JSON. */
export async function tableOutput(
  sources: FlowInput,
  { widths, nap, isJson }: TableWords,
  runLay: RunLay,
): Promise<Result<string>> {
  const { plan, settings } = sources;
  const read = readWidths(widths, settings.system);
  if (!read.ok) return read;
  const naps = napsOf(nap);
  const slotIds = tableSlots(plan).map((slot) => slot.id);
  const tooMany = tooManyCells(plan, read.value.length, naps.length, slotIds.length);
  if (tooMany) return err(tooMany);
  const cells = tableCells(sources, { widthsMm: read.value, naps, slotIds });
  const filled = filledCells(cells, await runTable(cells, runLay));
  return ok(
    isJson
      ? JSON.stringify({ coat: { id: plan.id, name: plan.name }, table: tableJson(sources, filled) }, null, 1)
      : tableText(requirementsTable(plan, filled, { systems: [settings.system] })),
  );
}
