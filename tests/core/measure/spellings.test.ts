/**
 * What makers type, and what it must come to. Expectations are worked out here from the factors as published,
 * never by the reader. Every row carries its unit, so it must read the same in both systems.
 */
import { describe, expect, it } from 'vitest';
import type { MeasureSystem, QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { oddities } from './oddities.ts';

type Spelling = readonly [text: string, value: number];

/** Numbers before a unit that may be written in fractions. */
const numbers: readonly Spelling[] = [
  ['4 1/2', 4.5],
  ['4-1/2', 4.5],
  ['4½', 4.5],
  ['4 ½', 4.5],
  ['4 and 1/2', 4.5],
  ['4.5', 4.5],
  ['4,5', 4.5],
  ['4.50', 4.5],
  ['3/8', 0.375],
  ['⅜', 0.375],
  ['.375', 0.375],
  ['0,375', 0.375],
  ['2 1/8', 2.125],
  ['2⅛', 2.125],
  ['2 1⁄8', 2.125],
  ['58', 58],
  ['58.', 58],
  ['017', 17],
];

const lengthUnits: readonly Spelling[] = [
  ['in', 25.4],
  ['in.', 25.4],
  ['ins', 25.4],
  ['inch', 25.4],
  ['inches', 25.4],
  ['IN', 25.4],
  ['"', 25.4],
  ['″', 25.4],
  ['”', 25.4],
  ["''", 25.4],
  ['ft', 304.8],
  ['feet', 304.8],
  ["'", 304.8],
  ['′', 304.8],
  ['yd', 914.4],
  ['yds.', 914.4],
  ['yard', 914.4],
  ['Yards', 914.4],
  ['mm', 1],
  ['millimetres', 1],
  ['cm', 10],
  ['centimeters', 10],
  ['m', 1000],
  ['metres', 1000],
  ['meters', 1000],
];

const others: readonly (readonly [QuantityKind, readonly Spelling[], readonly Spelling[]])[] = [
  [
    'arealMass',
    [
      ['1.6', 1.6],
      ['1,6', 1.6],
      ['2 1/4', 2.25],
      ['6', 6],
    ],
    [
      ['oz', 28.349523125 / 0.83612736],
      ['oz/yd2', 28.349523125 / 0.83612736],
      ['oz/yd²', 28.349523125 / 0.83612736],
      ['oz/yd^2', 28.349523125 / 0.83612736],
      ['oz per sq yd', 28.349523125 / 0.83612736],
      ['ounces per square yard', 28.349523125 / 0.83612736],
      ['oz/sq. yd.', 28.349523125 / 0.83612736],
      ['OSY', 28.349523125 / 0.83612736],
      ['g/m2', 1],
      ['g/m²', 1],
      ['gsm', 1],
      ['GSM', 1],
      ['g / m²', 1],
      ['grams per square metre', 1],
      ['g/sq m', 1],
    ],
  ],
  [
    'fillPower',
    [
      ['650', 650],
      ['837.5', 837.5],
    ],
    [
      ['fp', 16.387064 / 28.349523125],
      ['FP', 16.387064 / 28.349523125],
      ['fill power', 16.387064 / 28.349523125],
      ['cuin', 16.387064 / 28.349523125],
      ['cuin/oz', 16.387064 / 28.349523125],
      ['cu in/oz', 16.387064 / 28.349523125],
      ['cu. in. per oz.', 16.387064 / 28.349523125],
      ['in3/oz', 16.387064 / 28.349523125],
      ['in³/oz', 16.387064 / 28.349523125],
      ['cubic inches per ounce', 16.387064 / 28.349523125],
      ['in3/30g', 16.387064 / 30],
      ['cm3/g', 1],
      ['cm³/g', 1],
      ['cc/g', 1],
    ],
  ],
  [
    'mass',
    [
      ['7', 7],
      ['12 1/2', 12.5],
      ['0.35', 0.35],
    ],
    [
      ['g', 1],
      ['grams', 1],
      ['kg', 1000],
      ['kilos', 1000],
      ['oz', 28.349523125],
      ['ounces', 28.349523125],
      ['lb', 453.59237],
      ['lbs.', 453.59237],
      ['pounds', 453.59237],
    ],
  ],
  [
    'area',
    [
      ['3', 3],
      ['2 1/4', 2.25],
    ],
    [
      ['m2', 1e6],
      ['m²', 1e6],
      ['sq m', 1e6],
      ['square metres', 1e6],
      ['cm²', 100],
      ['sq. in.', 645.16],
      ['in^2', 645.16],
      ['sq ft', 92_903.04],
      ['yd²', 836_127.36],
      ['square yards', 836_127.36],
    ],
  ],
  [
    'threadLength',
    [
      ['1000', 1000],
      ['457.5', 457.5],
    ],
    [
      ['m', 1],
      ['metres', 1],
      ['km', 1000],
      ['yd', 0.9144],
      ['yds', 0.9144],
      ['ft', 0.3048],
    ],
  ],
  [
    'ratio',
    [
      ['15', 15],
      ['2.5', 2.5],
      ['0,7', 0.7],
    ],
    [
      ['%', 0.01],
      [' percent', 0.01],
      ['per cent', 0.01],
      ['x', 1],
      ['×', 1],
    ],
  ],
  [
    'duration',
    [
      ['1 1/2', 1.5],
      ['45', 45],
    ],
    [
      ['min', 1],
      ['minutes', 1],
      ['h', 60],
      ['hrs', 60],
      ['hours', 60],
      ['s', 1 / 60],
    ],
  ],
  [
    'warmth',
    [
      ['1.3', 1.3],
      ['0,85', 0.85],
    ],
    [
      ['clo', 1],
      ['tog', 0.1 / 0.155],
      ['togs', 0.1 / 0.155],
      ['m2K/W', 1 / 0.155],
    ],
  ],
];

interface Row {
  readonly kind: QuantityKind;
  readonly text: string;
  readonly value: number;
}

function crossed(kind: QuantityKind, tops: readonly Spelling[], ends: readonly Spelling[]): Row[] {
  return tops.flatMap(([number, n]) =>
    ends.flatMap(([unit, factor]) =>
      ['', ' ', '\u2009'].map((gap) => ({ kind, text: `${number}${gap}${unit}`, value: n * factor })),
    ),
  );
}

const rows: readonly Row[] = [
  ...crossed('length', numbers, lengthUnits),
  ...others.flatMap(([kind, tops, ends]) => crossed(kind, tops, ends)),
];

function read(kind: QuantityKind, text: string, system: MeasureSystem) {
  return readQuantity(kind, text, { system, where: text, min: 0, currency: 'GBP' });
}

describe('a field reads what makers type', () => {
  it(`in every one of ${rows.length} spellings`, () => {
    expect(rows.length).toBeGreaterThanOrEqual(300);
    const wrong = rows.flatMap(({ kind, text, value }) =>
      (['metric', 'imperial'] as const).flatMap((system) => {
        const reading = read(kind, text, system);
        const got = reading.ok ? reading.value : (reading.problems[0]?.what ?? 'refused');
        return typeof got === 'number' && Math.abs(got - value) <= 1e-12 * value
          ? []
          : [{ kind, text, system, value, got }];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it.each(oddities)('%s: %j in a field of %s is %d', (kind, text, system, value) => {
    const reading = read(kind, text, system);
    expect(reading).toMatchObject({ ok: true });
    if (reading.ok) expect(Math.abs(reading.value - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
  });

  it('to the last bit, also where parts add up', () => {
    const exact = (text: string) => read('length', text, 'metric');
    expect(exact('4 1/2 in')).toEqual({ ok: true, value: 114.3 });
    expect(exact('1\'6"')).toEqual({ ok: true, value: 457.2 });
    expect(exact('2 yd 4 in')).toEqual({ ok: true, value: 1930.4 });
    expect(exact('0.1 m 20 cm')).toEqual({ ok: true, value: 300 });
  });

  it('has no oddity twice', () => {
    expect(oddities.length).toBeGreaterThanOrEqual(60);
    expect(new Set(oddities.map((row) => row.slice(0, 3).join('|'))).size).toBe(oddities.length);
  });
});
