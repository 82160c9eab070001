/** How thick the padded seams are under the foot of the machine, beside how far it lifts. */
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { seamWalk } from '../../plan/geometry/seam-walk.ts';
import type { Advice } from '../advice.ts';
import type { SlotItems } from '../need.ts';
import { pressedGPerCm3, sewnSeam } from './sewn-seams.ts';

/** How far the foot of a domestic machine lifts, 5 to 6 mm: common practice, no source. */
export const defaultFootLiftMm = 5.5;

export interface SeamBulk {
  /** The thickest seam of the coat. */
  readonly label: string;
  /** Under the foot, batting pressed flat, mm. */
  readonly thicknessMm: number;
  /** Where such a seam crosses another like it, as at the underarm, mm. */
  readonly crossingMm: number;
  readonly footLiftMm: number;
  readonly basis: readonly Basis[];
}

/** The thickest seam of the size at hand; null while no seam's plies all have a thickness or a weight. */
export function seamBulk(plan: CoatPlan, items: SlotItems): SeamBulk | null {
  const thickest = seamWalk(plan)
    .flatMap((walked) => {
      const { thickestMm } = sewnSeam(plan, walked, items);
      return thickestMm === null || thickestMm === 0
        ? []
        : [{ label: walked.label, thicknessMm: thickestMm }];
    })
    .reduce<{ label: string; thicknessMm: number } | null>(
      (best, one) => (best === null || one.thicknessMm > best.thicknessMm ? one : best),
      null,
    );
  if (thickest === null) return null;
  return {
    ...thickest,
    crossingMm: 2 * thickest.thicknessMm,
    footLiftMm: plan.footLiftMm ?? defaultFootLiftMm,
    basis: [
      {
        kind: 'rule of thumb',
        how: say('seam-bulk.batting-pressed-by-the-foot-to', {
          usual: pressedGPerCm3.usual,
          loosest: pressedGPerCm3.loosest,
          tightest: pressedGPerCm3.tightest,
        }),
        source: say('common.common-practice-no-source'),
      },
      plan.footLiftMm === undefined
        ? {
            kind: 'rule of thumb',
            how: say('seam-bulk.the-foot-of-a-domestic-machine', {
              measureIn: measureIn('length', 5),
              measureIn2: measureIn('length', 6),
            }),
            source: say('common.common-practice-no-source'),
          }
        : { kind: 'measured', how: say('seam-bulk.lift-of-the-foot-as-you'), source: '' },
    ],
  };
}

/** Advice where a seam, or the crossing of two, does not go under the foot. */
export function seamBulkAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  const bulk = seamBulk(plan, items);
  if (bulk === null || bulk.crossingMm <= bulk.footLiftMm) return [];
  const { label, thicknessMm, crossingMm, footLiftMm, basis } = bulk;
  const lift = measureIn('length', footLiftMm);
  const isSeam = thicknessMm > footLiftMm;
  return [
    {
      kind: 'seam bulk',
      says: isSeam
        ? say('seam-bulk.the-seam-is-about-thick-under', { label, tenths: tenths(thicknessMm), lift })
        : say('seam-bulk.where-padded-seams-cross-as-at', { tenths: tenths(crossingMm), lift }),
      fix: isSeam
        ? say('seam-bulk.trim-the-batting-out-of-the')
        : say('seam-bulk.trim-the-batting-out-of-the-2'),
      basis,
    },
  ];
}

/** An estimate is said to tenths of a millimetre. */
function tenths(mm: number): string {
  return measureIn('length', Math.round(mm * 10) / 10);
}
