/** What lies on the shelf of a new item already: its first purchase, received in the same step. */
import { type ItemKind, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { amountUnit, clothLengthUnit } from '../../../parts/figures/Amount.tsx';
import { DraftField } from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../../parts/forms/Field.tsx';
import style from '../forms.module.css';
import type { FirstLotDraft } from './first-lot.ts';
import { formOptions } from '../items/item-words.ts';

export interface FirstLotFieldsProps {
  readonly kind: ItemKind;
  readonly draft: FirstLotDraft;
  readonly onChange: (draft: FirstLotDraft) => void;
}

export function FirstLotFields({ kind, draft, onChange }: FirstLotFieldsProps) {
  const { hasLengths, counted } = kindRecords[kind];
  const change = (part: Partial<FirstLotDraft>) => onChange({ ...draft, ...part });
  return (
    <fieldset className={style.group}>
      <legend>On the shelf already</legend>
      <p className={`quiet small ${style.aboutGroup}`}>
        Your first purchase of it, if it is here. Further ones, several lengths and flaws go in under Receive.
      </p>
      <div className={style.pair}>
        {hasLengths ? (
          <>
            <DraftField
              label="Length"
              quantity="length"
              unit={clothLengthUnit}
              draft={draft.amount}
              onChange={(amount) => change({ amount })}
              aboveZero
            />
            <div className={style.pair}>
              <DraftField
                label="How many"
                quantity="count"
                draft={draft.count}
                onChange={(count) => change({ count })}
                aboveZero
              />
              <ChoiceField
                label="Lies as"
                value={draft.form}
                options={formOptions}
                onChange={(form) => form !== '' && change({ form })}
              />
            </div>
          </>
        ) : (
          <DraftField
            label="Amount"
            quantity={countedQuantity(counted)}
            unit={amountUnit(kind)}
            draft={draft.amount}
            onChange={(amount) => change({ amount })}
            aboveZero
          />
        )}
        <DraftField
          label="Price of the lot"
          quantity="money"
          draft={draft.price}
          onChange={(price) => change({ price })}
          hint="Paid for all of it; 0 for a gift"
        />
        <TextField label="Supplier" value={draft.supplier} onChange={(supplier) => change({ supplier })} />
        <TextField
          label="Dye lot"
          value={draft.dyeLot}
          onChange={(dyeLot) => change({ dyeLot })}
          hint="As printed on the label, if any"
        />
        <TextField
          label="Received on"
          type="date"
          value={draft.receivedOn}
          onChange={(receivedOn) => change({ receivedOn })}
        />
      </div>
    </fieldset>
  );
}
