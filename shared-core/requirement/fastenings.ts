/** Fastenings: how many, and how long each must be from the edges that it runs along. */
import { say } from '../wording/say.ts';
import { type Basis, measureIn } from '../measure/basis.ts';
import { percent } from '../measure/percent.ts';
import { ok, type Result, err } from '../measure/problem.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import type { CoatPlan, Slot } from '../plan/model/coat-plan.ts';
import { edgesLengthMm } from '../plan/geometry/edge-lengths.ts';
import type { AmountNeed, SlotItems } from './need.ts';

/**
 * Pieces of the slot's fastening for the whole batch: the typed count, else one for each coat.
 * wantedLengthMm is the sum of the edges it runs along, or elastic's share of it, less what it stays short of them; null
 * without edges.
 */
export function fasteningNeed(plan: CoatPlan, slot: Slot, _items: SlotItems): AmountNeed {
  const perCoat = slot.amountPerCoat ?? 1;
  const amount = Math.max(0, Math.ceil(perCoat * plan.coatCount - 1e-9));
  const wantedLengthMm = fasteningLengthMm(plan, slot);
  const basis: Basis[] = [
    slot.amountPerCoat === null
      ? {
          kind: 'rule of thumb',
          how: say('fastenings.one-for-each-coat-as-no'),
          source: say('common.common-practice-no-source'),
        }
      : { kind: 'measured', how: say('fastenings.count-for-one-coat-as-the'), source: '' },
  ];
  if (wantedLengthMm !== null) {
    const { shorterByMm } = slot;
    const less =
      shorterByMm === 0
        ? ''
        : shorterByMm > 0
          ? say('fastenings.less', { measureIn: measureIn('length', shorterByMm) })
          : say('fastenings.and-for-the-ends', { measureIn: measureIn('length', -shorterByMm) });
    const share =
      slot.lengthRatio === undefined
        ? ''
        : `${say('fastenings.of-the', { percent: percent(slot.lengthRatio) })} `;
    basis.push({
      kind: 'computed',
      how: say('fastenings.length-of-the-edges-it-runs', { share, less }),
      source: '',
    });
  }
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'pieces',
    amount,
    parts: [{ what: say('fastenings.for-one-coat-x', { perCoat, coatCount: plan.coatCount }), amount }],
    wantedLengthMm,
    basis,
  };
}

/**
 * Length of one piece of the fastening, mm, 0 or more; an edge that runs over a fold counts whole.
 * Null without edges, and where a size of the coat has not the pieces that it runs along.
 */
export function fasteningLengthMm(plan: CoatPlan, slot: Slot): number | null {
  if (slot.alongEdges.length === 0) return null;
  const edgesMm = edgesLengthMm(plan.pieces, slot.alongEdges, slot.alongEveryCopy === true);
  if (edgesMm === null) return null;
  return Math.max(0, edgesMm * (slot.lengthRatio ?? 1) - slot.shorterByMm);
}

export interface ZipToBuy {
  readonly soldMm: number;
  /** Null when the sold length is right as it is. */
  readonly shortenToMm: number | null;
}

/** Nearer than this a zip needs no shortening. */
const zipToleranceMm = 1;

/** The shortest sold zip that is long enough, and what to shorten it to. A problem when none is. */
export function zipToBuy(wantedMm: number, soldLengthsMm: readonly number[]): Result<ZipToBuy> {
  const longEnough = soldLengthsMm.filter((soldMm) => soldMm >= wantedMm - zipToleranceMm);
  if (longEnough.length === 0) {
    return err({
      where: say('fastenings.zip'),
      what: say('fastenings.of-mm-is-longer-than-any', { wantedMm: Math.round(wantedMm) }),
      fix: say('fastenings.add-an-offer-of-a-longer'),
    });
  }
  const soldMm = Math.min(...longEnough);
  return ok({ soldMm, shortenToMm: soldMm - wantedMm > zipToleranceMm ? wantedMm : null });
}

/**
 * Lengths in which separating zips are sold, mm: every 2 in from 10 to 36 in, or every 5 cm from 25 to 100 cm; the
 * shortest are those of children's coats. Common practice, no source.
 */
export const defaultSeparatingZipsMm: Readonly<Record<MeasureSystem, readonly number[]>> = {
  imperial: Array.from({ length: 14 }, (_, i) => (10 + 2 * i) * 25.4),
  metric: Array.from({ length: 16 }, (_, i) => 250 + 50 * i),
};
