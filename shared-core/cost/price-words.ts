/** How a price was made, in words: the formula with its numbers in it. */
import { say } from '../wording/say.ts';
import { codeWords } from '../wording/code-words.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { Addition, Price, PriceSheet } from './price.ts';

export interface PriceWordsOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** "cost / (1 - 40 %)", "wholesale x (1 + 120 %)". of: a value for codeWords. */
export function additionWords(of: 'cost' | 'wholesale', { kind, ratio }: Addition): string {
  const share = shareWords(ratio);
  return kind === 'margin' ? `${codeWords(of)} ÷ (1 − ${share})` : `${codeWords(of)} × (1 + ${share})`;
}

/** "45 %", to the tenth where it is not whole. */
export function shareWords(ratio: number): string {
  return showQuantity('ratio', Math.round(ratio * 1000) / 1000, { system: 'metric' });
}

/** What stands in the place of a price while nothing is said of the work. */
export const noPriceWords = () => say('price-words.no-price-yet-give-an-hour');

/** What is said of the work on a coat: its time, or that it is left out. */
export function workWords({ minutesPerCoat, wholesale, coat }: PriceSheet, system: MeasureSystem): string {
  const minutes = showQuantity('duration', minutesPerCoat, { system });
  if (wholesale === null) return say('price-words.as-the-maker-estimates-without-a', { minutes });
  return coat.labourMinor > 0
    ? say('price-words.as-the-maker-estimates', { minutes })
    : say('common.left-out');
}

/** The sheet as rows of name and text, for the headless command. */
export function priceRows(
  sheet: PriceSheet,
  options: PriceWordsOptions,
): readonly (readonly [string, string])[] {
  const money = (amountMinor: number) => showQuantity('money', amountMinor, options);
  const { coat, wholesale, retail } = sheet;
  const price = (of: 'cost' | 'wholesale', priced: Price | null) =>
    priced ? `${money(priced.priceMinor)} = ${additionWords(of, priced.addition)}` : noPriceWords();
  return [
    [codeWords('material'), money(coat.materialMinor)],
    [codeWords('work'), `${money(coat.labourMinor)}, ${workWords(sheet, options.system)}`],
    [codeWords('overhead'), money(coat.overheadMinor)],
    [say('price-words.cost-of-one-coat'), money(coat.costMinor)],
    [codeWords('wholesale'), price('cost', wholesale)],
    ...(retail ? [[codeWords('retail'), price('wholesale', retail)] as const] : []),
  ];
}
