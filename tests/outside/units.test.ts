/** A general unit library as referee, both ways, on values that nobody picked. */
import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from '../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../shared-core/measure/read.ts';
import { inUnit, type UnitId, units } from '../../shared-core/measure/units.ts';

/** The library's quantity for n of our unit; thread counts are built from their definitions, as it has no names for them. */
type Theirs = (n: number) => Qty;
const named =
  (name: string): Theirs =>
  (n) =>
    Qty(n, name);
const hank = Qty(840, 'yd');
const threadCounts = {
  tex: (n) => Qty(n, 'g').div(Qty(1, 'km')),
  dtex: (n) => Qty(n, 'g').div(Qty(10, 'km')),
  den: (n) => Qty(n, 'g').div(Qty(9, 'km')),
  // Synthetic ticket: three times the metres to the gram.
  Tkt: (n) => Qty(1, 'g').div(Qty(n, 'm').div(3)),
  Nm: (n) => Qty(1, 'g').div(Qty(n, 'm')),
  Ne: (n) => Qty(1, 'lb').div(hank.mul(n)),
  wt: (n) => Qty(1, 'g').div(Qty(n, 'm')),
} as const satisfies Partial<Record<UnitId, Theirs>>;

/** Down that stands n mm high in the cylinder of both methods, 289 mm across. */
const standing = (n: number, massG: number) =>
  Qty(n, 'mm')
    .mul(Qty(Math.PI * 144.5 ** 2, 'mm^2'))
    .div(Qty(massG, 'g'));

/** kind, our unit, how n of it is typed, the library's quantity, the library's name for the unit inside. */
const table: readonly (readonly [QuantityKind, UnitId, (n: string) => string, Theirs, string])[] = [
  ['length', 'mm', (n) => `${n} mm`, named('mm'), 'mm'],
  ['length', 'in', (n) => `${n} in`, named('in'), 'mm'],
  ['length', 'ft', (n) => `${n} ft`, named('ft'), 'mm'],
  ['length', 'yd', (n) => `${n} yards`, named('yd'), 'mm'],
  ['length', 'cm', (n) => `${n} cm`, named('cm'), 'mm'],
  ['length', 'm', (n) => `${n} m`, named('m'), 'mm'],
  // A button maker's line: forty to the inch.
  ['length', 'ligne', (n) => `${n} lignes`, (n) => Qty(n, 'in').div(40), 'mm'],
  ['area', 'mm2', (n) => `${n} mm2`, named('mm^2'), 'mm^2'],
  ['area', 'cm2', (n) => `${n} cm²`, named('cm^2'), 'mm^2'],
  ['area', 'in2', (n) => `${n} sq in`, named('in^2'), 'mm^2'],
  ['area', 'ft2', (n) => `${n} ft2`, named('ft^2'), 'mm^2'],
  ['area', 'yd2', (n) => `${n} yd²`, named('yd^2'), 'mm^2'],
  ['area', 'm2', (n) => `${n} m2`, named('m^2'), 'mm^2'],
  ['volume', 'cm3', (n) => `${n} cm3`, named('cm^3'), 'cm^3'],
  ['volume', 'in3', (n) => `${n} cu in`, named('in^3'), 'cm^3'],
  ['volume', 'ft3', (n) => `${n} ft³`, named('ft^3'), 'cm^3'],
  ['volume', 'L', (n) => `${n} litres`, named('l'), 'cm^3'],
  ['mass', 'g', (n) => `${n} g`, named('g'), 'g'],
  ['mass', 'oz', (n) => `${n} oz`, named('oz'), 'g'],
  ['mass', 'lb', (n) => `${n} lb`, named('lb'), 'g'],
  ['mass', 'kg', (n) => `${n} kg`, named('kg'), 'g'],
  ['arealMass', 'gPerM2', (n) => `${n} gsm`, named('g/m^2'), 'g/m^2'],
  ['arealMass', 'ozPerYd2', (n) => `${n} oz/yd2`, named('oz/yd^2'), 'g/m^2'],
  ['fillPower', 'cm3PerG', (n) => `${n} cm3/g`, named('cm^3/g'), 'cm^3/g'],
  ['fillPower', 'in3PerOz', (n) => `${n} in3/oz`, named('in^3/oz'), 'cm^3/g'],
  ['fillPower', 'in3Per30G', (n) => `${n} in3/30g`, (n) => Qty(n, 'in^3').div(Qty(30, 'g')), 'cm^3/g'],
  ['fillPower', 'mmPer20G', (n) => `${n} mm/20g`, (n) => standing(n, 20), 'cm^3/g'],
  ['fillPower', 'mmPer30G', (n) => `${n} mm/30g`, (n) => standing(n, 30), 'cm^3/g'],
  ['threadLength', 'threadM', (n) => `${n} m`, named('m'), 'm'],
  ['threadLength', 'threadKm', (n) => `${n} km`, named('km'), 'm'],
  ['threadLength', 'threadYd', (n) => `${n} yd`, named('yd'), 'm'],
  ['threadLength', 'threadFt', (n) => `${n} ft`, named('ft'), 'm'],
  ['threadSize', 'tex', (n) => `tex ${n}`, threadCounts.tex, 'mg/m'],
  ['threadSize', 'dtex', (n) => `${n} dtex`, threadCounts.dtex, 'mg/m'],
  ['threadSize', 'den', (n) => `${n} den`, threadCounts.den, 'mg/m'],
  ['threadSize', 'Tkt', (n) => `Tkt ${n}`, threadCounts.Tkt, 'mg/m'],
  ['threadSize', 'Nm', (n) => `Nm ${n}`, threadCounts.Nm, 'mg/m'],
  ['threadSize', 'Ne', (n) => `Ne ${n}`, threadCounts.Ne, 'mg/m'],
  ['threadSize', 'wt', (n) => `${n} wt`, threadCounts.wt, 'mg/m'],
  ['duration', 'min', (n) => `${n} min`, named('min'), 'min'],
  ['duration', 'h', (n) => `${n} h`, named('h'), 'min'],
  ['duration', 's', (n) => `${n} s`, named('s'), 'min'],
  ['ratio', 'percent', (n) => `${n} %`, named('%'), '1'],
];

/** Units that it cannot judge: names for numbers of things, a blade's size, money, and warmth, whose units it does not have. */
const notJudged: readonly UnitId[] = [
  'fold',
  'pcs',
  'dozen',
  'gross',
  'money',
  'NM',
  'clo',
  'tog',
  'm2KPerW',
];

/** The library's ounce is 28.3495231 g, short of the defined one by 9e-10 of it; our area of a circle has six figures. */
const closenessOf = (unit: UnitId) => (unit === 'mmPer20G' || unit === 'mmPer30G' ? 1e-6 : 2e-9);

describe('a unit library agrees on every factor', () => {
  it('that it knows or that can be built of its units', () => {
    const judged = new Set([...table.map(([, unit]) => unit), ...notJudged]);
    expect(Object.keys(units).filter((unit) => !judged.has(unit as UnitId))).toEqual([]);
  });
  for (const [kind, unit, typed, theirs, theirsInside] of table) {
    it(`${kind}: ${typed('1')} to ${theirsInside} and back`, () => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 9_999_999 }),
          fc.integer({ min: 0, max: 4 }),
          (digits, places) => {
            const text = (digits / 10 ** places).toFixed(places);
            const referee = theirs(Number(text)).to(theirsInside).scalar;
            const reading = readQuantity(kind, typed(text), {
              system: 'metric',
              where: 'x',
              min: 0,
              max: 1e15,
            });
            expect(reading).toMatchObject({ ok: true });
            if (!reading.ok) return;
            expect(Math.abs(reading.value - referee) / referee).toBeLessThan(closenessOf(unit));
            // Back: the library's quantity for what we make of the value inside is the value inside again.
            const back = theirs(inUnit(unit, reading.value)).to(theirsInside).scalar;
            expect(Math.abs(back - reading.value) / reading.value).toBeLessThan(closenessOf(unit));
          },
        ),
        { seed: 20_417, numRuns: 150 },
      );
    });
  }
});
