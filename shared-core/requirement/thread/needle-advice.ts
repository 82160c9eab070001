/** Needles that are chosen too fine or too coarse, and thread or seams that ask for more than a down-proof cloth bears. */
import { say } from '../../wording/say.ts';
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
        ? say('needle-advice.the-needle-chosen-is-finer-than', { chosen, wanted })
        : say('needle-advice.the-needle-chosen-is-coarser-than', { chosen, wanted }),
      say('needle-advice.try-it-on-a-scrap-of'),
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
