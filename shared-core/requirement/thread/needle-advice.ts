/** Needles that are chosen too fine or too coarse, and thread or seams that ask for more than a down-proof cloth bears. */
import { measureIn } from '../../measure/basis.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { Advice } from '../advice.ts';
import type { SlotItems } from '../need.ts';
import { type NeedleChoice, planNeedleChoice } from './needles.ts';

/** Advice on the needles of the plan; none while no cloth with a weight is chosen. */
export function needleAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  const choice = planNeedleChoice(plan, items);
  if (choice === null) return [];
  const sizesNm = plan.slots.flatMap(({ id, kind }) => {
    const item = kind === 'needle' ? items.get(id) : undefined;
    return item?.kind === 'needle' && item.facts.sizeNm !== null ? [item.facts.sizeNm] : [];
  });
  return [
    ...(choice.conflict === '' ? [] : [advice(choice, sentenceCase(choice.conflict), choice.fix)]),
    ...(sizesNm.length === 0 || sizesNm.includes(choice.sizeNm) ? [] : sizeAdvice(choice, sizesNm)),
  ];
}

/** Several kinds of needle may be chosen: the one nearest to what the heaviest seam wants is spoken of. */
function sizeAdvice(choice: NeedleChoice, sizesNm: readonly number[]): readonly Advice[] {
  const away = (sizeNm: number) => Math.abs(sizeNm - choice.sizeNm);
  const nearestNm = sizesNm.reduce((best, one) => (away(one) < away(best) ? one : best));
  const [chosen, wanted] = [nearestNm, choice.sizeNm].map((nm) => measureIn('needleSize', nm));
  const isFiner = nearestNm < choice.sizeNm;
  return [
    advice(
      choice,
      isFiner
        ? `The needle chosen, ${chosen}, is finer than the ${wanted} that the heaviest seam wants: fit for a single layer of shell or lining.`
        : `The needle chosen, ${chosen}, is coarser than the ${wanted} that the heaviest seam wants: it leaves larger holes than it must.`,
      'Try it on a scrap of that seam, or choose another needle in the plan.',
    ),
  ];
}

function advice(choice: NeedleChoice, says: string, fix: string): Advice {
  return {
    kind: 'needle',
    says,
    fix,
    basis: [{ kind: 'rule of thumb', how: choice.reason, source: choice.source }],
  };
}
