/**
 * A new item or a change to one. Its fields come from the record of its kind: what a coat needs of it first, the rest on
 * demand. With a new item its first purchase comes onto the shelf.
 */
import { useState } from 'react';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { type ItemKind, itemKinds, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { call } from '../../../client/api.ts';
import { useSystem, useWorkshop } from '../../../client/workshop.ts';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { Disclosure } from '../../../parts/layout/Disclosure.tsx';
import { emptyDraft, misreadProblems } from '../../../parts/forms/DraftField.tsx';
import { TextField } from '../../../parts/forms/Field.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { KindMark } from '../../../parts/drawing/KindMark.tsx';
import { Fact } from './Fact.tsx';
import {
  draftsOf,
  type FactDrafts,
  factsOf,
  fieldsInOrder,
  isFilled,
  isMisread,
  type NamedField,
} from './fact-drafts.ts';
import { draftsOfFirstLot, emptyFirstLot, readFirstLot } from '../lots/first-lot.ts';
import { FirstLotFields } from '../lots/FirstLotFields.tsx';
import style from '../forms.module.css';

export interface ItemFormProps {
  /** null for a new item. */
  readonly item: Item | null;
  readonly onClose: () => void;
  readonly onSaved: (itemId: string) => Promise<void>;
}

export function ItemForm({ item, onClose, onSaved }: ItemFormProps) {
  const { workshop } = useWorkshop();
  const system = useSystem();
  const [kind, setKind] = useState<ItemKind>(item?.kind ?? 'cloth');
  const [name, setName] = useState(item?.name ?? '');
  const [colour, setColour] = useState(item?.colour ?? '');
  const [place, setPlace] = useState(item?.place ?? '');
  const [notes, setNotes] = useState(item?.notes ?? '');
  const [drafts, setDrafts] = useState<FactDrafts>(() => draftsOf(item, system));
  const [firstLot, setFirstLot] = useState(() => emptyFirstLot(todayIso()));
  const [refusals, setRefusals] = useState<readonly Problem[]>([]);
  const label = kindRecords[kind].label;
  const { first, others } = fieldsInOrder(kind);
  const draftOfFact = (factName: string) => drafts.quantities[factName] ?? emptyDraft;
  const hasValue = place !== '' || notes !== '' || others.some((field) => isFilled(field, drafts));
  const isInsideRefused =
    others.some((field) => isMisread(field, drafts) && refusals.length > 0) ||
    refusals.some(({ where }) => isAbout(where, ['Place', 'Notes', ...others.map(([, { label }]) => label)]));

  const saved = async (): Promise<readonly Problem[]> => {
    const quantities = [...first, ...others].filter(([, field]) => field.kind === 'quantity');
    const unread = misreadProblems(item?.name ?? `The ${label.toLowerCase()}`, [
      ...quantities.map(([factName]) => draftOfFact(factName)),
      ...(item ? [] : draftsOfFirstLot(firstLot)),
    ]);
    if (unread.length > 0) return unread;
    const { facts, typed } = factsOf(kind, drafts, system);
    const lot = item ? null : readFirstLot(kind, draftOfFact('widthMm').value, firstLot);
    if (lot && !lot.ok) return lot.problems;
    const answer = await call('saveItem', workshop, {
      itemId: item?.id ?? null,
      kind,
      name,
      colour,
      place,
      notes,
      facts,
      typed,
      ...(lot?.value && { firstLot: lot.value }),
    });
    if (!answer.ok) return answer.problems;
    await onSaved(answer.value.itemId);
    return [];
  };
  const save = async () => {
    const problems = await saved();
    setRefusals(problems);
    return problems;
  };
  const facts = (fields: readonly NamedField[]) =>
    fields.map(([factName, field]) => (
      <Fact
        key={`${kind} ${factName}`}
        kind={kind}
        factName={factName}
        field={field}
        drafts={drafts}
        onChange={setDrafts}
      />
    ));

  return (
    <FormSheet
      title={item ? `Edit ${item.name}` : 'New item'}
      saveLabel={item ? 'Save' : 'Add to the stash'}
      onClose={onClose}
      onSave={save}
    >
      {!item && (
        <fieldset className={style.kinds}>
          <legend>What is it?</legend>
          {itemKinds.map((each) => (
            <label key={each} className={style.kind}>
              <input
                type="radio"
                name="kind"
                value={each}
                checked={kind === each}
                onChange={() => setKind(each)}
              />
              <KindMark kind={each} />
              {kindRecords[each].label}
            </label>
          ))}
        </fieldset>
      )}
      <div className={style.pair}>
        <TextField label="Name" value={name} onChange={setName} />
        <TextField label="Colour" value={colour} onChange={setColour} />
        {facts(first)}
      </div>
      {!item && <FirstLotFields kind={kind} draft={firstLot} onChange={setFirstLot} />}
      <Disclosure
        key={kind}
        title={`More about the ${label.toLowerCase()}`}
        inside={['place', ...others.map(([, field]) => field.label.toLowerCase()), 'notes'].join(', ')}
        hasValue={hasValue}
        refusal={isInsideRefused ? refusals : null}
      >
        <TextField label="Place" value={place} onChange={setPlace} hint="Where it lies: rack 1, top" />
        <div className={style.pair}>{facts(others)}</div>
        <TextField label="Notes" value={notes} onChange={setNotes} isLong />
      </Disclosure>
    </FormSheet>
  );
}

function isAbout(where: string, labels: readonly string[]): boolean {
  return labels.some((label) => where === label || where.startsWith(`${label} of `));
}
