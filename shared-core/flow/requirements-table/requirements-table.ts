/**
 * The table of cloth requirements for a published pattern: each size on each width, with and without nap. Every cell
 * is a lay of one coat on endless cloth; here are its questions, and what the answers say together.
 */
import { say } from '../../wording/say.ts';
import { type FlowSources, slotItems } from '../estimate.ts';
import type { LayJob, LayResult } from '../../lay/job.ts';
import { jobText } from '../../lay/job-text.ts';
import { endlessLength, layJob, type SlotLay, totalUsedMm, washedLay } from '../../lay/plan-lay.ts';
import { layProblems } from '../../lay/problems.ts';
import type { Problem } from '../../measure/problem.ts';
import { type CoatPlan, type Slot, slotById } from '../../plan/model/coat-plan.ts';
import { lostBeforeCutting } from '../../requirement/cut/first-wash.ts';
import type { ShapesNeed, SlotItems } from '../../requirement/need.ts';
import { shapesNeed } from '../../requirement/cut/cut-shapes.ts';

export type Nap = 'without nap' | 'with nap';

export interface TableAsked {
  /** Full widths, selvages included, each once. */
  readonly widthsMm: readonly number[];
  readonly naps: readonly Nap[];
  /** Slots that are cut; batting has no nap. */
  readonly slotIds: readonly string[];
}

/** One cell's question. Cells that ask for the same lay share the job itself. */
export interface TableCell extends Pick<SlotLay, 'washed'> {
  readonly slotId: string;
  readonly size: string;
  readonly widthMm: number;
  readonly nap: Nap;
  readonly job: LayJob;
  /** Why no lay is possible: a piece wider than the cloth. Empty where one is. */
  readonly problems: readonly Problem[];
}

/** A cell with the best lay known for it. */
export interface FilledCell extends TableCell {
  /** Null: not found yet, or not possible. */
  readonly result: LayResult | null;
  /** The cell whose lay this is, where another's is shorter and holds here too; null for its own. */
  readonly from: TableCell | null;
}

/** Most sizes times widths times naps times slots: beyond, nobody reads the table. */
export const maxTableCells = 2000;

/** Slots of the plan from which something is cut in any size. */
export function tableSlots(plan: CoatPlan): readonly Slot[] {
  const pieces = sizePlans(plan).flatMap((each) => each.pieces);
  return plan.slots.filter((slot) =>
    pieces.some((piece) => piece.cutFrom.some((from) => from.slotId === slot.id && from.plyCount > 0)),
  );
}

/** Sizes of the plan in the order of their numbers, those that no coat is made in among them. */
export function tableSizes(plan: CoatPlan): readonly string[] {
  return sizePlans(plan).map(({ size }) => size);
}

/** One coat in each size; sizes with numbers rise, others keep their order. */
function sizePlans(plan: CoatPlan): readonly CoatPlan[] {
  const { sizes, ...own } = plan;
  const others = (sizes ?? []).map(({ size, pieces }) => ({ ...own, size, pieces, coatCount: 1 }));
  const all = [{ ...own, coatCount: 1 }, ...others];
  const numbers = all.map(({ size }) =>
    Number(/\d+([.,]\d+)?/.exec(size)?.[0].replace(',', '.') ?? Number.NaN),
  );
  if (numbers.some(Number.isNaN)) return all;
  return all
    .map((each, index) => ({ each, number: numbers[index] ?? 0 }))
    .sort((a, b) => a.number - b.number)
    .map(({ each }) => each);
}

/** The questions of the table: slot by slot, in each size by size, in each width from the narrowest, with nap first. */
export function tableCells(
  sources: Pick<FlowSources, 'plan' | 'shelf'>,
  asked: TableAsked,
): readonly TableCell[] {
  const { plan } = sources;
  const items = slotItems(sources);
  const jobs = new Map<string, LayJob>();
  const widths = [...new Set(asked.widthsMm)].sort((a, b) => a - b);
  const naps = (['with nap', 'without nap'] as const).filter((nap) => asked.naps.includes(nap));
  return asked.slotIds.flatMap((slotId) => {
    const slot = slotById(plan, slotId);
    const item = items.get(slotId);
    return sizePlans(plan).flatMap((sized) => {
      const need = shapesNeed(sized, slot, withoutNap(items, slotId));
      const lost = lostBeforeCutting(need.firstWash);
      return widths.flatMap((widthMm) =>
        naps.map((nap): TableCell => {
          const turned = nap === 'with nap' && slot.kind === 'cloth' ? oneWay(need) : need;
          const endless = endlessLength('endless', widthMm, item, lost);
          const asking = layJob(turned, [endless], plan.clearanceMm, item, 1);
          const text = jobText(asking);
          const job = jobs.get(text) ?? asking;
          jobs.set(text, job);
          const problems = cellProblems(slot, sized.size, need, job);
          return { slotId, size: sized.size, widthMm, nap, job, problems, ...washedLay(need, [lost]) };
        }),
      );
    });
  });
}

/** The table decides on nap; what else the slot's item is stays. */
function withoutNap(items: SlotItems, slotId: string): SlotItems {
  const item = items.get(slotId);
  if (item?.kind !== 'cloth') return items;
  return new Map(items).set(slotId, { ...item, facts: { ...item.facts, hasNap: false } });
}

function oneWay(need: ShapesNeed): ShapesNeed {
  return { ...need, shapes: need.shapes.map((shape) => ({ ...shape, turnsDeg: [0] })) };
}

function cellProblems(slot: Slot, size: string, need: ShapesNeed, job: LayJob): readonly Problem[] {
  if (job.shapes.length === 0) return [nothingCut(slot, size)];
  return need.shapes.some(({ panel }) => panel) ? [fromPanels(slot)] : layProblems(job);
}

/** A panel is as wide as the narrowest of its layers, so no width of one cloth says how much it takes. */
function fromPanels(slot: Slot): Problem {
  return {
    where: say('requirements-table.the', { slotName: slot.name }),
    what: say('requirements-table.is-quilted-as-panels-whose-size'),
    fix: say('requirements-table.choose-to-rough-cut-its-pieces'),
  };
}

function nothingCut(slot: Slot, size: string): Problem {
  return {
    where: say('requirements-table.size', { size }),
    what: say('requirements-table.has-no-piece-that-is-cut', { slotName: slot.name }),
    fix: say('requirements-table.add-one-in-the-plan-or'),
  };
}

/** Runs a lay, or gives null where it was stopped before it had one. */
export type RunTableLay = (job: LayJob, what: string) => Promise<LayResult | null>;

/** Asks every possible job of the cells once, each as soon as the runner takes it; tells each answer. */
export async function runTable(
  cells: readonly TableCell[],
  runLay: RunTableLay,
  onFound: (job: LayJob, result: LayResult) => void = () => {},
): Promise<ReadonlyMap<LayJob, LayResult>> {
  const found = new Map<LayJob, LayResult>();
  await Promise.all(
    tableJobs(cells).map(async ([job, { slotId, size, widthMm }]) => {
      const result = await runLay(
        job,
        say('requirements-table.size-mm', { slotId, size, widthMm: Math.round(widthMm) }),
      );
      if (result === null) return;
      found.set(job, result);
      onFound(job, result);
    }),
  );
  return found;
}

/** Every job that can be laid, once, with the first cell that asks for it; few pieces first, so that the time they leave over goes to the others. */
export function tableJobs(cells: readonly TableCell[]): readonly (readonly [LayJob, TableCell])[] {
  const jobs = new Map<LayJob, TableCell>();
  for (const cell of cells) if (cell.problems.length === 0 && !jobs.has(cell.job)) jobs.set(cell.job, cell);
  return [...jobs].sort(([a], [b]) => pieceCount(a) - pieceCount(b));
}

function pieceCount(job: LayJob): number {
  return job.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
}

/**
 * The cells with what was found. A lay on narrower cloth also lies on wider, and one that minds the nap also does
 * where there is none: the shortest that holds is taken, so wider cloth never asks for more.
 */
export function filledCells(
  cells: readonly TableCell[],
  found: ReadonlyMap<LayJob, LayResult>,
): readonly FilledCell[] {
  const rows = Map.groupBy(cells, ({ slotId, size }) => `${slotId}\n${size}`);
  return cells.map((cell): FilledCell => {
    const own = found.get(cell.job);
    if (!own) return { ...cell, result: null, from: null };
    let best: { readonly from: TableCell; readonly result: LayResult } | null = null;
    for (const other of rows.get(`${cell.slotId}\n${cell.size}`) ?? []) {
      const result = found.get(other.job);
      if (!result || !holdsFor(other, cell)) continue;
      if (totalUsedMm(result) < totalUsedMm(best?.result ?? own)) best = { from: other, result };
    }
    if (!best) return { ...cell, result: own, from: null };
    const utilisation = (best.result.utilisation * usableMm(best.from)) / usableMm(cell);
    return { ...cell, result: { ...best.result, utilisation, floorMm: own.floorMm }, from: best.from };
  });
}

function holdsFor(other: TableCell, cell: TableCell): boolean {
  return usableMm(other) <= usableMm(cell) && (other.nap === 'with nap' || cell.nap === 'without nap');
}

function usableMm(cell: TableCell): number {
  return cell.job.lengths[0]?.widthMm ?? 0;
}

/**
 * Gives each lay its share of the time for the whole table when it begins: what an earlier one left over goes to
 * those that come. Clock in seconds from any fixed moment.
 */
export function sharedTime(
  totalSeconds: number,
  jobCount: number,
  workerCount: number,
  clock: () => number,
): () => number {
  const end = clock() + totalSeconds;
  let waitingCount = jobCount;
  return () => {
    const left = Math.max(0, end - clock());
    // A little of the time goes to setting up and checking each lay.
    const share = (left * workerCount * 0.95) / Math.max(1, waitingCount);
    waitingCount--;
    return Math.max(minSeconds, Math.min(share, left, maxSeconds));
  };
}

/** Even when the time is up a cell gets a first lay; and no cell gets better by more than a minute of looking. */
const minSeconds = 0.05;
const maxSeconds = 60;
