/**
 * What comes first where a piece is quilted, cutting or quilting. The plan chooses; a slot may be cut in a way of its
 * own (battings larger than the shell), and so may a piece, which goes before the slot.
 */
import { say } from '../../wording/say.ts';
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
  const problem = orderProblem(order, say('quilting-order.quilted-pieces'), text);
  if (problem) return err(problem);
  return ok({
    plan: { ...plan, quilting: { ...quilting, order } },
    said: say('quilting-order.quilted-pieces-are', { orderWords: orderWords(order, text) }),
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
      ? order &&
        (followsProblem(plan, slot, order) ??
          orderProblem(order, say('quilting-order.the', { slotName: slot.name }), text))
      : {
          where: say('quilting-order.the', { slotName: slot.name }),
          what: say('common.is-not-quilted'),
          fix: say('quilting-order.choose-a-layer-of-the-quilt'),
        };
  if (problem) return err(problem);
  const { quiltingOrder: _, ...alike } = slot;
  const next = order === null ? alike : { ...alike, quiltingOrder: order };
  return ok({
    plan: { ...plan, slots: plan.slots.map((each) => (each === slot ? next : each)) },
    said:
      order === null
        ? say('quilting-order.the-is-cut-as-the-whole', { slotName: slot.name })
        : say('quilting-order.the-is', { slotName: slot.name, orderWords: orderWords(order, text) }),
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
      ? {
          where: piece.name,
          what: say('common.is-not-quilted'),
          fix: say('quilting-order.choose-a-piece-with-lines'),
        }
      : order && orderProblem(order, piece.name, text);
  if (problem) return err(problem);
  const { quiltingOrder: _, ...alike } = piece;
  return ok({
    plan: withPiece(plan, order === null ? alike : { ...alike, quiltingOrder: order }),
    said:
      order === null
        ? say('quilting-order.is-cut-as-the-whole-coat', { pieceName: piece.name })
        : say('quilting-order.is', { pieceName: piece.name, orderWords: orderWords(order, text) }),
  });
}

/** A panel is chosen at the cloth that it is marked on; what lies under that goes with it. */
function followsProblem(plan: CoatPlan, slot: Slot, order: QuiltingOrder): Problem | null {
  const isFace = plan.pieces.some((piece) => faceSlot(plan, piece)?.id === slot.id);
  if (order.kind !== 'panel' || isFace) return null;
  return {
    where: say('quilting-order.the', { slotName: slot.name }),
    what: say('quilting-order.lies-under-the-cloth-that-it'),
    fix: say('quilting-order.choose-the-panel-for-that-cloth'),
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
          ? say('quilting-order.would-be-cut-from-a-panel', { text: text(widthMm) })
          : say('quilting-order.would-be-cut-from-a-panel-2'),
        fix: say('quilting-order.type-to-or-leave-it-empty', {
          text: text(panelWidthMm.min),
          text2: text(panelWidthMm.max),
        }),
      };
    }
    if (marginMm === 0) return null;
  }
  if (marginMm > 0 && marginMm <= maxRoughMarginMm) return null;
  return {
    where,
    what: Number.isFinite(marginMm)
      ? say('quilting-order.would-be-cut-with-to-spare', { text: text(marginMm) })
      : say('quilting-order.would-be-cut-with-a-spare'),
    fix: say('quilting-order.type-more-than-0-and-up', { text: text(maxRoughMarginMm) }),
  };
}

function notQuilted(plan: CoatPlan): Problem {
  return { where: plan.name, what: say('common.is-not-quilted'), fix: say('common.turn-quilting-on-first') };
}
