/**
 * A season: several plans that draw on one stash, in the order of their priority. Each goes the whole road on what the
 * earlier ones leave: what they cut, and what they hold back as margin for safety, is not there for it. What a plan has set aside is kept for it whatever its place; what it then does not need of that
 * is free for those after it.
 */
import type { SlotCover, Use } from '../../cover/slot-cover.ts';
import { keptOf } from '../../cover/held-back.ts';
import { type Estimate, estimate, type FlowSources } from '../estimate.ts';
import type { RunLay } from '../../lay/plan-lay.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { plannedFor, type SeasonEntry } from '../../plan/model/season-entry.ts';
import type { Basket } from '../../to-buy/basket-sums.ts';
import { basket } from '../../to-buy/basket.ts';
import { type Gap, gapsOf } from '../../to-buy/gaps.ts';
import type { Solve } from '../../to-buy/programme.ts';
import { withoutReserved } from '../../stash/set-aside-entry.ts';
import { type ItemOnShelf, type LotOnShelf, toMilli } from '../../stash/stash.ts';

export interface SeasonSources extends Omit<FlowSources, 'plan' | 'cuttings'> {
  readonly entries: readonly SeasonEntry[];
}

export interface PlanInSeason {
  /** With the coats of the season. */
  readonly plan: CoatPlan;
  /** What it goes by: the shelf less what earlier plans take. */
  readonly shelf: readonly ItemOnShelf[];
  readonly estimate: Estimate;
}

/** One basket for what all plans lack, and where the money goes. */
export interface SeasonBasket {
  readonly basket: Basket;
  /** Gaps that no offer closes. */
  readonly unbuyable: readonly Gap[];
}

export interface SeasonWatch {
  /** Once it is aborted no further plan is begun, and one that is not finished is left out. */
  readonly signal: { readonly aborted: boolean };
  readonly onDone: (done: PlanInSeason, doneCount: number) => void;
}

/** The plans in their order. What was finished before an abort is given; any other failure rejects. */
export async function season(
  sources: SeasonSources,
  runLay: RunLay,
  solve: Solve,
  { signal, onDone }: SeasonWatch,
): Promise<readonly PlanInSeason[]> {
  const done: PlanInSeason[] = [];
  let { shelf } = sources;
  for (const entry of sources.entries) {
    if (signal.aborted) break;
    const plan = plannedFor(entry);
    shelf = withoutReserved(shelf, entry.setAside ?? []);
    try {
      const outcome = await estimate(
        { ...sources, cuttings: entry.cuttings ?? [], plan, shelf },
        runLay,
        solve,
      );
      if (signal.aborted) break;
      const inSeason: PlanInSeason = { plan, shelf, estimate: outcome };
      done.push(inSeason);
      onDone(inSeason, done.length);
      shelf = shelfAfter(shelf, outcome.cover);
    } catch (error) {
      if (signal.aborted) break;
      throw error;
    }
  }
  return done;
}

/** What all plans lack, bought together: one delivery serves several coats, and their steps and packs are rounded once. */
export async function seasonBasket(
  sources: SeasonSources,
  plans: readonly PlanInSeason[],
  runLay: RunLay,
  solve: Solve,
): Promise<SeasonBasket> {
  const gaps = plans.flatMap(({ plan, estimate: { requirement, cover } }) =>
    gapsOf(plan, requirement, cover),
  );
  const { cheapest, unbuyable } = await basket({ ...sources, gaps }, runLay, solve);
  return { basket: cheapest, unbuyable: unbuyable.flatMap((each) => each.gaps) };
}

/**
 * The shelf without what some covers cut and hold back. A length is cut from its start and the margin lies behind the
 * cut, so its flaws move up by both, and those that lay there are gone. To whole thousandths, as the ledger counts.
 */
export function shelfAfter(
  shelf: readonly ItemOnShelf[],
  covers: readonly SlotCover[],
): readonly ItemOnShelf[] {
  const uses = covers.flatMap((slotCover) => slotCover.uses);
  if (uses.length === 0) return shelf;
  const ofLot = Map.groupBy(uses, (use) => use.lotId);
  return shelf.map((onShelf) => ({
    item: onShelf.item,
    lots: onShelf.lots.map((lot) => {
      const ofThis = ofLot.get(lot.id);
      return ofThis ? lotAfter(lot, ofThis) : lot;
    }),
  }));
}

function lotAfter(lot: LotOnShelf, uses: readonly Use[]): LotOnShelf {
  const takenMilli = (of: readonly Use[]) => of.reduce((sum, use) => sum + toMilli(keptOf(use)), 0);
  const left = (amount: number, of: readonly Use[]) => Math.max(0, (toMilli(amount) - takenMilli(of)) / 1000);
  return {
    ...lot,
    onHand: left(lot.onHand, uses),
    lengths: lot.lengths.map((length) => {
      const ofThis = uses.filter((use) => use.lengthId === length.id);
      if (ofThis.length === 0) return length;
      const takenMm = takenMilli(ofThis) / 1000;
      return {
        ...length,
        onHandMm: left(length.onHandMm, ofThis),
        flaws: length.flaws
          .map((flaw) => ({ ...flaw, x: flaw.x - takenMm }))
          .filter((flaw) => flaw.x + flaw.widthX > 0)
          .map((flaw) => (flaw.x < 0 ? { ...flaw, x: 0, widthX: flaw.x + flaw.widthX } : flaw)),
      };
    }),
  };
}
