/**
 * Shows a value inside as a maker reads it: rounded once, here, with its unit, and never as zero when it is not.
 * No thousands are grouped, so that whatever is shown can be typed again.
 */
import { withDecimalSign } from '../wording/number-signs.ts';
import { moneyNumber, showMoney } from './money/money.ts';
import type { MeasureSystem, QuantityKind } from './quantity.ts';
import { needleSizes } from './read-sizes.ts';
import { type FieldUnit, fieldUnit, inUnit, type UnitId, unitSymbol, units } from './units.ts';

export interface ShowOptions {
  readonly system: MeasureSystem;
  /** The unit to show in; where absent it goes by the size of the value. */
  readonly unit?: FieldUnit;
  /** Decimal places, kept even where they are zeros; no fractions then. */
  readonly digits?: number;
  /** Rounds to a multiple of this, in the unit shown: 1/8 gives "2 1/8 yd". */
  readonly step?: number;
  /** For money, where it must be given: it says how many decimal places there are. */
  readonly currency?: string;
}

export interface ShownParts {
  readonly number: string;
  readonly unit: string;
}

/** "1.47 m", "115 mm", "4 1/2 in", "2 1/8 yd", "Tkt 75", "NM 80/12". A value that is not finite throws. */
export function showQuantity(kind: QuantityKind, value: number, options: ShowOptions): string {
  if (kind === 'money') return showMoney(minor(value), options.currency ?? '');
  const { number, unit } = showParts(kind, value, options);
  if (unit === '') return number;
  if (leads(kind, value, options)) return `${unit} ${number}`;
  return `${number} ${unit}`;
}

/** The same in two parts, for tables with an aligned column of numbers. */
export function showParts(kind: QuantityKind, value: number, options: ShowOptions): ShownParts {
  if (!Number.isFinite(value)) throw new RangeError(`not a ${kind} to show: ${value}`);
  if (kind === 'money') {
    const currency = options.currency ?? '';
    return { number: moneyNumber(minor(value), currency), unit: currency };
  }
  const shown = shownUnit(kind, value, options);
  const number = numberText(kind, shown, value, options);
  return { number: withDecimalSign(number), unit: unitSymbol(shown.id) };
}

/** Money is whole minor units already; anything else here is a programmer's mistake. */
function minor(value: number): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not an amount in minor units: ${value}`);
  return value;
}

function leads(kind: QuantityKind, value: number, options: ShowOptions): boolean {
  return units[shownUnit(kind, value, options).id].form === 'before number';
}

/** A unit with what it is rounded to: fractions of at most 1/parts, or decimals. */
interface Shown {
  readonly id: UnitId;
  readonly digits: number;
  /** 0 where decimals are shown. */
  readonly partCount: number;
}

const defaultDigits: Partial<Record<UnitId, number>> = {
  mm: 1,
  cm: 1,
  m: 2,
  in: 2,
  ft: 2,
  yd: 2,
  ligne: 1,
  mm2: 0,
  cm2: 1,
  m2: 2,
  in2: 1,
  ft2: 2,
  yd2: 2,
  cm3: 1,
  L: 2,
  in3: 1,
  ft3: 2,
  g: 1,
  kg: 3,
  oz: 2,
  lb: 2,
  gPerM2: 1,
  ozPerYd2: 2,
  cm3PerG: 1,
  in3PerOz: 0,
  in3Per30G: 0,
  mmPer20G: 0,
  mmPer30G: 0,
  tex: 1,
  dtex: 0,
  den: 0,
  Tkt: 0,
  Nm: 1,
  Ne: 1,
  wt: 0,
  threadM: 1,
  threadKm: 3,
  threadYd: 1,
  threadFt: 1,
  percent: 1,
  fold: 2,
  pcs: 0,
  dozen: 2,
  gross: 2,
  NM: 0,
  min: 1,
  h: 2,
  s: 0,
  clo: 2,
  tog: 2,
  m2KPerW: 3,
};

function shownUnit(kind: QuantityKind, value: number, options: ShowOptions): Shown {
  const id = options.unit
    ? fieldUnit(kind, options.system, options.unit)
    : unitBySize(kind, value, options.system);
  return { id, digits: defaultDigits[id] ?? 2, partCount: partCount(id, value, options) };
}

function partCount(id: UnitId, value: number, options: ShowOptions): number {
  if (options.digits !== undefined || !units[id].fractions) return 0;
  if (options.step !== undefined) {
    const parts = Math.round(1 / options.step);
    return [1, 2, 4, 8, 16, 32, 64].includes(parts) && Math.abs(parts * options.step - 1) < 1e-9 ? parts : 0;
  }
  const n = Math.abs(inUnit(id, value));
  if (id === 'in') return n < 12 ? 16 : 8;
  // An eighth of a yard is 114 mm: too coarse to hide a difference behind, so only what is an eighth is shown as one.
  return Math.abs(n * 8 - Math.round(n * 8)) < 0.01 ? 8 : 0;
}

function unitBySize(kind: QuantityKind, value: number, system: MeasureSystem): UnitId {
  const size = Math.abs(value);
  const metric = system === 'metric';
  switch (kind) {
    case 'length':
      if (metric) return size < 1000 ? 'mm' : 'm';
      return size < 1828.8 - 1e-6 ? 'in' : 'yd';
    case 'area':
      if (metric) return size < 1e5 ? 'cm2' : 'm2';
      return size < 836_127.36 - 1e-3 ? 'in2' : 'yd2';
    case 'volume':
      if (metric) return size < 1000 ? 'cm3' : 'L';
      return size < 28_316.8 ? 'in3' : 'ft3';
    case 'mass':
      if (metric) return size < 1000 ? 'g' : 'kg';
      return size < 453.592 ? 'oz' : 'lb';
    case 'arealMass':
      return metric ? 'gPerM2' : 'ozPerYd2';
    case 'fillPower':
      return metric ? 'cm3PerG' : 'in3PerOz';
    case 'threadSize':
      return 'tex';
    case 'threadLength':
      return metric ? 'threadM' : 'threadYd';
    case 'ratio':
      return 'percent';
    case 'count':
      return 'pcs';
    case 'money':
      return 'money';
    case 'needleSize':
      return 'NM';
    case 'duration':
      return size < 60 ? 'min' : 'h';
    case 'warmth':
      return 'clo';
    default:
      return kind satisfies never;
  }
}

function numberText(kind: QuantityKind, shown: Shown, value: number, options: ShowOptions): string {
  if (value === 0) return (0).toFixed(options.digits ?? 0);
  const n = inUnit(shown.id, value);
  if (shown.id === 'h' && options.digits === undefined && options.step === undefined) return clockText(value);
  if (shown.partCount > 0) {
    const count = roundHalfUp(n * shown.partCount);
    return count === 0 ? smallText(n) : fractionText(count, shown.partCount);
  }
  const size = kind === 'needleSize' ? needleSizes.find(({ nm }) => Math.abs(nm - n) < 1e-9) : undefined;
  if (size) return `${size.nm}/${size.us}`;
  return decimalText(n, shown.digits, options);
}

function decimalText(n: number, defaultDigits: number, { digits, step }: ShowOptions): string {
  const rounded = step === undefined ? n : roundHalfUp(n / step) * step;
  const places = digits ?? (step === undefined ? defaultDigits : placesOf(step));
  const scaled = roundHalfUp(rounded * 10 ** places);
  if (scaled === 0) return smallText(n);
  const text = (scaled / 10 ** places).toFixed(places);
  return digits === undefined ? withoutZeros(text) : text;
}

/** Half away from zero; a float's dust below the half still counts as the half. */
function roundHalfUp(n: number): number {
  return Math.sign(n) * Math.floor(Math.abs(n) * (1 + 1e-12) + 0.5);
}

/** As many places as the first digit that is not 0 needs. Below 1e-12 it is a float's dust: 0. */
function smallText(n: number): string {
  if (Math.abs(n) < 1e-12) return '0';
  const places = Math.min(15, Math.ceil(-Math.log10(Math.abs(n))) + 1);
  return withoutZeros(n.toFixed(places));
}

function placesOf(step: number): number {
  const text = step.toFixed(6).replace(/0+$/, '');
  return text.length - text.indexOf('.') - 1;
}

function withoutZeros(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function fractionText(count: number, partCount: number): string {
  const sign = count < 0 ? '-' : '';
  let top = Math.abs(count) % partCount;
  let bottom = partCount;
  const whole = (Math.abs(count) - top) / partCount;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${sign}${whole}`;
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole} ${top}/${bottom}`;
}

/** "1:30" of 90 minutes. */
function clockText(minutes: number): string {
  const whole = Math.round(Math.abs(minutes));
  return `${minutes < 0 ? '-' : ''}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
