/** Loose fill, chamber by chamber: volume of the lens between two lines, over the fill power, times the overfill. */
import { type Basis, measureIn } from '../measure/basis.ts';
import type { Problem } from '../measure/problem.ts';
import type { CoatPlan, Piece, Slot } from '../plan/coat-plan.ts';
import { plansBySize } from '../plan/sizes.ts';
import { stuffingProblem } from '../plan/stuffing.ts';
import { ringAreaMm2, ringBox } from '../geometry/ring.ts';
import { type Chamber, chamberOf, fillMassG } from '../quilting/chambers.ts';
import { type Channel, wholeSeamRing } from '../quilting/lines.ts';
import { quiltingMap } from '../quilting/map.ts';
import type { AmountNeed, SlotItems } from './need.ts';
import { quiltedRise } from './rise.ts';
import { typedNeed } from './thread.ts';

/** 20 to 30 % more than the chamber holds is usual. Source: maker's blog on a down quilt, 2020; outdoor-gear makers' forum. */
export const usualOverfillFactor = 1.2;

/** To have at hand beyond the list: common practice, no source. */
export const usualSpareFillRatio = 0.05;

/** Stands in while no fill power is written down: 600 in3/oz, an ordinary down. */
const assumedFillPowerCm3PerG = 346.8;

/** One chamber of the filling list. */
export interface ChamberFill extends Chamber {
  readonly pieceId: string;
  readonly pieceName: string;
  /** Counted from the hem, 1 first. */
  readonly number: number;
  /** Grams for this one chamber. */
  readonly massG: number;
  /** How many chambers like it the batch has. */
  readonly count: number;
}

/** For the whole batch. */
export interface FillingList {
  readonly chambers: readonly ChamberFill[];
  /** What is weighed out into the chambers. */
  readonly filledG: number;
  /** To have at hand beyond it, for what flies, clings and is weighed wrong. */
  readonly spareG: number;
  readonly overfillFactor: number;
  /** Stuffed pieces without a backing that holds the fill. */
  readonly problems: readonly Problem[];
  readonly basis: readonly Basis[];
}

/** Grams of the slot's fill for the whole batch. A typed amount of the slot wins over the estimate. */
export function fillNeed(plan: CoatPlan, slot: Slot, items: SlotItems): AmountNeed {
  if (slot.amountPerCoat !== null) return typedNeed(plan, slot, 'mass', slot.amountPerCoat);
  const list = fillingList(plan, slot, items);
  const byPiece = new Map<string, { what: string; chamberCount: number; amount: number }>();
  for (const chamber of list.chambers) {
    const sum = byPiece.get(chamber.pieceId) ?? { what: chamber.pieceName, chamberCount: 0, amount: 0 };
    byPiece.set(chamber.pieceId, {
      what: sum.what,
      chamberCount: sum.chamberCount + chamber.count,
      amount: sum.amount + chamber.massG * chamber.count,
    });
  }
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'mass',
    amount: list.filledG + list.spareG,
    parts: [
      ...[...byPiece.values()].map(({ what, chamberCount, amount }) => ({
        what: `${what}: ${chamberCount} chambers`,
        amount,
      })),
      ...(list.spareG > 0 ? [{ what: 'spare', amount: list.spareG }] : []),
    ],
    wantedLengthMm: null,
    basis: list.basis,
  };
}

/**
 * Every chamber of the pieces that are stuffed with the slot, from the hem up, with its grams, size by size.
 * A stuffed piece that is not quilted is one chamber. A typed amount of the slot is spread over the chambers in proportion.
 */
export function fillingList(plan: CoatPlan, slot: Slot, items: SlotItems): FillingList {
  const lists = plansBySize(plan).map((each) => ({ each, list: sizeList(each, slot, items) }));
  const chambers = lists.flatMap(({ each, list }) =>
    each.size === plan.size
      ? list.chambers
      : list.chambers.map((chamber) => ({ ...chamber, pieceName: `${chamber.pieceName}, ${each.size}` })),
  );
  const filledG = massOf(chambers);
  const basis = lists.flatMap(({ list }) => list.basis);
  return {
    chambers,
    filledG,
    // What the maker weighed is taken as it is.
    spareG: slot.amountPerCoat === null ? filledG * spareRatio(plan) : 0,
    overfillFactor: plan.overfillFactor ?? usualOverfillFactor,
    problems: plan.pieces.flatMap((piece) => stuffingProblem(plan, piece) ?? []),
    basis: basis.filter(({ how }, index) => basis.findIndex((other) => other.how === how) === index),
  };
}

/** Share of the filled mass that is spare. */
export function spareRatio(plan: CoatPlan): number {
  return plan.spareFillRatio ?? usualSpareFillRatio;
}

function massOf(chambers: readonly ChamberFill[]): number {
  return chambers.reduce((sum, chamber) => sum + chamber.massG * chamber.count, 0);
}

/** The chambers of the size at hand. */
function sizeList(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
): { readonly chambers: readonly ChamberFill[]; readonly basis: readonly Basis[] } {
  const overfillFactor = plan.overfillFactor ?? usualOverfillFactor;
  const item = items.get(slot.id);
  const known = item?.kind === 'fill' ? item.facts.fillPowerCm3PerG : null;
  const fillPowerCm3PerG = known ?? assumedFillPowerCm3PerG;
  const basis = new Map<string, Basis>();
  const chambers: ChamberFill[] = [];
  const map = quiltingMap(plan);
  for (const piece of plan.pieces) {
    if (!piece.cutFrom.some((from) => from.slotId === slot.id && from.plyCount > 0)) continue;
    const quilted = map.find((candidate) => candidate.pieceId === piece.id);
    const channels = quilted?.channels ?? [wholeAsChannel(piece)];
    const spacingMm = quilted?.spacingMm ?? channels[0]!.widthMm;
    const rise = quiltedRise(plan, piece, items);
    basis.set('rise', rise.basis);
    const riseMm = Math.min(rise.riseMm, spacingMm / 2);
    channels.forEach((channel, index) => {
      const chamber = chamberOf(channel, spacingMm, riseMm);
      const massG = fillMassG(chamber.volumeCm3, fillPowerCm3PerG, overfillFactor);
      const count = piece.cutCount * plan.coatCount;
      chambers.push({
        ...chamber,
        pieceId: piece.id,
        pieceName: piece.name,
        number: index + 1,
        massG,
        count,
      });
    });
  }
  if (chambers.length === 0) {
    basis.set('none', { kind: 'computed', how: 'no piece is stuffed with this fill', source: '' });
  } else {
    basis.set('lens', {
      kind: 'computed',
      how: 'chamber by chamber: two arcs between the lines x length of the channel / fill power x overfill',
      source: 'geometry of a lens; mass by maker’s blog on a down quilt, 2020',
    });
    basis.set('overfill', overfillBasis(plan));
    basis.set('spare', {
      kind: plan.spareFillRatio === undefined ? 'rule of thumb' : 'measured',
      how: `${Number((spareRatio(plan) * 100).toFixed(1))} % spare for what flies and clings`,
      source: plan.spareFillRatio === undefined ? 'common practice, no source' : '',
    });
    if (known === null) {
      basis.set('power', {
        kind: 'rule of thumb',
        how: `no fill power is written down: taken as ${measureIn('fillPower', assumedFillPowerCm3PerG)}, an ordinary down`,
        source: 'common practice, no source',
      });
    }
  }
  const byVolumeG = massOf(chambers);
  if (slot.amountPerCoat === null || byVolumeG === 0) return { chambers, basis: [...basis.values()] };
  const share = (slot.amountPerCoat * plan.coatCount) / byVolumeG;
  return {
    chambers: chambers.map((chamber) => ({ ...chamber, massG: chamber.massG * share })),
    basis: [
      {
        kind: 'measured',
        how: `${measureIn('mass', slot.amountPerCoat)} for one coat as the maker gave it, spread over the chambers by their volume`,
        source: '',
      },
    ],
  };
}

function overfillBasis(plan: CoatPlan): Basis {
  return plan.overfillFactor === undefined
    ? {
        kind: 'rule of thumb',
        how: `overfill x ${usualOverfillFactor}`,
        source: 'outdoor-gear makers’ forum: 20 to 30 %',
      }
    : { kind: 'measured', how: `overfill x ${plan.overfillFactor}, as the maker chose it`, source: '' };
}

/** An unquilted piece as one channel along its longer side, as wide as its area makes it. */
function wholeAsChannel(piece: Piece): Channel {
  const ring = wholeSeamRing(piece);
  const box = ringBox(ring);
  const lengthMm = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const areaMm2 = ringAreaMm2(ring);
  return { fromMm: 0, toMm: areaMm2 / lengthMm, widthMm: areaMm2 / lengthMm, lengthMm, areaMm2 };
}
