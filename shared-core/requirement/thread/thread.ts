/** Thread of a slot: seams, topstitching, overcasting, basting and quilting lines, each times what its stitch takes, and wastage. */
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { percent } from '../../measure/percent.ts';
import type { CoatPlan, Piece, Slot } from '../../plan/model/coat-plan.ts';
import type { StitchType } from '../../plan/model/outline.ts';
import { isOnPanel } from '../../plan/model/quilting-order.ts';
import { seamWalk } from '../../plan/geometry/seam-walk.ts';
import { ringPerimeterMm } from '../../geometry/ring.ts';
import { isPieceQuilted, wholeSeamRing } from '../../quilting/lines.ts';
import { quiltingMap } from '../../quilting/map.ts';
import type { AmountNeed, NeedPart, SlotItems } from '../need.ts';
import type { QuiltedPanel } from '../cut/panels.ts';
import { pressedGPerCm3, sewnPlies, sewnSeam } from './sewn-seams.ts';
import {
  stitchThreads,
  stitchThreadSource,
  threadRatioByGeometry,
  defaultStitchMm,
} from './thread-ratios.ts';

/** One kind of stitching in the batch. */
export interface Stitching {
  readonly what: string;
  readonly stitch: StitchType;
  readonly seamMm: number;
  /** Length of one stitch, mm; null where it makes no difference. */
  readonly stitchMm: number | null;
  /** Metres of thread for each metre of stitching. */
  readonly ratio: number;
  /** By the path of the thread, which is at least so long; else by the table of ratios. */
  readonly byGeometry: boolean;
}

/**
 * Metres of thread of one slot for the whole batch, wastage inside.
 * A typed amount of the slot wins over the estimate. A slot that nothing is sewn from needs 0 m.
 */
export function threadNeed(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): AmountNeed {
  if (slot.amountPerCoat !== null) return typedNeed(plan, slot, 'thread', slot.amountPerCoat);
  const stitchings = threadStitchings(plan, slot, items, panels);
  const parts: NeedPart[] = stitchings.map((stitching) => ({
    what: `${stitching.what}: ${stitchWords(stitching)}, x ${withDecimalSign(stitching.ratio.toFixed(2))}${stitching.byGeometry ? ` ${say('thread.at-least')}` : ''}`,
    amount: threadM(stitching),
  }));
  const sewnM = stitchings.reduce((sum, stitching) => sum + threadM(stitching), 0);
  const wastageM = sewnM * plan.threadWastageRatio;
  if (wastageM > 0)
    parts.push({
      what: say('thread.wastage', { percent: percent(plan.threadWastageRatio) }),
      amount: wastageM,
    });
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'thread',
    amount: sewnM + wastageM,
    parts,
    wantedLengthMm: null,
    ...(stitchings.some(({ byGeometry }) => byGeometry) && { isFloor: true }),
    coneCount: conesAtOnce(stitchings),
    basis: threadBasis(plan, stitchings),
  };
}

/** Spools or cones that stand on one machine at once for these stitches; 0 where nothing is sewn. */
export function conesAtOnce(stitchings: readonly Pick<Stitching, 'stitch'>[]): number {
  return Math.max(0, ...stitchings.map(({ stitch }) => stitchThreads[stitch].coneCount));
}

function stitchWords({ stitch, stitchMm }: Stitching): string {
  if (stitch === 'hand') return say('common.by-hand');
  return stitchMm === null
    ? say('thread.stitch', { stitch })
    : say('thread.stitch-of-mm', { stitch, stitchMm: Number(stitchMm.toFixed(2)) });
}

/** A slot whose amount the maker typed or measured: it holds for one coat and is taken as it is. */
export function typedNeed(
  plan: CoatPlan,
  slot: Slot,
  counted: AmountNeed['counted'],
  amountPerCoat: number,
): AmountNeed {
  const amount = amountPerCoat * plan.coatCount;
  return {
    kind: 'amount',
    slotId: slot.id,
    counted,
    amount,
    parts: [{ what: say('thread.as-typed-for-one-coat-x', { coatCount: plan.coatCount }), amount }],
    wantedLengthMm: null,
    basis: [{ kind: 'measured', how: say('thread.amount-for-one-coat-as-the'), source: '' }],
  };
}

/**
 * All stitching that is sewn from the slot, for the whole batch. panels: those of the plan's size, where they are
 * planned; their lines then stand in the place of those of their pieces.
 */
export function threadStitchings(
  plan: CoatPlan,
  slot: Slot,
  items: SlotItems,
  panels?: readonly QuiltedPanel[],
): readonly Stitching[] {
  const stitchings: Stitching[] = [];
  const add = (
    what: string,
    stitch: StitchType,
    seamMm: number,
    stitchMm: number,
    thicknessMm: number | null,
  ) => {
    if (seamMm > 0) stitchings.push({ what, stitch, seamMm, ...ratioOf(stitch, thicknessMm, stitchMm) });
  };
  const walks = new Map(seamWalk(plan).map((walked) => [walked.seamId, walked]));
  for (const seam of plan.seams) {
    const walked = walks.get(seam.id);
    if (seam.threadSlotId !== slot.id || !walked) continue;
    const sewn = sewnSeam(plan, walked, items);
    const { thicknessMm } = sewn;
    const seamStitchMm = seam.stitchLengthMm ?? defaultStitchMm.seam;
    add(seam.label, seam.stitch, sewn.sewnMm, seamStitchMm, thicknessMm);
    const topstitchedMm = sewn.outerMm * seam.topstitchRowCount;
    add(
      say('thread.topstitching', { seamLabel: seam.label }),
      '301',
      topstitchedMm,
      defaultStitchMm.topstitching,
      thicknessMm,
    );
    if (seam.overcast !== null)
      add(
        say('thread.overcasting', { seamLabel: seam.label }),
        seam.overcast,
        sewn.edgesMm,
        seamStitchMm,
        null,
      );
  }
  if (plan.bastingThreadSlotId === slot.id) {
    for (const piece of plan.pieces.filter((each) => isPieceQuilted(plan, each))) {
      const aroundMm = ringPerimeterMm(wholeSeamRing(piece)) * piece.cutCount * plan.coatCount;
      add(say('thread.basting-of', { pieceName: piece.name }), 'hand', aroundMm, defaultStitchMm.seam, null);
    }
  }
  if (plan.quilting?.threadSlotId === slot.id) {
    const { stitch, stitchLengthMm } = plan.quilting;
    const thicknessMm = (piece: Piece | undefined) =>
      piece ? (sewnPlies(plan, piece, items)[0]?.thicknessMm ?? null) : null;
    const pieceById = (id: string | undefined) => plan.pieces.find((candidate) => candidate.id === id);
    for (const { pieceId, name, sewnMm, copyCount } of quiltingMap(plan)) {
      const piece = pieceById(pieceId)!;
      if (panels && isOnPanel(plan, piece)) continue;
      add(
        say('thread.quilting-of', { name }),
        stitch,
        sewnMm * copyCount,
        stitchLengthMm,
        thicknessMm(piece),
      );
    }
    for (const { id, stitchingMm, count, pieces } of panels ?? []) {
      const first = pieceById(pieces[0]?.pieceId);
      add(
        say('thread.quilting-of-the', { id }),
        stitch,
        stitchingMm * count,
        stitchLengthMm,
        thicknessMm(first),
      );
    }
  }
  return stitchings;
}

/** By the path of the thread through the seam's thickness, and never under what an unravelled seam took. */
function ratioOf(
  stitch: StitchType,
  thicknessMm: number | null,
  stitchMm: number,
): Pick<Stitching, 'stitchMm' | 'ratio' | 'byGeometry'> {
  const unravelled = stitchThreads[stitch].ratio;
  if (stitch !== '301' && stitch !== '401') return { stitchMm: null, ratio: unravelled, byGeometry: false };
  const path = thicknessMm === null ? null : threadRatioByGeometry(stitch, thicknessMm, stitchMm, 0);
  return path !== null && path > unravelled
    ? { stitchMm, ratio: path, byGeometry: true }
    : { stitchMm: null, ratio: unravelled, byGeometry: false };
}

/** Thread of a stitching, m, without wastage. */
export function threadM(stitching: Stitching): number {
  return (stitching.seamMm / 1000) * stitching.ratio;
}

function threadBasis(plan: CoatPlan, stitchings: readonly Stitching[]): readonly Basis[] {
  const basis: Basis[] = [];
  if (stitchings.some((stitching) => stitching.byGeometry)) {
    basis.push({
      kind: 'computed',
      how: say('thread.thread-for-each-mm-of-seam'),
      source: say('thread.textilecalculations-com-path-of-the-thread'),
    });
    basis.push({
      kind: 'rule of thumb',
      how: say('thread.thickness-as-sewn-the-cloth-and', { usual: pressedGPerCm3.usual }),
      source: say('common.common-practice-no-source'),
    });
  }
  const byTable = [
    ...new Set(stitchings.filter((stitching) => !stitching.byGeometry).map(({ stitch }) => stitch)),
  ];
  if (byTable.length > 0) {
    const ratios = byTable.map((stitch) => `${stitch} x ${stitchThreads[stitch].ratio}`).join(', ');
    basis.push({
      kind: 'rule of thumb',
      how: say('thread.seam-length-by-the-table-of', { ratios }),
      source: stitchThreadSource(),
    });
  }
  if (stitchings.length > 0 && plan.threadWastageRatio > 0) {
    basis.push({
      kind: 'rule of thumb',
      how: say('thread.wastage-for-ends-breaks-and-bobbin', { percent: percent(plan.threadWastageRatio) }),
      source: say('thread.apparelscience-com-10-to-15'),
    });
  }
  if (stitchings.length === 0) {
    basis.push({ kind: 'computed', how: say('thread.no-seam-and-no-quilting-is'), source: '' });
  }
  return basis;
}
