/** A supplier's price for an item, by the unit it is sold in. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useWatch } from 'react-hook-form';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { type Offer, type SellingUnit, soldAs } from '../../../../shared-core/stash/offer.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { sellingUnitNames } from '../../../parts/figures/selling-words.ts';
import { FormChoice, FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../../parts/forms/typed-form.ts';
import style from '../forms.module.css';
import { BreakFields } from './BreakFields.tsx';
import { hasLeastCount, leastCountField, offerCall, offerForm, priceField } from './typed-offer.ts';
import { unitFields } from './selling-fields.ts';

export interface OfferFormProps {
  readonly item: Item;
  readonly offer: Offer | null;
  readonly onClose: () => void;
}

export function OfferForm({ item, offer, onClose }: OfferFormProps) {
  const { settings } = useWorkshop().facts;
  const { make: saveOffer } = useChange('saveOffer');
  const ways = waysOf(item, offer);
  const { control, sheet } = useTypedForm({
    ...offerForm(item, offer, { way: ways[0]!, today: todayIso() }, settings),
    subject: say('offer-form.the-offer'),
    save: async (read) => {
      const input = offerCall({ offerId: offer?.id ?? null, itemId: item.id }, read);
      const answer = input.ok ? await saveOffer(input.value) : input;
      return answer.ok ? [] : answer.problems;
    },
  });
  const way = useWatch({ control, name: 'way' });
  return (
    <FormSheet
      title={
        offer
          ? say('offer-form.offer-for', { itemName: item.name })
          : say('offer-form.new-offer-for', { itemName: item.name })
      }
      saveLabel={say('offer-form.save-the-offer')}
      onClose={onClose}
      {...sheet}
    >
      <div className={style.pair}>
        <FormText control={control} name="supplier" label={say('common.supplier')} />
        <FormText
          control={control}
          name="pricedOn"
          label={say('offer-form.priced-on')}
          type="date"
          hint={say('offer-form.the-day-the-price-was-seen')}
        />
      </div>
      <FormChoice
        control={control}
        name="way"
        label={say('offer-form.sold-as')}
        options={ways.map((kind) => ({ value: kind, label: sellingUnitNames[kind] }))}
      />
      <div className={style.pair}>
        {unitFields[way].map(({ name, ...asked }) => (
          <FormQuantity key={`${way} ${name}`} control={control} name={`figures.${name}`} {...asked} />
        ))}
        <FormQuantity control={control} name="price" {...priceField(way)} />
        {hasLeastCount(way) && <FormQuantity control={control} name="leastCount" {...leastCountField} />}
      </div>
      <BreakFields way={way} control={control} />
    </FormSheet>
  );
}

function waysOf(item: Item, offer: Offer | null): readonly SellingUnit['kind'][] {
  const usual = soldAs[kindRecords[item.kind].counted];
  return offer && !usual.includes(offer.unit.kind) ? [...usual, offer.unit.kind] : usual;
}
