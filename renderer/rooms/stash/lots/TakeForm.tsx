/** What leaves the shelf for good, or what a count found: one lot or length, an amount and a reason. */
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
      return [{ where: item.name, what: 'has nothing on the shelf', fix: 'Receive a lot of it first.' }];
    if (read.amount === null) {
      const fix = way === 'count' ? 'Type how much lies there.' : 'Type how much is gone.';
      return [{ where: `Amount of ${item.name}`, what: 'is missing', fix }];
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
    subject: way === 'count' ? 'The count' : 'The write-off',
    save,
  });
  const [chosen, typed] = useWatch({ control, name: ['place', 'amount'] });
  const place = places[Number(chosen)];
  const counted = readNow(asked, settings, typed);

  return (
    <FormSheet
      title={way === 'count' ? `Count ${item.name}` : `Write off ${item.name}`}
      saveLabel={way === 'count' ? 'Book the count' : 'Write off'}
      onClose={onClose}
      {...sheet}
    >
      <p className="quiet">
        {way === 'count'
          ? 'Type what really lies there. The difference is booked as a correction; nothing in the ledger is changed.'
          : 'For what is gone for good: a spoiled cut, a gift, a moth. It stays in the ledger with its reason.'}
      </p>
      <FormChoice
        control={control}
        name="place"
        label={kindRecords[item.kind].hasLengths ? 'Which length' : 'Which lot'}
        options={places.map(({ label }, index) => ({ value: String(index), label }))}
      />
      <FormQuantity
        control={control}
        name="amount"
        {...asked}
        hint={place ? `${amountText(item.kind, place.onHand, system)} is booked there` : ''}
      />
      {way === 'count' && place && (counted ?? place.onHand) < place.reserved && (
        <p>
          {amountText(item.kind, place.reserved, system)} is set aside for coats there. What is not there is
          released: the coat that set aside last gives way first.
        </p>
      )}
      <FormText control={control} name="reason" label="Reason" />
    </FormSheet>
  );
}
