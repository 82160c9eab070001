/** Loose fill, chamber by chamber: volume of the lens between two lines, over the fill power, times the overfill. */
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { Problem } from '../../measure/problem.ts';
import type { CoatPlan, Piece, Slot } from '../../plan/model/coat-plan.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import { stuffingProblem } from '../../plan/model/stuffing.ts';
import { ringAreaMm2, ringBox } from '../../geometry/ring.ts';
import { type Chamber, chamberOf, fillMassG } from '../../quilting/chambers.ts';
import { type Channel, wholeSeamRing } from '../../quilting/lines.ts';
import { quiltingMap } from '../../quilting/map.ts';
import type { AmountNeed, SlotItems } from '../need.ts';
import {
  type FillPower,
  fillPowerOf,
  overfillOf,
  testToleranceRatio,
  defaultOverfillFactor,
} from './fill-power.ts';
import { quiltedRise } from './rise.ts';
import { typedNeed } from '../thread/thread.ts';

/** To have at hand beyond the list: common practice, no source. */
export const defaultSpareFillRatio = 0.05;

/** One chamber of the filling list. */
export interface ChamberFill extends Chamber {
  readonly areaMm2: number;
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
  /** Weight of fill over the area of the stuffed pieces; 0 where none is. */
  readonly gPerM2: number;
  /** Share either way that a laboratory's fill power, and so the mass, is good to; 0 where the maker gave the mass. */
  readonly toleranceRatio: number;
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
        what: say('fill.chambers', { what, chamberCount }),
        amount,
      })),
      ...(list.spareG > 0 ? [{ what: say('fill.spare'), amount: list.spareG }] : []),
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
  const areaMm2 = chambers.reduce((sum, { areaMm2: one, count }) => sum + one * count, 0);
  const isByPower = slot.amountPerCoat === null && plan.fillAim?.kind !== 'weight';
  const basis = lists.flatMap(({ list }) => list.basis);
  return {
    chambers,
    filledG,
    // What the maker weighed is taken as it is.
    spareG: slot.amountPerCoat === null ? filledG * spareRatio(plan) : 0,
    overfillFactor: overfillOf(plan),
    gPerM2: areaMm2 > 0 ? filledG / (areaMm2 / 1e6) : 0,
    toleranceRatio: isByPower ? testToleranceRatio : 0,
    problems: plan.pieces.flatMap((piece) => stuffingProblem(plan, piece) ?? []),
    basis: basis.filter(({ how }, index) => basis.findIndex((other) => other.how === how) === index),
  };
}

/** Share of the filled mass that is spare. */
export function spareRatio(plan: CoatPlan): number {
  return plan.spareFillRatio ?? defaultSpareFillRatio;
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
  const aim = plan.fillAim;
  const power = fillPowerOf(items.get(slot.id));
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
      const { areaMm2 } = channel;
      const massG =
        aim?.kind === 'weight'
          ? (areaMm2 / 1e6) * aim.gPerM2
          : fillMassG(chamber.volumeCm3, power.cm3PerG, overfillOf(plan));
      const count = piece.cutCount * plan.coatCount;
      chambers.push({
        ...chamber,
        areaMm2,
        pieceId: piece.id,
        pieceName: piece.name,
        number: index + 1,
        massG,
        count,
      });
    });
  }
  if (chambers.length === 0) {
    basis.set('none', { kind: 'computed', how: say('fill.no-piece-is-stuffed-with-this'), source: '' });
  } else {
    for (const each of massBasis(plan, power)) basis.set(each.how, each);
    basis.set('spare', {
      kind: plan.spareFillRatio === undefined ? 'rule of thumb' : 'measured',
      how: say('fill.spare-for-what-flies-and-clings', {
        spareRatio: Number((spareRatio(plan) * 100).toFixed(1)),
      }),
      source: plan.spareFillRatio === undefined ? say('common.common-practice-no-source') : '',
    });
  }
  const byVolumeG = massOf(chambers);
  if (slot.amountPerCoat === null || byVolumeG === 0) return { chambers, basis: [...basis.values()] };
  const share = (slot.amountPerCoat * plan.coatCount) / byVolumeG;
  return {
    chambers: chambers.map((chamber) => ({ ...chamber, massG: chamber.massG * share })),
    basis: [
      {
        kind: 'measured',
        how: say('fill.for-one-coat-as-the-maker', { measureIn: measureIn('mass', slot.amountPerCoat) }),
        source: '',
      },
    ],
  };
}

/** How the grams of a chamber were got. */
function massBasis(plan: CoatPlan, power: FillPower): readonly Basis[] {
  if (plan.fillAim?.kind === 'weight') {
    return [{ kind: 'computed', how: say('fill.chamber-by-chamber-its-area-x'), source: '' }];
  }
  const overfill: Basis =
    plan.overfillFactor === undefined
      ? {
          kind: 'rule of thumb',
          how: say('fill.overfill-x', { defaultOverfillFactor }),
          source: say('fill.outdoor-gear-makers-forum-20-to'),
        }
      : {
          kind: 'measured',
          how: say('fill.overfill-x-as-the-maker-chose', { overfillFactor: plan.overfillFactor }),
          source: '',
        };
  return [
    {
      kind: 'computed',
      how: say('fill.chamber-by-chamber-two-arcs-between'),
      source: say('fill.geometry-of-a-lens-mass-by'),
    },
    overfill,
    power.basis ?? {
      kind: 'rule of thumb',
      how: say('fill.a-laboratory-s-fill-power-is', { testToleranceRatio: testToleranceRatio * 100 }),
      source: say('fill.idfl-laboratory-fill-power-tolerance-and'),
    },
  ];
}

/** An unquilted piece as one channel along its longer side, as wide as its area makes it. */
function wholeAsChannel(piece: Piece): Channel {
  const ring = wholeSeamRing(piece);
  const box = ringBox(ring);
  const lengthMm = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const areaMm2 = ringAreaMm2(ring);
  return { fromMm: 0, toMm: areaMm2 / lengthMm, widthMm: areaMm2 / lengthMm, lengthMm, areaMm2 };
}
