/** Units against the definitions and tables of others, through the same reader that a maker's field uses. */
import type { QuantityKind } from '../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../shared-core/measure/read.ts';
import { inUnit, type UnitId } from '../../shared-core/measure/units.ts';
import type { OutsideCheck } from './outside.ts';

function read(kind: QuantityKind, text: string): number {
  const reading = readQuantity(kind, text, { system: 'metric', where: text, min: 0 });
  return reading.ok ? reading.value : Number.NaN;
}

const agreement = 'yard and pound agreement of 1959, as in NIST SP 811 (from memory)';
const fromAgreement = 'derived from the yard and pound agreement of 1959';
const threadGuide = "needle maker's thread sizing guide, conversion table";
const ticketGuide = 'onlineclothingstudy.com, Tex and Tkt';

/** name, kind, text, expected inside, tolerance: half of the last printed place. */
type Row = readonly [QuantityKind, string, number, number];

function rows(source: string, list: readonly Row[]): OutsideCheck[] {
  return list.map(([kind, text, expected, tolerance]) => ({
    class: 'B',
    name: `${text} as ${kind}`,
    source,
    expected,
    got: read(kind, text),
    tolerance,
  }));
}

/** A value inside seen in another unit. */
function seen(
  source: string,
  kind: QuantityKind,
  text: string,
  unit: UnitId,
  expected: number,
  tolerance: number,
): OutsideCheck {
  return {
    class: 'B',
    name: `${text} in ${unit}`,
    source,
    expected,
    got: inUnit(unit, read(kind, text)),
    tolerance,
  };
}

const defined = rows(agreement, [
  ['length', '1 in', 25.4, 0],
  ['length', '1 yd', 914.4, 0],
  ['length', '1 ft', 304.8, 0],
  ['mass', '1 oz', 28.349523125, 0],
  ['mass', '1 lb', 453.59237, 0],
  ['area', '1 yd2', 836_127.36, 0],
  ['area', '1 in2', 645.16, 0],
  ['volume', '1 in3', 16.387064, 0],
  ['volume', '1 ft3', 28_316.846592, 0],
]);

const cloth = rows(fromAgreement, [
  ['arealMass', '1 oz/yd2', 33.905747475, 5e-10],
  ['arealMass', '1.1 oz/yd2', 37.296, 5e-4],
  ['arealMass', '1.6 oz/yd2', 54.249, 5e-4],
  ['arealMass', '1.9 oz/yd2', 64.421, 5e-4],
  ['arealMass', '2.6 oz/yd2', 88.155, 5e-4],
  ['arealMass', '4 oz/yd2', 135.623, 5e-4],
  ['arealMass', '6 oz/yd2', 203.434, 5e-4],
]);

const clothBack = (
  [
    [1, 0.029493525, 5e-10],
    [20, 0.59, 5e-4],
    [60, 1.77, 5e-4],
    [80, 2.359, 5e-4],
    [100, 2.949, 5e-4],
    [133, 3.923, 5e-4],
    [200, 5.899, 5e-4],
  ] as const
).map(([g, oz, tolerance]) => seen(fromAgreement, 'arealMass', `${g} g/m2`, 'ozPerYd2', oz, tolerance));

const fill = rows(fromAgreement, [
  ['fillPower', '1 in3/oz', 0.578036672, 5e-10],
  ['fillPower', '550 in3/oz', 317.9, 0.05],
  ['fillPower', '600 in3/oz', 346.8, 0.05],
  ['fillPower', '650 in3/oz', 375.7, 0.05],
  ['fillPower', '700 in3/oz', 404.6, 0.05],
  ['fillPower', '750 in3/oz', 433.5, 0.05],
  ['fillPower', '800 in3/oz', 462.4, 0.05],
  ['fillPower', '850 in3/oz', 491.3, 0.05],
  ['fillPower', '900 in3/oz', 520.2, 0.05],
]);

const thread = [
  ...rows(threadGuide, [
    ['threadSize', '30 wt', 33.3, 0.05],
    ['threadSize', '270 den', 30, 0],
    ['threadSize', '300 den', 33.3, 0.05],
    ['threadSize', '240 denier', 26.7, 0.05],
    ['threadSize', '40 wt', 25, 0],
  ]),
  seen(threadGuide, 'threadSize', '30 wt', 'den', 300, 1e-9),
  seen('derived: 9 x tex', 'threadSize', '40 wt', 'den', 225, 1e-9),
  ...rows(ticketGuide, [
    ['threadSize', 'Tkt 75', 40, 0],
    ['threadSize', 'Tkt 120', 25, 0],
    ['threadSize', 'Nm 80/2', 25, 0],
  ]),
  seen(ticketGuide, 'threadSize', 'Nm 80/2', 'Tkt', 120, 1e-9),
  ...rows('derived: 3000 / tex; sold as tex 40 (from memory)', [['threadSize', 'Tkt 80', 37.5, 0]]),
  ...rows('cotton count 590.54 / tex, apparelmerchandisinglearner, thread ticket number', [
    ['threadSize', 'Ne 1', 590.54, 0.005],
  ]),
];

const law: OutsideCheck[] = [
  {
    class: 'B',
    name: '2.6 oz/yd2 as a flammability rule prints it',
    source: '16 CFR 1610 (metric figure from memory)',
    expected: 88.2,
    got: read('arealMass', '2.6 oz/yd2'),
    tolerance: 0.05,
  },
];

const checks: readonly OutsideCheck[] = [...defined, ...cloth, ...clothBack, ...fill, ...thread, ...law];
export default checks;
