/** The first purchase of a new item while it is being typed. */
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import { type ItemKind, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Length } from '../../../../shared-core/stash/stash.ts';
import { draftOf, emptyDraft, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';

export interface FirstLotDraft {
  /** How long the piece is, or how much there is of what has no lengths. */
  readonly amount: QuantityDraft;
  readonly form: Length['form'];
  readonly count: QuantityDraft;
  readonly price: QuantityDraft;
  readonly supplier: string;
  readonly dyeLot: string;
  readonly receivedOn: string;
}

export type FirstLot = NonNullable<CallInput<'saveItem'>['firstLot']>;

export function emptyFirstLot(today: string): FirstLotDraft {
  return {
    amount: emptyDraft,
    form: 'roll',
    count: draftOf(1, '1'),
    price: emptyDraft,
    supplier: '',
    dyeLot: '',
    receivedOn: today,
  };
}

export function draftsOfFirstLot({ amount, count, price }: FirstLotDraft): QuantityDraft[] {
  return [amount, count, price];
}

/** What is sent, null where nothing was typed; widthMm: that of the item. */
export function readFirstLot(
  kind: ItemKind,
  widthMm: number | null,
  draft: FirstLotDraft,
): Result<FirstLot | null> {
  const { amount, count, price, form, receivedOn } = draft;
  const [supplier, dyeLot] = [draft.supplier.trim(), draft.dyeLot.trim()];
  if (amount.value === null && price.value === null && supplier === '' && dyeLot === '') return ok(null);
  const { hasLengths } = kindRecords[kind];
  const problems: Problem[] = [];
  const needed = (value: number | null, where: string, fix: string): number => {
    if (value === null) problems.push({ where, what: 'is missing', fix });
    return value ?? Number.NaN;
  };
  const orNone = 'Where nothing of it is here yet, empty the other fields of the purchase.';
  const amountValue = needed(
    amount.value,
    hasLengths ? 'Length' : 'Amount',
    `${hasLengths ? 'Type how long it is.' : 'Type how much came in.'} ${orNone}`,
  );
  const priceMinor = needed(
    price.value,
    'Price of the lot',
    `Type what was paid for all of it; 0 for a gift. ${orNone}`,
  );
  const lengths = hasLengths
    ? [
        {
          widthMm: needed(widthMm, 'Width', 'Type it: what comes in lies on the shelf as wide as that.'),
          lengthMm: amountValue,
          form,
          flaws: [],
          count: needed(count.value, 'How many', 'Type how many pieces of that length there are.'),
        },
      ]
    : [];
  if (problems.length > 0) return err(...problems);
  return ok({
    receivedOn,
    supplier,
    dyeLot,
    priceMinor,
    amount: hasLengths ? null : amountValue,
    lengths,
  });
}
