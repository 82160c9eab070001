/** The shapes that a slot's cloth or batting is cut into: outlines with allowance, take-up and shrinkage. */
import { ringGrown } from '../geometry/grown.ts';
import { type Ring, ringAreaMm2 } from '../geometry/ring.ts';
import { type Basis, measureIn } from '../measure/basis.ts';
import type { CoatPlan, Piece, Slot } from '../plan/coat-plan.ts';
import { cutRing } from '../plan/outline-ring.ts';
import { quiltingOrder } from '../plan/quilting-order.ts';
import type { Item } from '../stash/stash.ts';
import type { ShapesNeed, ShapeToCut, SlotItems } from './need.ts';
import { slotTakeUp, takeUpBasis } from './take-up.ts';

/**
 * Every piece that is cut from the slot, for all coats of the plan.
 * Cloth with a nap turns every piece one way. A slot without an item is taken without shrinkage and nap.
 */
export function shapesNeed(plan: CoatPlan, slot: Slot, items: SlotItems): ShapesNeed {
  const item = items.get(slot.id);
  const basis = new Map<string, Basis>();
  const shapes: ShapeToCut[] = [];
  for (const piece of plan.pieces) {
    const plyCount = piece.cutFrom.find((from) => from.slotId === slot.id)?.plyCount ?? 0;
    if (plyCount === 0) continue;
    const growth = growthOf(plan, slot, piece, item, items, basis);
    const outline = scaled(cutRing(piece.outline, piece.foldEdge), growth.along, growth.across);
    const order = quiltingOrder(plan, piece, slot);
    const isRough = order?.kind === 'rough';
    const ring = isRough ? ringGrown(outline, order.marginMm) : outline;
    if (isRough) basis.set(`spare ${order.marginMm}`, spareBasis(order.marginMm));
    const total = piece.cutCount * plyCount * plan.coatCount;
    const mirroredCount = piece.isMirrored ? Math.floor(total / 2) : 0;
    shapes.push({
      shapeId: piece.id,
      pieceId: piece.id,
      size: plan.size,
      name: piece.name,
      ring,
      areaMm2: ringAreaMm2(ring),
      ...(isRough && { keptRing: outline }),
      count: total - mirroredCount,
      mirroredCount,
      turnsDeg: turnsDeg(piece, slot, item),
    });
  }
  return {
    kind: 'shapes',
    slotId: slot.id,
    shapes,
    areaMm2: shapes.reduce((sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount), 0),
    basis: [...basis.values()],
  };
}

function spareBasis(marginMm: number): Basis {
  return {
    kind: 'rule of thumb',
    how: `${measureIn('length', marginMm)} to spare all round, trimmed off after quilting`,
    source: 'as you chose it; makers take 1/2 to 1 in (common practice, no source)',
  };
}

/** How much longer and wider than its outline a piece is cut: quilting first, then the first wash. */
function growthOf(
  plan: CoatPlan,
  slot: Slot,
  piece: Piece,
  item: Item | undefined,
  items: SlotItems,
  basis: Map<string, Basis>,
): { along: number; across: number } {
  let along = 1;
  let across = 1;
  const takeUp = slotTakeUp(plan, slot, piece, items);
  if (takeUp) {
    along += takeUp.alongRatio;
    across += takeUp.acrossRatio;
    for (const each of takeUpBasis(takeUp)) basis.set(each.how, each);
  }
  if (item && (item.kind === 'cloth' || item.kind === 'batting')) {
    const shrinkAlong = item.facts.shrinkageAlongRatio ?? 0;
    const shrinkAcross = item.facts.shrinkageAcrossRatio ?? 0;
    along /= 1 - shrinkAlong;
    across /= 1 - shrinkAcross;
    if (shrinkAlong > 0 || shrinkAcross > 0) {
      basis.set('shrinkage', { kind: 'computed', how: 'cut larger by need / (1 - shrinkage)', source: '' });
    }
  }
  return { along, across };
}

function turnsDeg(piece: Piece, slot: Slot, item: Item | undefined): readonly number[] {
  if (slot.kind === 'batting') return [0, 90, 180, 270];
  if (item?.kind === 'cloth' && item.facts.hasNap) return [0];
  switch (piece.turns) {
    case 'one way':
      return [0];
    case 'grain':
      return [0, 180];
    case 'free':
      return [0, 90, 180, 270];
    default:
      return piece.turns satisfies never;
  }
}

function scaled(ring: Ring, along: number, across: number): Ring {
  if (along === 1 && across === 1) return ring;
  return ring.map((value, index) => value * (index % 2 === 0 ? along : across));
}
