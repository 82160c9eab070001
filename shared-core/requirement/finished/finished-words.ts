/** What the finished coat is, in the maker's words: the same on the screen and in the headless command. */
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { type CareLimit, partNames } from '../law/care-limits.ts';
import type { FinishedCoat } from './finished-coat.ts';

/** "1.42 kg", "1.42 kg, as weighed" or "1.1 kg at least". */
export function massWords(coat: FinishedCoat, system: MeasureSystem): string {
  const mass = showQuantity('mass', coat.massG, { system });
  if (coat.isMassMeasured) return `${mass}, as weighed`;
  return coat.mass.isComplete ? mass : `${mass} at least`;
}

/** "0.9 to 2.1 clo, padding alone", or the maker's own figure; null where nothing is known of it. */
export function cloWords(coat: FinishedCoat): string | null {
  if (coat.measuredClo !== null)
    return `${showQuantity('warmth', coat.measuredClo, { system: 'metric' })}, as measured`;
  if (!coat.warmth) return null;
  return `${coat.warmth.minClo.toFixed(1)} to ${coat.warmth.maxClo.toFixed(1)} clo, padding alone`;
}

/** "8.9 to 17.8 L", or the maker's own figure; null while the mass is not known. */
export function packedWords(coat: FinishedCoat, system: MeasureSystem): string | null {
  const unit = { metric: 'L', imperial: 'in3' } as const;
  const show = (cm3: number) =>
    showQuantity('volume', cm3, { system, unit, digits: system === 'metric' ? 1 : 0 });
  if (coat.measuredPackedCm3 !== null) return `${show(coat.measuredPackedCm3)}, as measured`;
  if (!coat.packed) return null;
  return `${show(coat.packed.minCm3).replace(/ \S+$/, '')} to ${show(coat.packed.maxCm3)}`;
}

/** "wash at 30, because of shell, batting; not written down yet of front zip". */
export function careLimitWords(plan: CoatPlan, { limit, slotIds, unknownSlotIds }: CareLimit): string {
  const open = unknownSlotIds.length > 0 ? `not written down yet of ${partNames(plan, unknownSlotIds)}` : '';
  const known = limit === null ? '' : `${limit}, because of ${partNames(plan, slotIds)}`;
  return [known, open].filter((part) => part !== '').join('; ') || 'not known yet';
}
