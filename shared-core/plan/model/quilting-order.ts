/**
 * What comes first where a piece is quilted, cutting or quilting. The plan chooses; a slot may be cut in a way of its
 * own (battings larger than the shell), and so may a piece, which goes before the slot.
 */
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { CoatPlan, Piece, QuiltingOrder, Slot } from './coat-plan.ts';
import { type Edited, inMm, type LengthText, notInPlan, withPiece } from '../edits/edited.ts';
import { orderWords } from './quilting-order-words.ts';

export const maxRoughMarginMm = 200;

export const toOutline: QuiltingOrder = { kind: 'outline' };

/** Whether a slot's plies of a piece are quilted with it: cloth and batting that the lines go through. */
export function isQuiltLayer(plan: CoatPlan, piece: Piece, slot: Slot): boolean {
  return (
    plan.quilting !== null &&
    piece.quilted !== null &&
    slot.isQuilted &&
    (slot.kind === 'cloth' || slot.kind === 'batting') &&
    piece.cutFrom.some((from) => from.slotId === slot.id && from.plyCount > 0)
  );
}

/**
 * The order that holds for a slot's plies of a piece; null where they are not quilted. All layers of a panel are
 * quilted at once, so they follow the cloth it is marked on; a layer cannot be a panel where that cloth is none.
 */
export function quiltingOrder(plan: CoatPlan, piece: Piece, slot: Slot): QuiltingOrder | null {
  const face = faceSlot(plan, piece);
  if (!face || !isQuiltLayer(plan, piece, slot)) return null;
  const ofFace = orderOf(plan, piece, face);
  const own = orderOf(plan, piece, slot);
  return ofFace.kind === 'panel' || own.kind === 'panel' ? ofFace : own;
}

/** Whether a piece is cut from a quilted panel. */
export function isOnPanel(plan: CoatPlan, piece: Piece): boolean {
  const face = faceSlot(plan, piece);
  return face !== null && orderOf(plan, piece, face).kind === 'panel';
}

function orderOf(plan: CoatPlan, piece: Piece, slot: Slot): QuiltingOrder {
  return piece.quiltingOrder ?? slot.quiltingOrder ?? plan.quilting?.order ?? toOutline;
}

/** The layer that a quilted piece is marked and sewn from: the first quilted cloth, else batting. Null: it has no lines. */
export function faceSlot(plan: CoatPlan, piece: Piece): Slot | null {
  const layers = plan.slots.filter((slot) => isQuiltLayer(plan, piece, slot));
  return layers.find(({ kind }) => kind === 'cloth') ?? layers[0] ?? null;
}

/** The order of the whole plan, wherever slots and pieces have none of their own. */
export function setPlanOrder(plan: CoatPlan, order: QuiltingOrder, text: LengthText = inMm): Result<Edited> {
  const { quilting } = plan;
  if (quilting === null) return err(notQuilted(plan));
  const problem = orderProblem(order, 'Quilted pieces', text);
  if (problem) return err(problem);
  return ok({
    plan: { ...plan, quilting: { ...quilting, order } },
    said: `Quilted pieces are ${orderWords(order, text)}.`,
  });
}

/** A slot's own order; null: as the plan has it. */
export function setSlotOrder(
  plan: CoatPlan,
  slotId: string,
  order: QuiltingOrder | null,
  text: LengthText = inMm,
): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  if (plan.quilting === null) return err(notQuilted(plan));
  const problem =
    slot.isQuilted && (slot.kind === 'cloth' || slot.kind === 'batting')
      ? order && (followsProblem(plan, slot, order) ?? orderProblem(order, `The ${slot.name}`, text))
      : { where: `The ${slot.name}`, what: 'is not quilted', fix: 'Choose a layer of the quilt.' };
  if (problem) return err(problem);
  const { quiltingOrder: _, ...alike } = slot;
  const next = order === null ? alike : { ...alike, quiltingOrder: order };
  return ok({
    plan: { ...plan, slots: plan.slots.map((each) => (each === slot ? next : each)) },
    said:
      order === null
        ? `The ${slot.name} is cut as the whole coat is.`
        : `The ${slot.name} is ${orderWords(order, text)}.`,
  });
}

/** A piece's own order, in all its layers; null: as slots and plan have it. */
export function setPieceOrder(
  plan: CoatPlan,
  pieceId: string,
  order: QuiltingOrder | null,
  text: LengthText = inMm,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (plan.quilting === null) return err(notQuilted(plan));
  const problem =
    piece.quilted === null
      ? { where: piece.name, what: 'is not quilted', fix: 'Choose a piece with lines.' }
      : order && orderProblem(order, piece.name, text);
  if (problem) return err(problem);
  const { quiltingOrder: _, ...alike } = piece;
  return ok({
    plan: withPiece(plan, order === null ? alike : { ...alike, quiltingOrder: order }),
    said:
      order === null
        ? `${piece.name} is cut as the whole coat is.`
        : `${piece.name} is ${orderWords(order, text)}.`,
  });
}

/** A panel is chosen at the cloth that it is marked on; what lies under that goes with it. */
function followsProblem(plan: CoatPlan, slot: Slot, order: QuiltingOrder): Problem | null {
  const isFace = plan.pieces.some((piece) => faceSlot(plan, piece)?.id === slot.id);
  if (order.kind !== 'panel' || isFace) return null;
  return {
    where: `The ${slot.name}`,
    what: 'lies under the cloth that it is quilted to, and goes with it',
    fix: 'Choose the panel for that cloth, for a piece, or for the whole coat.',
  };
}

/** Narrower is no panel that a piece could be cut from, wider no cloth. */
const panelWidthMm = { min: 100, max: 5000 } as const;

/** Why an order cannot be, or null. where: of what. */
export function orderProblem(order: QuiltingOrder, where: string, text: LengthText = inMm): Problem | null {
  if (order.kind === 'outline') return null;
  const { marginMm } = order;
  if (order.kind === 'panel') {
    const { widthMm } = order;
    if (widthMm !== null && !(widthMm >= panelWidthMm.min && widthMm <= panelWidthMm.max)) {
      return {
        where,
        what: Number.isFinite(widthMm)
          ? `would be cut from a panel ${text(widthMm)} wide`
          : 'would be cut from a panel whose width is not a number',
        fix: `Type ${text(panelWidthMm.min)} to ${text(panelWidthMm.max)}, or leave it empty.`,
      };
    }
    if (marginMm === 0) return null;
  }
  if (marginMm > 0 && marginMm <= maxRoughMarginMm) return null;
  return {
    where,
    what: Number.isFinite(marginMm)
      ? `would be cut with ${text(marginMm)} to spare`
      : 'would be cut with a spare that is not a number',
    fix: `Type more than 0 and up to ${text(maxRoughMarginMm)}, or cut to the outline.`,
  };
}

function notQuilted(plan: CoatPlan): Problem {
  return { where: plan.name, what: 'is not quilted', fix: 'Turn quilting on first.' };
}
