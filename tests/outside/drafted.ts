/** Garments that the product drafts, and their lays, for the rows that ask what a whole garment takes. */
import type { Body, BodyKind } from '../../shared-core/draft/body.ts';
import { bodyFromRow, type BodyRow } from '../../shared-core/draft/body-tables.ts';
import { draftCoat, type DraftedCoat } from '../../shared-core/draft/draft.ts';
import { type DraftInput, defaultDraft } from '../../shared-core/draft/draft-input.ts';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import type { LayResult } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { endlessLength, layJob, totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';
import { toOutline } from '../../shared-core/plan/model/quilting-order.ts';
import { setStuffed } from '../../shared-core/plan/model/stuffing.ts';
import type { ShapesNeed, SlotItems } from '../../shared-core/requirement/need.ts';
import { requirement } from '../../shared-core/requirement/requirement.ts';

export const mmPerIn = 25.4;
export const mmPerYd = 914.4;

export interface Measured {
  readonly kind: BodyKind;
  /** mm all round; null: by the proportions of the draft. */
  readonly bustMm: number;
  readonly waistMm: number;
  readonly hipMm?: number;
  readonly heightMm: number;
  readonly more?: Partial<Body>;
}

/**
 * A garment for a body with the usual choices, but for those given; without any batting it is not quilted. Throws where
 * it cannot be drafted.
 */
export function drafted(measured: Measured, choices: Partial<DraftInput> = {}): DraftedCoat {
  const { kind, bustMm, waistMm, hipMm = null, heightMm, more } = measured;
  const row: BodyRow = { size: `${bustMm}`, bustMm, waistMm, hipMm };
  const body = { ...bodyFromRow(kind, row, heightMm), ...more };
  const outcome = draftCoat({ ...defaultDraft('drafted', 'Drafted garment', row.size, body), ...choices });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { plan, report } = outcome.value;
  const isPadded = plan.pieces.some(({ cutFrom: from }) => from.some(({ slotId }) => slotId === 'batting'));
  return { plan: isPadded ? plan : { ...plan, quilting: null }, report };
}

/** Quilted pieces cut as they are sewn, with nothing to trim off. */
export function cutToOutline(plan: CoatPlan): CoatPlan {
  return plan.quilting === null ? plan : { ...plan, quilting: { ...plan.quilting, order: toOutline } };
}

/** The coat with every padded piece stuffed in the place of its batting. */
export function stuffed(plan: CoatPlan): CoatPlan {
  return plan.pieces
    .filter(({ cutFrom }) => cutFrom.some(({ slotId }) => slotId === 'batting'))
    .reduce((stuffedPlan, { id }) => {
      const outcome = setStuffed(stuffedPlan, id, true);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      return outcome.value.plan;
    }, plan);
}

/** Without batting: a garment that is not quilted. */
export const unpadded: Partial<DraftInput> = { battingPlies: { body: 0, sleeve: 0 } };

/** What is cut from a slot: all of it, or the pieces that are chosen. */
export function cutFrom(
  plan: CoatPlan,
  slotIds: readonly string[],
  isWanted: (pieceId: string) => boolean = () => true,
  items: SlotItems = new Map(),
): ShapesNeed {
  const needs = requirement(plan, items).filter((need) => slotIds.includes(need.slotId));
  const shapes = needs.flatMap((need) => (need.kind === 'shapes' ? need.shapes : []));
  const wanted = shapes.filter(({ pieceId }) => isWanted(pieceId));
  if (wanted.length === 0) throw new Error(`nothing is cut from ${slotIds.join(', ')}`);
  const areaMm2 = wanted.reduce((sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount), 0);
  return { kind: 'shapes', slotId: slotIds[0]!, shapes: wanted, areaMm2, basis: [] };
}

/** The same shapes, none of them turned end for end: cloth with a nap. */
export function oneWay(need: ShapesNeed): ShapesNeed {
  return { ...need, shapes: need.shapes.map((shape) => ({ ...shape, turnsDeg: [0] })) };
}

/** Few enough for all rows together to take less than a minute, and the same on every machine. */
export const defaultIterations = 6000;

/** The engine's lay on endless cloth of a width, as the product asks for it; checked by the independent check. */
export function laid(need: ShapesNeed, widthMm: number, iterations = defaultIterations, seed = 1): LayResult {
  const clearanceMm = 2;
  const job = layJob(need, [endlessLength('cloth', widthMm, undefined)], clearanceMm, undefined, seed);
  const result = lay(job, { seconds: null, iterations }, { clock: () => performance.now() });
  const problems = checkLay(job, result);
  if (problems.length > 0 || result.unplaced.length > 0) throw new Error(JSON.stringify(problems));
  return result;
}

/** Length of that lay, mm. */
export function laidMm(need: ShapesNeed, widthMm: number, iterations?: number): number {
  return totalUsedMm(laid(need, widthMm, iterations));
}
