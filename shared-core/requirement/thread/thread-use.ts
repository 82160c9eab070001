/** Where the thread of a slot goes: by type of stitch, over needle and bobbin or looper, in spools. */
import type { StitchType } from '../../plan/model/outline.ts';
import type { CoatPlan, Slot } from '../../plan/model/coat-plan.ts';
import { coatTotal, plansBySize } from '../../plan/model/sizes.ts';
import type { Item } from '../../stash/stash.ts';
import type { SlotItems } from '../need.ts';
import { panelsOfSize, type QuiltedPanel } from '../cut/panels.ts';
import { conesAtOnce, type Stitching, threadM, threadStitchings } from './thread.ts';
import { spoolCount, stitchThreads, threadSplit } from './thread-ratios.ts';

/** All stitching of one type from a slot, for the whole batch in all its sizes, wastage inside. */
export interface StitchUse {
  readonly stitch: StitchType;
  readonly seamMm: number;
  readonly needleM: number;
  /** In the bobbin or the loopers; 0 where `under` is none. */
  readonly underM: number;
  readonly under: 'bobbin' | 'looper' | 'none';
}

export interface ThreadUse {
  readonly byStitch: readonly StitchUse[];
  readonly needleM: number;
  readonly underM: number;
  readonly totalM: number;
  /** Thread on a full spool; null where it is not written down. */
  readonly spoolM: number | null;
  /** As many as hold it all, and as stand on the machine at once. */
  readonly spoolCount: number | null;
  /** Spools or cones on the machine at once; 0 where nothing is sewn. */
  readonly coneCount: number;
}

/**
 * Thread of a slot for the batch, in the order in which its stitches first come in the plan.
 * An amount of the maker's own is shared out as the estimate would be; where nothing is sewn from the slot it is
 * all needle thread.
 */
export function threadUse(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): ThreadUse {
  const stitchings = plansBySize(plan).flatMap((each, index) =>
    threadStitchings(each, slot, items, panelsOfSize(panels, each.size, index === 0)),
  );
  const sewnM = stitchings.reduce((sum, stitching) => sum + threadM(stitching), 0);
  const ownM = slot.amountPerCoat === null ? null : slot.amountPerCoat * coatTotal(plan);
  const factor = ownM === null ? 1 + plan.threadWastageRatio : sewnM > 0 ? ownM / sewnM : 0;
  const byStitch = stitchUses(stitchings, factor);
  const underM = byStitch.reduce((sum, use) => sum + use.underM, 0);
  const totalM = ownM ?? sewnM * factor;
  const item = items.get(slot.id);
  const spoolM = item?.kind === 'thread' ? item.facts.spoolM : null;
  const coneCount = conesAtOnce(byStitch);
  return {
    byStitch,
    needleM: totalM - underM,
    underM,
    totalM,
    spoolM,
    spoolCount: spoolM === null ? null : spoolCount(totalM, spoolM, coneCount),
    coneCount,
  };
}

/** The most spools or cones that one machine runs at once for any of these slots; 0 where none is thread. */
export function conesOfSlots(plan: CoatPlan, slotIds: readonly string[]): number {
  const slots = plan.slots.filter(({ id, kind }) => kind === 'thread' && slotIds.includes(id));
  return conesAtOnce(
    plansBySize(plan).flatMap((each) => slots.flatMap((slot) => threadStitchings(each, slot, new Map()))),
  );
}

function stitchUses(stitchings: readonly Stitching[], factor: number): readonly StitchUse[] {
  const uses = new Map<StitchType, StitchUse>();
  for (const stitching of stitchings) {
    const { stitch } = stitching;
    const split = threadSplit(stitch, threadM(stitching) * factor);
    const before = uses.get(stitch);
    uses.set(stitch, {
      stitch,
      seamMm: (before?.seamMm ?? 0) + stitching.seamMm,
      needleM: (before?.needleM ?? 0) + split.needleM,
      underM: (before?.underM ?? 0) + split.underM,
      under: stitchThreads[stitch].under,
    });
  }
  return [...uses.values()];
}

/** All thread of one item, whatever slots it is for; a slot that nothing is chosen for stands alone. */
export interface ColourUse {
  readonly item: Item | null;
  readonly slotNames: readonly string[];
  readonly needleM: number;
  readonly underM: number;
  readonly totalM: number;
  readonly spoolM: number | null;
  /** Of all the slots together, so that one spool may serve two. */
  readonly spoolCount: number | null;
  /** The most that stand on one machine at once. */
  readonly coneCount: number;
}

/** Thread of the batch by item and so by colour, in the order of the plan's slots. */
export function threadByColour(
  plan: CoatPlan,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): readonly ColourUse[] {
  const colours = new Map<string, ColourUse>();
  for (const slot of plan.slots) {
    if (slot.kind !== 'thread') continue;
    const item = items.get(slot.id) ?? null;
    const key = item?.id ?? `slot ${slot.id}`;
    const { needleM, underM, totalM, spoolM, coneCount: cones } = threadUse(plan, slot, items, panels);
    const before = colours.get(key);
    const allM = (before?.totalM ?? 0) + totalM;
    const coneCount = Math.max(before?.coneCount ?? 0, cones);
    colours.set(key, {
      item,
      slotNames: [...(before?.slotNames ?? []), slot.name],
      needleM: (before?.needleM ?? 0) + needleM,
      underM: (before?.underM ?? 0) + underM,
      totalM: allM,
      spoolM,
      spoolCount: spoolM === null ? null : spoolCount(allM, spoolM, coneCount),
      coneCount,
    });
  }
  return [...colours.values()];
}
