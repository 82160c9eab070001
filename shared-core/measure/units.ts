/**
 * Every unit that a maker may type or see, with its exact factor as a quotient of whole numbers, so that
 * 4 1/2 in is 114.3 mm and not a little less. Sources of the factors: the yard and pound agreement of 1959
 * (1 in = 25.4 mm, 1 lb = 453.59237 g); thread counts by their definitions (tex = g per 1,000 m).
 */
import type { MeasureSystem, QuantityKind } from './quantity.ts';

export interface Unit {
  readonly kind: QuantityKind;
  /** As shown: "in", "g/m²". */
  readonly symbol: string;
  readonly one: string;
  readonly many: string;
  /** Value inside = n x times / over; for a reciprocal unit times / (over x n). */
  readonly times: number;
  readonly over: number;
  readonly form: 'after number' | 'before number';
  /** Counts such as Nm, where more means finer. */
  readonly reciprocal: boolean;
  /** Is shown in halves, quarters, eighths ... rather than decimals. */
  readonly fractions: boolean;
  /** As typed, in lower case without spaces, dots and carets. */
  readonly spellings: readonly string[];
}

type UnitExtra = Partial<Pick<Unit, 'form' | 'reciprocal' | 'fractions' | 'one' | 'many'>>;

function unit(
  kind: QuantityKind,
  symbol: string,
  times: number,
  over: number,
  spellings: readonly string[],
  extra: UnitExtra = {},
): Unit {
  const one = extra.one ?? symbol;
  return {
    kind,
    symbol,
    one,
    many: extra.many ?? `${one}s`,
    times,
    over,
    form: extra.form ?? 'after number',
    reciprocal: extra.reciprocal ?? false,
    fractions: extra.fractions ?? false,
    spellings,
  };
}

const mm = ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'millis'];
const cm = ['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters'];
const m = ['m', 'metre', 'metres', 'meter', 'meters', 'mtr', 'mtrs'];
const km = ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers'];
const inch = ['in', 'ins', 'inch', 'inches', '"'];
const foot = ['ft', 'foot', 'feet', "'"];
const yard = ['yd', 'yds', 'yard', 'yards'];
const gram = ['g', 'gr', 'gram', 'grams', 'gramme', 'grammes', 'gm', 'gms'];
const ounce = ['oz', 'ozs', 'ounce', 'ounces'];
const minute = ['min', 'mins', 'minute', 'minutes'];

function squared(names: readonly string[]): string[] {
  return names.flatMap((name) => [`${name}2`, `sq${name}`, `square${name}`, `${name}sq`, `${name}squared`]);
}

function cubed(names: readonly string[]): string[] {
  return names.flatMap((name) => [`${name}3`, `cu${name}`, `cubic${name}`, `${name}cubed`]);
}

function per(tops: readonly string[], bottoms: readonly string[]): string[] {
  return tops.flatMap((top) =>
    bottoms.flatMap((bottom) => [`${top}/${bottom}`, `${top}per${bottom}`, `${top}pera${bottom}`]),
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
  mm: unit('length', 'mm', 1, 1, mm, { one: 'millimetre' }),
  cm: unit('length', 'cm', 10, 1, cm, { one: 'centimetre' }),
  m: unit('length', 'm', 1000, 1, m, { one: 'metre' }),
  in: unit('length', 'in', 127, 5, inch, { one: 'inch', many: 'inches', fractions: true }),
  ft: unit('length', 'ft', 1524, 5, foot, { one: 'foot', many: 'feet', fractions: true }),
  yd: unit('length', 'yd', 4572, 5, yard, { one: 'yard', fractions: true }),
  ligne: unit('length', 'ligne', 127, 200, ['ligne', 'lignes'], { one: 'ligne' }),

  mm2: unit('area', 'mm²', 1, 1, squared(mm), { one: 'square millimetre' }),
  cm2: unit('area', 'cm²', 100, 1, squared(cm), { one: 'square centimetre' }),
  m2: unit('area', 'm²', 1_000_000, 1, squared(m), { one: 'square metre' }),
  in2: unit('area', 'in²', 16_129, 25, squared(inch), { one: 'square inch', many: 'square inches' }),
  ft2: unit('area', 'ft²', 2_322_576, 25, squared(foot), { one: 'square foot', many: 'square feet' }),
  yd2: unit('area', 'yd²', 20_903_184, 25, squared(yard), { one: 'square yard' }),

  cm3: unit(
    'volume',
    'cm³',
    1,
    1,
    [...cubed(cm), 'cc', 'ccm', 'ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'],
    {
      one: 'cubic centimetre',
    },
  ),
  L: unit('volume', 'L', 1000, 1, ['l', 'litre', 'litres', 'liter', 'liters', ...cubed(['dm'])], {
    one: 'litre',
  }),
  in3: unit('volume', 'in³', 2_048_383, 125_000, [...cubed(inch), 'cuins', 'ci'], {
    one: 'cubic inch',
    many: 'cubic inches',
  }),
  ft3: unit('volume', 'ft³', 1_769_802_912, 62_500, cubed(foot), { one: 'cubic foot', many: 'cubic feet' }),

  g: unit('mass', 'g', 1, 1, gram, { one: 'gram' }),
  kg: unit(
    'mass',
    'kg',
    1000,
    1,
    ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'],
    {
      one: 'kilogram',
    },
  ),
  oz: unit('mass', 'oz', 45_359_237, 1_600_000, ounce, { one: 'ounce' }),
  lb: unit('mass', 'lb', 45_359_237, 100_000, ['lb', 'lbs', 'pound', 'pounds'], { one: 'pound' }),

  gPerM2: unit('arealMass', 'g/m²', 1, 1, [...per(gram, squared(m)), 'gsm', 'gm2', ...gram], {
    one: 'gram per square metre',
    many: 'grams per square metre',
  }),
  ozPerYd2: unit(
    'arealMass',
    'oz/yd²',
    28_349_523_125,
    836_127_360,
    [...per(ounce, squared(yard)), 'osy', 'opsy', ...ounce],
    {
      one: 'ounce per square yard',
      many: 'ounces per square yard',
    },
  ),

  cm3PerG: unit('fillPower', 'cm³/g', 1, 1, per([...cubed(cm), 'cc', 'ccm', 'ml'], gram), {
    one: 'cubic centimetre per gram',
    many: 'cubic centimetres per gram',
  }),
  in3PerOz: unit(
    'fillPower',
    'in³/oz',
    16_387_064_000,
    28_349_523_125,
    [...per([...cubed(inch), 'ci'], ounce), ...cubed(inch), 'ci', 'fp', 'fill', 'fillpower', 'cuins'],
    { one: 'cubic inch per ounce', many: 'cubic inches per ounce' },
  ),
  in3Per30G: unit('fillPower', 'in³/30 g', 2_048_383, 3_750_000, per(cubed(inch), ['30g', '30grams']), {
    one: 'cubic inch per 30 grams',
    many: 'cubic inches per 30 grams',
  }),

  // The height that down stands at in a cylinder of 289 mm, as both methods have it: its area over the sample's mass.
  mmPer20G: unit('fillPower', 'mm/20 g', 655_972, 200_000, heights(['20g', '20grams'], 'en12130'), {
    one: 'millimetre of 20 grams',
    many: 'millimetres of 20 grams',
  }),
  mmPer30G: unit('fillPower', 'mm/30 g', 655_972, 300_000, heights(['30g', '30grams'], 'idfb'), {
    one: 'millimetre of 30 grams',
    many: 'millimetres of 30 grams',
  }),

  tex: unit('threadSize', 'tex', 1, 1, ['tex', 't', 't-'], { ...before, one: 'tex', many: 'tex' }),
  dtex: unit('threadSize', 'dtex', 1, 10, ['dtex', 'decitex'], { one: 'decitex', many: 'decitex' }),
  den: unit('threadSize', 'den', 1, 9, ['den', 'denier', 'deniers', 'd', 'td'], {
    one: 'denier',
    many: 'denier',
  }),
  Tkt: unit('threadSize', 'Tkt', 3000, 1, ['tkt', 'ticket', 'ticketno'], {
    ...finer,
    one: 'ticket',
    many: 'ticket',
  }),
  Nm: unit('threadSize', 'Nm', 1000, 1, ['nm'], { ...finer, one: 'Nm', many: 'Nm' }),
  Ne: unit('threadSize', 'Ne', 453_592_370, 768_096, ['ne', 'nec'], { ...finer, one: 'Ne', many: 'Ne' }),
  wt: unit('threadSize', 'wt', 1000, 1, ['wt', 'weight'], {
    reciprocal: true,
    one: 'weight',
    many: 'weight',
  }),

  threadM: unit('threadLength', 'm', 1, 1, m, { one: 'metre' }),
  threadKm: unit('threadLength', 'km', 1000, 1, km, { one: 'kilometre' }),
  threadYd: unit('threadLength', 'yd', 1143, 1250, yard, { one: 'yard' }),
  threadFt: unit('threadLength', 'ft', 381, 1250, foot, { one: 'foot', many: 'feet' }),

  percent: unit('ratio', '%', 1, 100, ['%', 'percent', 'pct', 'pc'], { one: 'percent', many: 'percent' }),
  fold: unit('ratio', '×', 1, 1, ['x', '×', 'times'], { one: 'times', many: 'times' }),

  pcs: unit(
    'count',
    'pcs',
    1,
    1,
    ['pc', 'pcs', 'piece', 'pieces', 'pce', 'pces', 'ea', 'each', 'off', 'x', '×'],
    {
      one: 'piece',
    },
  ),
  dozen: unit('count', 'dozen', 12, 1, ['dozen', 'dozens', 'doz', 'dz'], { one: 'dozen', many: 'dozen' }),
  gross: unit('count', 'gross', 144, 1, ['gross'], { one: 'gross', many: 'gross' }),

  money: unit('money', '', 1, 1, [], { ...before, one: '', many: '' }),

  NM: unit('needleSize', 'NM', 1, 1, ['nm'], { ...before, one: 'NM', many: 'NM' }),

  min: unit('duration', 'min', 1, 1, minute, { one: 'minute' }),
  h: unit('duration', 'h', 60, 1, ['h', 'hr', 'hrs', 'hour', 'hours'], { one: 'hour' }),
  s: unit('duration', 's', 1, 60, ['s', 'sec', 'secs', 'second', 'seconds'], { one: 'second' }),

  // 1 clo is 0.155 m2 K/W and 1 tog 0.1, by their definitions.
  clo: unit('warmth', 'clo', 1, 1, ['clo'], { one: 'clo', many: 'clo' }),
  tog: unit('warmth', 'tog', 20, 31, ['tog', 'togs'], { one: 'tog', many: 'tog' }),
  m2KPerW: unit('warmth', 'm²K/W', 200, 31, ['m2k/w', 'km2/w'], { one: 'm²K/W', many: 'm²K/W' }),
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
