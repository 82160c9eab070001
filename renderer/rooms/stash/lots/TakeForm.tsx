/** What leaves the shelf for good, or what a count found: one lot or length, an amount and a reason. */
import { useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { call } from '../../../client/api.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { useSystem, useWorkshop } from '../../../client/workshop.ts';
import { amountText, amountUnit } from '../../../parts/figures/Amount.tsx';
import { DraftField, emptyDraft, misreadProblems } from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../../parts/forms/Field.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { lengthText, lotText } from '../items/item-words.ts';

interface Place {
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly onHand: number;
  /** Of that: set aside for coats. */
  readonly reserved: number;
  readonly label: string;
}

export interface TakeFormProps {
  readonly way: 'write off' | 'count';
  readonly shelf: ItemOnShelf;
  readonly onClose: () => void;
  readonly onSaved: () => Promise<void>;
}

export function TakeForm({ way, shelf, onClose, onSaved }: TakeFormProps) {
  const { workshop } = useWorkshop();
  const system = useSystem();
  const { item } = shelf;
  const { hasLengths, counted } = kindRecords[item.kind];
  // A count may find something where nothing was booked; nothing can be taken from there.
  const places = placesOf(shelf, system).filter((place) => way === 'count' || place.onHand > 0);
  const [chosen, setChosen] = useState('0');
  const [amount, setAmount] = useState(emptyDraft);
  const [reason, setReason] = useState(way === 'count' ? 'counted on the shelf' : '');
  const place = places[Number(chosen)];

  const save = async (): Promise<readonly Problem[]> => {
    if (!place)
      return [{ where: item.name, what: 'has nothing on the shelf', fix: 'Receive a lot of it first.' }];
    const unread = misreadProblems(way === 'count' ? 'The count' : 'The write-off', [amount]);
    if (unread.length > 0) return unread;
    if (amount.value === null) {
      const fix = way === 'count' ? 'Type how much lies there.' : 'Type how much is gone.';
      return [{ where: `Amount of ${item.name}`, what: 'is missing', fix }];
    }
    const { lotId, lengthId } = place;
    const answer =
      way === 'count'
        ? await call('correctCount', workshop, {
            lotId,
            lengthId,
            counted: amount.value,
            reason: reason.trim(),
          })
        : await call('writeOff', workshop, { lotId, lengthId, amount: amount.value, reason: reason.trim() });
    if (!answer.ok) return answer.problems;
    await onSaved();
    return [];
  };

  return (
    <FormSheet
      title={way === 'count' ? `Count ${item.name}` : `Write off ${item.name}`}
      saveLabel={way === 'count' ? 'Book the count' : 'Write off'}
      onClose={onClose}
      onSave={save}
    >
      <p className="quiet">
        {way === 'count'
          ? 'Type what really lies there. The difference is booked as a correction; nothing in the ledger is changed.'
          : 'For what is gone for good: a spoiled cut, a gift, a moth. It stays in the ledger with its reason.'}
      </p>
      <ChoiceField
        label={hasLengths ? 'Which length' : 'Which lot'}
        value={chosen}
        options={places.map(({ label }, index) => ({ value: String(index), label }))}
        onChange={(index) => setChosen(index)}
      />
      <DraftField
        label={way === 'count' ? 'Counted' : 'Amount'}
        quantity={countedQuantity(counted)}
        draft={amount}
        onChange={setAmount}
        unit={amountUnit(item.kind)}
        aboveZero={way === 'write off'}
        hint={place ? `${amountText(item.kind, place.onHand, system)} is booked there` : ''}
      />
      {way === 'count' && place && (amount.value ?? place.onHand) < place.reserved && (
        <p>
          {amountText(item.kind, place.reserved, system)} is set aside for coats there. What is not there is
          released: the coat that set aside last gives way first.
        </p>
      )}
      <TextField label="Reason" value={reason} onChange={setReason} />
    </FormSheet>
  );
}

function placesOf(shelf: ItemOnShelf, system: MeasureSystem): Place[] {
  return shelf.lots.flatMap((lot): Place[] =>
    kindRecords[shelf.item.kind].hasLengths
      ? lot.lengths.map((length) => ({
          lotId: lot.id,
          lengthId: length.id,
          onHand: length.onHandMm,
          reserved: length.reservedMm,
          label: `${lengthText(length, shelf.item, system)}; lot of ${lotText(lot)}`,
        }))
      : [
          {
            lotId: lot.id,
            lengthId: null,
            onHand: lot.onHand,
            reserved: lot.reserved,
            label: `${amountText(shelf.item.kind, lot.onHand, system)}; lot of ${lotText(lot)}`,
          },
        ],
  );
}
