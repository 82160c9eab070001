/** What stands in the form of an item, and what is sent. */
import { z } from 'zod';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Result } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { type ItemKind, itemKinds } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import type { Units } from '../../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../../parts/forms/typed-form.ts';
import {
  emptyFirstLot,
  firstLotIn,
  firstLotSchema,
  type ReadFirstLot,
  type TypedFirstLot,
} from '../lots/first-lot.ts';
import { factsOfItem, factsSchema, type ReadFacts, type TypedFacts, typedQuantities } from './fact-fields.ts';

export interface TypedItem {
  kind: ItemKind;
  name: string;
  colour: string;
  place: string;
  notes: string;
  facts: TypedFacts;
  firstLot: TypedFirstLot;
}

export interface ReadItemForm extends Omit<TypedItem, 'facts' | 'firstLot'> {
  readonly facts: ReadFacts;
  /** Null for an item that is there already. */
  readonly firstLot: ReadFirstLot | null;
}

/** item: null for a new one. */
export function itemForm(item: Item | null, today: string, units: Units): FormShape<TypedItem, ReadItemForm> {
  const { typed: facts, shown } = factsOfItem(item, item ? [item.kind] : itemKinds, units.system);
  return {
    start: {
      kind: item?.kind ?? 'cloth',
      name: item?.name ?? '',
      colour: item?.colour ?? '',
      place: item?.place ?? '',
      notes: item?.notes ?? '',
      facts,
      firstLot: emptyFirstLot(today),
    },
    schema: ({ kind }) =>
      z.object({
        kind: z.enum(itemKinds as readonly [ItemKind, ...ItemKind[]]),
        name: z.string(),
        colour: z.string(),
        place: z.string(),
        notes: z.string(),
        facts: factsSchema(kind, shown, units),
        firstLot: item ? noFirstLot : firstLotSchema(kind, units),
      }),
  };
}

const noFirstLot: z.ZodType<null, TypedFirstLot> = z.custom<TypedFirstLot>().transform(() => null);

/** What is sent for an item, or what is missing. */
export function itemCall(
  itemId: string | null,
  read: ReadItemForm,
  typed: TypedItem,
  system: MeasureSystem,
): Result<CallInput<'saveItem'>> {
  const { kind, name, colour, place, notes, facts } = read;
  const widthMm = typeof facts.widthMm === 'number' ? facts.widthMm : null;
  const firstLot = read.firstLot ? firstLotIn(kind, widthMm, read.firstLot) : ok(null);
  if (!firstLot.ok) return firstLot;
  return ok({
    itemId,
    kind,
    name,
    colour,
    place,
    notes,
    facts,
    typed: typedQuantities(kind, facts, typed.facts, system),
    ...(firstLot.value && { firstLot: firstLot.value }),
  });
}
