/**
 * Every unit that a maker may type or see, with its exact factor as a quotient of whole numbers, so that
 * 4 1/2 in is 114.3 mm and not a little less. Sources of the factors: the yard and pound agreement of 1959
 * (1 in = 25.4 mm, 1 lb = 453.59237 g); thread counts by their definitions (tex = g per 1,000 m).
 */
import { type MessageId, say } from '../wording/say.ts';
import type { MeasureSystem, QuantityKind } from './quantity.ts';

export interface Unit {
  readonly kind: QuantityKind;
  /** As shown in English: "in", "g/m²"; `unitSymbol` gives the spoken one. */
  readonly symbol: string;
  /** Value inside = n x times / over; for a reciprocal unit times / (over x n). */
  readonly times: number;
  readonly over: number;
  readonly form: 'after number' | 'before number';
  /** Counts such as Nm, where more means finer. */
  readonly reciprocal: boolean;
  /** Is shown in halves, quarters, eighths ... rather than decimals. */
  readonly fractions: boolean;
  /** As typed in any language spoken here, in lower case without spaces, dots and carets. */
  readonly spellings: readonly string[];
}

type UnitExtra = Partial<Pick<Unit, 'form' | 'reciprocal' | 'fractions'>>;

function unit(
  kind: QuantityKind,
  symbol: string,
  times: number,
  over: number,
  spellings: readonly string[],
  extra: UnitExtra = {},
): Unit {
  return {
    kind,
    symbol,
    times,
    over,
    form: extra.form ?? 'after number',
    reciprocal: extra.reciprocal ?? false,
    fractions: extra.fractions ?? false,
    spellings,
  };
}

const mm = ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'millis'];
const cm = ['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'zentimeter'];
const m = ['m', 'metre', 'metres', 'meter', 'meters', 'mtr', 'mtrs'];
const km = ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers'];
const inch = ['in', 'ins', 'inch', 'inches', 'zoll', '"'];
const foot = ['ft', 'foot', 'feet', 'fuß', 'fuss', "'"];
const yard = ['yd', 'yds', 'yard', 'yards'];
const gram = ['g', 'gr', 'gram', 'grams', 'gramme', 'grammes', 'gramm', 'gm', 'gms'];
const ounce = ['oz', 'ozs', 'ounce', 'ounces', 'unze', 'unzen'];
const minute = ['min', 'mins', 'minute', 'minutes', 'minuten'];

function squared(names: readonly string[]): string[] {
  return names.flatMap((name) => [
    `${name}2`,
    `sq${name}`,
    `square${name}`,
    `quadrat${name}`,
    `${name}sq`,
    `${name}squared`,
  ]);
}

function cubed(names: readonly string[]): string[] {
  return names.flatMap((name) => [`${name}3`, `cu${name}`, `cubic${name}`, `kubik${name}`, `${name}cubed`]);
}

function per(tops: readonly string[], bottoms: readonly string[]): string[] {
  return tops.flatMap((top) =>
    bottoms.flatMap((bottom) => ['/', 'per', 'pera', 'pro', 'je'].map((sign) => `${top}${sign}${bottom}`)),
  );
}

/** A height with the mass of its sample or the name of its method: "mm/20 g", "mm EN 12130", "mm (EN 12130)". */
function heights(masses: readonly string[], method: string): string[] {
  const named = [method, `(${method})`, `,${method}`];
  return [...per(mm, masses), ...mm.flatMap((name) => named.map((each) => `${name}${each}`))];
}

const before: UnitExtra = { form: 'before number' };
const finer: UnitExtra = { form: 'before number', reciprocal: true };

const table = {
  mm: unit('length', 'mm', 1, 1, mm),
  cm: unit('length', 'cm', 10, 1, cm),
  m: unit('length', 'm', 1000, 1, m),
  in: unit('length', 'in', 127, 5, inch, { fractions: true }),
  ft: unit('length', 'ft', 1524, 5, foot, { fractions: true }),
  yd: unit('length', 'yd', 4572, 5, yard, { fractions: true }),
  ligne: unit('length', 'ligne', 127, 200, ['ligne', 'lignes']),

  mm2: unit('area', 'mm²', 1, 1, squared(mm)),
  cm2: unit('area', 'cm²', 100, 1, squared(cm)),
  m2: unit('area', 'm²', 1_000_000, 1, [...squared(m), 'qm']),
  in2: unit('area', 'in²', 16_129, 25, squared(inch)),
  ft2: unit('area', 'ft²', 2_322_576, 25, squared(foot)),
  yd2: unit('area', 'yd²', 20_903_184, 25, squared(yard)),

  cm3: unit('volume', 'cm³', 1, 1, [
    ...cubed(cm),
    'cc',
    'ccm',
    'ml',
    'millilitre',
    'millilitres',
    'milliliter',
    'milliliters',
  ]),
  L: unit('volume', 'L', 1000, 1, ['l', 'litre', 'litres', 'liter', 'liters', ...cubed(['dm'])]),
  in3: unit('volume', 'in³', 2_048_383, 125_000, [...cubed(inch), 'cuins', 'ci']),
  ft3: unit('volume', 'ft³', 1_769_802_912, 62_500, cubed(foot)),

  g: unit('mass', 'g', 1, 1, gram),
  kg: unit('mass', 'kg', 1000, 1, [
    'kg',
    'kgs',
    'kilo',
    'kilos',
    'kilogram',
    'kilograms',
    'kilogramme',
    'kilogrammes',
    'kilogramm',
  ]),
  oz: unit('mass', 'oz', 45_359_237, 1_600_000, ounce),
  lb: unit('mass', 'lb', 45_359_237, 100_000, ['lb', 'lbs', 'pound', 'pounds']),

  gPerM2: unit('arealMass', 'g/m²', 1, 1, [...per(gram, squared(m)), 'gsm', 'gm2', ...gram]),
  ozPerYd2: unit('arealMass', 'oz/yd²', 28_349_523_125, 836_127_360, [
    ...per(ounce, squared(yard)),
    'osy',
    'opsy',
    ...ounce,
  ]),

  cm3PerG: unit('fillPower', 'cm³/g', 1, 1, per([...cubed(cm), 'cc', 'ccm', 'ml'], gram)),
  in3PerOz: unit('fillPower', 'in³/oz', 16_387_064_000, 28_349_523_125, [
    ...per([...cubed(inch), 'ci'], ounce),
    ...cubed(inch),
    'ci',
    'fp',
    'fill',
    'fillpower',
    'cuins',
  ]),
  in3Per30G: unit('fillPower', 'in³/30 g', 2_048_383, 3_750_000, per(cubed(inch), ['30g', '30grams'])),

  // The height that down stands at in a cylinder of 289 mm, as both methods have it: its area over the sample's mass.
  mmPer20G: unit('fillPower', 'mm/20 g', 655_972, 200_000, heights(['20g', '20grams'], 'en12130')),
  mmPer30G: unit('fillPower', 'mm/30 g', 655_972, 300_000, heights(['30g', '30grams'], 'idfb')),

  tex: unit('threadSize', 'tex', 1, 1, ['tex', 't', 't-'], before),
  dtex: unit('threadSize', 'dtex', 1, 10, ['dtex', 'decitex']),
  den: unit('threadSize', 'den', 1, 9, ['den', 'denier', 'deniers', 'd', 'td']),
  Tkt: unit('threadSize', 'Tkt', 3000, 1, ['tkt', 'ticket', 'ticketno'], finer),
  Nm: unit('threadSize', 'Nm', 1000, 1, ['nm'], finer),
  Ne: unit('threadSize', 'Ne', 453_592_370, 768_096, ['ne', 'nec'], finer),
  wt: unit('threadSize', 'wt', 1000, 1, ['wt', 'weight'], {
    reciprocal: true,
  }),

  threadM: unit('threadLength', 'm', 1, 1, m),
  threadKm: unit('threadLength', 'km', 1000, 1, km),
  threadYd: unit('threadLength', 'yd', 1143, 1250, yard),
  threadFt: unit('threadLength', 'ft', 381, 1250, foot),

  percent: unit('ratio', '%', 1, 100, ['%', 'percent', 'pct', 'pc', 'prozent']),
  fold: unit('ratio', '×', 1, 1, ['x', '×', 'times', 'mal', 'fach']),

  pcs: unit('count', 'pcs', 1, 1, [
    'pc',
    'pcs',
    'piece',
    'pieces',
    'pce',
    'pces',
    'ea',
    'each',
    'off',
    'stk',
    'stck',
    'st',
    'stück',
    'stücke',
    'stueck',
    'teil',
    'teile',
    'x',
    '×',
  ]),
  dozen: unit('count', 'dozen', 12, 1, ['dozen', 'dozens', 'doz', 'dz', 'dutzend', 'dtzd']),
  gross: unit('count', 'gross', 144, 1, ['gross', 'gros']),

  money: unit('money', '', 1, 1, [], before),

  NM: unit('needleSize', 'NM', 1, 1, ['nm'], before),

  min: unit('duration', 'min', 1, 1, minute),
  h: unit('duration', 'h', 60, 1, ['h', 'hr', 'hrs', 'hour', 'hours', 'std', 'stunde', 'stunden']),
  s: unit('duration', 's', 1, 60, ['s', 'sec', 'secs', 'second', 'seconds', 'sek', 'sekunde', 'sekunden']),

  // 1 clo is 0.155 m2 K/W and 1 tog 0.1, by their definitions.
  clo: unit('warmth', 'clo', 1, 1, ['clo']),
  tog: unit('warmth', 'tog', 20, 31, ['tog', 'togs']),
  m2KPerW: unit('warmth', 'm²K/W', 200, 31, ['m2k/w', 'km2/w']),
} as const;

export type UnitId = keyof typeof table;

export const units: Readonly<Record<UnitId, Unit>> = table;

/** One unit for both systems, or one for each: a cloth's length may be { metric: 'm', imperial: 'yd' }. */
export type FieldUnit = UnitId | { readonly metric: UnitId; readonly imperial: UnitId };

const bare: Readonly<Record<QuantityKind, { readonly metric: UnitId; readonly imperial: UnitId }>> = {
  length: { metric: 'mm', imperial: 'in' },
  area: { metric: 'm2', imperial: 'yd2' },
  volume: { metric: 'cm3', imperial: 'in3' },
  mass: { metric: 'g', imperial: 'oz' },
  arealMass: { metric: 'gPerM2', imperial: 'ozPerYd2' },
  fillPower: { metric: 'in3PerOz', imperial: 'in3PerOz' },
  threadSize: { metric: 'tex', imperial: 'tex' },
  threadLength: { metric: 'threadM', imperial: 'threadYd' },
  ratio: { metric: 'percent', imperial: 'percent' },
  count: { metric: 'pcs', imperial: 'pcs' },
  money: { metric: 'money', imperial: 'money' },
  needleSize: { metric: 'NM', imperial: 'NM' },
  duration: { metric: 'min', imperial: 'min' },
  warmth: { metric: 'clo', imperial: 'clo' },
};

/** The unit that a field names, checked: a unit of another kind is a programmer's mistake and throws. */
export function fieldUnit(kind: QuantityKind, system: MeasureSystem, field: FieldUnit): UnitId {
  const id = typeof field === 'string' ? field : field[system];
  if (units[id].kind !== kind) throw new RangeError(`${id} is not a unit of ${kind}`);
  return id;
}

/** The unit that a bare number takes, where the field names none: in3/oz for a fill power in both systems. */
export function bareUnit(kind: QuantityKind, system: MeasureSystem): UnitId {
  return bare[kind][system];
}

/** n of a unit in the kind's unit inside. For reciprocal units (Tkt, Nm, Ne, wt) n must not be 0. */
export function fromUnit(id: UnitId, n: number): number {
  const { times, over, reciprocal } = units[id];
  return reciprocal ? times / (over * n) : (n * times) / over;
}

/** A value inside, in a unit. Unrounded. */
export function inUnit(id: UnitId, value: number): number {
  const { times, over, reciprocal } = units[id];
  return reciprocal ? times / (over * value) : (value * over) / times;
}

/** Symbols that are words, and so differ between languages. */
const spokenSymbols: Partial<Record<UnitId, MessageId>> = {
  pcs: 'units.pcs',
  dozen: 'units.dozen',
  gross: 'units.gross',
};

/** The unit as the spoken language shows it: "in", "g/m²", "pcs" or "Stk". */
export function unitSymbol(id: UnitId): string {
  const spoken = spokenSymbols[id];
  return spoken ? say(spoken) : units[id].symbol;
}

const spelled = new Map<string, UnitId>();
for (const [id, { kind, spellings }] of Object.entries(units)) {
  for (const spelling of spellings) spelled.set(`${kind} ${spelling}`, id as UnitId);
}

/** Lower case without spaces, dots and carets: "Sq. Yd" as "sqyd". */
function plainSpelling(text: string): string {
  return text.toLowerCase().replace(/[\s.^]/g, '');
}

/** The unit of this kind that is spelled so, or undefined. */
export function unitSpelled(kind: QuantityKind, text: string): UnitId | undefined {
  return spelled.get(`${kind} ${plainSpelling(text)}`);
}

/** The first unit of any kind that is spelled so: to tell a maker that "5 kg" is no length. */
export function anyUnitSpelled(text: string): UnitId | undefined {
  const plain = plainSpelling(text);
  return (Object.keys(units) as UnitId[]).find((id) => units[id].spellings.includes(plain));
}
