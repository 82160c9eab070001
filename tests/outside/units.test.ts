/** A general unit library as referee, both ways, on values that nobody picked. */
import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import type { QuantityKind } from '../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../shared-core/measure/read.ts';
import { inUnit, type UnitId } from '../../shared-core/measure/units.ts';

/** kind, our unit, how it is typed, the library's name for it, the library's name for the unit inside. */
const table: readonly (readonly [QuantityKind, UnitId, string, string, string])[] = [
  ['length', 'in', 'in', 'in', 'mm'],
  ['length', 'ft', 'ft', 'ft', 'mm'],
  ['length', 'yd', 'yards', 'yd', 'mm'],
  ['length', 'cm', 'cm', 'cm', 'mm'],
  ['length', 'm', 'm', 'm', 'mm'],
  ['area', 'in2', 'sq in', 'in^2', 'mm^2'],
  ['area', 'ft2', 'ft2', 'ft^2', 'mm^2'],
  ['area', 'yd2', 'yd²', 'yd^2', 'mm^2'],
  ['area', 'm2', 'm2', 'm^2', 'mm^2'],
  ['volume', 'in3', 'cu in', 'in^3', 'cm^3'],
  ['volume', 'ft3', 'ft³', 'ft^3', 'cm^3'],
  ['volume', 'L', 'litres', 'l', 'cm^3'],
  ['mass', 'oz', 'oz', 'oz', 'g'],
  ['mass', 'lb', 'lb', 'lb', 'g'],
  ['mass', 'kg', 'kg', 'kg', 'g'],
  ['arealMass', 'ozPerYd2', 'oz/yd2', 'oz/yd^2', 'g/m^2'],
  ['fillPower', 'in3PerOz', 'in3/oz', 'in^3/oz', 'cm^3/g'],
  ['threadLength', 'threadYd', 'yd', 'yd', 'm'],
  ['threadLength', 'threadFt', 'ft', 'ft', 'm'],
  ['duration', 'h', 'h', 'h', 'min'],
  ['ratio', 'percent', '%', '%', '1'],
];

// The library's ounce is 28.3495231 g, short of the defined one by 9e-10 of it.
const closeness = 2e-9;

describe('a unit library agrees on every factor', () => {
  for (const [kind, unit, typed, theirs, theirsInside] of table) {
    it(`${kind}: ${typed} to ${theirsInside} and back`, () => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 9_999_999 }),
          fc.integer({ min: 0, max: 4 }),
          (digits, places) => {
            const text = (digits / 10 ** places).toFixed(places);
            const referee = Qty(Number(text), theirs).to(theirsInside).scalar;
            const reading = readQuantity(kind, `${text} ${typed}`, {
              system: 'metric',
              where: 'x',
              min: 0,
              max: 1e15,
            });
            expect(reading.ok).toBe(true);
            if (!reading.ok) return;
            expect(Math.abs(reading.value - referee) / referee).toBeLessThan(closeness);
            const back = Qty(reading.value, theirsInside).to(theirs).scalar;
            expect(Math.abs(inUnit(unit, reading.value) - back) / back).toBeLessThan(closeness);
          },
        ),
        { seed: 20_417, numRuns: 150 },
      );
    });
  }
});
