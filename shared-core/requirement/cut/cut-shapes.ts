/** The shapes that a slot's cloth or batting is cut into: outlines with allowance, take-up and shrinkage. */
import { say } from '../../wording/say.ts';
import { ringGrown } from '../../geometry/grown.ts';
import { ringAreaMm2, ringStretched } from '../../geometry/ring.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import {
  type CoatPlan,
  type PanelOrder,
  type Piece,
  type Slot,
  slotById,
} from '../../plan/model/coat-plan.ts';
import { cutRing } from '../../plan/geometry/outline-ring.ts';
import { faceSlot, isQuiltLayer, quiltingOrder } from '../../plan/model/quilting-order.ts';
import { lineSpacingMm } from '../../quilting/lines.ts';
import { lineOrigins } from '../../quilting/map.ts';
import type { Item } from '../../stash/stash.ts';
import { type FirstWash, firstWash, growthForWash, washBasis } from './first-wash.ts';
import type { OnPanel, ShapesNeed, ShapeToCut, SlotItems } from '../need.ts';
import { slotTakeUp, takeUpBasis } from './slot-take-up.ts';

/**
 * Every piece that is cut from the slot, for all coats of the plan.
 * Cloth with a nap turns every piece one way. A slot without an item is taken without shrinkage and nap.
 */
export function shapesNeed(plan: CoatPlan, slot: Slot, items: SlotItems): ShapesNeed {
  const item = items.get(slot.id);
  const wash = firstWash(slot, item);
  const basis = new Map<string, Basis>();
  if (wash && isCut(plan, slot)) basis.set('wash', washBasis(wash));
  const shapes: ShapeToCut[] = [];
  // Setting the lines of all pieces to each other takes its time, and only panels ask for it.
  let origins: ReadonlyMap<string, number> | null = null;
  const originOf = (pieceId: string) => {
    origins ??= lineOrigins(plan);
    return origins.get(pieceId) ?? 0;
  };
  for (const piece of plan.pieces) {
    const plyCount = piece.cutFrom.find((from) => from.slotId === slot.id)?.plyCount ?? 0;
    if (plyCount === 0) continue;
    const drawn = cutRing(piece.outline, piece.foldEdge);
    const growth = growthOf(plan, slot, piece, items, wash, basis);
    const outline = ringStretched(drawn, growth.along, growth.across);
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
      ...(order?.kind === 'panel' && { panel: onPanel(plan, slot, piece, items, order, plyCount, originOf) }),
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
    ...(wash && { firstWash: wash }),
  };
}

function isCut(plan: CoatPlan, slot: Slot): boolean {
  return plan.pieces.some(({ cutFrom }) =>
    cutFrom.some(({ slotId, plyCount }) => slotId === slot.id && plyCount > 0),
  );
}

function spareBasis(marginMm: number): Basis {
  return {
    kind: 'rule of thumb',
    how: say('cut-shapes.to-spare-all-round-trimmed-off', { measureIn: measureIn('length', marginMm) }),
    source: say('cut-shapes.as-you-chose-it-makers-take'),
  };
}

/** How the piece lies on the quilted panel of its layers; a wash still to come is that of the cloth it is marked on. */
function onPanel(
  plan: CoatPlan,
  slot: Slot,
  piece: Piece,
  items: SlotItems,
  order: PanelOrder,
  plyCount: number,
  originOf: (pieceId: string) => number,
): OnPanel {
  const face = faceSlot(plan, piece) ?? slot;
  const direction = piece.quilted ?? 'across';
  const spacingMm = plan.quilting ? lineSpacingMm(plan.quilting, piece) : 0;
  const growth = growthForWash(firstWash(face, items.get(face.id)));
  const layers = piece.cutFrom
    .filter((from) => isQuiltLayer(plan, piece, slotById(plan, from.slotId)))
    .map((from) => `${from.slotId} x ${from.plyCount}`)
    .sort();
  const mirroredCount = piece.isMirrored ? Math.floor(piece.cutCount / 2) : 0;
  return {
    key: JSON.stringify([layers, direction, spacingMm, order]),
    order,
    direction,
    spacingMm,
    quiltedRing: ringStretched(cutRing(piece.outline, piece.foldEdge), growth.along, growth.across),
    lineAtMm: originOf(piece.id) * (direction === 'across' ? growth.along : growth.across),
    // A quarter turn would lay its lines the other way.
    turnsDeg: turnsDeg(piece, face, items.get(face.id)).filter((turn) => turn % 180 === 0),
    takeUp: slotTakeUp(plan, slot, piece, items) ?? { alongRatio: 0, acrossRatio: 0 },
    plyCount,
    isFace: slot === face,
    oneCoat: { count: piece.cutCount - mirroredCount, mirroredCount },
  };
}

interface Growth {
  readonly along: number;
  readonly across: number;
}

/** How much longer and wider than its outline a piece is cut: quilting first, then a first wash that is still to come. */
function growthOf(
  plan: CoatPlan,
  slot: Slot,
  piece: Piece,
  items: SlotItems,
  wash: FirstWash | null,
  basis: Map<string, Basis>,
): Growth {
  const takeUp = slotTakeUp(plan, slot, piece, items);
  if (takeUp) for (const each of takeUpBasis(takeUp)) basis.set(each.how, each);
  const growth = growthForWash(wash);
  return {
    along: (1 + (takeUp?.alongRatio ?? 0)) * growth.along,
    across: (1 + (takeUp?.acrossRatio ?? 0)) * growth.across,
  };
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
