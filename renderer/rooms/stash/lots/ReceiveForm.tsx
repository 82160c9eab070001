/** A purchase comes in: when, from whom, for how much, and what was in the parcel. */
import { useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { call } from '../../../client/api.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { useSystem, useWorkshop } from '../../../client/workshop.ts';
import { amountUnit } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { DraftField, emptyDraft, misreadProblems } from '../../../parts/forms/DraftField.tsx';
import { TextField } from '../../../parts/forms/Field.tsx';
import { firstWash } from '../../../../shared-core/requirement/cut/first-wash.ts';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import style from '../forms.module.css';
import { LengthRow } from './LengthRow.tsx';
import { draftsOfRow, firstRow, type LengthDraft, nextRow, readRows } from './length-drafts.ts';

export interface ReceiveFormProps {
  readonly item: Item;
  readonly onClose: () => void;
  readonly onSaved: () => Promise<void>;
}

export function ReceiveForm({ item, onClose, onSaved }: ReceiveFormProps) {
  const { workshop } = useWorkshop();
  const system = useSystem();
  const { hasLengths, counted } = kindRecords[item.kind];
  const [receivedOn, setReceivedOn] = useState(todayIso);
  const [supplier, setSupplier] = useState('');
  const [dyeLot, setDyeLot] = useState('');
  const [price, setPrice] = useState(emptyDraft);
  const [amount, setAmount] = useState(emptyDraft);
  const [rows, setRows] = useState<readonly LengthDraft[]>(() => [firstRow(item, system)]);

  const save = async (): Promise<readonly Problem[]> => {
    const rowDrafts = hasLengths ? rows.flatMap(draftsOfRow) : [amount];
    const unread = misreadProblems('The lot', [price, ...rowDrafts]);
    if (unread.length > 0) return unread;
    const lengths = readRows(hasLengths ? rows : []);
    const missing: Problem[] = lengths.ok ? [] : [...lengths.problems];
    if (!hasLengths && amount.value === null)
      missing.push({ where: `Amount of ${item.name}`, what: 'is missing', fix: 'Type how much came in.' });
    if (price.value === null)
      missing.push({
        where: 'Price of the lot',
        what: 'is missing',
        fix: 'Type what was paid for all of it; 0 for a gift.',
      });
    if (!lengths.ok || missing.length > 0 || price.value === null) return missing;
    const answer = await call('receiveLot', workshop, {
      itemId: item.id,
      receivedOn,
      supplier: supplier.trim(),
      dyeLot: dyeLot.trim(),
      priceMinor: price.value,
      amount: hasLengths ? null : amount.value,
      lengths: lengths.value,
    });
    if (!answer.ok) return answer.problems;
    await onSaved();
    return [];
  };

  return (
    <FormSheet title={`Receive ${item.name}`} saveLabel="Put on the shelf" onClose={onClose} onSave={save}>
      <div className={style.pair}>
        <TextField label="Received on" type="date" value={receivedOn} onChange={setReceivedOn} />
        <TextField label="Supplier" value={supplier} onChange={setSupplier} />
        <TextField
          label="Dye lot"
          value={dyeLot}
          onChange={setDyeLot}
          hint="As printed on the label, if any"
        />
        <DraftField
          label="Price of the lot"
          quantity="money"
          draft={price}
          onChange={setPrice}
          hint="Paid for all of it"
        />
      </div>
      {hasLengths ? (
        <section className={style.rows} aria-label="Lengths received">
          {rows.map((row, index) => (
            <LengthRow
              key={row.key}
              row={row}
              number={index + 1}
              shrinks={firstWash({}, item) !== null}
              onChange={(next) => setRows((now) => now.map((each) => (each.key === row.key ? next : each)))}
              onRemove={
                rows.length > 1 ? () => setRows((now) => now.filter((each) => each.key !== row.key)) : null
              }
            />
          ))}
          <Button onClick={() => setRows((now) => [...now, nextRow(now)])}>Add another length</Button>
        </section>
      ) : (
        <DraftField
          label="Amount"
          quantity={countedQuantity(counted)}
          draft={amount}
          onChange={setAmount}
          unit={amountUnit(item.kind)}
          hint={amountHint(item)}
          aboveZero
        />
      )}
    </FormSheet>
  );
}

function amountHint(item: Item): string {
  switch (item.kind) {
    case 'thread':
      return item.facts.spoolM === null
        ? 'Metres or yards of thread in all'
        : `All of it; a full spool holds ${item.typed.spoolM ?? `${item.facts.spoolM} m`}`;
    case 'fill':
      return 'Mass without the bag';
    case 'needle':
    case 'fastening':
      return 'How many pieces';
    case 'cloth':
    case 'batting':
      return '';
    default:
      return item satisfies never;
  }
}
