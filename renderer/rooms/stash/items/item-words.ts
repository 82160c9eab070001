/** Lots, lengths and the ledger in words. */
import { say } from '../../../../shared-core/wording/say.ts';
import { codeWords } from '../../../../shared-core/wording/code-words.ts';
import { dayWords } from '../../../../shared-core/measure/calendar-date.ts';
import { usableWidthMm } from '../../../../shared-core/lay/plan-lay.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { showTyped } from '../../../../shared-core/measure/typed.ts';
import type { FieldUnit } from '../../../../shared-core/measure/units.ts';
import type { FactField } from '../../../../shared-core/stash/fact-field.ts';
import { factFields, type ItemKind } from '../../../../shared-core/stash/kinds.ts';
import {
  fromMilli,
  type Item,
  type Length,
  type LengthOnShelf,
  type LotOnShelf,
  type Movement,
} from '../../../../shared-core/stash/stash.ts';
import { amountText, clothLengthUnit, clothWidthUnit } from '../../../parts/figures/Amount.tsx';

export const formWords: Readonly<Record<Length['form'], string>> = {
  roll: say('item-words.roll'),
  cut: say('item-words.cut-length'),
  remnant: say('item-words.remnant'),
  sheet: say('item-words.sheet'),
};

export const formOptions = (Object.keys(formWords) as Length['form'][]).map((form) => ({
  value: form,
  label: formWords[form],
}));

/** The unit in which a fact is typed and shown: widths of cloth in cm, else as the quantity has it. */
export function factUnit(kind: ItemKind, factName: string): FieldUnit | undefined {
  const isClothSize = factName === 'widthMm' || factName === 'sheetLengthMm';
  return isClothSize && (kind === 'cloth' || kind === 'batting') ? clothWidthUnit : undefined;
}

/** A fact as the maker typed it, or shown anew; null where it is not known. */
export function factText(
  item: Item,
  factName: string,
  field: FactField,
  system: MeasureSystem,
): string | null {
  const value = (item.facts as Readonly<Record<string, unknown>>)[factName] ?? null;
  if (value === null || value === '') return null;
  switch (field.kind) {
    case 'quantity': {
      const unit = factUnit(item.kind, factName);
      return showTyped(field.quantity, value as number, item.typed[factName], {
        system,
        ...(unit && { unit }),
      });
    }
    case 'flag':
      return codeWords(value === true ? 'yes' : 'no');
    case 'choice':
      return codeWords(String(value));
    case 'text':
      return String(value);
    default:
      return field satisfies never;
  }
}

/** Label and text of each fact that is known, in the order of the form; behind the selvage what lies between both. */
export function knownFacts(item: Item, system: MeasureSystem): { label: string; text: string }[] {
  return factFields(item.kind).flatMap(([factName, field]) => {
    const text = factText(item, factName, field, system);
    if (text === null) return [];
    const fact = { label: field.label, text };
    if (factName !== 'selvageMm' || item.kind !== 'cloth' || item.facts.widthMm === null) return [fact];
    return [
      fact,
      {
        label: say('item-words.usable-width'),
        text: widthText(usableWidthMm(item.facts.widthMm, item), system),
      },
    ];
  });
}

export function widthText(valueMm: number, system: MeasureSystem): string {
  return showQuantity('length', valueMm, { system, unit: clothWidthUnit });
}

/** The width of a length: as it was typed for its item, where it is as wide as that. */
function lengthWidthText(length: LengthOnShelf, item: Item, system: MeasureSystem): string {
  const isAsItem =
    (item.kind === 'cloth' || item.kind === 'batting') && item.facts.widthMm === length.widthMm;
  return showTyped('length', length.widthMm, isAsItem ? item.typed.widthMm : undefined, {
    system,
    unit: clothWidthUnit,
  });
}

/** "Roll, 14 m x 147 cm" with a real times sign. */
export function lengthText(length: LengthOnShelf, item: Item, system: MeasureSystem): string {
  const along = showQuantity('length', length.onHandMm, { system, unit: clothLengthUnit });
  const washed = length.isWashed ? say('common.washed') : '';
  return `${formWords[length.form]}, ${along} × ${lengthWidthText(length, item, system)}${washed}`;
}

/** "14 Apr 2026, dye lot P-2207". */
export function lotText(lot: LotOnShelf): string {
  return [
    dayWords(lot.receivedOn),
    lot.dyeLot === '' ? null : say('item-words.dye-lot', { dyeLot: lot.dyeLot }),
  ]
    .filter((word) => word !== null)
    .join(', ');
}

/** What a movement did: "received 14 m"; planName: what the plan it belongs to is called, if it has one. */
export function movementText(
  movement: Movement,
  kind: ItemKind,
  system: MeasureSystem,
  planName: string | null,
): string {
  const moved = (amountMilli: number) => amountText(kind, fromMilli(Math.abs(amountMilli)), system);
  const forPlan = planName === null ? '' : ` ${say('item-words.for', { planName })}`;
  switch (movement.kind) {
    case 'received':
      return say('item-words.received', { moved: moved(movement.onHandMilli) });
    case 'reserved':
      return say('item-words.set-aside', { moved: moved(movement.reservedMilli), forPlan });
    case 'released':
      return say('item-words.released-that-was-set-aside', { moved: moved(movement.reservedMilli), forPlan });
    case 'cut':
      return `${kind === 'cloth' || kind === 'batting' ? say('common.cut') : say('item-words.used')} ${moved(movement.onHandMilli)}${forPlan}`;
    case 'returned':
      return say('item-words.returned-to-the-shelf', { moved: moved(movement.onHandMilli), forPlan });
    case 'reversed':
      return `${movement.onHandMilli < 0 ? say('item-words.took-off') : say('item-words.put-back')} ${moved(movement.onHandMilli)}${forPlan}`;
    case 'corrected':
      return say('item-words.counted-more-than-was-booked', {
        moved: moved(movement.onHandMilli),
        ifOnHandMilli: movement.onHandMilli < 0 ? 'yes' : 'no',
      });
    case 'written off':
      return say('item-words.wrote-off', { moved: moved(movement.onHandMilli) });
    default:
      return movement.kind satisfies never;
  }
}
