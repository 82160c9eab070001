/** Plan -> needs by slot. Each estimate is one line of the list, in the order shown. */
import { say } from '../wording/say.ts';
import type { Basis } from '../measure/basis.ts';
import { type CoatPlan, type Slot, slotById } from '../plan/model/coat-plan.ts';
import { marginWords } from '../plan/model/margin.ts';
import { coatTotal, plansBySize, sizedPieceId } from '../plan/model/sizes.ts';
import { fasteningNeed } from './fastenings.ts';
import { fillNeed } from './fill/fill.ts';
import type { Need, SlotItems } from './need.ts';
import { needleNeed } from './thread/needles.ts';
import { panelsOfSize, type QuiltedPanel } from './cut/panels.ts';
import { shapesNeed } from './cut/cut-shapes.ts';
import { threadNeed } from './thread/thread.ts';

/**
 * What every slot of the plan needs for the whole batch in all its sizes, in the order of the plan's slots. panels:
 * those that were planned, whose lines are sewn from edge to edge; without them lines are those of the pieces.
 */
export function requirement(
  plan: CoatPlan,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): readonly Need[] {
  return plan.slots.map((slot) => withMargin(batchNeed(plan, slot, items, panels), slot));
}

/**
 * What one coat would take of a slot that is not cut, as a mean over the sizes, whatever the maker gave as their own.
 * In the kind's unit. Throws for a slot that is cut.
 */
export function estimatedPerCoat(
  plan: CoatPlan,
  slotId: string,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): number {
  const need = batchNeed(plan, { ...slotById(plan, slotId), amountPerCoat: null }, items, panels);
  if (need.kind !== 'amount') throw new RangeError(`slot ${slotId} is cut`);
  return need.amount / coatTotal(plan);
}

function batchNeed(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
  panels: readonly QuiltedPanel[] | undefined,
): Need {
  // Needles wear out by the hours of all coats together, whatever their size.
  if (slot.kind === 'needle') return needleNeed({ ...plan, coatCount: coatTotal(plan) }, slot, items);
  return plansBySize(plan)
    .map((each, index) =>
      sized(plan, each.size, slotNeed(each, slot, items, panelsOfSize(panels, each.size, index === 0))),
    )
    .reduce(together);
}

/** The need with the slot's margin for safety beside it, once for all sizes. */
function withMargin(need: Need, { margin }: Slot): Need {
  if (margin === undefined) return need;
  const basis: Basis = {
    kind: 'rule of thumb',
    how: say('requirement.beside-it-a-margin-for-safety', { marginWords: marginWords(margin) }),
    source: say('requirement.as-you-chose-it'),
  };
  return { ...need, margin, basis: [...need.basis, basis] };
}

/** The need of one size, its pieces and parts told apart from those of the size at hand. */
function sized(plan: CoatPlan, size: string, need: Need): Need {
  if (size === plan.size) return need;
  return need.kind === 'shapes'
    ? {
        ...need,
        shapes: need.shapes.map((shape) => ({
          ...shape,
          shapeId: sizedPieceId(plan, size, shape.pieceId),
          name: `${shape.name}, ${size}`,
        })),
      }
    : { ...need, parts: need.parts.map((part) => ({ ...part, what: `${part.what}, ${size}` })) };
}

/** The needs of one slot in two sizes as one; what runs along an edge must do for the longer. */
function together(first: Need, second: Need): Need {
  const basis = [
    ...first.basis,
    ...second.basis.filter((each) => !first.basis.some(({ how }) => how === each.how)),
  ];
  if (first.kind === 'shapes' && second.kind === 'shapes') {
    return {
      ...first,
      shapes: [...first.shapes, ...second.shapes],
      areaMm2: first.areaMm2 + second.areaMm2,
      basis,
    };
  }
  if (first.kind !== 'amount' || second.kind !== 'amount')
    throw new TypeError('one slot has one kind of need');
  const wanted = [first.wantedLengthMm, second.wantedLengthMm].filter((lengthMm) => lengthMm !== null);
  return {
    ...first,
    amount: first.amount + second.amount,
    parts: [...first.parts, ...second.parts],
    wantedLengthMm: wanted.length > 0 ? Math.max(...wanted) : null,
    ...((first.isFloor || second.isFloor) && { isFloor: true }),
    ...(first.coneCount !== undefined && { coneCount: Math.max(first.coneCount, second.coneCount ?? 0) }),
    basis,
  };
}

function slotNeed(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
  panels: readonly QuiltedPanel[] | undefined,
): Need {
  switch (slot.kind) {
    case 'cloth':
    case 'batting':
      return shapesNeed(plan, slot, items);
    case 'fill':
      return fillNeed(plan, slot, items);
    case 'thread':
      return threadNeed(plan, slot, items, panels);
    case 'needle':
      return needleNeed(plan, slot, items);
    case 'fastening':
      return fasteningNeed(plan, slot, items);
    default:
      return slot.kind satisfies never;
  }
}
