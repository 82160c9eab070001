/** Needles: which size and point the layers and the thread want, and how many the hours of sewing wear out. */
import type { CoatPlan, Piece, Slot } from '../plan/coat-plan.ts';
import type { AmountNeed, SlotItems } from './need.ts';
import { typedNeed } from './thread.ts';

/** Hours of sewing after which a needle is changed. Source: sewing magazine overview (8 to 12 h), another (8 h). */
export const needleLifeHours = { least: 8, most: 12 } as const;

/**
 * Needles of one slot for the whole batch: sewing hours over the shorter life, shared by the plan's needle slots,
 * rounded up to whole needles; at least one where there is sewing at all.
 */
export function needleNeed(plan: CoatPlan, slot: Slot, _items: SlotItems): AmountNeed {
  if (slot.amountPerCoat !== null) {
    const typed = typedNeed(plan, slot, 'pieces', slot.amountPerCoat);
    return { ...typed, amount: Math.max(0, Math.ceil(typed.amount - 1e-9)) };
  }
  const slotCount = plan.slots.filter((candidate) => candidate.kind === 'needle').length;
  const hours = (plan.sewingMinutesPerCoat * plan.coatCount) / 60 / Math.max(1, slotCount);
  const amount = needleCount(hours, needleLifeHours.least);
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'pieces',
    amount,
    parts: [
      {
        what: `${hours.toFixed(1)} h of sewing${slotCount > 1 ? `, shared by ${slotCount} kinds of needle` : ''}, a fresh needle every ${needleLifeHours.least} h`,
        amount,
      },
    ],
    wantedLengthMm: null,
    basis: [
      {
        kind: 'rule of thumb',
        how: `a needle lasts ${needleLifeHours.least} to ${needleLifeHours.most} h of sewing; at ${needleLifeHours.most} h ${needleCount(hours, needleLifeHours.most)} would do`,
        source: 'sewing magazine overview: 8 to 12 h',
      },
    ],
  };
}

/** Whole needles for hours of sewing; 0 hours need none. Throws when the life is not above 0 or the hours below it. */
export function needleCount(hours: number, lifeHours: number): number {
  if (!(hours >= 0)) throw new RangeError(`${hours} h of sewing`);
  if (!(lifeHours > 0)) throw new RangeError(`a needle life of ${lifeHours} h`);
  return Math.max(0, Math.ceil(hours / lifeHours - 1e-9));
}

export type NeedlePoint = 'sharp' | 'universal' | 'ball point';

/** What a needle must go through. Null where it is not known. */
export interface NeedleWork {
  /** Weight of the heaviest cloth. */
  readonly arealMassGPerM2: number;
  /** Plies of cloth and batting under the needle at once, at a seam. */
  readonly plyCount: number;
  readonly threadTex: number | null;
  /** Fine, tight or coated cloth, such as a down-proof shell. */
  readonly isDense: boolean;
  readonly isKnit: boolean;
}

export interface NeedleChoice {
  readonly sizeNm: number;
  readonly point: NeedlePoint;
  readonly reason: string;
  readonly source: string;
}

/** Least size by weight of the cloth, g/m2. Source: cloth words and sizes, several sewing guides; the weights are ours. */
const sizeByCloth: readonly {
  readonly upToGPerM2: number;
  readonly sizeNm: number;
  readonly word: string;
}[] = [
  { upToGPerM2: 30, sizeNm: 60, word: 'very fine cloth' },
  { upToGPerM2: 120, sizeNm: 70, word: 'light cloth' },
  { upToGPerM2: 220, sizeNm: 80, word: 'medium cloth' },
  { upToGPerM2: 300, sizeNm: 90, word: 'mid-heavy cloth' },
  { upToGPerM2: 450, sizeNm: 100, word: 'heavy cloth' },
  { upToGPerM2: Number.POSITIVE_INFINITY, sizeNm: 110, word: 'very heavy cloth' },
];

/** Least size by thread: the largest tex that a size takes. Source: common practice, no source; 75 and tex 25 from a needle maker. */
const sizeByThread: readonly { readonly upToTex: number; readonly sizeNm: number }[] = [
  { upToTex: 18, sizeNm: 65 },
  { upToTex: 24, sizeNm: 70 },
  { upToTex: 27, sizeNm: 75 },
  { upToTex: 35, sizeNm: 80 },
  { upToTex: 45, sizeNm: 90 },
  { upToTex: 70, sizeNm: 100 },
  { upToTex: 90, sizeNm: 110 },
  { upToTex: Number.POSITIVE_INFINITY, sizeNm: 120 },
];

/** From so many plies a seam is bulky and wants a stouter blade. */
const bulkyPlyCount = 4;

/**
 * Size and point for the work: the largest of what cloth, bulk and thread ask for.
 * Throws when the weight is not above 0 or fewer than one ply is sewn.
 */
export function needleChoice(work: NeedleWork): NeedleChoice {
  if (!(work.arealMassGPerM2 > 0) || !(work.plyCount >= 1)) {
    throw new RangeError(`${work.plyCount} plies of ${work.arealMassGPerM2} g/m2`);
  }
  const cloth = sizeByCloth.find((row) => work.arealMassGPerM2 <= row.upToGPerM2)!;
  const asked: { sizeNm: number; reason: string }[] = [{ sizeNm: cloth.sizeNm, reason: cloth.word }];
  if (work.plyCount >= bulkyPlyCount)
    asked.push({ sizeNm: cloth.sizeNm >= 90 ? 100 : 90, reason: `${work.plyCount} plies at a seam` });
  if (work.threadTex !== null) {
    const tex = work.threadTex;
    const row = sizeByThread.find((candidate) => tex <= candidate.upToTex)!;
    asked.push({ sizeNm: row.sizeNm, reason: `thread of tex ${Number(tex.toFixed(1))}` });
  }
  const largest = asked.reduce((best, one) => (one.sizeNm > best.sizeNm ? one : best));
  const point: NeedlePoint = work.isKnit ? 'ball point' : work.isDense ? 'sharp' : 'universal';
  const pointReason = {
    'ball point': 'a ball point slips between the loops of a knit',
    sharp: 'a sharp point goes through tight cloth and leaves the smallest hole',
    universal: 'a universal point does for ordinary woven cloth',
  }[point];
  return {
    sizeNm: largest.sizeNm,
    point,
    reason: `${largest.reason}; ${pointReason}`,
    source: 'sewing guides for cloth and point; common practice, no source, for thread and plies',
  };
}

/**
 * The needle for the plan's thickest padded seam: two pieces with their plies. Null while no cloth with a weight
 * is chosen. Knits are known by the word in the cloth's name or finish.
 */
export function planNeedleChoice(plan: CoatPlan, items: SlotItems): NeedleChoice | null {
  let arealMassGPerM2 = 0;
  let plyCount = 0;
  let isDense = false;
  let isKnit = false;
  for (const piece of plan.pieces) plyCount = Math.max(plyCount, 2 * pliesTogether(plan, piece));
  for (const slot of plan.slots) {
    const item = items.get(slot.id);
    if (item?.kind !== 'cloth') continue;
    const weight = item.facts.arealMassGPerM2;
    if (weight !== null) arealMassGPerM2 = Math.max(arealMassGPerM2, weight);
    const words = `${item.name} ${item.facts.finish ?? ''}`;
    isKnit ||= /\b(knit|knitted|jersey|fleece|rib)\b/i.test(words);
    isDense ||=
      item.facts.isDownProof === true || /\b(coated|laminated|calendered|taffeta|ripstop)\b/i.test(words);
  }
  if (arealMassGPerM2 === 0 || plyCount === 0) return null;
  const threads = plan.slots.map((slot) => items.get(slot.id)).filter((item) => item?.kind === 'thread');
  const texes = threads
    .map((item) => (item?.kind === 'thread' ? item.facts.sizeTex : null))
    .filter((tex) => tex !== null);
  const threadTex = texes.length > 0 ? Math.max(...texes) : null;
  return needleChoice({ arealMassGPerM2, plyCount, threadTex, isDense, isKnit: isKnit && !isDense });
}

/** Plies of a piece that come under the needle at once: all that are quilted together, else one of cloth and its batting. */
function pliesTogether(plan: CoatPlan, piece: Piece): number {
  let quilted = 0;
  let single = 0;
  let padding = 0;
  for (const from of piece.cutFrom) {
    const slot = plan.slots.find((candidate) => candidate.id === from.slotId);
    if (slot?.kind === 'batting') padding += from.plyCount;
    else if (slot?.kind === 'cloth' && slot.isQuilted && piece.quilted !== null) quilted += from.plyCount;
    else if (slot?.kind === 'cloth') single = 1;
  }
  return Math.max(quilted, single) + padding;
}
