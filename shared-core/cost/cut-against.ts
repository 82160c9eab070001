/** The estimate from before the cutting beside what the ledger says was really used, slot by slot. */
import { fromMilli } from '../stash/stash.ts';
import type { ItemKind } from '../stash/kinds.ts';
import type { CostSheet } from './cost.ts';
import type { CutSheet, CutSlotCost } from './cut-sheet.ts';

export interface SlotAgainst {
  readonly slotId: string;
  readonly slotName: string;
  readonly itemNames: readonly string[];
  readonly kind: ItemKind;
  /** null: the estimate has not been made, or had no price. */
  readonly estimatedMinor: number | null;
  readonly estimatedAmount: number | null;
  /** null: nothing of the slot was cut yet. */
  readonly cut: CutSlotCost | null;
  /** In the kind's unit. */
  readonly usedAmount: number;
}

/** Slots that were cut or estimated, in the order of the plan's slots; those that were cut and are gone from it last. */
export function cutAgainst(
  slots: readonly { readonly id: string; readonly name: string; readonly kind: ItemKind }[],
  sheet: CutSheet,
  estimated: CostSheet | null,
): readonly SlotAgainst[] {
  const gone = sheet.slots
    .filter((cut) => slots.every(({ id }) => id !== cut.slotId))
    .map(({ slotId, slotName, kind }) => ({ id: slotId, name: slotName, kind }));
  return [...slots, ...gone].flatMap(({ id, name, kind }): SlotAgainst[] => {
    const cut = sheet.slots.find(({ slotId }) => slotId === id) ?? null;
    const line = estimated?.lines.find(({ slotId }) => slotId === id);
    const hasEstimate = line !== undefined && line.parts.length > 0;
    if (!cut && !hasEstimate) return [];
    return [
      {
        slotId: id,
        slotName: name,
        itemNames: cut?.itemNames ?? [],
        kind,
        estimatedMinor: hasEstimate ? line.costMinor : null,
        estimatedAmount: hasEstimate ? line.parts.reduce((sum, part) => sum + part.amount, 0) : null,
        cut,
        usedAmount: cut ? fromMilli(cut.usedMilli) : 0,
      },
    ];
  });
}

/** The estimate of the slots that were cut, so that like is held against like; null until all of them have one. */
export function estimatedOfCut(rows: readonly SlotAgainst[]): number | null {
  let sum = 0;
  for (const { cut, estimatedMinor } of rows) {
    if (!cut) continue;
    if (estimatedMinor === null) return null;
    sum += estimatedMinor;
  }
  return sum;
}
