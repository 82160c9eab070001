/**
 * What a length on the shelf could still carry: which single pieces of coats fit into what is free of it, turned as
 * grain and nap of its cloth allow, within its usable width and clear of its flaws. By the boxes round the pieces, so
 * a piece that only just fits slantwise past a flaw is not found; each piece alone, so two of them need not fit together.
 */
import { type Ring, ringBox, ringMoved, ringTurned } from '../geometry/ring.ts';
import type { LayLength } from '../lay/job.ts';
import type { CoatPlan, Slot } from '../plan/model/coat-plan.ts';
import { shapesNeed } from '../requirement/cut/cut-shapes.ts';
import type { ShapeToCut, SlotItems } from '../requirement/need.ts';
import type { ItemOnShelf, LengthId } from '../stash/stash.ts';
import { freeLengths, onShelf } from './free-lengths.ts';

export interface CoatAtHand {
  readonly plan: CoatPlan;
  readonly items: SlotItems;
}

/** A slot of a coat that a piece is for. */
export interface PieceUse {
  readonly plan: CoatPlan;
  readonly slot: Slot;
  /** The slot is filled by this very item; otherwise by another or by none. */
  readonly isOfItem: boolean;
}

/** Pieces of one name, slot and size are one, whichever coats they are for. */
export interface CarriedPiece {
  readonly pieceName: string;
  readonly uses: readonly PieceUse[];
  /** Where it lies, in the frame of the free part of the length. */
  readonly ring: Ring;
  readonly alongMm: number;
  readonly acrossMm: number;
}

export interface Carried {
  /** The free part of the length, as it is when pieces are cut from it. */
  readonly free: LayLength & { readonly lengthMm: number };
  readonly pieces: readonly CarriedPiece[];
  /** How many pieces were looked at, those alike taken as one. */
  readonly lookedAt: number;
}

/**
 * The pieces that fit into a length, largest first; null where nothing of it is free. Pieces that are cut from quilted
 * panels are left out: what is cut from the cloth for them is a panel. Takes the size at hand of each coat.
 */
export function couldCarry(
  shelf: ItemOnShelf,
  lengthId: LengthId,
  coats: readonly CoatAtHand[],
): Carried | null {
  const { item } = shelf;
  const looked = new Map<string, { readonly placed: Placed | null; readonly uses: PieceUse[] }>();
  let free: Carried['free'] | null = null;
  for (const { plan, items } of coats) {
    for (const slot of plan.slots.filter(({ kind }) => kind === item.kind)) {
      const candidate = freeLengths(shelf, slot, new Map()).find(({ length }) => length.id === lengthId);
      if (!candidate) continue;
      const whole = onShelf(candidate, item);
      const room = { ...whole, lengthMm: whole.lengthMm ?? 0 };
      free = !free || room.lengthMm > free.lengthMm ? room : free;
      const use: PieceUse = { plan, slot, isOfItem: slot.itemId === item.id };
      const { shapes } = shapesNeed(plan, slot, new Map(items).set(slot.id, item));
      for (const shape of shapes) {
        if (shape.panel) continue;
        const { maxX, minX, maxY, minY } = ringBox(shape.ring);
        const size = [maxX - minX, maxY - minY].map((mm) => mm.toFixed(1));
        const key = JSON.stringify([shape.name, slot.name, size, shape.turnsDeg, room.lengthMm]);
        const known = looked.get(key);
        if (known) known.uses.push(use);
        else looked.set(key, { placed: placed(shape, room), uses: [use] });
      }
    }
  }
  if (!free) return null;
  const pieces = [...looked.values()].flatMap(({ placed, uses }) => (placed ? [{ ...placed, uses }] : []));
  const area = ({ alongMm, acrossMm }: CarriedPiece) => alongMm * acrossMm;
  return { free, pieces: pieces.sort((a, b) => area(b) - area(a)), lookedAt: looked.size };
}

type Placed = Omit<CarriedPiece, 'uses'>;

/** The shape where it fits, nearest to the start of the length; null where it does not. */
function placed(shape: ShapeToCut, room: Carried['free']): Placed | null {
  for (const turnDeg of shape.turnsDeg) {
    const turned = ringTurned(shape.ring, turnDeg, false);
    const box = ringBox(turned);
    const size = { x: box.maxX - box.minX, y: box.maxY - box.minY };
    const at = placeOfBox(size, room);
    if (!at) continue;
    const ring = ringMoved(turned, at.x - box.minX, at.y - box.minY);
    return { pieceName: shape.name, ring, alongMm: size.x, acrossMm: size.y };
  }
  return null;
}

const hairMm = 1e-6;

/**
 * Where a box fits beside the flaws. Pushed towards the start and the lower selvage as far as it goes, a box that fits
 * anywhere touches an edge of the room or of a flaw on both sides, so these places are all that need be tried.
 */
export function placeOfBox(
  size: { readonly x: number; readonly y: number },
  { lengthMm, widthMm, flaws }: Pick<Carried['free'], 'lengthMm' | 'widthMm' | 'flaws'>,
): { readonly x: number; readonly y: number } | null {
  const xs = [0, ...flaws.map((flaw) => flaw.x + flaw.widthX)].sort((a, b) => a - b);
  const ys = [0, ...flaws.map((flaw) => flaw.y + flaw.widthY)].sort((a, b) => a - b);
  for (const x of xs) {
    for (const y of ys) {
      const isInside = x >= 0 && y >= 0 && x + size.x <= lengthMm + hairMm && y + size.y <= widthMm + hairMm;
      const isClear = flaws.every(
        (flaw) =>
          flaw.x >= x + size.x - hairMm ||
          flaw.x + flaw.widthX <= x + hairMm ||
          flaw.y >= y + size.y - hairMm ||
          flaw.y + flaw.widthY <= y + hairMm,
      );
      if (isInside && isClear) return { x, y };
    }
  }
  return null;
}
