/** A supplier's price for an item, by the unit it is sold in. */
import { useState } from 'react';
import { moneyNumber } from '../../../../shared-core/measure/money/money.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { type Offer, type SellingUnit, soldAs } from '../../../../shared-core/stash/offer.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { call } from '../../../client/api.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { todayIso } from '../../../parts/figures/calendar.ts';
import {
  DraftField,
  draftOf,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../../parts/forms/Field.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { sellingUnitNames } from '../../../parts/figures/selling-words.ts';
import { BreakFields } from './BreakFields.tsx';
import { draftsOfBreaks, readBreaks } from './break-drafts.ts';
import style from '../forms.module.css';
import { draftOfOffer, offerDrafts, readUnit, unitFields } from './selling-drafts.ts';

export interface OfferFormProps {
  readonly item: Item;
  readonly offer: Offer | null;
  readonly onClose: () => void;
  readonly onSaved: () => Promise<void>;
}

export function OfferForm({ item, offer, onClose, onSaved }: OfferFormProps) {
  const { workshop, facts } = useWorkshop();
  const { system, currency } = facts.settings;
  const ways = waysOf(item, offer);
  const [supplier, setSupplier] = useState(offer?.supplier ?? '');
  const [pricedOn, setPricedOn] = useState(() => offer?.pricedOn ?? todayIso());
  const [way, setWay] = useState<SellingUnit['kind']>(offer?.unit.kind ?? ways[0]!);
  const [price, setPrice] = useState<QuantityDraft>(() => priceDraft(offer, currency));
  const [drafts, setDrafts] = useState(() => draftOfOffer(item, offer, system));

  const [leastCount, setLeastCount] = useState<QuantityDraft>(() => countDraft(offer?.leastCount));
  const [breaks, setBreaks] = useState(() => draftsOfBreaks(offer, system, currency));
  const hasLeastCount = way !== 'by length' && way !== 'by mass';

  const save = async (): Promise<readonly Problem[]> => {
    const breakDrafts = breaks.flatMap((each) => [each.from, each.price]);
    const unread = misreadProblems('The offer', [
      price,
      leastCount,
      ...offerDrafts(way, drafts),
      ...breakDrafts,
    ]);
    if (unread.length > 0) return unread;
    const unit = readUnit(way, drafts);
    const missing: Problem[] = unit.ok ? [] : [...unit.problems];
    if (price.value === null)
      missing.push({ where: 'Price', what: 'is missing', fix: 'Type what one costs.' });
    if (!unit.ok || price.value === null) return missing;
    const lower = readBreaks(breaks, unit.value);
    if (!lower.ok) return lower.problems;
    const answer = await call('saveOffer', workshop, {
      offerId: offer?.id ?? null,
      itemId: item.id,
      supplier,
      unit: unit.value,
      priceMinor: price.value,
      pricedOn,
      ...(lower.value.length > 0 && { breaks: [...lower.value] }),
      ...(hasLeastCount && leastCount.value !== null && { leastCount: leastCount.value }),
    });
    if (!answer.ok) return answer.problems;
    await onSaved();
    return [];
  };

  return (
    <FormSheet
      title={offer ? `Offer for ${item.name}` : `New offer for ${item.name}`}
      saveLabel="Save the offer"
      onClose={onClose}
      onSave={save}
    >
      <div className={style.pair}>
        <TextField label="Supplier" value={supplier} onChange={setSupplier} />
        <TextField
          label="Priced on"
          type="date"
          value={pricedOn}
          onChange={setPricedOn}
          hint="The day the price was seen"
        />
      </div>
      <ChoiceField
        label="Sold as"
        value={way}
        options={ways.map((kind) => ({ value: kind, label: sellingUnitNames[kind] }))}
        onChange={(kind) => kind !== '' && setWay(kind)}
      />
      <div className={style.pair}>
        {unitFields[way].map(({ name, label, hint, quantity, unit, isOptional }) => (
          <DraftField
            key={`${way} ${name}`}
            label={label}
            quantity={quantity}
            draft={drafts[name]}
            onChange={(draft) => setDrafts((now) => ({ ...now, [name]: draft }))}
            unit={unit}
            hint={hint}
            aboveZero={!isOptional}
          />
        ))}
        <DraftField label="Price" quantity="money" draft={price} onChange={setPrice} hint={priceHints[way]} />
        {hasLeastCount && (
          <DraftField
            label="At least"
            quantity="count"
            draft={leastCount}
            onChange={setLeastCount}
            hint="Fewest sold at once, if more than one"
            aboveZero
          />
        )}
      </div>
      <BreakFields way={way} breaks={breaks} onChange={setBreaks} />
    </FormSheet>
  );
}

const priceHints: Readonly<Record<SellingUnit['kind'], string>> = {
  'by length': 'For one step',
  sheet: 'For one sheet',
  spool: 'For one spool',
  'by mass': 'For one step',
  pack: 'For one pack',
  each: 'For one piece',
};

function waysOf(item: Item, offer: Offer | null): readonly SellingUnit['kind'][] {
  const usual = soldAs[kindRecords[item.kind].counted];
  return offer && !usual.includes(offer.unit.kind) ? [...usual, offer.unit.kind] : usual;
}

function countDraft(count: number | undefined): QuantityDraft {
  return count === undefined ? emptyDraft : draftOf(count, String(count));
}

function priceDraft(offer: Offer | null, currency: string): QuantityDraft {
  const value = offer?.priceMinor ?? null;
  return { value, text: value === null ? '' : moneyNumber(value, currency), misread: null };
}
