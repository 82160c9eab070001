/** The table of requirements as a reader sees it: lengths as cloth is sold, how each was got, on paper and as JSON. */
import { codeWords } from '../../wording/code-words.ts';
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { FlowSources } from '../estimate.ts';
import { type FilledCell, type Nap, tableSizes } from './requirements-table.ts';
import { layWords } from '../../lay/lay-words.ts';
import { takenInAllMm } from '../../lay/washed.ts';
import { problemSentence } from '../../measure/problem.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { roundUpToStep } from '../../measure/round-up.ts';
import { showQuantity } from '../../measure/show.ts';
import type { PaperCell, PaperColumn, PaperRow, PaperTable } from '../../paper/paper-table.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';

/** Steps that cloth is sold in: tenths of a metre, eighths of a yard. */
export const soldStepMm: Readonly<Record<MeasureSystem, number>> = { metric: 100, imperial: 114.3 };

/** Neither a lay nor a pair of shears is true to a millimetre; that much over a step asks for no further one. */
const layDustMm = 1;

/** What the lay of a cell takes of unwashed cloth, mm; null where none is found. */
function takenOfMm({ result, washed }: FilledCell): number | null {
  return result ? takenInAllMm({ result, ...(washed && { washed }) }) : null;
}

/** What has to be bought for a cell, mm: its lay rounded up to what is sold; null where none is found. */
export function soldMm(cell: FilledCell, system: MeasureSystem): number | null {
  const foundMm = takenOfMm(cell);
  return foundMm === null ? null : roundUpToStep(Math.max(0, foundMm - layDustMm), soldStepMm[system]);
}

/** "3.4 m", "3 3/4 yd"; '' where none is found. */
export function soldWords(cell: FilledCell, system: MeasureSystem): string {
  const mm = soldMm(cell, system);
  if (mm === null) return '';
  return system === 'metric'
    ? showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 1 })
    : showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, step: 1 / 8 });
}

/** "140 cm", "54 in". */
export function widthWords(widthMm: number, system: MeasureSystem): string {
  return showQuantity('length', widthMm, { system, unit: { metric: 'cm', imperial: 'in' } });
}

/** How the cell was got, or why it is empty, in one line. */
export function cellWords(cell: FilledCell, system: MeasureSystem): string {
  if (cell.problems.length > 0) return cell.problems.map(problemSentence).join(' ');
  if (!cell.result) return say('table-words.not-found-yet');
  const { seed, iterations } = cell.result;
  const moves = say('table-words.moves', { iterations });
  const borrowed = cell.from
    ? say('table-words.the-lay-was-found-for-and', {
        widthWords: widthWords(cell.from.widthMm, system),
        nap: codeWords(cell.from.nap),
      })
    : '';
  return say('table-words.seed', {
    layWords: layWords(cell.result, system, cell.washed),
    moves,
    seed,
    borrowed,
  });
}

export interface TableShown {
  /** One system, or both with the maker's own first. */
  readonly systems: readonly [MeasureSystem, ...MeasureSystem[]];
}

/** A section for each slot, a row for each size, a column for each width and nap. Cells that are not found yet say so. */
export function requirementsTable(
  plan: CoatPlan,
  cells: readonly FilledCell[],
  { systems }: TableShown,
): PaperTable {
  const [own] = systems;
  const kinds = columnKinds(cells);
  const naps = new Set(kinds.map(({ nap }) => nap));
  const head = (widthMm: number, nap: Nap) =>
    [systems.map((system) => widthWords(widthMm, system)).join(' / '), naps.size > 1 ? nap : '']
      .filter((words) => words !== '')
      .join(', ');
  const columns: PaperColumn[] = [
    { head: say('common.size'), fileHead: 'size', kind: 'text' },
    ...kinds.map(
      ({ widthMm, nap }): PaperColumn => ({ head: head(widthMm, nap), kind: 'number', only: 'paper' }),
    ),
    ...systems.flatMap((system) =>
      kinds.map(({ widthMm, nap }): PaperColumn => {
        const words = `${widthWords(widthMm, system)}, ${codeWords(nap)} (${system === 'metric' ? 'm' : 'yd'})`;
        return { head: words, kind: 'number', only: 'file' };
      }),
    ),
  ];
  const slotIds = [...new Set(cells.map(({ slotId }) => slotId))];
  const sections = slotIds.map((slotId) => ({
    title: sentenceCase(slotById(plan, slotId).name),
    rows: tableSizes(plan).map((size): PaperRow => {
      const row = kinds.map(({ widthMm, nap }) =>
        cells.find(
          (cell) =>
            cell.slotId === slotId && cell.size === size && cell.widthMm === widthMm && cell.nap === nap,
        ),
      );
      return [
        size || say('table-words.no-size-named'),
        ...row.map((cell) => paperCell(cell, systems)),
        ...systems.flatMap((system) => row.map((cell) => fileCell(cell, system))),
      ];
    }),
  }));
  return {
    title: say('table-words.what-each-size-takes', { planName: plan.name }),
    lead: say('table-words.lengths-to-buy-for-one-coat'),
    sectionHead: 'material',
    columns,
    sections,
    notes: notesOf(cells, own, naps),
  };
}

function columnKinds(
  cells: readonly FilledCell[],
): readonly { readonly widthMm: number; readonly nap: Nap }[] {
  const kinds = new Map(cells.map(({ widthMm, nap }) => [`${widthMm} ${nap}`, { widthMm, nap }]));
  return [...kinds.values()].sort((a, b) => a.widthMm - b.widthMm || b.nap.localeCompare(a.nap));
}

function paperCell(cell: FilledCell | undefined, systems: TableShown['systems']): PaperCell {
  if (!cell || cell.job.shapes.length === 0) return { text: say('table-words.none') };
  if (cell.problems.length > 0) return { text: say('table-words.too-narrow') };
  if (!cell.result) return { text: say('table-words.not-found-yet-2') };
  const [text, note] = systems.map((system) => soldWords(cell, system));
  return { text: text ?? '', ...(note && { note }) };
}

/** A plain number of metres or yards. */
function fileCell(cell: FilledCell | undefined, system: MeasureSystem): PaperCell {
  const mm = cell ? soldMm(cell, system) : null;
  if (mm === null) return { text: cell && cell.problems.length > 0 ? paperCell(cell, [system]).text : '' };
  return { text: system === 'metric' ? (mm / 1000).toFixed(1) : (mm / 914.4).toFixed(3) };
}

function notesOf(cells: readonly FilledCell[], system: MeasureSystem, naps: ReadonlySet<Nap>): string[] {
  const found = cells.filter((cell) => cell.result !== null);
  const openCount = cells.filter((cell) => cell.result === null && cell.problems.length === 0).length;
  const step =
    system === 'metric' ? say('table-words.a-tenth-of-a-metre') : say('table-words.an-eighth-of-a-yard');
  const seconds = found.map((cell) => cell.result?.seconds ?? 0);
  const looked =
    seconds.length > 0
      ? say('table-words.looked-for-at-most', { shortSeconds: shortSeconds(Math.max(...seconds)) })
      : '';
  return [
    say('table-words.each-length-is-a-lay-of', { looked, step }),
    ...(naps.size > 1 || naps.has('with nap') ? [say('table-words.with-nap-all-pieces-lie-the')] : []),
    ...(cells.some(({ washed }) => washed) ? [say('table-words.what-shrinks-is-laid-as-it')] : []),
    ...(openCount > 0
      ? [say('table-words.of-cells-are-not-found-yet', { openCount, cellsCount: cells.length })]
      : []),
  ];
}

function shortSeconds(seconds: number): string {
  return seconds < 9.95 ? `${withDecimalSign(seconds.toFixed(1))} s` : `${Math.round(seconds)} s`;
}

/** One entry for each cell, lengths in mm. */
export function tableJson({ plan }: Pick<FlowSources, 'plan'>, cells: readonly FilledCell[]) {
  return {
    sizes: tableSizes(plan),
    cells: cells.map((cell) => ({
      slotId: cell.slotId,
      slot: slotById(plan, cell.slotId).name,
      size: cell.size,
      widthMm: cell.widthMm,
      nap: cell.nap,
      foundMm: takenOfMm(cell),
      soldMetricMm: soldMm(cell, 'metric'),
      soldImperialMm: soldMm(cell, 'imperial'),
      floorMm: cell.result?.floorMm ?? null,
      utilisation: cell.result?.utilisation ?? null,
      seed: cell.job.seed,
      iterations: cell.result?.iterations ?? null,
      seconds: cell.result?.seconds ?? null,
      stoppedBy: cell.result?.stoppedBy ?? null,
      foundOn: cell.from ? { widthMm: cell.from.widthMm, nap: cell.from.nap } : null,
      problems: cell.problems,
    })),
  };
}
