/** How a price was made, in words: the formula with its numbers in it. */
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { Addition, PriceSheet } from './price.ts';

export interface PriceWordsOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** "cost / (1 - 40 %)", "wholesale x (1 + 120 %)". */
export function additionWords(of: string, { kind, ratio }: Addition): string {
  const share = shareWords(ratio);
  return kind === 'margin' ? `${of} ÷ (1 − ${share})` : `${of} × (1 + ${share})`;
}

/** "45 %", to the tenth where it is not whole. */
export function shareWords(ratio: number): string {
  return showQuantity('ratio', Math.round(ratio * 1000) / 1000, { system: 'metric' });
}

/** The sheet as rows of name and text, for the headless command. */
export function priceRows(
  sheet: PriceSheet,
  options: PriceWordsOptions,
): readonly (readonly [string, string])[] {
  const money = (amountMinor: number) => showQuantity('money', amountMinor, options);
  const { coat, wholesale, retail } = sheet;
  const minutes = showQuantity('duration', sheet.minutesPerCoat, { system: options.system });
  return [
    ['material', money(coat.materialMinor)],
    ['work', `${money(coat.labourMinor)}, for ${minutes} as the maker estimates`],
    ['overhead', money(coat.overheadMinor)],
    ['cost of one coat', money(coat.costMinor)],
    ['wholesale', `${money(wholesale.priceMinor)} = ${additionWords('cost', wholesale.addition)}`],
    ['retail', `${money(retail.priceMinor)} = ${additionWords('wholesale', retail.addition)}`],
  ];
}
