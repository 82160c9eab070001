/**
 * Cautions of the trade that matter for a plan, each once. They are shown, never advice: local rules and those who
 * are licensed to judge decide.
 */
import { speaksOf } from '../../wording/words-in-names.ts';
import { say } from '../../wording/say.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { Item } from '../../stash/stash.ts';
import { readFibre } from './fibre.ts';
import { drawstringCautions } from './drawstrings.ts';
import { type Fibre, isPlumage } from './fibre-names.ts';
import { ironLimitC } from './iron.ts';
import type { SlotItems } from '../need.ts';
import type { Caution } from './caution.ts';

const whereSold = () => say('cautions.the-law-of-the-place-where');

/** Cautions for a plan, in the order of the work: cutting, pressing, stuffing, selling. */
export function cautions(plan: CoatPlan, items: SlotItems): readonly Caution[] {
  return [
    ...bladeCaution(plan),
    ...ironCaution(plan, items),
    ...downCaution(plan, items),
    ...drawstringCautions(plan, items, whereSold()),
    ...flammabilityCaution(plan, items),
    ...filledGoodsCaution(plan),
  ];
}

function bladeCaution(plan: CoatPlan): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => (slot.kind === 'cloth' || slot.kind === 'batting') && isCut(plan, slot.id))
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  return [
    {
      kind: 'blade',
      slotIds,
      says: say('cautions.rotary-blades-cut-away-from-the'),
      defersTo: say('cautions.follow-the-tool-s-own-instructions'),
      source: say('common.common-practice-no-source'),
    },
  ];
}

function ironCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => {
      const item = items.get(slot.id);
      const limitC = item ? ironLimitC(item) : null;
      return limitC !== null && limitC <= 110;
    })
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  return [
    {
      kind: 'hot iron',
      slotIds,
      says: say('cautions.a-hot-iron-melts-nylon-and'),
      defersTo: say('cautions.the-care-instructions-of-the-maker'),
      source: say('cautions.care-symbol-page-melting-points-of'),
    },
  ];
}

function downCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => slot.kind === 'fill' && isDown(items.get(slot.id)))
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  return [
    {
      kind: 'down dust',
      slotIds,
      says: say('cautions.down-dust-wear-a-mask-keep'),
      defersTo: say('cautions.with-asthma-allergy-or-coughing-ask'),
      source: say('common.common-practice-no-source'),
    },
  ];
}

function isDown(item: Item | undefined): boolean {
  return item?.kind === 'fill' && isPlumage(`${item.name}, ${item.facts.fibre ?? ''}`);
}

/** Plain cloth from this weight up needs no test, whatever its fibre: 2.6 oz/yd2. */
export const flammabilityExemptGPerM2 = 88.15494;

/**
 * Cloth of these alone needs no test either, plain or raised and whatever its weight. Source of both: 16 CFR
 * 1610.1(d), in force as amended since 22 April 2024 (88 FR 73221), read in excerpts.
 */
const flammabilityExemptFibres: readonly Fibre[] = [
  'acrylic',
  'modacrylic',
  'nylon',
  'polypropylene',
  'polyethylene',
  'polyester',
  'wool',
  'recycled wool',
];

/** Whether a cloth is outside the test by its fibre, or by its weight where its face is plain; null while that is not known. */
export function isFlammabilityExempt(item: Item): boolean | null {
  if (item.kind !== 'cloth') return null;
  const read = readFibre(item.facts.fibre ?? '', item.name);
  if (read.ok && read.value.every(({ fibre }) => flammabilityExemptFibres.includes(fibre))) return true;
  const weight = item.facts.arealMassGPerM2;
  if (!isRaised(item)) {
    if (weight !== null && weight >= flammabilityExemptGPerM2 - 1e-3) return true;
    if (weight === null) return null;
  }
  return read.ok ? false : null;
}

function flammabilityCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  // A layer between shell and lining is no clothing cloth by 16 CFR 1610.1(c).
  const cut = plan.slots.filter(
    (slot) => slot.kind === 'cloth' && isCut(plan, slot.id) && !speaksOf('layer inside', slot.name),
  );
  if (cut.length === 0) return [];
  const notExempt = cut.filter((slot) => {
    const item = items.get(slot.id);
    return item === undefined || isFlammabilityExempt(item) !== true;
  });
  const names = notExempt.map((slot) => slot.name).join(', ');
  const about =
    notExempt.length === 0
      ? say('cautions.us-rules-16-cfr-1610-ask')
      : say('cautions.us-rules-16-cfr-1610-may', { names });
  return [
    {
      kind: 'flammability',
      slotIds: notExempt.map((slot) => slot.id),
      says: say('cautions.a-coat-that-is-sold-must', { about }),
      defersTo: whereSold(),
      source: say('cautions.16-cfr-1610-1-d-as'),
    },
  ];
}

function isRaised(item: Item): boolean {
  return (
    item.kind === 'cloth' &&
    (item.facts.hasNap === true || speaksOf('raised', `${item.name} ${item.facts.finish ?? ''}`))
  );
}

function filledGoodsCaution(plan: CoatPlan): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => slot.kind === 'fill' || slot.kind === 'batting')
    .filter((slot) => isCut(plan, slot.id) || slot.amountPerCoat !== null)
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  return [
    {
      kind: 'filled goods',
      slotIds,
      says: say('cautions.some-places-ask-a-licence-a'),
      defersTo: whereSold(),
      source: say('cautions.utah-r70-101-as-an-example'),
    },
  ];
}

function isCut(plan: CoatPlan, slotId: string): boolean {
  return plan.pieces.some((piece) =>
    piece.cutFrom.some((from) => from.slotId === slotId && from.plyCount > 0),
  );
}
