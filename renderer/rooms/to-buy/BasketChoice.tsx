/** Which basket is shown: the cheapest, or the cheapest with fewer suppliers. */
import type { BoughtBasket, ToBuy } from '../../../shared-core/to-buy/to-buy.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { OneOf } from '../../parts/forms/OneOf.tsx';

export interface BasketChoiceProps {
  readonly toBuy: ToBuy;
  /** 0 is the cheapest, 1 the first of those with fewer suppliers. */
  readonly chosen: number;
  readonly onChange: (chosen: number) => void;
}

/** Nothing to choose where the cheapest comes from one supplier, or no fewer will do. */
export function BasketChoice({ toBuy, chosen, onChange }: BasketChoiceProps) {
  const { system, currency } = useWorkshop().facts.settings;
  if (toBuy.fewer.length === 0) return null;
  const money = (amountMinor: number) => showQuantity('money', amountMinor, { system, currency });
  const options = [toBuy, ...toBuy.fewer].map((basket, index) => ({
    value: String(index),
    label: `${suppliersText(basket)}, ${money(basket.payMinor)}`,
    hint: index === 0 ? 'The cheapest' : dearerText(basket.payMinor - toBuy.payMinor, money),
  }));
  return (
    <OneOf
      label="Basket"
      value={String(chosen)}
      options={options}
      onChange={(value) => onChange(Number(value))}
    />
  );
}

function suppliersText({ deliveries }: BoughtBasket): string {
  return deliveries.length === 1 ? `${deliveries[0]?.supplier} alone` : `${deliveries.length} suppliers`;
}

function dearerText(byMinor: number, money: (amountMinor: number) => string): string {
  return byMinor === 0 ? 'The same in all' : `${money(byMinor)} dearer in all`;
}
