/** The facts of an item while they are being typed, and which of them a form asks for first. */
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { showTyped } from '../../../../shared-core/measure/typed.ts';
import { withUnit } from '../../../../shared-core/measure/with-unit.ts';
import type { FactField } from '../../../../shared-core/stash/fact-field.ts';
import { factFields, type FactsOf, type ItemKind } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { draftOf, emptyDraft, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';
import { factUnit } from './item-words.ts';

/** Every fact a field may hold, of whatever kind: a quantity being typed, a text or choice, yes or no. */
export interface FactDrafts {
  readonly quantities: Readonly<Record<string, QuantityDraft>>;
  readonly words: Readonly<Record<string, string>>;
  readonly flags: Readonly<Record<string, boolean>>;
}

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

export function isMisread([factName]: NamedField, drafts: FactDrafts): boolean {
  return (drafts.quantities[factName] ?? emptyDraft).misread !== null;
}

/** Whether anything stands in the field, be it readable or not. */
export function isFilled([factName, field]: NamedField, drafts: FactDrafts): boolean {
  switch (field.kind) {
    case 'quantity':
      return (drafts.quantities[factName] ?? emptyDraft).text !== '' || isMisread([factName, field], drafts);
    case 'flag':
      return drafts.flags[factName] !== undefined;
    case 'choice':
    case 'text':
      return (drafts.words[factName] ?? '').trim() !== '';
    default:
      return field satisfies never;
  }
}

export function draftsOf(item: Item | null, system: MeasureSystem): FactDrafts {
  const quantities: Record<string, QuantityDraft> = {};
  const words: Record<string, string> = {};
  const flags: Record<string, boolean> = {};
  if (!item) return { quantities, words, flags };
  for (const [factName, field] of factFields(item.kind)) {
    const value =
      (item.facts as Readonly<Record<string, number | string | boolean | null>>)[factName] ?? null;
    if (value === null) continue;
    if (field.kind === 'quantity') {
      const unit = factUnit(item.kind, factName);
      const text = showTyped(field.quantity, Number(value), item.typed[factName], {
        system,
        ...(unit && { unit }),
      });
      quantities[factName] = draftOf(Number(value), text);
    } else if (field.kind === 'flag') flags[factName] = value === true;
    else words[factName] = String(value);
  }
  return { quantities, words, flags };
}

/** The facts of the chosen kind as they are saved, with what was typed for each quantity. */
export function factsOf(kind: ItemKind, drafts: FactDrafts, system: MeasureSystem) {
  const facts: Record<string, number | string | boolean | null> = {};
  const typed: Record<string, string> = {};
  for (const [factName, field] of factFields(kind)) {
    switch (field.kind) {
      case 'quantity': {
        const draft = drafts.quantities[factName] ?? emptyDraft;
        facts[factName] = draft.value;
        if (draft.value !== null)
          typed[factName] = withUnit(field.quantity, draft.text, system, factUnit(kind, factName));
        break;
      }
      case 'flag':
        facts[factName] = drafts.flags[factName] ?? null;
        break;
      case 'choice':
      case 'text':
        facts[factName] = drafts.words[factName]?.trim() || null;
        break;
      default:
        field satisfies never;
    }
  }
  return { facts, typed };
}
