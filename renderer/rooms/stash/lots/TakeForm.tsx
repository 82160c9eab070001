/** What leaves the shelf for good, or what a count found: one lot or length, an amount and a reason. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useWatch } from 'react-hook-form';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { amountText } from '../../../parts/figures/Amount.tsx';
import { FormChoice, FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { readNow } from '../../../parts/forms/quantity-text.ts';
import { useTypedForm } from '../../../parts/forms/typed-form.ts';
import { type ReadTaking, takeForm, takenAmount, takePlaces, type TakeWay } from './typed-taking.ts';

export interface TakeFormProps {
  readonly way: TakeWay;
  readonly shelf: ItemOnShelf;
  readonly onClose: () => void;
}

export function TakeForm({ way, shelf, onClose }: TakeFormProps) {
  const { settings } = useWorkshop().facts;
  const { system } = settings;
  const { make: correctCount } = useChange('correctCount');
  const { make: writeOff } = useChange('writeOff');
  const { item } = shelf;
  const places = takePlaces(way, shelf, system);
  const asked = takenAmount(way, shelf);
  const save = async (read: ReadTaking): Promise<readonly Problem[]> => {
    const at = places[Number(read.place)];
    if (!at)
      return [
        {
          where: item.name,
          what: say('take-form.has-nothing-on-the-shelf'),
          fix: say('take-form.receive-a-lot-of-it-first'),
        },
      ];
    if (read.amount === null) {
      const fix =
        way === 'count' ? say('take-form.type-how-much-lies-there') : say('take-form.type-how-much-is-gone');
      return [
        { where: say('take-form.amount-of', { itemName: item.name }), what: say('common.is-missing'), fix },
      ];
    }
    const where = { lotId: at.lotId, lengthId: at.lengthId, reason: read.reason.trim() };
    const answer =
      way === 'count'
        ? await correctCount({ ...where, counted: read.amount })
        : await writeOff({ ...where, amount: read.amount });
    return answer.ok ? [] : answer.problems;
  };
  const { control, sheet } = useTypedForm({
    ...takeForm(way, shelf, settings),
    subject: way === 'count' ? say('take-form.the-count') : say('take-form.the-write-off'),
    save,
  });
  const [chosen, typed] = useWatch({ control, name: ['place', 'amount'] });
  const place = places[Number(chosen)];
  const counted = readNow(asked, settings, typed);

  return (
    <FormSheet
      title={
        way === 'count'
          ? say('take-form.count', { itemName: item.name })
          : say('take-form.write-off', { itemName: item.name })
      }
      saveLabel={way === 'count' ? say('take-form.book-the-count') : say('take-form.write-off-2')}
      onClose={onClose}
      {...sheet}
    >
      <p className="quiet">
        {way === 'count'
          ? say('take-form.type-what-really-lies-there-the')
          : say('take-form.for-what-is-gone-for-good')}
      </p>
      <FormChoice
        control={control}
        name="place"
        label={kindRecords[item.kind].hasLengths ? say('take-form.which-length') : say('take-form.which-lot')}
        options={places.map(({ label }, index) => ({ value: String(index), label }))}
      />
      <FormQuantity
        control={control}
        name="amount"
        {...asked}
        hint={
          place
            ? say('take-form.is-booked-there', { amountText: amountText(item.kind, place.onHand, system) })
            : ''
        }
      />
      {way === 'count' && place && (counted ?? place.onHand) < place.reserved && (
        <p>
          {say('take-form.is-set-aside-for-coats-there', {
            amountText: amountText(item.kind, place.reserved, system),
          })}
        </p>
      )}
      <FormText control={control} name="reason" label={say('take-form.reason')} />
    </FormSheet>
  );
}
