/** Which basket is shown: the cheapest, or the cheapest with fewer suppliers. */
import { say } from '../../../shared-core/wording/say.ts';
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
    hint:
      index === 0 ? say('basket-choice.the-cheapest') : dearerText(basket.payMinor - toBuy.payMinor, money),
  }));
  return (
    <OneOf
      label={say('basket-choice.basket')}
      value={String(chosen)}
      options={options}
      onChange={(value) => onChange(Number(value))}
    />
  );
}

function suppliersText({ deliveries }: BoughtBasket): string {
  return deliveries.length === 1
    ? say('basket-choice.alone', { supplier: deliveries[0]?.supplier })
    : say('basket-choice.suppliers', { deliveriesCount: deliveries.length });
}

function dearerText(byMinor: number, money: (amountMinor: number) => string): string {
  return byMinor === 0
    ? say('basket-choice.the-same-in-all')
    : say('basket-choice.dearer-in-all', { money: money(byMinor) });
}
