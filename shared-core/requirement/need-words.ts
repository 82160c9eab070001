/** What is worth saying beside an amount in one line: the needle for the heaviest seam, how full fill goes in. */
import { codeWords } from '../wording/code-words.ts';
import { say } from '../wording/say.ts';
import { howText } from '../measure/basis.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { fillingList } from './fill/fill.ts';
import { weightWords } from './fill/filling-table.ts';
import type { SlotItems } from './need.ts';
import { type NeedleChoice, planNeedleChoice } from './thread/needles.ts';

/** "NM 75/11, sharp, for the heaviest seam: 588 g/m² in all at a seam; a sharp point …". */
export function needleWords(choice: NeedleChoice, system: MeasureSystem): string {
  const size = showQuantity('needleSize', choice.sizeNm, { system });
  return say('need-words.for-the-heaviest-seam', {
    size,
    point: codeWords(choice.point),
    howText: howText(choice.reason, system),
  });
}

/** Empty for a slot of which the amount says all. */
export function needWords(plan: CoatPlan, slotId: string, items: SlotItems, system: MeasureSystem): string {
  const slot = slotById(plan, slotId);
  if (slot.kind === 'needle') {
    const choice = planNeedleChoice(plan, items);
    return choice ? needleWords(choice, system) : '';
  }
  if (slot.kind !== 'fill') return '';
  const list = fillingList(plan, slot, items);
  return list.chambers.length > 0 ? weightWords(list, system) : '';
}
