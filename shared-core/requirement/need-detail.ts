/** What stands behind a need, for those who want to see how it came about: the same on the screen and in the headless command. */
import type { MeasureSystem } from '../measure/quantity.ts';
import { bandWords } from '../plan/edits/bands.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import type { Offer } from '../stash/offer.ts';
import { type BattedPiece, battedPieces } from './fill/batted-pieces.ts';
import { type CutLengths, cutLengths } from './cut/cut-lengths.ts';
import { type FillingList, fillingList } from './fill/fill.ts';
import type { SlotItems } from './need.ts';
import { type NeedleChoice, planNeedleChoice } from './thread/needles.ts';
import type { QuiltedPanel } from './cut/panels.ts';
import { type ThreadUse, threadUse } from './thread/thread-use.ts';

export type NeedDetail =
  | { readonly kind: 'cloth'; readonly bands: readonly BandLine[] }
  | { readonly kind: 'batting'; readonly pieces: readonly BattedPiece[] }
  | { readonly kind: 'fill'; readonly list: FillingList }
  | { readonly kind: 'thread'; readonly use: ThreadUse }
  /** Null while no cloth with a weight is chosen. */
  | { readonly kind: 'needle'; readonly choice: NeedleChoice | null }
  | { readonly kind: 'fastening'; readonly lengths: CutLengths };

/** A binding or a rib of a cloth, and how it is cut. */
export interface BandLine {
  readonly name: string;
  /** With measures as measureIn writes them. */
  readonly how: string;
}

/** Bindings and ribs that are cut from the slot, of the size at hand. */
export function bandLines(plan: CoatPlan, slotId: string): readonly BandLine[] {
  return plan.pieces.flatMap((piece) => {
    const how = piece.cutFrom.some((from) => from.slotId === slotId) ? bandWords(piece, plan.pieces) : null;
    return how === null ? [] : [{ name: piece.name, how }];
  });
}

/** Detail of the need of one slot. system: in which a shop's usual lengths step. */
export function needDetail(
  plan: CoatPlan,
  slotId: string,
  items: SlotItems,
  offers: readonly Offer[],
  system: MeasureSystem,
  panels?: readonly QuiltedPanel[],
): NeedDetail {
  const slot = slotById(plan, slotId);
  switch (slot.kind) {
    case 'cloth':
      return { kind: 'cloth', bands: bandLines(plan, slotId) };
    case 'batting':
      return { kind: 'batting', pieces: battedPieces(plan, slotId, items) };
    case 'fill':
      return { kind: 'fill', list: fillingList(plan, slot, items) };
    case 'thread':
      return { kind: 'thread', use: threadUse(plan, slot, items, panels) };
    case 'needle':
      return { kind: 'needle', choice: planNeedleChoice(plan, items) };
    case 'fastening':
      return { kind: 'fastening', lengths: cutLengths(plan, slotId, items, offers, system) };
    default:
      return slot.kind satisfies never;
  }
}
