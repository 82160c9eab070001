import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MeasureSystem, QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { quantityFacts } from '../../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { type ShowOptions, showParts, showQuantity } from '../../../shared-core/measure/show.ts';
import { fromUnit, inUnit, type UnitId, units } from '../../../shared-core/measure/units.ts';

const shownRows: readonly (readonly [QuantityKind, number, Omit<ShowOptions, 'system'>, string, string])[] = [
  ['length', 115, {}, '115 mm', '4 1/2 in'],
  ['length', 1470, {}, '1.47 m', '57 7/8 in'],
  ['length', 1943.1, {}, '1.94 m', '2 1/8 yd'],
  ['length', 2000, {}, '2 m', '2.19 yd'],
  ['length', 914.4, {}, '914.4 mm', '36 in'],
  ['length', 9.525, {}, '9.5 mm', '3/8 in'],
  ['length', -38.1, {}, '-38.1 mm', '-1 1/2 in'],
  ['length', 0, {}, '0 mm', '0 in'],
  ['length', 0.3, {}, '0.3 mm', '0.012 in'],
  ['length', 0.004, {}, '0.004 mm', '0.00016 in'],
  ['length', 115, { unit: 'cm' }, '11.5 cm', '11.5 cm'],
  ['length', 1470, { digits: 3 }, '1.470 m', '57.874 in'],
  ['length', 1470, { unit: { metric: 'm', imperial: 'yd' }, step: 0.125 }, '1.5 m', '1 5/8 yd'],
  ['area', 1_500_000, {}, '1.5 m²', '1.79 yd²'],
  ['area', 25_000, {}, '250 cm²', '38.8 in²'],
  ['volume', 850, {}, '850 cm³', '51.9 in³'],
  ['mass', 350, {}, '350 g', '12.35 oz'],
  ['mass', 1234, {}, '1.234 kg', '2.72 lb'],
  ['arealMass', 54.249, {}, '54.2 g/m²', '1.6 oz/yd²'],
  ['fillPower', 375.724, {}, '375.7 cm³/g', '650 in³/oz'],
  ['threadSize', 40, {}, 'tex 40', 'tex 40'],
  ['threadSize', 40, { unit: 'Tkt' }, 'Tkt 75', 'Tkt 75'],
  ['threadSize', 25, { unit: 'wt' }, '40 wt', '40 wt'],
  ['threadLength', 1234.56, {}, '1234.6 m', '1350.1 yd'],
  ['ratio', 0.15, {}, '15 %', '15 %'],
  ['ratio', 0.0004, {}, '0.04 %', '0.04 %'],
  ['ratio', 2.5, { unit: 'fold' }, '2.5 ×', '2.5 ×'],
  ['count', 12, {}, '12 pcs', '12 pcs'],
  ['money', 123_450, { currency: 'EUR' }, '1,234.50 EUR', '1,234.50 EUR'],
  ['money', -7, { currency: 'EUR' }, '-0.07 EUR', '-0.07 EUR'],
  ['needleSize', 80, {}, 'NM 80/12', 'NM 80/12'],
  ['needleSize', 85, {}, 'NM 85', 'NM 85'],
  ['duration', 45, {}, '45 min', '45 min'],
  ['duration', 90, {}, '1:30 h', '1:30 h'],
  ['duration', 119.7, {}, '2:00 h', '2:00 h'],
];

describe('a value is shown as a maker reads it', () => {
  it.each(shownRows)('%s %d %j: %s or %s', (kind, value, options, metric, imperial) => {
    expect(showQuantity(kind, value, { ...options, system: 'metric' })).toBe(metric);
    expect(showQuantity(kind, value, { ...options, system: 'imperial' })).toBe(imperial);
  });

  it('comes apart into number and unit for a table', () => {
    expect(showParts('length', 1943.1, { system: 'imperial' })).toEqual({ number: '2 1/8', unit: 'yd' });
    expect(showParts('threadSize', 40, { system: 'metric', unit: 'Tkt' })).toEqual({
      number: '75',
      unit: 'Tkt',
    });
    expect(showParts('money', 1250, { system: 'metric', currency: 'EUR' })).toEqual({
      number: '12.50',
      unit: 'EUR',
    });
    expect(showParts('money', -125_000, { system: 'metric', currency: 'GBP' })).toEqual({
      number: '-1,250.00',
      unit: 'GBP',
    });
  });

  it('never shows what is not finite, half a cent, or a unit of another kind', () => {
    expect(() => showQuantity('length', Number.NaN, { system: 'metric' })).toThrow(RangeError);
    expect(() => showQuantity('mass', Number.POSITIVE_INFINITY, { system: 'metric' })).toThrow(RangeError);
    expect(() => showQuantity('money', 12.5, { system: 'metric', currency: 'EUR' })).toThrow(RangeError);
    expect(() => showQuantity('mass', 12, { system: 'metric', unit: 'mm' })).toThrow(RangeError);
  });
});

/** Kind, values inside as a workshop meets them. */
const spans: Readonly<
  Record<Exclude<QuantityKind, 'money' | 'count' | 'needleSize'>, readonly [number, number]>
> = {
  length: [1e-4, 9e5],
  area: [1e-2, 9e9],
  volume: [1e-3, 9e7],
  mass: [1e-4, 9e5],
  arealMass: [1e-3, 4900],
  fillPower: [2, 860],
  threadSize: [1, 2900],
  threadLength: [1e-3, 9e6],
  ratio: [1e-6, 99],
  duration: [1e-2, 5e5],
  warmth: [1e-2, 90],
};

const systems: readonly MeasureSystem[] = ['metric', 'imperial'];

/** Values spread evenly over the orders of magnitude. */
function spread([low, high]: readonly [number, number]): fc.Arbitrary<number> {
  return fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map((log) => Math.exp(log));
}

/**
 * The precision that is promised for each unit, said again here in that unit: 1.47 m is good to a centimetre.
 * Inches below a foot go by sixteenths, above by eighths; yards by hundredths unless they are an eighth exactly.
 */
const promised: Partial<Record<UnitId, number>> = {
  mm: 0.1,
  m: 0.01,
  yd: 0.01,
  cm2: 0.1,
  m2: 0.01,
  in2: 0.1,
  yd2: 0.01,
  cm3: 0.1,
  L: 0.01,
  in3: 0.1,
  ft3: 0.01,
  g: 0.1,
  kg: 0.001,
  oz: 0.01,
  lb: 0.01,
  gPerM2: 0.1,
  ozPerYd2: 0.01,
  cm3PerG: 0.1,
  in3PerOz: 1,
  tex: 0.1,
  threadM: 0.1,
  threadYd: 0.1,
  percent: 0.1,
  min: 0.1,
  h: 1 / 60,
  clo: 0.01,
};

/** The most that a text may be off, in its unit. What would round to zero is good to a tenth of itself. */
function allowedMiss(id: UnitId, n: number): number {
  const step = id === 'in' ? (n < 12 ? 1 / 16 : 1 / 8) : promised[id];
  if (step === undefined) throw new Error(`nothing promised for ${id}`);
  return n < step / 2 ? n / 10 : step / 2 + 1e-9 * n;
}

function shownIn(kind: QuantityKind, text: string): UnitId {
  const found = (Object.keys(units) as UnitId[]).find(
    (id) =>
      units[id].kind === kind &&
      (text.endsWith(` ${units[id].symbol}`) || text.startsWith(`${units[id].symbol} `)),
  );
  if (!found) throw new Error(`no unit in ${text}`);
  return found;
}

describe('what is shown can be typed again', () => {
  for (const kind of Object.keys(spans) as (keyof typeof spans)[]) {
    for (const system of systems) {
      it(`${kind}, ${system}: reads back within the shown precision, and never as zero`, () => {
        fc.assert(
          fc.property(spread(spans[kind]), (value) => {
            const text = showQuantity(kind, value, { system });
            const reading = readQuantity(kind, text, { system, where: text, min: 0 });
            expect(reading.ok, text).toBe(true);
            if (!reading.ok) return;
            expect(reading.value, text).toBeGreaterThan(0);
            const id = shownIn(kind, text);
            const n = inUnit(id, value);
            expect(Math.abs(inUnit(id, reading.value) - n), text).toBeLessThanOrEqual(allowedMiss(id, n));
          }),
        );
      });
    }
  }

  it('in every unit a field may prefer, at any number of places', () => {
    const ids = (Object.keys(units) as UnitId[]).filter((id) => units[id].kind in spans);
    fc.assert(
      fc.property(
        fc.constantFrom(...ids),
        fc.integer({ min: 1, max: 999_999 }),
        fc.integer({ min: 0, max: 3 }),
        (id, n, digits) => {
          const { kind } = units[id];
          const value = fromUnit(id, n / 10 ** digits);
          const text = showQuantity(kind, value, { system: 'metric', unit: id, digits });
          const reading = readQuantity(kind, text, { system: 'imperial', where: text, min: 0, max: 1e18 });
          expect(reading.ok, text).toBe(true);
          if (reading.ok) expect(Math.abs(reading.value - value) / value, text).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 2000, seed: 1889 },
    );
  });

  it('in sixteenths of an inch and eighths of a yard, exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8000 }), (count) => {
        for (const [unit, parts, factor] of [
          ['in', 16, 25.4],
          ['yd', 8, 914.4],
        ] as const) {
          const value = (count / parts) * factor;
          const text = showQuantity('length', value, { system: 'imperial', unit, step: 1 / parts });
          const reading = readQuantity('length', text, { system: 'metric', where: text });
          expect(reading.ok && Math.abs(reading.value - value) <= 1e-12 * value, text).toBe(true);
        }
      }),
    );
  });

  it('counts, needles and money exactly', () => {
    fc.assert(
      fc.property(
        fc.nat(900_000),
        fc.integer({ min: 40, max: 250 }),
        fc.nat(9_000_000_000),
        (count, nm, minor) => {
          for (const system of systems) {
            const back = (kind: QuantityKind, value: number) => {
              const text = showQuantity(kind, value, { system, currency: 'EUR' });
              const reading = readQuantity(kind, text, { system, where: text, currency: 'EUR' });
              return reading.ok ? reading.value : text;
            };
            expect(back('count', count)).toBe(count);
            expect(back('needleSize', nm)).toBe(nm);
            expect(back('money', minor)).toBe(minor);
          }
        },
      ),
    );
  });

  it('and the examples in the sentences of refusal are read', () => {
    for (const [kind, { examples }] of Object.entries(quantityFacts)) {
      for (const text of examples.split(/, | or /)) {
        const reading = readQuantity(kind as QuantityKind, text, {
          system: 'metric',
          where: text,
          currency: 'EUR',
        });
        expect(reading.ok, `${kind} ${text}`).toBe(true);
      }
    }
  });
});
