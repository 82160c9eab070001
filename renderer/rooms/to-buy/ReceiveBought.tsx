/** All that was ticked comes in at once: each purchase as it was on the list until the maker types what it truly was. */
import { useState } from 'react';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { receiptOf } from '../../../shared-core/to-buy/receipt.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { call } from '../../client/api.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { countedQuantity } from '../../client/wording/words.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { amountText, amountUnit, clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';
import { todayIso } from '../../parts/figures/calendar.ts';
import {
  DraftField,
  draftOf,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../parts/forms/DraftField.tsx';
import { TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import style from './ReceiveBought.module.css';

interface BoughtDraft {
  readonly item: Item;
  readonly line: ToBuyLine;
  readonly supplier: string;
  readonly dyeLot: string;
  readonly price: QuantityDraft;
  /** For kinds that do not lie as lengths. */
  readonly amount: QuantityDraft;
  readonly width: QuantityDraft;
  readonly along: QuantityDraft;
  readonly count: QuantityDraft;
  readonly form: 'cut' | 'sheet' | 'roll' | 'remnant';
}

export interface ReceiveBoughtProps {
  readonly plan: CoatPlan;
  readonly lines: readonly ToBuyLine[];
  readonly onClose: () => void;
  readonly onReceived: (lotCount: number) => Promise<void>;
}

export function ReceiveBought({ plan, lines, onClose, onReceived }: ReceiveBoughtProps) {
  const { workshop, facts } = useWorkshop();
  const { input } = useCoat('input');
  const [receivedOn, setReceivedOn] = useState(todayIso);
  const [drafts, setDrafts] = useState<readonly BoughtDraft[]>(() =>
    lines.flatMap((line) => {
      const item = input && itemById(input, line.itemId);
      return item ? [draftFor(line, item, facts.settings)] : [];
    }),
  );
  const change = (changed: BoughtDraft) =>
    setDrafts((now) => now.map((each) => (each.line.offer.id === changed.line.offer.id ? changed : each)));

  const save = async (): Promise<readonly Problem[]> => {
    const lots = drafts.map((draft) => lotOf(draft, receivedOn));
    const problems = lots.flatMap((lot) => (lot.ok ? [] : lot.problems));
    if (problems.length > 0) return problems;
    const answer = await call('receiveLots', workshop, {
      planId: plan.id,
      lots: lots.flatMap((lot) => (lot.ok ? [lot.value] : [])),
    });
    if (!answer.ok) return answer.problems;
    await onReceived(answer.value.lotIds.length);
    return [];
  };
  return (
    <FormSheet
      title={drafts.length === 1 ? 'Receive one purchase' : `Receive ${drafts.length} purchases`}
      saveLabel="Put all on the shelf"
      onClose={onClose}
      onSave={save}
    >
      <p className="quiet">
        Each stands as it was on the list. Type what you truly got and paid; all of it comes in, or nothing
        does.
      </p>
      <TextField label="Received on" type="date" value={receivedOn} onChange={setReceivedOn} />
      {drafts.map((draft) => (
        <Purchase key={draft.line.offer.id} draft={draft} onChange={change} />
      ))}
    </FormSheet>
  );
}

function Purchase({ draft, onChange }: { draft: BoughtDraft; onChange: (draft: BoughtDraft) => void }) {
  const { item } = draft;
  const { hasLengths, counted } = kindRecords[item.kind];
  return (
    <fieldset className={style.purchase}>
      <legend>{item.name}</legend>
      <div className={style.fields}>
        {hasLengths ? (
          <>
            <DraftField
              label="Width"
              quantity="length"
              unit={clothWidthUnit}
              draft={draft.width}
              onChange={(width) => onChange({ ...draft, width })}
              aboveZero
            />
            <DraftField
              label="Length"
              quantity="length"
              unit={clothLengthUnit}
              draft={draft.along}
              onChange={(along) => onChange({ ...draft, along })}
              aboveZero
            />
            <DraftField
              label="How many"
              quantity="count"
              draft={draft.count}
              onChange={(count) => onChange({ ...draft, count })}
              min={1}
              max={500}
            />
          </>
        ) : (
          <DraftField
            label="Amount"
            quantity={countedQuantity(counted)}
            unit={amountUnit(item.kind)}
            draft={draft.amount}
            onChange={(amount) => onChange({ ...draft, amount })}
            aboveZero
          />
        )}
        <DraftField
          label="Price"
          quantity="money"
          draft={draft.price}
          onChange={(price) => onChange({ ...draft, price })}
          hint="Paid for all of it"
        />
        <TextField
          label="Supplier"
          value={draft.supplier}
          onChange={(supplier) => onChange({ ...draft, supplier })}
        />
        {item.kind !== 'needle' && (
          <TextField
            label="Dye lot"
            value={draft.dyeLot}
            onChange={(dyeLot) => onChange({ ...draft, dyeLot })}
          />
        )}
      </div>
    </fieldset>
  );
}

function draftFor(line: ToBuyLine, item: Item, { system, currency }: Settings): BoughtDraft {
  const { supplier, priceMinor, lengths, amount } = receiptOf(line, item);
  const length = (mm: number, unit: typeof clothLengthUnit | typeof clothWidthUnit) =>
    draftOf(mm, showQuantity('length', mm, { system, unit }));
  return {
    item,
    line,
    supplier,
    dyeLot: '',
    price: draftOf(priceMinor, moneyNumber(priceMinor, currency)),
    amount: amount === null ? emptyDraft : draftOf(amount, amountText(item.kind, amount, system)),
    width: lengths ? length(lengths.widthMm, clothWidthUnit) : emptyDraft,
    along: lengths ? length(lengths.lengthMm, clothLengthUnit) : emptyDraft,
    count: draftOf(lengths?.count ?? 1, `${lengths?.count ?? 1}`),
    form: lengths?.form ?? 'cut',
  };
}

/** What is sent for one purchase, or everything that is missing or cannot be read. */
function lotOf(draft: BoughtDraft, receivedOn: string): Result<CallInput<'receiveLots'>['lots'][number]> {
  const { item, line, price, amount, width, along, count } = draft;
  const { hasLengths } = kindRecords[item.kind];
  const measures = hasLengths
    ? ([
        ['Width', width],
        ['Length', along],
        ['Number', count],
      ] as const)
    : ([['Amount', amount]] as const);
  const fields = [...measures, ['Price', price] as const];
  const problems = [
    ...misreadProblems(
      item.name,
      fields.map(([, field]) => field),
    ),
    ...fields.flatMap(([what, field]) =>
      field.value === null && field.misread === null
        ? [{ where: `${what} of ${item.name}`, what: 'is missing', fix: 'Type it; a price of 0 is a gift.' }]
        : [],
    ),
  ];
  if (problems.length > 0 || price.value === null) return err(...problems);
  const lot = {
    itemId: item.id,
    receivedOn,
    supplier: draft.supplier.trim(),
    dyeLot: draft.dyeLot.trim(),
    priceMinor: price.value,
    amount: hasLengths ? null : amount.value,
    lengths: hasLengths
      ? [
          {
            widthMm: width.value ?? 0,
            lengthMm: along.value ?? 0,
            form: draft.form,
            flaws: [],
            count: count.value ?? 1,
          },
        ]
      : [],
  };
  return ok({ offerId: line.offer.id, lot });
}
