/**
 * Quilted panels on the road: the pieces of each are laid on its quilted width, in step with its lines, and what was
 * found says how much of every layer is cut before quilting. Those panels then stand in the place of the pieces.
 */
import { say } from '../wording/say.ts';
import { boughtWidthMm } from '../cover/cover.ts';
import { type FlowSources, openSlotWidthMm, slotItems } from './sources.ts';
import type { LayJob, LayResult } from '../lay/job.ts';
import { jobText } from '../lay/job-text.ts';
import { type RunLay, type SlotLay, totalUsedMm, usableWidthMm } from '../lay/plan-lay.ts';
import { slotById } from '../plan/model/coat-plan.ts';
import { firstWash, lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import type { Need, ShapesNeed, ShapeToCut, SlotItems } from '../requirement/need.ts';
import {
  layerSize,
  type PanelSet,
  panelSets,
  panelShape,
  panelStitchingMm,
  type QuiltedPanel,
  quiltedWidthMm,
} from '../requirement/cut/panels.ts';

/** A panel with the lay of its pieces on it, as it is cut once it is quilted. */
export interface LaidPanel extends QuiltedPanel {
  readonly lay: SlotLay;
}

export interface Panels {
  /** The needs with panels in the place of the pieces that are cut from them. */
  readonly needs: readonly Need[];
  readonly panels: readonly LaidPanel[];
}

/** Every panel that the needs ask for, planned; needs without any come back as they are. */
export async function planPanels(
  sources: FlowSources,
  needs: readonly Need[],
  runLay: RunLay,
): Promise<Panels> {
  if (!needs.some((need) => need.kind === 'shapes' && need.shapes.some(({ panel }) => panel))) {
    return { needs, panels: [] };
  }
  const items = slotItems(sources);
  const usableMm = (slotId: string) => usableOfSlotMm(sources, items, slotId);
  const running = new Map<string, Promise<LayResult>>();
  // Layers that miss the same pieces are laid once.
  const lay = (job: LayJob, what: string): Promise<LayResult> => {
    const text = jobText(job);
    const found = running.get(text) ?? runLay(job, what);
    running.set(text, found);
    return found;
  };
  const panels: LaidPanel[] = [];
  const planned = await Promise.all(
    needs.map(async (need): Promise<Need> => {
      if (need.kind !== 'shapes') return need;
      const made = await Promise.all(
        panelSets(need.shapes).map((set) => laidSet(sources, needs, need, set, { usableMm, lay })),
      );
      const cloth = need.shapes.filter(({ panel }) => !panel);
      const shapes = made.map((each, index) => {
        const turnsDeg = turnsOf(sources, items, need.slotId);
        const before = made.slice(0, index).filter(({ set }) => sameNames(set, each.set)).length;
        return panelShape(each.set, each.laid, turnsDeg, before + 1);
      });
      made.forEach((each, index) => {
        if (each.set.kind.isFace) panels.push(panelOf(needs, need, each, shapes[index]!));
      });
      return withShapes(need, [...shapes, ...cloth]);
    }),
  );
  return { needs: planned, panels };
}

/** A set of panels with what was found: how long and wide its pieces lie once it is quilted. */
interface LaidSet {
  readonly set: PanelSet;
  readonly laid: { readonly lengthMm: number; readonly widthMm: number };
  readonly job: LayJob;
  readonly result: LayResult;
}

async function laidSet(
  sources: FlowSources,
  needs: readonly Need[],
  need: ShapesNeed,
  set: PanelSet,
  { usableMm, lay }: { usableMm: (slotId: string) => number; lay: RunLay },
): Promise<LaidSet> {
  const names = set.pieces.map(({ shape }) => shape.name).join(', ');
  const widthMm = quiltedWidthMm(set.kind.key, needs, usableMm);
  if (!(widthMm > 0)) {
    throw new RangeError(say('panel-lays.has-no-width-left', { names }));
  }
  const job = panelJob(set, widthMm, sources.plan.clearanceMm);
  const result = await lay(
    job,
    say('panel-lays.quilted-panel-of', { slotByIdName: slotById(sources.plan, need.slotId).name, names }),
  );
  return { set, laid: { lengthMm: totalUsedMm(result), widthMm }, job, result };
}

/** The lay of the pieces of one panel once it is quilted; lines of all pieces fall on its lines. */
function panelJob({ kind, pieces }: PanelSet, widthMm: number, clearanceMm: number): LayJob {
  const isAcross = kind.direction === 'across';
  return {
    shapes: pieces.flatMap(({ shape, count, mirroredCount }) =>
      shape.panel
        ? [
            {
              id: shape.shapeId,
              ...(shape.size !== '' && { group: shape.size }),
              ring: shape.panel.quiltedRing,
              count,
              mirroredCount,
              turnsDeg: shape.panel.turnsDeg,
              match: {
                x: isAcross ? shape.panel.lineAtMm : 0,
                y: isAcross ? 0 : shape.panel.lineAtMm,
                phaseX: 0,
                phaseY: 0,
              },
            },
          ]
        : [],
    ),
    lengths: [{ id: 'panel', widthMm, lengthMm: null, flaws: [] }],
    clearanceMm,
    spread: 'open',
    repeat: isAcross ? { alongMm: kind.spacingMm, acrossMm: 0 } : { alongMm: 0, acrossMm: kind.spacingMm },
    seed: 1,
  };
}

function panelOf(
  needs: readonly Need[],
  need: ShapesNeed,
  { set, laid, job, result }: LaidSet,
  { shapeId }: ShapeToCut,
): LaidPanel {
  const edgesMm = 2 * set.kind.order.marginMm;
  return {
    id: shapeId,
    size: set.size,
    count: set.count,
    pieces: set.pieces.map(({ shape, count, mirroredCount }) => ({
      pieceId: shape.pieceId,
      size: shape.size,
      name: shape.name,
      count,
      mirroredCount,
    })),
    layers: needs.flatMap((other) => {
      const panel =
        other.kind === 'shapes' && other.shapes.find((shape) => shape.panel?.key === set.kind.key)?.panel;
      return panel ? [{ slotId: other.slotId, plyCount: panel.plyCount, ...layerSize(panel, laid) }] : [];
    }),
    quiltedLengthMm: laid.lengthMm + edgesMm,
    quiltedWidthMm: laid.widthMm + edgesMm,
    direction: set.kind.direction,
    spacingMm: set.kind.spacingMm,
    stitchingMm: panelStitchingMm(set.kind, laid),
    lay: { slotId: need.slotId, job, result },
  };
}

/** Usable width of what a slot is cut from, washed where it is washed first: that which is bought, or of a narrower roll or sheet on the shelf. */
function usableOfSlotMm(sources: FlowSources, items: SlotItems, slotId: string): number {
  const item = items.get(slotId);
  if (!item) return openSlotWidthMm;
  const rolls = (sources.shelf.find((each) => each.item.id === item.id)?.lots ?? [])
    .flatMap(({ lengths }) => lengths)
    .filter(({ form, onHandMm }) => (form === 'roll' || form === 'sheet') && onHandMm > 0);
  const { acrossRatio } = lostBeforeCutting(firstWash(slotById(sources.plan, slotId), item));
  const laidMm = (widthMm: number, isWashed = false) =>
    usableWidthMm(widthMm, item) * (isWashed ? 1 : 1 - acrossRatio);
  return Math.min(
    laidMm(boughtWidthMm(item, sources.offers)),
    ...rolls.map(({ widthMm, isWashed }) => laidMm(widthMm, isWashed)),
  );
}

/** A panel lies along its cloth; batting has no way of its own. */
function turnsOf(sources: FlowSources, items: SlotItems, slotId: string): readonly number[] {
  if (slotById(sources.plan, slotId).kind === 'batting') return [0, 90, 180, 270];
  const item = items.get(slotId);
  return item?.kind === 'cloth' && item.facts.hasNap ? [0] : [0, 180];
}

function sameNames(one: PanelSet, other: PanelSet): boolean {
  const names = (set: PanelSet) => set.pieces.map(({ shape }) => shape.name).join();
  return names(one) === names(other);
}

function withShapes(need: ShapesNeed, shapes: readonly ShapeToCut[]): ShapesNeed {
  return {
    ...need,
    shapes,
    areaMm2: shapes.reduce((sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount), 0),
  };
}
