/** A sum of money in a table: with its currency on paper, as a bare number in a file. */
import { plainMoney } from '../measure/money/money.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { showQuantity } from '../measure/show.ts';
import type { PaperCell } from './paper-table.ts';

export interface MoneyShown {
  readonly system: MeasureSystem;
  readonly currency: string;
}

/** amountMinor in minor units. */
export function moneyCell(amountMinor: number, { system, currency }: MoneyShown): PaperCell {
  return {
    text: showQuantity('money', amountMinor, { system, currency }),
    fileText: plainMoney(amountMinor, currency),
  };
}
