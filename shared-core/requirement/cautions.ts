/**
 * Cautions of the trade that matter for a plan, each once. They are shown, never advice: local rules and those who
 * are licensed to judge decide.
 */
import type { CoatPlan } from '../plan/coat-plan.ts';
import type { Item } from '../stash/stash.ts';
import { ironLimitC } from './care.ts';
import { type Fibre, readFibre } from './fibre.ts';
import type { SlotItems } from './need.ts';

export type CautionKind =
  | 'blade'
  | 'hot iron'
  | 'down dust'
  | 'drawstrings'
  | 'flammability'
  | 'filled goods';

export interface Caution {
  readonly kind: CautionKind;
  /** Slots that call for it; empty where it is the whole coat. */
  readonly slotIds: readonly string[];
  readonly says: string;
  /** Who decides. */
  readonly defersTo: string;
  readonly source: string;
}

const whereSold =
  'The law of the place where it is sold decides; ask a testing laboratory or adviser who is licensed there.';

/** Cautions for a plan, in the order of the work: cutting, pressing, stuffing, selling. */
export function cautions(plan: CoatPlan, items: SlotItems): readonly Caution[] {
  return [
    ...bladeCaution(plan),
    ...ironCaution(plan, items),
    ...downCaution(plan, items),
    ...drawstringCaution(plan, items),
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
      says: 'Rotary blades: cut away from the hand, close the guard before laying the cutter down, and change a dull blade.',
      defersTo: 'Follow the tool’s own instructions and the rules of your workplace.',
      source: 'common practice, no source',
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
      says: 'A hot iron melts nylon and its like: one dot (110 °C, 230 °F) at most, through a cloth, and try it on a scrap first. Molten fibre sticks to skin.',
      defersTo: 'The care instructions of the maker of the material decide.',
      source: 'care-symbol page; melting points of textile handbooks, from memory',
    },
  ];
}

function downCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => slot.kind === 'fill' && isPlumage(items.get(slot.id)))
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  return [
    {
      kind: 'down dust',
      slotIds,
      says: 'Down dust: wear a mask, keep the air still while filling, and clean up damp or with a filtered vacuum.',
      defersTo: 'With asthma, allergy or coughing ask a physician first; workplace rules for dust apply.',
      source: 'common practice, no source',
    },
  ];
}

/** Down or feathers, or an unnamed fill whose loft only down has. */
function isPlumage(item: Item | undefined): boolean {
  if (item?.kind !== 'fill') return false;
  const words = `${item.name} ${item.facts.fibre ?? ''}`;
  return /\b(down|feathers?)\b/i.test(words);
}

function drawstringCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  const slotIds = plan.slots
    .filter((slot) => {
      if (slot.kind !== 'fastening') return false;
      const item = items.get(slot.id);
      const isCord = item?.kind === 'fastening' && item.facts.form === 'cord';
      return isCord || /\b(cord|drawstring|drawcord)\b/i.test(slot.name);
    })
    .map((slot) => slot.id);
  if (slotIds.length === 0) return [];
  const opening = isForChild(plan)
    ? 'This coat is for a child: no drawstring'
    : 'If it is for a child: no drawstring';
  return [
    {
      kind: 'drawstrings',
      slotIds,
      says: `${opening} at hood or neck (US sizes 2T to 12); at waist and hem (2T to 16) at most 3 in (76 mm) outside the channel at full width, no toggle or knot at a free end, and a string in one piece is bar-tacked.`,
      defersTo: whereSold,
      source: '16 CFR 1120 and ASTM F1816, as told by the US consumer product safety commission',
    },
  ];
}

/** As the maker said, else a child's size by its name: "4T", "age 6", "kids 8", "toddler". */
export function isForChild(plan: CoatPlan): boolean {
  if (plan.isForChild !== undefined) return plan.isForChild;
  const words = `${plan.name} ${plan.size}`;
  return /\b\d{1,2}T\b|\b(child|children|childs|kid|kids|toddler|baby|infant|boys?|girls?|age|years?)\b/i.test(
    words,
  );
}

/** Plain cloth from this weight up needs no test, whatever its fibre: 2.6 oz/yd2. */
export const flammabilityExemptGPerM2 = 88.15494;

/** Cloth of these alone needs no test either. Source of both: 16 CFR 1610.1(d), second-hand summary and memory. */
const flammabilityExemptFibres: readonly Fibre[] = [
  'acrylic',
  'modacrylic',
  'nylon',
  'polypropylene',
  'polyester',
  'wool',
];

/** Whether a plain, smooth cloth is outside the test by weight or by fibre; null while neither is known. */
export function isFlammabilityExempt(item: Item): boolean | null {
  if (item.kind !== 'cloth') return null;
  const weight = item.facts.arealMassGPerM2;
  if (weight !== null && weight >= flammabilityExemptGPerM2 - 1e-3) return true;
  const read = readFibre(item.facts.fibre ?? '', item.name);
  if (read.ok && read.value.every(({ fibre }) => flammabilityExemptFibres.includes(fibre))) return true;
  return weight === null || !read.ok ? null : false;
}

function flammabilityCaution(plan: CoatPlan, items: SlotItems): Caution[] {
  const cut = plan.slots.filter((slot) => slot.kind === 'cloth' && isCut(plan, slot.id));
  if (cut.length === 0) return [];
  const notExempt = cut.filter((slot) => {
    const item = items.get(slot.id);
    return item === undefined || isFlammabilityExempt(item) !== true || isRaised(item);
  });
  const names = notExempt.map((slot) => slot.name).join(', ');
  const about =
    notExempt.length === 0
      ? 'Its cloths are of a weight or fibre that US rules (16 CFR 1610) do not ask to be tested when they are plain.'
      : `US rules (16 CFR 1610) may ask for a test of: ${names}.`;
  return [
    {
      kind: 'flammability',
      slotIds: notExempt.map((slot) => slot.id),
      says: `A coat that is sold must meet the flammability rules of the place. ${about} Children’s nightwear has stricter ones.`,
      defersTo: whereSold,
      source: '16 CFR 1610, second-hand summary; 1610.1(d) from memory',
    },
  ];
}

function isRaised(item: Item): boolean {
  return (
    item.kind === 'cloth' &&
    (item.facts.hasNap === true ||
      /\b(brushed|raised|fleece|pile|flannel)\b/i.test(`${item.name} ${item.facts.finish ?? ''}`))
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
      says: 'Some places ask a licence, a permit number or a label of those who sell filled clothing, and say what may be called down.',
      defersTo: whereSold,
      source: 'Utah R70-101 as an example; rules differ by state and country',
    },
  ];
}

function isCut(plan: CoatPlan, slotId: string): boolean {
  return plan.pieces.some((piece) =>
    piece.cutFrom.some((from) => from.slotId === slotId && from.plyCount > 0),
  );
}
