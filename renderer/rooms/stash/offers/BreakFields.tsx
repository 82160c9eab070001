/** Lower prices for many, one line each. */
import type { SellingUnit } from '../../../../shared-core/stash/offer.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { DraftField } from '../../../parts/forms/DraftField.tsx';
import { type BreakDraft, emptyBreak, fromFields } from './break-drafts.ts';
import style from '../forms.module.css';

export interface BreakFieldsProps {
  readonly way: SellingUnit['kind'];
  readonly breaks: readonly BreakDraft[];
  readonly onChange: (breaks: readonly BreakDraft[]) => void;
}

export function BreakFields({ way, breaks, onChange }: BreakFieldsProps) {
  const { quantity, unit, hint } = fromFields[way];
  const set = (changed: BreakDraft) =>
    onChange(breaks.map((each) => (each.key === changed.key ? changed : each)));
  const nextKey = Math.max(-1, ...breaks.map(({ key }) => key)) + 1;
  return (
    <div className={style.rows}>
      {breaks.map((each, index) => (
        <fieldset key={each.key} className={style.row}>
          <legend>Price break {index + 1}</legend>
          <div className={style.pair}>
            <DraftField
              label="From"
              quantity={quantity}
              draft={each.from}
              onChange={(from) => set({ ...each, from })}
              unit={unit}
              hint={hint}
              aboveZero
            />
            <DraftField
              label="Price then"
              quantity="money"
              draft={each.price}
              onChange={(price) => set({ ...each, price })}
              hint="For one, as above"
            />
          </div>
          <div className={style.rowActions}>
            <Button
              look="quiet"
              aria-label={`Remove price break ${index + 1}`}
              onClick={() => onChange(breaks.filter(({ key }) => key !== each.key))}
            >
              Remove this line
            </Button>
          </div>
        </fieldset>
      ))}
      <Button look="quiet" onClick={() => onChange([...breaks, emptyBreak(nextKey)])}>
        Add a price break
      </Button>
    </div>
  );
}
