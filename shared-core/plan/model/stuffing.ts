/** Pieces that are stuffed with loose fill: it lies between two cloths, which the lines sew together into channels. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { givenName } from '../../wording/given-names.ts';
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { type CoatPlan, type CutFrom, emptySlot, type FillAim, type Piece, type Slot } from './coat-plan.ts';
import { type Edited, inMm, notInPlan, withPiece } from '../edits/edited.ts';

/** Slots that pieces are stuffed from. */
export function fillSlots(plan: CoatPlan): readonly Slot[] {
  return plan.slots.filter((slot) => slot.kind === 'fill');
}

/** Whether loose fill of any slot goes into the piece. */
export function isStuffed(plan: CoatPlan, piece: Piece): boolean {
  const ids = new Set(fillSlots(plan).map((slot) => slot.id));
  return piece.cutFrom.some((from) => from.plyCount > 0 && ids.has(from.slotId));
}

/** A stuffed piece whose fill would fall out, as it has no two cloths to lie between; null where all is well. */
export function stuffingProblem(plan: CoatPlan, piece: Piece): Problem | null {
  if (!isStuffed(plan, piece) || holdingPlyCount(plan, piece) >= 2) return null;
  return {
    where: piece.name,
    what: say('stuffing.is-stuffed-but-has-no-backing'),
    fix: say('stuffing.cut-it-from-a-second-quilted'),
  };
}

/** Plies of cloth that the fill can lie between: those the lines go through, or all where there are no lines. */
function holdingPlyCount(plan: CoatPlan, piece: Piece): number {
  return piece.cutFrom.reduce((sum, from) => {
    const slot = plan.slots.find((candidate) => candidate.id === from.slotId);
    const isHolding = slot?.kind === 'cloth' && (slot.isQuilted || piece.quilted === null);
    return isHolding ? sum + from.plyCount : sum;
  }, 0);
}

/**
 * Stuffs a piece with loose fill in the place of its batting, or takes the fill out again.
 * A plan without a slot for fill gets one, and a piece without a second quilted cloth is cut from a backing too.
 */
export function setStuffed(plan: CoatPlan, pieceId: string, stuffed: boolean): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  return stuffed ? stuff(plan, piece) : empty(plan, piece);
}

/** The backing that held the fill goes with it: it has nothing to hold. */
function empty(plan: CoatPlan, piece: Piece): Result<Edited> {
  const ids = new Set(fillSlots(plan).map((slot) => slot.id));
  const backing = plan.slots.find(
    (slot) => isBacking(slot) && piece.cutFrom.some((from) => holds(from, slot)),
  );
  const cutFrom = piece.cutFrom.flatMap((from) => {
    if (ids.has(from.slotId)) return [];
    if (from.slotId !== backing?.id) return [from];
    return from.plyCount > 1 ? [{ ...from, plyCount: from.plyCount - 1 }] : [];
  });
  const emptied = withPiece(plan, { ...piece, cutFrom });
  const noBacking = backing
    ? say('stuffing.and-no-longer-cut-from-which', { backingName: backing.name })
    : '';
  return ok({
    plan: backing ? withoutUnused(emptied, backing) : emptied,
    said: say('stuffing.is-not-stuffed-it-has-no', { pieceName: piece.name, noBacking }),
  });
}

/** A slot that no piece of any size is cut from any more, and that nothing was chosen for, goes. */
function withoutUnused(plan: CoatPlan, slot: Slot): CoatPlan {
  const isCut = [plan, ...(plan.sizes ?? [])].some(({ pieces }) =>
    pieces.some(({ cutFrom }) => cutFrom.some((from) => from.slotId === slot.id)),
  );
  return isCut || slot.itemId !== null
    ? plan
    : { ...plan, slots: plan.slots.filter((each) => each !== slot) };
}

function stuff(plan: CoatPlan, piece: Piece): Result<Edited> {
  if (isStuffed(plan, piece)) {
    return err({
      where: piece.name,
      what: say('stuffing.is-stuffed-already'),
      fix: say('stuffing.choose-another-piece'),
    });
  }
  if (!plan.slots.some((slot) => slot.kind === 'cloth' && piece.cutFrom.some((from) => holds(from, slot)))) {
    return err({
      where: piece.name,
      what: say('stuffing.is-cut-from-no-cloth-that'),
      fix: say('stuffing.cut-it-from-a-cloth-first'),
    });
  }
  const withFill = withSlot(
    plan,
    fillSlots(plan)[0] ?? emptySlot(freeId(plan, 'fill'), givenName('slot', 'loose fill'), 'fill'),
  );
  const batting = new Set(plan.slots.filter((slot) => slot.kind === 'batting').map((slot) => slot.id));
  const kept = piece.cutFrom.filter((from) => !batting.has(from.slotId));
  const isBatted = kept.length < piece.cutFrom.length;
  const fillId = fillSlots(withFill)[0]!.id;
  const stuffed: Piece = { ...piece, cutFrom: [...kept, { slotId: fillId, plyCount: 1 }] };
  const said = say('stuffing.is-stuffed-with-loose-fill', {
    pieceName: piece.name,
    ifBatted: isBatted ? 'yes' : 'no',
  });
  if (!stuffingProblem(withPiece(withFill, stuffed), stuffed)) {
    return ok({ plan: withPiece(withFill, stuffed), said: `${said}.` });
  }
  const lined = quiltedThroughLining(withPiece(withFill, stuffed), stuffed);
  if (lined)
    return ok({
      plan: lined.plan,
      said: say('stuffing.and-quilted-through-its-which-holds', { said, linedName: lined.name }),
    });
  const backing = plan.slots.find(isBacking) ?? newBacking(plan);
  const backed: Piece = { ...stuffed, cutFrom: backedBy(stuffed.cutFrom, backing.id) };
  const edited = withPiece(withSlot(withFill, backing), backed);
  const problem = stuffingProblem(edited, backed);
  if (problem) return err(problem);
  return ok({
    plan: edited,
    said: say('stuffing.and-cut-from-too-which-holds', { said, backingName: backing.name }),
  });
}

/**
 * A second cloth that the piece has already holds the fill when the lines go through it too: then it needs no backing.
 * Only where no other quilted piece is cut from that cloth, whose lines would go through it with this one's.
 */
function quiltedThroughLining(plan: CoatPlan, piece: Piece): { plan: CoatPlan; name: string } | null {
  const second = plan.slots.find(
    (slot) => slot.kind === 'cloth' && !slot.isQuilted && piece.cutFrom.some((from) => holds(from, slot)),
  );
  const others = [plan, ...(plan.sizes ?? [])].flatMap(({ pieces }) => pieces);
  const isShared = others.some(
    (each) =>
      each.id !== piece.id &&
      each.quilted !== null &&
      each.cutFrom.some((from) => second && holds(from, second)),
  );
  if (!second || isShared) return null;
  const slots = plan.slots.map((slot) => (slot === second ? { ...slot, isQuilted: true } : slot));
  const through = { ...plan, slots };
  return stuffingProblem(through, piece) ? null : { plan: through, name: second.name };
}

function holds(from: CutFrom, slot: Slot): boolean {
  return from.slotId === slot.id && from.plyCount > 0;
}

function isBacking(slot: Slot): boolean {
  return slot.kind === 'cloth' && slot.isQuilted && speaksOf('backing', slot.name);
}

/** Cloth behind the shell that nobody sees, quilted with it. */
function newBacking(plan: CoatPlan): Slot {
  const backing = givenName('slot', 'backing');
  const isTaken = plan.slots.some((slot) => slot.name.trim().toLowerCase() === backing.toLowerCase());
  const name = isTaken ? givenName('slot', 'quilted backing') : backing;
  return { ...emptySlot(freeId(plan, 'backing'), name, 'cloth'), isSeen: false, isQuilted: true };
}

/** One ply of backing; a second one where the piece already has one, so that two cloths hold the fill. */
function backedBy(cutFrom: readonly CutFrom[], backingId: string): readonly CutFrom[] {
  const has = cutFrom.some((from) => from.slotId === backingId);
  return has
    ? cutFrom.map((from) => (from.slotId === backingId ? { ...from, plyCount: from.plyCount + 1 } : from))
    : [...cutFrom, { slotId: backingId, plyCount: 1 }];
}

function withSlot(plan: CoatPlan, slot: Slot): CoatPlan {
  return plan.slots.includes(slot) ? plan : { ...plan, slots: [...plan.slots, slot] };
}

function freeId(plan: CoatPlan, stem: string): string {
  let id = stem;
  for (let number = 2; plan.slots.some((slot) => slot.id === id); number++) id = `${stem}-${number}`;
  return id;
}

const minOverfill = 0.5;
const maxOverfill = 3;

/** How much more than the volume of a chamber goes into it: 1.2 is 20 % over; null goes back to the usual. */
export function setOverfill(plan: CoatPlan, factor: number | null): Result<Edited> {
  const { overfillFactor: _, ...rest } = plan;
  if (factor === null) return ok({ plan: rest, said: say('stuffing.chambers-are-filled-over-by-the') });
  if (!(factor >= minOverfill && factor <= maxOverfill)) {
    return err({
      where: say('stuffing.overfill'),
      what: say('stuffing.is', { isFinite: Number.isFinite(factor) ? factor : say('stuffing.not-a-number') }),
      fix: say('stuffing.type-to-1-2-is-20', { minOverfill, maxOverfill }),
    });
  }
  return ok({
    plan: { ...rest, overfillFactor: factor },
    said: say('stuffing.chambers-are-filled-x', { factor }),
  });
}

const aimLimits = { loft: { min: 3, max: 200 }, weight: { min: 10, max: 1500 } } as const;

/**
 * How full pieces are stuffed: a loft midway between two lines in mm, or a weight over their area in g/m2; null: as is
 * usual again. text: the maker's words for either.
 */
export function setFillAim(
  plan: CoatPlan,
  aim: FillAim | null,
  text: (aim: FillAim) => string = aimInMetric,
): Result<Edited> {
  const { fillAim: _, ...rest } = plan;
  if (aim === null) return ok({ plan: rest, said: say('stuffing.pieces-are-stuffed-as-is-usual') });
  const value = aim.kind === 'loft' ? aim.loftMm : aim.gPerM2;
  const { min, max } = aimLimits[aim.kind];
  if (!(value >= min && value <= max)) {
    const limit = (of: number) =>
      text(aim.kind === 'loft' ? { kind: 'loft', loftMm: of } : { kind: 'weight', gPerM2: of });
    return err({
      where: aim.kind === 'loft' ? say('stuffing.loft-of-the-fill') : say('stuffing.weight-of-the-fill'),
      what: Number.isFinite(value)
        ? say('stuffing.is-2', { text: text(aim) })
        : say('common.is-not-a-number'),
      fix: say('stuffing.type-to', { limit: limit(min), limit2: limit(max) }),
    });
  }
  return ok({
    plan: { ...rest, fillAim: aim },
    said:
      aim.kind === 'loft'
        ? say('stuffing.pieces-are-stuffed-to-a-loft', { text: text(aim) })
        : say('stuffing.pieces-are-stuffed-with', { text: text(aim) }),
  });
}

function aimInMetric(aim: FillAim): string {
  return aim.kind === 'loft'
    ? inMm(aim.loftMm)
    : `${withDecimalSign(String(Number(aim.gPerM2.toFixed(1))))} g/m²`;
}

/** Fill to have at hand beyond what is weighed out, 0 to 1 (1 is as much again); null goes back to the usual. */
export function setSpareFill(plan: CoatPlan, ratio: number | null): Result<Edited> {
  const { spareFillRatio: _, ...rest } = plan;
  if (ratio === null) return ok({ plan: rest, said: say('stuffing.the-usual-5-of-fill-is') });
  if (!(ratio >= 0 && ratio <= 1)) {
    return err({
      where: say('stuffing.spare-fill'),
      what: say('stuffing.is-below-nothing-or-above-all'),
      fix: say('stuffing.type-0-to-100'),
    });
  }
  return ok({
    plan: { ...rest, spareFillRatio: ratio },
    said: say('stuffing.of-fill-is-spare', { ratio: Number((ratio * 100).toFixed(1)) }),
  });
}
