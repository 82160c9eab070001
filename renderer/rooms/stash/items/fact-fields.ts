/** The facts of an item in its form: as text, choice or yes and no, and which of them are asked for first. */
import { z } from 'zod';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { showTyped } from '../../../../shared-core/measure/typed.ts';
import { withUnit } from '../../../../shared-core/measure/with-unit.ts';
import type { FactField } from '../../../../shared-core/stash/fact-field.ts';
import { factFields, type FactsOf, type ItemKind } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { quantityText, type Shown, type Units } from '../../../parts/forms/quantity-text.ts';
import { factUnit } from './item-words.ts';

/** By the name of the fact: what is typed or chosen; a flag is "yes", "no" or, where it is not known, "". */
export type TypedFacts = Record<string, string>;

export type NamedField = readonly [factName: string, field: FactField];

/** What a coat cannot do without: all that is required, and what decides lays, fills and counts. */
const firstNames: { readonly [Kind in ItemKind]: readonly (keyof FactsOf<Kind>)[] } = {
  cloth: ['widthMm', 'hasNap'],
  batting: ['widthMm', 'sheetLengthMm', 'loftMm'],
  fill: ['fillPowerCm3PerG'],
  thread: ['sizeTex', 'spoolM'],
  needle: ['sizeNm', 'point'],
  fastening: ['form', 'lengthMm'],
};

/** The fields of a kind: those that are asked for first, and the others, what is yes or no after what is typed. */
export function fieldsInOrder(kind: ItemKind): {
  readonly first: readonly NamedField[];
  readonly others: readonly NamedField[];
} {
  const names: readonly string[] = firstNames[kind];
  const isFirst = ([factName, field]: NamedField) => field.required || names.includes(factName);
  const fields = factFields(kind);
  const others = fields.filter((field) => !isFirst(field));
  return {
    first: fields.filter(isFirst),
    others: [
      ...others.filter(([, field]) => field.kind !== 'flag'),
      ...others.filter(([, field]) => field.kind === 'flag'),
    ],
  };
}

/** A fact that is a quantity, as its field asks for it. */
export function factAsked(
  kind: ItemKind,
  factName: string,
  field: Extract<FactField, { kind: 'quantity' }>,
): QuantityAsked {
  return { label: field.label, quantity: field.quantity, unit: factUnit(kind, factName) };
}

/** What stands in the fields of an item at first; '' where nothing is known, so that every kind has its fields. */
export function factsOfItem(item: Item | null, kinds: readonly ItemKind[], system: MeasureSystem) {
  const typed: TypedFacts = {};
  const shown: Record<string, Shown> = {};
  for (const kind of kinds) for (const [factName] of factFields(kind)) typed[factName] = '';
  if (!item) return { typed, shown };
  const facts = item.facts as Readonly<Record<string, number | string | boolean | null>>;
  for (const [factName, field] of factFields(item.kind)) {
    const value = facts[factName] ?? null;
    if (value === null) continue;
    if (field.kind === 'quantity') {
      const unit = factUnit(item.kind, factName);
      const text = showTyped(field.quantity, Number(value), item.typed[factName], {
        system,
        ...(unit && { unit }),
      });
      shown[factName] = { value: Number(value), text };
      typed[factName] = text;
    } else if (field.kind === 'flag') typed[factName] = value === true ? 'yes' : 'no';
    else typed[factName] = String(value);
  }
  return { typed, shown };
}

export type ReadFacts = Record<string, number | string | boolean | null>;

/** Reads the facts of one kind; what stands in fields of other kinds is no matter. */
export function factsSchema(
  kind: ItemKind,
  shown: Readonly<Record<string, Shown>>,
  units: Units,
): z.ZodType<ReadFacts, TypedFacts> {
  const read = ([factName, field]: NamedField): z.ZodType<ReadFacts[string], string> => {
    switch (field.kind) {
      case 'quantity':
        return quantityText(factAsked(kind, factName, field), units, shown[factName]);
      case 'flag':
        return z.string().transform((word) => (word === '' ? null : word === 'yes'));
      case 'choice':
      case 'text':
        return z.string().transform((word) => word.trim() || null);
      default:
        return field satisfies never;
    }
  };
  return z.object(Object.fromEntries(factFields(kind).map((named) => [named[0], read(named)])));
}

/** What was typed for each quantity that is known, with its unit. */
export function typedQuantities(
  kind: ItemKind,
  facts: ReadFacts,
  texts: TypedFacts,
  system: MeasureSystem,
): Record<string, string> {
  const typed: Record<string, string> = {};
  for (const [factName, field] of factFields(kind)) {
    if (field.kind !== 'quantity' || facts[factName] === null) continue;
    const text = (texts[factName] ?? '').trim();
    typed[factName] = withUnit(field.quantity, text, system, factUnit(kind, factName));
  }
  return typed;
}
