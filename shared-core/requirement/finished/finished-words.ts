/** What the finished coat is, in the maker's words: the same on the screen and in the headless command. */
import { codeWords } from '../../wording/code-words.ts';
import { withDecimalSign } from '../../wording/number-signs.ts';
import { say } from '../../wording/say.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { type CareLimit, partNames } from '../law/care-limits.ts';
import type { FinishedCoat } from './finished-coat.ts';

/** "1.42 kg", "1.42 kg, as weighed" or "1.1 kg at least". */
export function massWords(coat: FinishedCoat, system: MeasureSystem): string {
  const mass = showQuantity('mass', coat.massG, { system });
  if (coat.isMassMeasured) return say('finished-words.as-weighed', { mass });
  return coat.mass.isComplete ? mass : say('finished-words.at-least', { mass });
}

/** "0.9 to 2.1 clo, padding alone", or the maker's own figure; null where nothing is known of it. */
export function cloWords(coat: FinishedCoat): string | null {
  if (coat.measuredClo !== null)
    return say('finished-words.as-measured', {
      measuredClo: showQuantity('warmth', coat.measuredClo, { system: 'metric' }),
    });
  if (!coat.warmth) return null;
  return say('finished-words.to-clo-padding-alone', {
    minClo: withDecimalSign(coat.warmth.minClo.toFixed(1)),
    maxClo: withDecimalSign(coat.warmth.maxClo.toFixed(1)),
  });
}

/** "8.9 to 17.8 L", or the maker's own figure; null while the mass is not known. */
export function packedWords(coat: FinishedCoat, system: MeasureSystem): string | null {
  const unit = { metric: 'L', imperial: 'in3' } as const;
  const show = (cm3: number) =>
    showQuantity('volume', cm3, { system, unit, digits: system === 'metric' ? 1 : 0 });
  if (coat.measuredPackedCm3 !== null)
    return say('finished-words.as-measured-2', { show: show(coat.measuredPackedCm3) });
  if (!coat.packed) return null;
  return say('finished-words.to', {
    show: show(coat.packed.minCm3).replace(/ \S+$/, ''),
    show2: show(coat.packed.maxCm3),
  });
}

/** "wash at 30, because of shell, batting; not written down yet of front zip". */
export function careLimitWords(plan: CoatPlan, { limit, slotIds, unknownSlotIds }: CareLimit): string {
  const open =
    unknownSlotIds.length > 0
      ? say('finished-words.not-written-down-yet-of', { partNames: partNames(plan, unknownSlotIds) })
      : '';
  const known =
    limit === null
      ? ''
      : say('finished-words.because-of', { limit: codeWords(limit), partNames: partNames(plan, slotIds) });
  return [known, open].filter((part) => part !== '').join('; ') || say('common.not-known-yet');
}
