/** Needles: which size and point the layers and the thread want, and how many the hours of sewing wear out. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import { measureIn } from '../../measure/basis.ts';
import type { CoatPlan, Piece, Slot } from '../../plan/model/coat-plan.ts';
import type { AmountNeed, SlotItems } from '../need.ts';
import { typedNeed } from './thread.ts';

/** Hours of sewing after which a needle is changed. Source: sewing magazine overview (8 to 12 h), another (8 h). */
export const needleLifeHours = { min: 8, max: 12 } as const;

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
  const amount = needleCount(hours, needleLifeHours.min);
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'pieces',
    amount,
    parts: [
      {
        what: say('needles.h-of-sewing-a-fresh-needle', {
          hours: withDecimalSign(hours.toFixed(1)),
          slotCount: slotCount > 1 ? say('needles.shared-by-kinds-of-needle', { slotCount }) : '',
          min: needleLifeHours.min,
        }),
        amount,
      },
    ],
    wantedLengthMm: null,
    basis: [
      {
        kind: 'rule of thumb',
        how: say('needles.a-needle-lasts-to-h-of', {
          min: needleLifeHours.min,
          max: needleLifeHours.max,
          needleCount: needleCount(hours, needleLifeHours.max),
        }),
        source: say('needles.sewing-magazine-overview-8-to-12'),
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
  /** Weight of the heaviest cloth, one ply, g/m2. */
  readonly arealMassGPerM2: number;
  /** Weight of all plies under the needle at once at a seam, cloth and batting, g/m2. */
  readonly seamGPerM2: number;
  readonly threadTex: number | null;
  /** Fine, tight or coated cloth, such as taffeta. */
  readonly isDense: boolean;
  /** Tight enough to hold down: each hole of the needle is a way out for it. Such cloth is dense. */
  readonly isDownProof: boolean;
  readonly isKnit: boolean;
}

export interface NeedleChoice {
  readonly sizeNm: number;
  readonly point: NeedlePoint;
  readonly reason: string;
  /** What would ask for a larger needle than the cloth bears; empty where nothing does. */
  readonly conflict: string;
  /** What mends the conflict; empty where there is none. */
  readonly fix: string;
  readonly source: string;
}

interface SizeRow {
  readonly upToGPerM2: number;
  readonly sizeNm: number;
  readonly word: string;
}

const beyond = Number.POSITIVE_INFINITY;

/** Least size by weight of the cloth, g/m2. Source: cloth words and sizes, several sewing guides; the weights are ours. */
const sizeByCloth: readonly SizeRow[] = [
  {
    upToGPerM2: 30,
    sizeNm: 60,
    get word() {
      return say('needles.very-fine-cloth');
    },
  },
  {
    upToGPerM2: 120,
    sizeNm: 70,
    get word() {
      return say('needles.light-cloth');
    },
  },
  {
    upToGPerM2: 220,
    sizeNm: 80,
    get word() {
      return say('needles.medium-cloth');
    },
  },
  {
    upToGPerM2: 300,
    sizeNm: 90,
    get word() {
      return say('needles.mid-heavy-cloth');
    },
  },
  {
    upToGPerM2: 450,
    sizeNm: 100,
    get word() {
      return say('needles.heavy-cloth');
    },
  },
  {
    upToGPerM2: beyond,
    sizeNm: 110,
    get word() {
      return say('needles.very-heavy-cloth');
    },
  },
];

/** Least size by weight of all plies at a seam, g/m2: many light plies are no heavy seam. Common practice, no source. */
const sizeBySeam: readonly Omit<SizeRow, 'word'>[] = [
  { upToGPerM2: 120, sizeNm: 60 },
  { upToGPerM2: 360, sizeNm: 70 },
  { upToGPerM2: 600, sizeNm: 75 },
  { upToGPerM2: 900, sizeNm: 80 },
  { upToGPerM2: 1300, sizeNm: 90 },
  { upToGPerM2: 2000, sizeNm: 100 },
  { upToGPerM2: beyond, sizeNm: 110 },
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
  { upToTex: beyond, sizeNm: 120 },
];

/**
 * The largest needle for a down-proof cloth, whatever else is asked. Source: a needle maker’s table, 65 to 70 for very
 * densely woven light cloth (texpedia.org, 2013); 75 common practice, no source.
 */
export const largestDownProofNm = 75;

/**
 * Size and point for the work: the largest of what cloth, seam and thread ask for, but no larger than a down-proof
 * cloth bears. Throws when a weight is not above 0.
 */
export function needleChoice(work: NeedleWork): NeedleChoice {
  const { arealMassGPerM2, seamGPerM2, threadTex } = work;
  if (!(arealMassGPerM2 > 0) || !(seamGPerM2 > 0)) {
    throw new RangeError(`a seam of ${seamGPerM2} g/m2 in cloth of ${arealMassGPerM2} g/m2`);
  }
  const cloth = sizeByCloth.find((row) => arealMassGPerM2 <= row.upToGPerM2)!;
  const seam = sizeBySeam.find((row) => seamGPerM2 <= row.upToGPerM2)!;
  const asked: { sizeNm: number; reason: string }[] = [
    { sizeNm: cloth.sizeNm, reason: cloth.word },
    {
      sizeNm: seam.sizeNm,
      reason: say('needles.in-all-at-a-seam', { measureIn: measureIn('arealMass', Math.round(seamGPerM2)) }),
    },
  ];
  const byThread = threadTex === null ? null : sizeByThread.find((row) => threadTex <= row.upToTex)!;
  if (threadTex !== null && byThread !== null)
    asked.push({
      sizeNm: byThread.sizeNm,
      reason: say('needles.thread-of-tex', { threadTex: Number(threadTex.toFixed(1)) }),
    });
  const largest = asked.reduce((best, one) => (one.sizeNm > best.sizeNm ? one : best));
  const isCapped = work.isDownProof && largest.sizeNm > largestDownProofNm;
  const point: NeedlePoint = work.isKnit ? 'ball point' : work.isDense ? 'sharp' : 'universal';
  const pointReason = {
    'ball point': say('needles.a-ball-point-slips-between-the'),
    sharp: say('needles.a-sharp-point-goes-through-tight'),
    universal: say('needles.a-universal-point-does-for-ordinary'),
  }[point];
  const reason = isCapped ? say('needles.a-down-proof-cloth-lets-down') : largest.reason;
  return {
    sizeNm: isCapped ? largestDownProofNm : largest.sizeNm,
    point,
    reason: `${reason}; ${pointReason}`,
    ...(isCapped ? conflictOf(largest, byThread?.sizeNm ?? 0) : { conflict: '', fix: '' }),
    source: say('needles.sewing-guides-for-cloth-and-point'),
  };
}

function conflictOf(
  asked: { readonly sizeNm: number; readonly reason: string },
  byThreadNm: number,
): Pick<NeedleChoice, 'conflict' | 'fix'> {
  const finestTex = sizeByThread.findLast((row) => row.sizeNm <= largestDownProofNm)!.upToTex;
  const fix =
    byThreadNm > largestDownProofNm
      ? say('needles.take-a-thread-of-tex-or', { finestTex })
      : say('needles.trim-the-batting-out-of-the');
  return {
    conflict: say('needles.would-ask-for-and-the-cloth', {
      reason: asked.reason,
      measureIn: measureIn('needleSize', asked.sizeNm),
    }),
    fix: say('needles.and-try-it-on-a-scrap', { fix }),
  };
}

/**
 * The needle for the plan's padded seams, or for all of them where nothing is padded: two pieces with their plies, the
 * largest size of all. Null while no cloth with a weight is chosen. Knits are known by the word in the cloth's name or
 * finish.
 */
export function planNeedleChoice(plan: CoatPlan, items: SlotItems): NeedleChoice | null {
  const texes = plan.slots.flatMap((slot) => {
    const item = items.get(slot.id);
    return item?.kind === 'thread' && item.facts.sizeTex !== null ? [item.facts.sizeTex] : [];
  });
  const threadTex = texes.length > 0 ? Math.max(...texes) : null;
  const padded = plan.pieces.filter((piece) => isPadded(plan, piece));
  const choices = (padded.length > 0 ? padded : plan.pieces).flatMap((piece) => {
    const work = pieceWork(plan, piece, items);
    return work ? [needleChoice({ ...work, threadTex })] : [];
  });
  return choices.reduce<NeedleChoice | null>(
    (best, one) => (best === null || one.sizeNm > best.sizeNm ? one : best),
    null,
  );
}

function isPadded(plan: CoatPlan, piece: Piece): boolean {
  if (piece.quilted !== null && plan.quilting !== null) return true;
  return piece.cutFrom.some(({ slotId, plyCount }) => {
    const kind = plan.slots.find(({ id }) => id === slotId)?.kind;
    return plyCount > 0 && (kind === 'batting' || kind === 'fill');
  });
}

/**
 * A piece sewn to one like it: of its plies those that come under the needle at once, which are all that are quilted
 * together, else the heaviest cloth, and its batting. Plies without a weight are left out; null where no cloth has one.
 */
function pieceWork(plan: CoatPlan, piece: Piece, items: SlotItems): Omit<NeedleWork, 'threadTex'> | null {
  const weights = { quilted: 0, single: 0, padding: 0, heaviest: 0 };
  let isDense = false;
  let isDownProof = false;
  let isKnit = false;
  for (const { slotId, plyCount } of piece.cutFrom) {
    const item = items.get(slotId);
    if (plyCount === 0 || (item?.kind !== 'cloth' && item?.kind !== 'batting')) continue;
    const weight = item.facts.arealMassGPerM2 ?? 0;
    if (item.kind === 'batting') {
      weights.padding += weight * plyCount;
      continue;
    }
    const isQuilted =
      piece.quilted !== null && plan.slots.find(({ id }) => id === slotId)?.isQuilted === true;
    if (isQuilted) weights.quilted += weight * plyCount;
    else weights.single = Math.max(weights.single, weight);
    weights.heaviest = Math.max(weights.heaviest, weight);
    const words = `${item.name} ${item.facts.finish ?? ''}`;
    isKnit ||= speaksOf('knitted', words);
    isDownProof ||= item.facts.isDownProof === true;
    isDense ||= isDownProof || speaksOf('dense', words);
  }
  if (weights.heaviest === 0) return null;
  return {
    arealMassGPerM2: weights.heaviest,
    seamGPerM2: 2 * (Math.max(weights.quilted, weights.single) + weights.padding),
    isDense,
    isDownProof,
    isKnit: isKnit && !isDense,
  };
}
