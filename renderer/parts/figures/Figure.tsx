import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { showParts, type ShowOptions } from '../../../shared-core/measure/show.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';

export interface FigureProps {
  readonly quantity: QuantityKind;
  readonly value: number;
  readonly options?: Omit<ShowOptions, 'system'>;
}

/** A number with its unit, in the maker's system; digits line up in a column. */
export function Figure({ quantity, value, options }: FigureProps) {
  const system = useSystem();
  const { number, unit } = showParts(quantity, value, { system, ...options });
  return (
    <span className="number">
      {number}
      {unit && <span className="unit"> {unit}</span>}
    </span>
  );
}

/** An amount in the workshop's currency. */
export function Money({ amountMinor, withSign = false }: { amountMinor: number; withSign?: boolean }) {
  const { currency } = useWorkshop().facts.settings;
  const { number } = showParts('money', amountMinor, { system: 'metric', currency });
  return (
    <span className="number">
      {withSign && amountMinor > 0 ? '+' : ''}
      {number}
      <span className="unit"> {currency}</span>
    </span>
  );
}
