/** How much there is of a kind, in the unit in which it is bought and cut: cloth in metres or yards, fill by mass. */
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import { type ItemKind, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { countedQuantity } from '../../client/wording/words.ts';
import { Figure } from './Figure.tsx';

export const clothLengthUnit = { metric: 'm', imperial: 'yd' } as const satisfies FieldUnit;
export const clothWidthUnit = { metric: 'cm', imperial: 'in' } as const satisfies FieldUnit;

/** The unit of an amount where it does not go by its size. */
export function amountUnit(kind: ItemKind): FieldUnit | undefined {
  return kindRecords[kind].counted === 'length' ? clothLengthUnit : undefined;
}

/** "12.4 m", "350 g", "457.2 m", "20 pcs". amount: in the kind's unit. */
export function amountText(kind: ItemKind, amount: number, system: MeasureSystem): string {
  const unit = amountUnit(kind);
  return showQuantity(countedQuantity(kindRecords[kind].counted), amount, { system, ...(unit && { unit }) });
}

export function Amount({ kind, amount }: { kind: ItemKind; amount: number }) {
  const unit = amountUnit(kind);
  return (
    <Figure
      quantity={countedQuantity(kindRecords[kind].counted)}
      value={amount}
      options={unit ? { unit } : {}}
    />
  );
}
