/** Thread of a slot: seams, topstitching, overcasting, basting and quilting lines, each times what its stitch takes, and wastage. */
import type { Basis } from '../measure/basis.ts';
import { percent } from '../measure/percent.ts';
import type { CoatPlan, Slot } from '../plan/coat-plan.ts';
import type { StitchType } from '../plan/outline.ts';
import { seamWalk } from '../plan/seam-walk.ts';
import { ringPerimeterMm } from '../geometry/ring.ts';
import { isPieceQuilted, wholeSeamRing } from '../quilting/lines.ts';
import { quiltingMap } from '../quilting/map.ts';
import type { AmountNeed, NeedPart, SlotItems } from './need.ts';
import { sewnPlies, sewnSeam } from './sewn-seams.ts';
import { stitchThreads, stitchThreadSource, threadRatioByGeometry } from './thread-ratios.ts';

/** One kind of stitching in the batch. */
export interface Stitching {
  readonly what: string;
  readonly stitch: StitchType;
  readonly seamMm: number;
  /** Metres of thread for each metre of stitching. */
  readonly ratio: number;
  readonly byGeometry: boolean;
}

/**
 * Metres of thread of one slot for the whole batch, wastage inside.
 * A typed amount of the slot wins over the estimate. A slot that nothing is sewn from needs 0 m.
 */
export function threadNeed(plan: CoatPlan, slot: Slot, items: SlotItems): AmountNeed {
  if (slot.amountPerCoat !== null) return typedNeed(plan, slot, 'thread', slot.amountPerCoat);
  const stitchings = threadStitchings(plan, slot, items);
  const parts: NeedPart[] = stitchings.map((stitching) => ({
    what: `${stitching.what}: stitch ${stitching.stitch}, x ${stitching.ratio.toFixed(2)}`,
    amount: threadM(stitching),
  }));
  const sewnM = stitchings.reduce((sum, stitching) => sum + threadM(stitching), 0);
  const wastageM = sewnM * plan.threadWastageRatio;
  if (wastageM > 0) parts.push({ what: `wastage ${percent(plan.threadWastageRatio)}`, amount: wastageM });
  return {
    kind: 'amount',
    slotId: slot.id,
    counted: 'thread',
    amount: sewnM + wastageM,
    parts,
    wantedLengthMm: null,
    basis: threadBasis(plan, stitchings),
  };
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
    parts: [{ what: `as typed for one coat, x ${plan.coatCount}`, amount }],
    wantedLengthMm: null,
    basis: [{ kind: 'measured', how: 'amount for one coat as the maker gave it', source: '' }],
  };
}

/** All stitching that is sewn from the slot, for the whole batch. */
export function threadStitchings(plan: CoatPlan, slot: Slot, items: SlotItems): readonly Stitching[] {
  const stitchings: Stitching[] = [];
  const stitchMm = plan.quilting?.stitchLengthMm ?? null;
  const add = (what: string, stitch: StitchType, seamMm: number, thicknessMm: number | null) => {
    if (seamMm > 0) stitchings.push({ what, stitch, seamMm, ...ratioOf(stitch, thicknessMm, stitchMm) });
  };
  const walks = new Map(seamWalk(plan).map((walked) => [walked.seamId, walked]));
  for (const seam of plan.seams) {
    const walked = walks.get(seam.id);
    if (seam.threadSlotId !== slot.id || !walked) continue;
    const sewn = sewnSeam(plan, walked, items);
    add(seam.label, seam.stitch, sewn.sewnMm, sewn.thicknessMm);
    add(`${seam.label}, topstitching`, '301', sewn.outerMm * seam.topstitchRowCount, sewn.thicknessMm);
    if (seam.overcast !== null) add(`${seam.label}, overcasting`, seam.overcast, sewn.edgesMm, null);
  }
  if (plan.bastingThreadSlotId === slot.id) {
    for (const piece of plan.pieces.filter((each) => isPieceQuilted(plan, each))) {
      const aroundMm = ringPerimeterMm(wholeSeamRing(piece)) * piece.cutCount * plan.coatCount;
      add(`basting of ${piece.name}`, 'hand', aroundMm, null);
    }
  }
  if (plan.quilting?.threadSlotId === slot.id) {
    for (const quilted of quiltingMap(plan)) {
      const piece = plan.pieces.find((candidate) => candidate.id === quilted.pieceId)!;
      const thicknessMm = sewnPlies(plan, piece, items)[0]?.thicknessMm ?? null;
      add(
        `quilting of ${quilted.name}`,
        plan.quilting.stitch,
        quilted.stitchingMm * quilted.copyCount,
        thicknessMm,
      );
    }
  }
  return stitchings;
}

function ratioOf(
  stitch: StitchType,
  thicknessMm: number | null,
  stitchMm: number | null,
): { ratio: number; byGeometry: boolean } {
  if ((stitch === '301' || stitch === '401') && thicknessMm !== null && stitchMm !== null) {
    const ratio = threadRatioByGeometry(stitch, thicknessMm, stitchMm, 0);
    if (ratio !== null) return { ratio, byGeometry: true };
  }
  return { ratio: stitchThreads[stitch].ratio, byGeometry: false };
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
      how: 'thread for each mm of seam: 2 + 2 T / L for lockstitch, 4 + 2 T / L for chainstitch, T thickness as sewn, L stitch length of the quilting',
      source: 'textilecalculations.com; path of the thread, its own diameter neglected',
    });
    basis.push({
      kind: 'rule of thumb',
      how: 'thickness as sewn: the cloth, and 20 % of the loft of the batting',
      source: 'common practice, no source',
    });
  }
  const byTable = [
    ...new Set(stitchings.filter((stitching) => !stitching.byGeometry).map(({ stitch }) => stitch)),
  ];
  if (byTable.length > 0) {
    const ratios = byTable.map((stitch) => `${stitch} x ${stitchThreads[stitch].ratio}`).join(', ');
    basis.push({
      kind: 'rule of thumb',
      how: `seam length by the table of ratios: ${ratios}`,
      source: stitchThreadSource,
    });
  }
  if (stitchings.length > 0 && plan.threadWastageRatio > 0) {
    basis.push({
      kind: 'rule of thumb',
      how: `${percent(plan.threadWastageRatio)} wastage for ends, breaks and bobbin changes`,
      source: 'apparelscience.com: 10 to 15 %',
    });
  }
  if (stitchings.length === 0) {
    basis.push({ kind: 'computed', how: 'no seam and no quilting is sewn from this slot', source: '' });
  }
  return basis;
}
