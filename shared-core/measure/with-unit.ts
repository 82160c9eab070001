/** A bare number gets the unit that its field gave it, so that it stays true when the workshop changes its units. */
import type { MeasureSystem, QuantityKind } from './quantity.ts';
import { bareUnit, type FieldUnit, fieldUnit, unitSymbol } from './units.ts';

/** Whether a text is a number alone: "58", "4 1/2", "1,5". */
export function isBareNumber(text: string): boolean {
  return /^[\d\s.,/-]*\d[\d\s.,/-]*$/.test(text);
}

/** Symbol of the unit that a bare number takes in a field; '' for numbers of things and money, which show none. */
export function bareSymbol(kind: QuantityKind, system: MeasureSystem, unit?: FieldUnit): string {
  if (kind === 'count' || kind === 'money' || kind === 'needleSize') return '';
  return unitSymbol(unit ? fieldUnit(kind, system, unit) : bareUnit(kind, system));
}

/** "58" typed where a bare number is in inches as "58 in"; any other text as it was typed, without the blanks around it. */
export function withUnit(kind: QuantityKind, text: string, system: MeasureSystem, unit?: FieldUnit): string {
  const typed = text.trim();
  const symbol = isBareNumber(typed) ? bareSymbol(kind, system, unit) : '';
  return symbol === '' ? typed : `${typed} ${symbol}`;
}
